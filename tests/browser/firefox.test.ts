/**
 * Firefox: the page opens and is worked in it, docks come to the same as in Node down to the last digit, and papers to the same bytes. All
 * else about the page is held in Chromium. Where there is no Firefox the run says so, and these are skipped.
 */
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import type { Browser, ElementHandle, Page } from 'puppeteer-core'
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest'
import { type Design, demoCatalog, demoDesign, derive } from '../../rules/index.ts'
import { sheet } from '../../src/cli/sheet.ts'
import type { ExportWanted } from '../../src/element/page-types.ts'
import { anyCase, type Case, parsedDesign } from '../support/arbitraries.ts'
import { metricCatalog } from '../support/catalogs.ts'
import { scattered, wide, workedL } from '../support/worked-designs.ts'
import { openInFirefox, startFirefox } from './support/firefox.ts'
import { type Begun, DESKTOP, PHONE } from './support/open.ts'
import { SOON, temporaryFolder } from './support/papers.ts'

const folder = temporaryFolder()

const DEMO: Case = { design: demoDesign, catalog: demoCatalog }
/** Another shop's, in another language: days, money and figures as that writes them. */
const WIDE: Case = { design: parsedDesign(wide), catalog: metricCatalog }
/** Besides those whose papers are made. */
const DOCKS: Readonly<Record<string, Case>> = {
  'an L on five-foot frames': { design: parsedDesign(workedL), catalog: demoCatalog },
  'a T over scattered soundings': {
    design: parsedDesign({ ...scattered, dock: { ...scattered.dock, head: { shape: 'tee', sections: 2 } } }),
    catalog: demoCatalog,
  },
  ...Object.fromEntries(
    fc
      .sample(
        anyCase.filter(({ design }) => design.site.soundings.length < 40),
        { seed: 20_260_501, numRuns: 2 },
      )
      .map((each, i) => [`random ${i}`, each]),
  ),
}

interface Wanted extends ExportWanted {
  readonly attributes: Readonly<Record<string, string>>
}

/** A new element in the page's place for it, with a dock of its own; what it tells once all is known, and files of it in base64. */
const inFirefox = (
  page: Page,
  { design, catalog }: Case,
  wanted: readonly Wanted[] = [],
): Promise<{ dock: string; files: string[] }> =>
  page.evaluate(async (given) => {
    const { design, catalog, wanted } = JSON.parse(given) as Case & { readonly wanted: Wanted[] }
    for (const old of document.querySelectorAll('leadline-dock')) old.remove()
    const element = document.createElement('leadline-dock') as unknown as HTMLElement & Begun
    element.setAttribute('loading', 'eager')
    Object.assign(element, { design, catalog })
    const ready = new Promise((done) => element.addEventListener('leadline-ready', done))
    document.querySelector('main')!.append(element)
    await ready
    // A file is made of a dock that is known whole.
    await element.exportFile({ format: 'csv' })
    const files: string[] = []
    for (const { attributes, ...each } of wanted) {
      for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value)
      // Its language comes by a chunk of its own.
      if (attributes.lang)
        while (element.shadowRoot!.querySelector('.app')?.getAttribute('lang') !== attributes.lang)
          await new Promise((done) => setTimeout(done, 20))
      const bytes = new Uint8Array(await (await element.exportFile(each)).arrayBuffer())
      let text = ''
      for (const byte of bytes) text += String.fromCharCode(byte)
      files.push(btoa(text))
    }
    return { dock: JSON.stringify(element.dock), files }
  }, JSON.stringify({ design, catalog, wanted }))

function sameDock(told: string, { design, catalog }: Case, name: string): void {
  const dock = JSON.parse(told)
  const expected = derive(design, catalog)
  expect(dock.fingerprint, name).toEqual(expected.fingerprint)
  expect(dock, name).toEqual(JSON.parse(JSON.stringify(expected)))
}

/** Asked at every picture: what is waited for otherwise is asked when the page changes, and is not told what changes in a shadow root. */
const seen = async (page: Page, what: string): Promise<ElementHandle> =>
  (await page.waitForSelector(what, { visible: true }))!

/** What is still being laid out, or may not be pressed yet, is waited for. */
async function press(page: Page, what: string): Promise<void> {
  const found = await seen(page, what)
  await found.evaluate(async (element) => {
    const place = () => JSON.stringify(element.getBoundingClientRect())
    const next = () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))
    for (let before = ''; before !== place() || element.closest('button')?.disabled; await next())
      before = place()
  })
  await found.click()
}

/** In the place of what stands in a field, by keys. */
async function write(page: Page, field: string, text: string): Promise<void> {
  await (await seen(page, field)).click({ count: 3 })
  await page.keyboard.type(text)
}

