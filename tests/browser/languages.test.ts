/** The languages that are shipped: by `lang` alone, each when it is asked for; and a layout that bears longer words and those that run the other way. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, inject, test } from 'vitest'
import type { LanguageFile } from '../../rules/words/language-file.ts'
import type { LeadlineDock } from '../../src/element/leadline-dock.ts'
import { LONG_WORDS, pseudoRtl, RTL_TAG, RTL_WORDS } from '../support/pseudo-language.ts'
import { layoutFaults } from './support/laid-out.ts'
import { events, open, read, withBrowser } from './support/open.ts'
import { type Site, serve } from './support/server.ts'

withBrowser()

const host = (lang: string, attributes: string): string => `<!doctype html>
<html lang="${lang}"><head><meta charset="utf-8" /><meta name="viewport" content="width=device-width, initial-scale=1" />
<link rel="icon" href="./icon.svg" type="image/svg+xml" />
<title>-</title><script type="module" src="./leadline.js"></script></head>
<body><leadline-dock start="example" ${attributes}></leadline-dock></body></html>`

/** What the files of translators say, not what the page makes of them. */
const said = (tag: string, key: string): string => {
  const { words }: LanguageFile = JSON.parse(readFileSync(`public/words/${tag}.json`, 'utf8'))
  const told = words.screen?.[key]
  if (typeof told !== 'string') throw new Error(`${tag}: screen ${key} is no plain sentence`)
  return told
}

let folder = ''
let site: Site
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'leadline-'))
  const file = (lang: string, words: unknown): void =>
    writeFileSync(
      join(folder, `${lang}.json`),
      JSON.stringify({ format: 'leadline/words', version: 1, lang, words }),
    )
  file('qps', LONG_WORDS)
  file(RTL_TAG, RTL_WORDS)
  writeFileSync(join(folder, 'de.html'), host('de-AT', ''))
  writeFileSync(join(folder, 'long.html'), host('en', 'words="./qps.json"'))
  site = await serve([inject('dist'), folder])
})
afterAll(async () => {
  await site.close()
  rmSync(folder, { recursive: true })
})

const heads = (page: Page): Promise<string[]> => page.locator('h2').allTextContents()
const say = (page: Page, attributes: Readonly<Record<string, string | null>>): Promise<void> =>
  page.locator('leadline-dock').evaluate((element, given) => {
    for (const [name, value] of Object.entries(given))
      if (value === null) element.removeAttribute(name)
      else element.setAttribute(name, value)
  }, attributes)
const chunksOf = (requests: readonly string[]): string[] =>
  requests.flatMap((address) => address.match(/\/(de|es|fr)-[\w-]{8}\.js$/)?.[1] ?? [])

test('the language of the page around, of its own, of a file; each loaded when it is asked for, and nothing lost', async () => {
  const { page, requests, close } = await open({ path: '/de.html', at: site.url })
  const title = 'takes.title'
  expect(await heads(page)).toContain(said('de', title))
  expect(chunksOf(requests)).toEqual(['de'])
  const app = page.locator('.app')
  expect(await app.getAttribute('lang')).toBe('de-AT')
  const name = page.locator('.toolbar .name')
  await name.fill('Steg 7')

  // Names of the shop's own, of the language that the region is of.
  const code = await read(page, (e) => e.design.dock.frame)
  await page.locator('leadline-dock').evaluate((element, frame) => {
    const dock = element as LeadlineDock
    dock.catalog = { ...dock.catalog, words: { de: { [frame]: 'Stegfeld aus Musterstadt' } } }
  }, code)
  await page.locator('.takes details').evaluate((fold) => {
    if (fold instanceof HTMLDetailsElement) fold.open = true
  })
  await page.locator('.list-of-parts').getByText('Stegfeld aus Musterstadt').waitFor()

  await say(page, { lang: 'fr-CA' })
  await expect.poll(() => heads(page)).toContain(said('fr', title))
  expect(await page.locator('.list-of-parts').textContent()).not.toContain('Musterstadt')
  await say(page, { lang: 'es' })
  await expect.poll(() => heads(page)).toContain(said('es', title))
  expect(await app.getAttribute('lang')).toBe('es')
  expect(chunksOf(requests)).toEqual(['de', 'fr', 'es'])

  // The file goes first; without it what is shipped is there again, and English asks for nothing.
  await say(page, { words: `./${RTL_TAG}.json` })
  await expect.poll(() => app.getAttribute('dir')).toBe('rtl')
  expect(await app.getAttribute('lang')).toBe(RTL_TAG)
  await say(page, { words: null })
  await expect.poll(() => heads(page)).toContain(said('es', title))
  expect(await app.getAttribute('dir')).toBe('ltr')
  await say(page, { lang: 'en' })
  await expect.poll(() => heads(page)).toContain('What is it?')
  // A language that nobody has put it into: its numbers, and English.
  await say(page, { lang: 'fi' })
  await page
    .locator('.list-of-parts')
    .getByText(/\d,\d\d\s/)
    .first()
    .waitFor()
  expect(await app.getAttribute('lang')).toBe('en')
  expect(await name.inputValue()).toBe('Steg 7')
  expect(await events(page, 'leadline-error')).toEqual([])
  await close()
})

