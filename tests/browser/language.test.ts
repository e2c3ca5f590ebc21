/** The page in a language that is a file: nothing on it that is not in one, and what goes wrong with such a file is told. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, inject, test } from 'vitest'
import { inFours } from '../../rules/words/check-code-text.ts'
import { ownTexts, PSEUDO_WORDS, pseudo, untold } from '../support/pseudo-language.ts'
import { choose } from './support/choose.ts'
import { events, open, read, withBrowser } from './support/open.ts'
import { type Site, serve } from './support/server.ts'

withBrowser()

const host = (attributes: string): string => `<!doctype html>
<html lang="en"><head><meta charset="utf-8" /><link rel="icon" href="./icon.svg" type="image/svg+xml" />
<title>-</title><script type="module" src="./leadline.js"></script></head>
<body><leadline-dock ${attributes}></leadline-dock></body></html>`

let folder = ''
let site: Site
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'leadline-'))
  const file = { format: 'leadline/words', version: 1, lang: 'qps', words: PSEUDO_WORDS }
  writeFileSync(join(folder, 'qps.json'), JSON.stringify(file))
  writeFileSync(join(folder, 'wrong.json'), JSON.stringify({ ...file, words: { papers: { quote: 3 } } }))
  writeFileSync(join(folder, 'qps.html'), host('words="./qps.json" start="example"'))
  writeFileSync(
    join(folder, 'shop.html'),
    host('words="./qps.json" audience="shop" units="metric" lang="de" start="example"'),
  )
  writeFileSync(join(folder, 'wrong.html'), host('words="./wrong.json" start="example"'))
  site = await serve([inject('dist'), folder])
})
afterAll(async () => {
  await site.close()
  rmSync(folder, { recursive: true })
})

/** All that is read or read out: texts, and the names and titles of things. */
const textsOn = (page: Page): Promise<string[]> =>
  page.locator('leadline-dock').evaluate((element) => {
    const found: string[] = []
    const walk = (node: Node): void => {
      if (node instanceof HTMLStyleElement) return
      if (node.nodeType === Node.TEXT_NODE) found.push(node.textContent ?? '')
      if (node instanceof Element)
        for (const name of ['aria-label', 'title', 'placeholder', 'alt', 'aria-valuetext'])
          found.push(node.getAttribute(name) ?? '')
      if (node instanceof HTMLInputElement && node.type === 'text') found.push(node.value)
      node.childNodes.forEach(walk)
    }
    walk(element.shadowRoot!)
    return found.map((text) => text.trim()).filter(Boolean)
  })

async function ownOf(page: Page): Promise<string[]> {
  const [design, catalog, dock] = await read(page, (e) => [e.design, e.catalog, e.dock] as const)
  const ids = [...dock.sections, ...dock.legs, ...dock.pairs, ...dock.joints].map(({ id }) => id)
  return ownTexts(design, catalog, ids, inFours(dock.fingerprint.all), dock.fingerprint.all.slice(0, 12))
}

async function openAll(page: Page): Promise<void> {
  for (let round = 0; round < 3; round++) {
    await page.locator('leadline-dock').evaluate((element) => {
      for (const fold of element.shadowRoot!.querySelectorAll('details')) fold.open = true
    })
    await page.locator('.loading').first().waitFor({ state: 'detached' })
    await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))))
  }
}

for (const name of ['qps', 'shop'])
  test(`nothing on the page is in English where the language is another one (${name})`, async () => {
    const { page, close } = await open({ path: `/${name}.html`, at: site.url })
    await expect
      .poll(() => read(page, (e) => e.dock.structure?.deep === true), { timeout: 60_000 })
      .toBe(true)
    expect(await page.locator('.app').getAttribute('lang')).toBe('qps')
    await openAll(page)
    const own = [...(await ownOf(page)), 'leadline']
    expect(await page.locator('h2').allTextContents()).toContain(pseudo('What is it?'))
    expect(untold(await textsOn(page), own)).toEqual([])

    // What is said of what was typed, picked and asked for.
    await page.locator('.reasons select').selectOption({ index: 1 })
    for (const field of await page
      .locator('.control input[type=text]:visible, .exposure input[type=text]:visible')
      .all()) {
      await field.fill('?')
      await field.blur()
    }
    expect(await page.locator('.fault:visible').count()).toBeGreaterThan(3)
    if (name === 'qps') {
      await page
        .getByRole('button', { name: pseudo('Ask for a quote') })
        .first()
        .click()
      await page.locator('dialog.request button[type=submit]').click()
      expect(await page.locator('dialog .fault').count()).toBe(2)
    }
    // A name takes what is typed, and its dock has another check code.
    expect(untold(await textsOn(page), [...own, ...(await ownOf(page)), '?'])).toEqual([])
    await close()
  })

test('nor where a dock is shaped by hand, and told what cannot be', async () => {
  const { page, close } = await open({ path: '/qps.html', at: site.url })
  await choose(page.getByRole('radio', { name: pseudo('Your own shape') }))
  const sections = page.locator('.plan-section')
  await sections.nth(2).click()
  await page.locator('.chosen input').fill('9 ft')
  await page.locator('.chosen input').press('Enter')
  await page.locator('.plan-why').waitFor()
  await page.getByRole('button', { name: pseudo('Move'), exact: true }).click()
  const own = [...(await ownOf(page)), 'leadline', '9 ft', '1', '2', '3', '4', '5', '!']
  expect(untold(await textsOn(page), own)).toEqual([])
  await close()
})

test('nor in the scene', async () => {
  const { page, close } = await open({ path: '/qps.html', at: site.url, webgl: true })
  await page.locator('.stage[data-scene="live"]').waitFor({ timeout: 60_000 })
  await expect.poll(() => page.locator('.scene-host').textContent(), { timeout: 30_000 }).toContain('ƒť')
  const own = [...(await ownOf(page)), 'leadline']
  expect(untold(await textsOn(page), own)).toEqual([])
  await close()
})

test('a language file that cannot be used is told, and the page goes on in English', async () => {
  const { page, close } = await open({ path: '/wrong.html', at: site.url })
  const [fault] = await events(page, 'leadline-error')
  expect(fault).toMatchObject({
    detail: { code: 'words', path: expect.stringContaining('words.papers.quote') },
  })
  expect(await page.locator('h2').allTextContents()).toContain('What is it?')
  await close()
})