describe.skipIf(inject('firefox') === null)('in Firefox', () => {
  let browser: Browser

  beforeAll(async () => {
    browser = await startFirefox()
    process.stdout.write(`Firefox: ${await browser.version()}\n`)
  }, 90_000)

  afterAll(() => browser?.close())

  test('the page opens, a depth is typed, and is there again after a reload', async () => {
    const { page, load, close } = await openInFirefox(browser, DESKTOP)
    await load('/example.html')
    await seen(page, 'leadline-dock >>> .lake .deck')
    const design = () => page.$eval('leadline-dock', (e) => (e as unknown as Begun).design) as Promise<Design>
    expect(await design()).toEqual(demoDesign)
    // With graphics the scene comes over the drawing; without, the drawing stays, and the stage says which.
    const graphics = await page.evaluate(() => document.createElement('canvas').getContext('webgl2') !== null)
    await seen(page, `leadline-dock >>> .stage[data-scene="${graphics ? 'live' : 'none'}"]`)
    await press(page, 'leadline-dock >>> summary ::-p-text(How deep is it?)')
    await write(page, 'leadline-dock >>> tr[data-row="4"] [data-cell="depth"] input', '5\' 2½"')
    await page.keyboard.press('Enter')
    // 62.5 in.
    await expect
      .poll(async () => (await design()).site.soundings[4], SOON)
      .toMatchObject({ distance: 12, depth: 1.5875 })
    await expect.poll(() => page.$('leadline-dock >>> [data-kept="saved"]'), SOON).not.toBeNull()
    const made = await design()
    await load('/example.html')
    expect(await design()).toEqual(made)
    await close()
  })

  test('docks are those of Node, to the last digit', async () => {
    const { page, load, close } = await openInFirefox(browser, DESKTOP)
    await load('/example.html')
    for (const [name, each] of Object.entries(DOCKS)) sameDock((await inFirefox(page, each)).dock, each, name)
    await close()
  })

  test('papers, figures and models are the same bytes as from the terminal', async () => {
    const { page, load, close } = await openInFirefox(browser, DESKTOP)
    await load('/example.html')
    const on = { date: '2026-05-01', by: 'A. Person' } as const
    const bytesFrom = async (name: string, each: Case, all: readonly Wanted[]) => {
      const { design, catalog } = each
      const [file, shop] = [join(folder, `${name}.json`), join(folder, `${name}-shop.json`)]
      writeFileSync(file, JSON.stringify(design))
      writeFileSync(shop, JSON.stringify(catalog))
      const { dock, files } = await inFirefox(page, each, all)
      sameDock(dock, each, name)
      for (const [i, { attributes, format, what }] of all.entries()) {
        const { bytes } = await sheet(
          [
            ...[file, '--catalog', shop, '--out', '-', '--date', on.date, '--by', on.by, '--format', format],
            ...(what ? ['--what', what] : []),
            ...['--audience', attributes.audience ?? 'customer', '--units', attributes.units ?? 'imperial'],
            ...(attributes.lang && attributes.lang !== 'en' ? ['--lang', attributes.lang] : []),
            ...(format === 'csv' ? ['--bom'] : []),
          ],
          on.date,
        )
        const same = Buffer.compare(Buffer.from(files[i]!, 'base64'), Buffer.from(bytes))
        expect(same, `${name}: ${format} ${what ?? ''} ${JSON.stringify(attributes)}`).toBe(0)
      }
    }
    const customer = { audience: 'customer' } as const
    await bytesFrom('demo', DEMO, [
      { ...on, format: 'pdf', what: 'packet', attributes: customer },
      { ...on, format: 'svg', what: 'packet', attributes: customer },
      { ...on, format: 'dxf', attributes: customer },
      { ...on, format: 'glb', attributes: customer },
      { ...on, format: 'usdz', attributes: customer },
      { ...on, format: 'csv', what: 'packing', attributes: customer },
      { ...on, format: 'pdf', what: 'quote', attributes: { audience: 'shop' } },
    ])
    await bytesFrom('other', WIDE, [
      { ...on, format: 'pdf', what: 'quote', attributes: { audience: 'shop', units: 'metric', lang: 'fr' } },
    ])
    await close()
  })

  test('at the lake: the example is begun, and a leg’s depth is taken', async () => {
    const { page, load, close } = await openInFirefox(browser, PHONE)
    await load('/lake.html')
    const day = 'leadline-dock >>> .lake-day'
    const title = () => page.$eval(`${day} h2`, (e) => (e as HTMLElement).innerText)
    const titled = (to: string | RegExp) => expect.poll(title, SOON).toMatch(to)
    const tap = (name: string) => press(page, `${day} ::-p-text(${name})`)
    await titled('Which dock?')
    await tap('Look round with an example dock')
    await tap('Begin with Quillet Cove')
    await titled('Quillet Cove')
    await tap('Set it up')
    await titled('How high is the lake today?')
    await tap('As on the day')
    await tap('Next')
    await titled('Before anybody gets wet')
    for (const box of await page.$$(`${day} input[type="checkbox"]`)) await box.click()
    await tap('We are ready')
    // Steps before the first leg in the water.
    const depthAsked = async () => (await page.$(`${day} input[type="text"]`)) !== null
    for (let step = 0; !(await depthAsked()); step++) {
      expect(step).toBeLessThan(20)
      const now = await title()
      await tap('Done')
      await expect.poll(title, SOON).not.toBe(now)
    }
    expect(await title()).toMatch(/^How deep is it at leg \d+/)
    const now = await title()
    await write(page, `${day} input[type="text"]`, '11 in')
    await seen(page, `${day} .read-back`)
    await tap('Use this depth')
    await expect.poll(title, SOON).not.toBe(now)
    expect(await title()).toBe(now.replace(/^How deep is it at (leg \d+)\?$/, 'Set $1'))
    await close()
  })
})
