/** What is chosen for papers on the page: services and discount of a quote, figures, how far a packet is, a dock too large for a code. */
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Download, Page } from 'playwright-core'
import { PNG } from 'pngjs'
import { expect, test } from 'vitest'
import { packetFor } from '../../geometry/paper/audience.ts'
import { type Design, type Dock, demoCatalog, demoDesign } from '../../rules/index.ts'
import words from '../../rules/words/en/documents.json' with { type: 'json' }
import { sheet } from '../../src/cli/sheet.ts'
import { settled } from './scene-in-page.ts'
import { atLength } from './support/at-length.ts'
import { open, read, withBrowser } from './support/open.ts'
import { addressOf, lookAs, openPapers, SOON, temporaryFolder } from './support/papers.ts'
import { said } from './support/words.ts'

withBrowser()

const folder = temporaryFolder()
const DAY = '2026-05-01'
const UNTAXED = said(words.untaxed)
const FETCHED = said(words.fetched)

async function made(page: Page, format: string): Promise<Download> {
  const [download] = await Promise.all([
    page.waitForEvent('download', { timeout: 60_000 }),
    page.locator(`[data-format=${format}]`).click(),
  ])
  return download
}

async function fromTerminal(page: Page, args: readonly string[]): Promise<Buffer> {
  const design = join(folder, 'design.json')
  writeFileSync(design, JSON.stringify(await read(page, (e) => e.design)))
  return Buffer.from((await sheet([design, '--out', '-', '--date', DAY, ...args], DAY)).bytes)
}

test('services, discount, freight and tax are chosen, and the terminal writes the same quote', async () => {
  const { page, close } = await open()
  await lookAs(page, 'shop')
  await openPapers(page)
  await page.getByLabel('Date on it').fill(DAY)
  await page.getByLabel('Which', { exact: true }).selectOption('quote')
  await page.getByLabel(/^Work by the hour/).check()
  await page.getByLabel('Work by the hour: hours').fill('6')
  await page.getByLabel(/^Delivery to the shore/).check()
  await page.getByLabel(/^Off parts and options/).fill('5')
  await page.getByLabel(FETCHED).check()
  await page.getByLabel(UNTAXED).check()
  const flags = ['--services', 'delivery,hours=6', '--discount', '5%', '--fetched', '--untaxed']
  const pdf = await made(page, 'pdf')
  expect(pdf.suggestedFilename()).toBe('Quillet-Cove-quote.pdf')
  const own = await fromTerminal(page, ['--format', 'pdf', '--what', 'quote', ...flags])
  expect(Buffer.compare(readFileSync(await pdf.path()), own)).toBe(0)
  await page.getByLabel('Figures of').selectOption('quote')
  const json = await made(page, 'json')
  expect(json.suggestedFilename()).toBe('Quillet-Cove-quote.json')
  const figures = readFileSync(await json.path())
  expect(
    Buffer.compare(figures, await fromTerminal(page, ['--format', 'json', '--what', 'quote', ...flags])),
  ).toBe(0)
  expect(JSON.parse(figures.toString())).toMatchObject({ tax: null, discount: { share: 0.05 } })
  // Taken back, it is as if it had never been chosen.
  await page.getByRole('checkbox', { name: /^Work by the hour/ }).uncheck()
  await page.getByLabel(/^Delivery to the shore/).uncheck()
  await page.getByLabel(/^Off parts and options/).fill('')
  await page.getByLabel(FETCHED).uncheck()
  await page.getByLabel(UNTAXED).uncheck()
  const plain = readFileSync(await (await made(page, 'json')).path())
  expect(Buffer.compare(plain, await fromTerminal(page, ['--format', 'json', '--what', 'quote']))).toBe(0)
  await close()
})