test('the demo page begins in the browser’s language, and changes it without losing the dock', async () => {
  const { page, context, close } = await open({ path: '/index.html', locale: 'de-CH', fresh: true })
  const choice = page.locator('#language')
  expect(await choice.inputValue()).toBe('de')
  expect(await page.locator('html').getAttribute('lang')).toBe('de')
  await page.locator('.toolbar .name').fill('Anse 7')
  expect(await page.locator('.toolbar .name').getAttribute('aria-label')).toBe(said('de', 'name.label'))
  await choice.selectOption('fr')
  await page.getByLabel(said('fr', 'name.label')).waitFor()
  expect(await page.locator('.toolbar .name').inputValue()).toBe('Anse 7')
  const again = await open({ path: '/index.html', context, fresh: true })
  await again.page.getByLabel(said('fr', 'name.label')).waitFor()
  expect(await again.page.locator('#language').inputValue()).toBe('fr')
  // So is the page at the lake, and what both say of themselves.
  for (const path of ['/index.html', '/lake.html']) {
    await again.page.goto(inject('site') + path)
    await again.page.locator('html[lang=fr]').waitFor()
    const texts = await again.page.locator('[data-text]').allTextContents()
    expect(texts.length).toBeGreaterThan(5)
    for (const text of texts) expect(text).toMatch(/\S/)
    expect(await again.page.title()).toBe(path === '/lake.html' ? 'Leadline au lac' : texts[0])
    expect(await again.page.locator('[data-offline=update]').textContent()).toContain('Rien n’est perdu.')
  }
  const { waterside } = (JSON.parse(readFileSync('public/words/fr.json', 'utf8')) as LanguageFile).words
  const title = again.page.locator('.lake-day h2')
  await expect.poll(() => title.textContent(), { timeout: 20_000 }).toBe(waterside!['welcome.title'])
  await again.close()
  await close()
})

test('a visitor begins in the units of their country; those that they choose stay, here and at the lake', async () => {
  const { page, close } = await open({ path: '/index.html', locale: 'de-CH', fresh: true })
  const chosen = page.locator('.toolbar input[value=metric]')
  expect(await chosen.isChecked()).toBe(true)
  await page.locator('.toolbar label', { hasText: said('de', 'units.imperial') }).click()
  await expect.poll(() => chosen.isChecked()).toBe(false)
  await page.reload()
  await page.locator('.toolbar .name').waitFor()
  expect(await chosen.isChecked()).toBe(false)
  // What the page says of its looks leaves the choice alone; a page that speaks of units itself is heard.
  const dock = page.locator('leadline-dock')
  await dock.evaluate((element) => element.setAttribute('theme', 'dark'))
  await page.locator('[data-theme=dark]').waitFor()
  expect(await chosen.isChecked()).toBe(false)
  await dock.evaluate((element) => element.setAttribute('units', 'imperial'))
  await dock.evaluate((element) => element.setAttribute('units', 'metric'))
  await expect.poll(() => chosen.isChecked()).toBe(true)
  const home = await open({ path: '/index.html', locale: 'en-US', fresh: true })
  expect(await home.page.locator('.toolbar input[value=imperial]').isChecked()).toBe(true)
  await home.close()
  await close()
})

test('words that do not come are told, and all is said in English meanwhile', async () => {
  const { page, close } = await open({
    path: '/de.html',
    at: site.url,
    without: /leadline\/de-/,
    expected: /Failed to load|404|ERR_/,
    fresh: true,
  })
  const [fault] = await events(page, 'leadline-error')
  expect(fault).toMatchObject({ detail: { code: 'words', path: 'de-AT' } })
  expect(await heads(page)).toContain('What is it?')
  await page.locator('.notice').first().waitFor()
  await close()
})

test('nothing overflows and nothing is printed over another: two fifths longer, from right to left, in each language', async () => {
  const { page, close } = await open({ path: '/long.html', at: site.url })
  await expect.poll(() => read(page, (e) => e.dock.structure?.deep === true), { timeout: 60_000 }).toBe(true)
  for (let round = 0; round < 2; round++) {
    await page.locator('leadline-dock').evaluate((element) => {
      for (const fold of element.shadowRoot!.querySelectorAll<HTMLDetailsElement>('details:not(.menu)'))
        fold.open = true
    })
    await page.locator('.loading').first().waitFor({ state: 'detached' })
  }
  const faults: Record<string, readonly string[]> = {}
  for (const [name, given, head] of [
    ['long', {}, null],
    ['from right to left', { words: `./${RTL_TAG}.json`, units: 'metric' }, pseudoRtl('What is it?')],
    ['de', { words: null, lang: 'de' }, said('de', 'what.title')],
    ['fr', { lang: 'fr' }, said('fr', 'what.title')],
    ['es', { lang: 'es' }, said('es', 'what.title')],
  ] as const) {
    await say(page, given)
    if (head !== null) await expect.poll(() => heads(page)).toContain(head)
    for (const size of [
      { width: 390, height: 844 },
      { width: 1280, height: 800 },
    ]) {
      await page.setViewportSize(size)
      await page.evaluate(
        () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))),
      )
      faults[`${name} ${size.width}`] = await layoutFaults(page)
      if (process.env.LEADLINE_SHOTS)
        await page.screenshot({
          path: join(process.env.LEADLINE_SHOTS, `${name} ${size.width}.png`),
          fullPage: true,
        })
    }
    if (name === 'from right to left') {
      // A picture is as the dock lies: the shore on the left, and what is said of it runs as the language does.
      const strip = page.locator('.strip svg').first()
      expect(await strip.evaluate((svg) => getComputedStyle(svg).direction)).toBe('ltr')
      expect(await page.locator('.app').evaluate((app) => getComputedStyle(app).direction)).toBe('rtl')
    }
  }
  expect(Object.fromEntries(Object.entries(faults).filter(([, list]) => list.length > 0))).toEqual({})
  await close()
})
