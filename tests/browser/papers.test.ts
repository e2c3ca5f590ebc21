/** Papers and models from the page: the same bytes as from the terminal, nothing of them before they are asked for. */
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { AxeBuilder } from '@axe-core/playwright'
import jsQrModule from 'jsqr'
import { PNG } from 'pngjs'
import { expect, test } from 'vitest'
import type { Dock } from '../../rules/index.ts'
import words from '../../rules/words/en/documents.json' with { type: 'json' }
import { readLink } from '../../src/autosave/link.ts'
import { sheet } from '../../src/cli/sheet.ts'
import { getDocument } from '../support/pdfjs.ts'
import { settled } from './scene-in-page.ts'
import { DESKTOP, nextFrame, open, PHONE, read, withBrowser } from './support/open.ts'
import { addressOf, lookAs, openPapers, SOON, temporaryFolder } from './support/papers.ts'

withBrowser()

// The package's own build is a module within a module.
const jsQr = ((jsQrModule as unknown as { default?: unknown }).default ??
  jsQrModule) as typeof import('jsqr').default

const folder = temporaryFolder()

test('every format is what the terminal writes, byte for byte', async () => {
  const { page, requests, close } = await open({ fresh: true })
  expect(requests.filter((url) => /Roboto|pdf-|papers-/.test(url))).toEqual([])
  await openPapers(page)
  await page.getByLabel('Date on it').fill('2026-05-01')
  await page.getByLabel('Drawn by').fill('A. Person')
  expect(await page.getByLabel('Which').inputValue()).toBe('packet')
  const design = join(folder, 'design.json')
  writeFileSync(design, JSON.stringify(await read(page, (e) => e.design)))
  const link = await addressOf(page)
  const args = [design, '--link', link, '--out', '-', '--date', '2026-05-01', '--by', 'A. Person']
  for (const format of ['pdf', 'svg', 'dxf', 'glb', 'usdz']) {
    const [download] = await Promise.all([
      page.waitForEvent('download', { timeout: 60_000 }),
      page.locator(`[data-format=${format}]`).click(),
    ])
    const paper = format === 'pdf' || format === 'svg'
    const name = `Quillet-Cove${paper ? '-packet' : ''}.${format}`
    expect(download.suggestedFilename()).toBe(name)
    const flags = ['--format', format, ...(paper ? ['--what', 'packet', '--audience', 'customer'] : [])]
    const { bytes } = await sheet([...args, ...flags], '2026-05-01')
    expect(Buffer.compare(readFileSync(await download.path()), Buffer.from(bytes)), format).toBe(0)
    await expect.poll(() => page.locator('.paper-work [role=status]').textContent()).toBe(`${name} is ready.`)
  }
  await close()
})

test('is worked by keys alone', async () => {
  const { page, close } = await open()
  await page.locator('.papers > summary').focus()
  await page.keyboard.press('Enter')
  await expect.poll(() => page.locator('[data-format=svg]').isEnabled(), SOON).toBe(true)
  await page.locator('[data-format=svg]').focus()
  const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')])
  expect(readFileSync(await download.path(), 'utf8')).toMatch(/^<svg /)
  await close()
})

test('the code on the screen opens the same dock on a phone', async () => {
  const { page, close } = await open()
  await openPapers(page)
  const code = page.locator('.qr')
  await code.evaluate((svg) =>
    Object.assign((svg as unknown as SVGElement).style, {
      width: '600px',
      maxWidth: 'none',
      height: '600px',
    }),
  )
  const shot = PNG.sync.read(await code.screenshot())
  const found = jsQr(new Uint8ClampedArray(shot.data), shot.width, shot.height)!
  const url = new URL(found.data)
  expect(url.origin + url.pathname).toBe(new URL(page.url()).origin + new URL(page.url()).pathname)
  const opened = readLink(url.hash)
  expect(opened.ok && opened.value).toEqual(await read(page, (e) => e.design))
  await close()
})

test('a device that shows models on the real ground is handed one: its type, its ending, its link', async () => {
  const { page, close } = await open({
    viewport: PHONE,
    hasTouch: true,
    before: () => {
      DOMTokenList.prototype.supports = () => true
      const plain = HTMLAnchorElement.prototype.click
      HTMLAnchorElement.prototype.click = function () {
        if (this.rel !== 'ar') return plain.call(this)
        const { href, rel, download } = this
        const only = [...this.childNodes].map((child) => child.nodeName)
        fetch(href)
          .then((answer) => answer.blob())
          .then(async (blob) => {
            const start = new Uint8Array(await blob.slice(0, 4).arrayBuffer())
            Object.assign(window, { handed: { rel, download, only, type: blob.type, start: [...start] } })
          })
      }
    },
    // A page's policy lets nobody fetch what it has made itself; a test may.
    bypassCSP: true,
  })
  await openPapers(page)
  await page.getByRole('button', { name: 'Stand it on your shore' }).click()
  await expect
    .poll(() => page.evaluate(() => (window as unknown as { handed?: unknown }).handed ?? null), SOON)
    .toEqual({
      rel: 'ar',
      download: 'Quillet-Cove.usdz',
      only: ['IMG'],
      type: 'model/vnd.usdz+zip',
      start: [0x50, 0x4b, 3, 4],
    })
  await close()
})