test('an earlier quote is compared with: read back on the screen, and written as the terminal writes it', async () => {
  const { page, close } = await open()
  await lookAs(page, 'shop')
  await openPapers(page)
  await page.getByLabel('Date on it').fill('2026-03-01')
  await page.getByLabel('Figures of').selectOption('quote')
  const earlier = join(folder, 'earlier.json')
  await (await made(page, 'json')).saveAs(earlier)
  const before = (await read(page, (e) => e.dock)) as Dock
  await page.locator('leadline-dock').evaluate((e) => {
    const element = e as unknown as { design: Design }
    const { design } = element
    element.design = { ...design, dock: { ...design.dock, deckHeight: design.dock.deckHeight! + 0.3 } }
  })
  await expect.poll(() => page.locator('[data-format=pdf]').isEnabled(), SOON).toBe(true)
  await page.getByLabel('Date on it').fill(DAY)
  await page.getByLabel('Which', { exact: true }).selectOption('quote')
  const bad = join(folder, 'bad.json')
  writeFileSync(bad, JSON.stringify({ ...JSON.parse(readFileSync(earlier, 'utf8')), total: 'much' }))
  const chosen = page.locator('.since input[type=file]')
  await chosen.setInputFiles(bad)
  await expect
    .poll(() => page.locator('.since [role=alert]').textContent())
    .toMatch(/^bad\.json cannot be compared with: total: "much"; expected/)
  await chosen.setInputFiles(earlier)
  await page.locator('.changes').waitFor()
  expect(await page.locator('.since [role=alert]').count()).toBe(0)
  // Each leg that is another now is told with why, and by no other sum than the quote's.
  const now = (await read(page, (e) => e.dock)) as Dock
  const others = now.legs.filter((leg, i) => leg.code !== before.legs[i]!.code)
  expect(others.length).toBeGreaterThan(2)
  const said = await page.locator('.since li').allTextContents()
  expect(said).toHaveLength(others.length)
  for (const [i, { id, section, code }] of others.entries()) {
    expect(said[i]).toContain(`Leg ${now.legs.findIndex((leg) => leg.id === id) + 1} (${section})`)
    expect(said[i]).toContain(demoCatalog.legs.find((leg) => leg.code === code)!.name)
    expect(said[i]).toMatch(/Deck height .* \(was /)
  }
  const figure = (said: string): number => Number(said.replace(/[^-\d.]/g, ''))
  const rows = await page.locator('.changes tbody tr > :last-child').allTextContents()
  const total = await page.locator('.changes tfoot td').innerText()
  const [then, since, change] = total.split(/→|\n/).map(figure)
  expect(since! - then!).toBeCloseTo(change!, 6)
  expect(rows.map(figure).reduce((sum, one) => sum + one, 0)).toBeCloseTo(change!, 6)
  const flags = ['--format', 'pdf', '--what', 'quote', '--since', earlier]
  const own = await fromTerminal(page, [...flags, '--link', await addressOf(page)])
  expect(Buffer.compare(readFileSync(await (await made(page, 'pdf')).path()), own)).toBe(0)
  await page.getByRole('button', { name: 'Do not compare' }).click()
  expect(await page.locator('.changes').count()).toBe(0)
  await close()
})

test('a customer is offered an estimate with nothing to take off, and a quote opened by one brings none in', async () => {
  const { page, close } = await open()
  await openPapers(page)
  const offered = () => page.getByLabel('Which', { exact: true }).locator('option').allTextContents()
  const figures = () => page.getByLabel('Figures of').locator('option').allTextContents()
  expect(await offered()).toContain('Estimate')
  expect(await offered()).not.toContain('Quote')
  expect(await figures()).toEqual(['Packing list, by package', 'Parts list', 'Estimate'])
  for (const term of [/Off parts|Delivery to|Set-up in|Work by/, UNTAXED, FETCHED])
    expect(await page.getByLabel(term).count()).toBe(0)
  expect(await page.locator('.paper-work').innerText()).toContain(words['estimate-what'])
  await page.getByLabel('Date on it').fill(DAY)
  const earlier = join(folder, 'shop-quote.json')
  const flags = ['--format', 'json', '--what', 'quote', '--discount', '90%', '--untaxed']
  writeFileSync(earlier, await fromTerminal(page, flags))
  await page.locator('.since input[type=file]').setInputFiles(earlier)
  await page.locator('.changes').waitFor()
  expect(await page.locator('.since').innerText()).toContain(words['since-shops'])
  await page.getByLabel('Figures of').selectOption('estimate')
  const json = await made(page, 'json')
  expect(json.suggestedFilename()).toBe('Quillet-Cove-estimate.json')
  const own = readFileSync(await json.path())
  const asked = ['--format', 'json', '--what', 'estimate', '--audience', 'customer']
  expect(Buffer.compare(own, await fromTerminal(page, asked))).toBe(0)
  expect(JSON.parse(own.toString())).toMatchObject({
    format: 'leadline/estimate',
    discount: { amount: 0 },
    until: null,
  })
  await page.getByLabel('Which', { exact: true }).selectOption('estimate')
  const pdf = await made(page, 'pdf')
  expect(pdf.suggestedFilename()).toBe('Quillet-Cove-estimate.pdf')
  const paper = ['--format', 'pdf', '--what', 'estimate', '--audience', 'customer']
  expect(
    Buffer.compare(
      readFileSync(await pdf.path()),
      await fromTerminal(page, [...paper, '--link', await addressOf(page)]),
    ),
  ).toBe(0)
  await close()
})

test('what a shop had typed is not on the paper once a customer looks; a crew is offered no prices', async () => {
  const { page, close } = await open()
  await lookAs(page, 'shop')
  await openPapers(page)
  await page.getByLabel('Date on it').fill(DAY)
  await page.getByLabel('Which', { exact: true }).selectOption('quote')
  await page.getByLabel(/^Off parts and options/).fill('150')
  await page.locator('[data-format=pdf]').click()
  await expect
    .poll(() => page.locator('.paper-work .fault').textContent())
    .toMatch(/discount.*1\.5.*expected/)
  await page.getByLabel(/^Off parts and options/).fill('50')
  await lookAs(page, 'customer')
  expect(await page.getByLabel('Which', { exact: true }).inputValue()).toBe('packet')
  await page.getByLabel('Figures of').selectOption('estimate')
  const own = readFileSync(await (await made(page, 'json')).path())
  expect(JSON.parse(own.toString()).discount.amount).toBe(0)
  await lookAs(page, 'crew')
  // Nowhere on the screen, and nothing to ask a quote with.
  await page.locator('.takes summary').click()
  const seen = await page.locator('.app').innerText()
  expect(seen).toMatch(/ lb/)
  expect(seen).not.toMatch(/\$\d/)
  expect(await page.getByRole('button', { name: 'Ask for a quote' }).count()).toBe(0)
  const offered = await page.locator('.paper-work option').allTextContents()
  expect(offered).toContain('Set-up sheet')
  expect(offered.filter((one) => /quote|estimate|parts list/i.test(one))).toEqual([])
  // What was made last is still told of.
  const told = await page.locator('.paper-work > :not([role=status])').allInnerTexts()
  expect(told.join('\n')).not.toMatch(/\$|[Qq]uote|[Ee]stimate/)
  await close()
})

test('figures come as rows, as the terminal writes them', async () => {
  const { page, close } = await open()
  await openPapers(page)
  for (const what of ['packing', 'list']) {
    await page.getByLabel('Figures of').selectOption(what)
    const csv = await made(page, 'csv')
    expect(csv.suggestedFilename()).toBe(`Quillet-Cove-${what}.csv`)
    const own = await fromTerminal(page, ['--bom', '--format', 'csv', '--what', what])
    expect(own.length).toBeGreaterThan(1000)
    expect(Buffer.compare(readFileSync(await csv.path()), own)).toBe(0)
  }
  await close()
})

test('the packet of a long dock says how far it is, and the page goes on meanwhile', async () => {
  const { page, close } = await open()
  await page.locator('leadline-dock').evaluate((e) => {
    const element = e as unknown as { design: Design }
    const { design } = element
    element.design = { ...design, dock: { ...design.dock, extras: {}, sections: 20 } }
  })
  await openPapers(page)
  const downloading = page.waitForEvent('download', { timeout: 60_000 })
  // Watched in the page: what was said, and the longest that a frame had to wait.
  const watched = page.locator('.paper-work').evaluate(
    async (work, ended) => {
      const status = work.querySelector('[role=status]')!
      const said = new Set<string>()
      let longest = 0
      work.querySelector<HTMLButtonElement>('[data-format=pdf]')!.click()
      const begun = performance.now()
      let last = begun
      for (let told = ''; !ended.some((one) => new RegExp(one).test(told)); ) {
        await new Promise((done) => requestAnimationFrame(done))
        told = status.textContent ?? ''
        if (told) said.add(told)
        const now = performance.now()
        longest = Math.max(longest, now - last)
        last = now
      }
      return { told: [...said], longest, whole: last - begun }
    },
    [said(words.made).source, said(words.failed).source],
  )
  const [{ told, longest, whole }, download] = await Promise.all([watched, downloading])
  const papers = told.filter((one) => said(words['making-paper']).test(one))
  expect(papers.length).toBeGreaterThanOrEqual(3)
  for (const one of papers) expect(one).toContain(` of ${packetFor('customer').length} `)
  expect(told.at(-1)).toMatch(said(words.made))
  const bytes = readFileSync(await download.path())
  expect(bytes.subarray(0, 5).toString()).toBe('%PDF-')
  // Written on the page's own thread it would hold up one frame for nearly as long as all of it takes.
  expect(longest).toBeLessThan(whole / 2)
  await close()
})

test('where a page allows no workers the papers are written all the same', async () => {
  const { page, close } = await open({
    before: () => {
      Object.defineProperty(window, 'Worker', {
        value: class {
          constructor() {
            throw new DOMException('no workers here', 'SecurityError')
          }
        },
      })
    },
  })
  await openPapers(page)
  await page.getByLabel('Date on it').fill(DAY)
  await page.getByLabel('Which', { exact: true }).selectOption('drawing')
  const bytes = readFileSync(await (await made(page, 'pdf')).path())
  const flags = ['--format', 'pdf', '--what', 'drawing', '--link', await addressOf(page)]
  expect(Buffer.compare(bytes, await fromTerminal(page, flags))).toBe(0)
  await close()
})

test('a dock that no code can hold is offered as a file', async () => {
  const { page, close } = await open()
  await openPapers(page)
  expect(await page.locator('.qr').count()).toBe(1)
  await page.locator('leadline-dock').evaluate((e) => {
    const element = e as unknown as { design: Design }
    const { design } = element
    // Irregular, so that packing the link saves little.
    const soundings = Array.from({ length: 400 }, (_, i) => ({
      distance: i * 0.1 + ((i * 7919) % 97) / 1e4,
      offset: 0,
      depth: 0.05 + i * 0.004 + ((i * 104729) % 89) / 1e5,
    }))
    element.design = { ...design, site: { ...design.site, soundings } }
  })
  const offer = page.getByRole('button', { name: 'Save the dock as a file' })
  await offer.waitFor(SOON)
  expect(await page.locator('.qr').count()).toBe(0)
  const [download] = await Promise.all([page.waitForEvent('download'), offer.click()])
  const saved = JSON.parse(readFileSync(await download.path(), 'utf8')) as Design
  expect(saved.format).toBe(demoDesign.format)
  expect(saved.site.soundings).toHaveLength(400)
  await close()
})

atLength(
  'a picture of any size is whole where its tiles meet, and full to its edges',
  {
    timeout: 180_000,
  },
  async () => {
    const { page, close } = await open({ webgl: true, viewport: { width: 420, height: 600 } })
    await page.locator('.stage').scrollIntoViewIfNeeded()
    await settled(page)
    await openPapers(page)
    await page.getByLabel('Size of the picture, pixels').selectOption('own')
    const take = async (width: number, height: number): Promise<PNG> => {
      await page.getByLabel('Width, pixels').fill(String(width))
      await page.getByLabel('Height, pixels').fill(String(height))
      return PNG.sync.read(readFileSync(await (await made(page, 'png')).path()))
    }
    const wide = await take(2300, 120)
    expect([wide.width, wide.height]).toEqual([2300, 120])
    /** Mean difference of a column of pixels from the next. */
    const step = (x: number): number => {
      let sum = 0
      for (let y = 0; y < wide.height; y++)
        for (let k = 0; k < 3; k++) {
          const at = (y * wide.width + x) * 4 + k
          sum += Math.abs(wide.data[at]! - wide.data[at + 4]!)
        }
      return sum / wide.height / 3
    }
    const around = Array.from({ length: 60 }, (_, i) => 2017 + i).filter((x) => x !== 2047)
    expect(step(2047)).toBeLessThanOrEqual(Math.max(1, ...around.map(step)))
    const tones = (from: number, to: number): number => {
      const found = new Set<number>()
      for (let y = 0; y < wide.height; y++)
        for (let x = from; x < to; x++) found.add(wide.data.readUIntBE((y * wide.width + x) * 4, 3))
      return found.size
    }
    expect(tones(2048, 2300)).toBeGreaterThan(100)
    expect(tones(0, 252)).toBeGreaterThan(100)
    const high = await take(120, 480)
    expect([high.width, high.height]).toEqual([120, 480])
    await close()
  },
)