test('without such a device there is no such button', async () => {
  const { page, close } = await open()
  await openPapers(page)
  expect(await page.getByRole('button', { name: 'Stand it on your shore' }).count()).toBe(0)
  await close()
})

test('what cannot be made says why, and the next one is made', async () => {
  const { page, close } = await open({ without: /Roboto/, expected: /Roboto|Failed to load|net::ERR/ })
  await openPapers(page)
  await page.locator('[data-format=pdf]').click()
  await expect.poll(() => page.locator('.paper-work .fault').textContent(), SOON).toMatch(/couldn’t make/)
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.locator('[data-format=svg]').click(),
  ])
  expect(download.suggestedFilename()).toBe('Quillet-Cove-packet.svg')
  await close()
})

test.each([
  ['light', DESKTOP],
  ['dark', PHONE],
] as const)('axe finds nothing in %s, a quote being chosen', async (colorScheme, viewport) => {
  const { page, close } = await open({ colorScheme, viewport })
  await lookAs(page, 'shop')
  await openPapers(page)
  await page.getByLabel(/^Work by the hour/).check()
  const height = await page.evaluate(() => document.documentElement.scrollHeight)
  await page.setViewportSize({ width: viewport.width, height })
  await nextFrame(page)
  const { violations } = await new AxeBuilder({ page: page as never })
    .include(['leadline-dock', '.papers'] as never)
    .setLegacyMode(true)
    .analyze()
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.html).join(' ')}`)).toEqual([])
  await close()
})

test('a printed page is one that tells what the dock is, takes and needs care for; its list where it lies open, with one total', async () => {
  const { page, close } = await open()
  await expect.poll(() => page.locator('.verdict').first().textContent(), SOON).toMatch(/^It can be built/)
  const printed = async () => {
    const pdf = await page.pdf({ format: 'Letter', printBackground: true })
    const read = await getDocument({ data: new Uint8Array(pdf), verbosity: 0 }).promise
    const texts: string[] = []
    for (let n = 1; n <= read.numPages; n++)
      for (const item of (await (await read.getPage(n)).getTextContent()).items)
        if ('str' in item) texts.push(item.str)
    // Letters are set one by one where a font joins some: words are told by their letters alone.
    return {
      told: texts.join(' ').replace(/\s+/g, ' '),
      letters: texts.join('').replace(/\s+/g, ''),
      pages: read.numPages,
    }
  }
  const dock = await page.locator('leadline-dock').evaluate((e) => ({
    parts: (e as never as { dock: Dock }).dock.parts,
    code: (e as never as { dock: Dock }).dock.fingerprint.all,
  }))
  const { told, pages } = await printed()
  expect(pages).toBe(1)
  expect(told.replaceAll(' ', '')).toContain(dock.code.slice(0, 12))
  expect(told).toContain('It can be built')
  expect(told).toContain('licensed electrician')
  expect(told).not.toContain('How many sections')
  // What is folded away leaves no line that opens nothing.
  expect(told).not.toContain('The whole list')
  await expect.poll(() => page.locator('.list-of-parts').count()).toBe(0)
  await page.getByText('The whole list').click()
  await page.locator('.list-of-parts tfoot td').last().waitFor()
  const unfolded = await printed()
  for (const row of dock.parts) expect(unfolded.letters).toContain(row.name.replace(/\s+/g, ''))
  const total = await page.locator('.list-of-parts tfoot td').last().textContent()
  const rows = unfolded.told.split('Cost of parts').at(-1)!
  expect(rows.split(total!).length - 1).toBe(1)
  await page.getByText('The whole list').click()
  await close()
})

test('the picture is taken at the size that is asked for, alive and not flat, and the scene goes on as it was', {
  timeout: 180_000,
}, async () => {
  const { page, close } = await open({ webgl: true, viewport: { width: 420, height: 600 } })
  await page.locator('.stage').scrollIntoViewIfNeeded()
  await settled(page)
  const before = await page
    .locator('.stage canvas')
    .evaluate((c) => [(c as HTMLCanvasElement).width, (c as HTMLCanvasElement).height])
  await openPapers(page)
  await page.getByLabel('Size of the picture, pixels').selectOption('1600x900')
  const [download] = await Promise.all([
    page.waitForEvent('download', { timeout: 120_000 }),
    page.locator('[data-format=png]').click(),
  ])
  expect(download.suggestedFilename()).toBe('Quillet-Cove.png')
  const shot = PNG.sync.read(readFileSync(await download.path()))
  expect([shot.width, shot.height]).toEqual([1600, 900])
  const tones = new Set<number>()
  for (let i = 0; i < shot.data.length; i += 4)
    tones.add((shot.data[i]! >> 3) * 32 + (shot.data[i + 2]! >> 3))
  expect(tones.size).toBeGreaterThan(150)
  await page.locator('.stage').scrollIntoViewIfNeeded()
  await settled(page)
  expect(
    await page
      .locator('.stage canvas')
      .evaluate((c) => [(c as HTMLCanvasElement).width, (c as HTMLCanvasElement).height]),
  ).toEqual(before)
  await close()
})

test('without a picture in 3D it is said that there is none to take', async () => {
  const { page, close } = await open()
  await openPapers(page)
  await page.locator('[data-format=png]').click()
  await expect
    .poll(() => page.locator('.paper-work .fault').textContent(), SOON)
    .toContain(words['picture-none'])
  await close()
})
