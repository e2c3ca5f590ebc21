/** The gallery: each way of embedding begins under the page's policy, and its code on the page is what runs. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { AxeBuilder } from '@axe-core/playwright'
import { afterAll, beforeAll, expect, inject, test } from 'vitest'
import { DESKTOP, open, PHONE, withBrowser } from './support/open.ts'
import { SOON } from './support/papers.ts'
import { type Site, serve } from './support/server.ts'

withBrowser()

/** Its policy lets in frames of its own. */
let site: Site
beforeAll(async () => {
  site = await serve([inject('dist')], { policy: "; frame-src 'self'" })
})
afterAll(() => site.close())

const gallery = (viewport: { width: number; height: number }) =>
  open({ path: '/gallery.html', at: site.url, elements: 0, fresh: true, viewport })

const WAYS = [
  'two-lines',
  'attributes',
  'docks-of-yours',
  'your-look',
  'poster',
  'events',
  'frame',
  'at-the-lake',
  'no-price',
  'right-to-left',
]

test('each way begins, none before it is come to, and each looks as it says', async () => {
  const { page, close } = await gallery(DESKTOP)
  expect(await page.locator('main > section').evaluateAll((all) => all.map(({ id }) => id))).toEqual(WAYS)
  const at = (id: string) => page.locator(`#${id} .live`)
  const begun = (id: string) => at(id).locator('leadline-dock .app').first()
  await begun('two-lines').waitFor()
  expect(await begun('right-to-left').count()).toBe(0)
  expect(await page.locator('iframe').count()).toBe(0)
  for (const id of WAYS.filter((id) => id !== 'frame')) {
    await page.locator(`#${id}`).evaluate((section) => section.scrollIntoView())
    if (id === 'poster') await at(id).locator('summary', { hasText: 'Plan your dock' }).click()
    await begun(id).waitFor()
  }
  expect(await at('attributes').locator('.app').getAttribute('lang')).toBe('de')
  expect(await at('docks-of-yours').getByRole('button', { name: 'A T off a gravel shore' }).count()).toBe(1)
  expect(
    await at('your-look')
      .locator('.main')
      .first()
      .evaluate((e) => getComputedStyle(e).backgroundColor),
  ).toBe('rgb(179, 84, 30)')
  expect(await at('at-the-lake').locator('.lake-day').count()).toBe(1)
  expect(await at('no-price').locator('.sum-bar').innerText()).not.toContain('$')
  expect(await at('right-to-left').locator('.app').getAttribute('dir')).toBe('rtl')
  // What is at the lake for good takes no other there that begins after it.
  await at('at-the-lake').locator('.lake-day h2').waitFor()
  await page.evaluate(() => {
    const late = document.createElement('leadline-dock')
    late.setAttribute('loading', 'eager')
    document.querySelector('header')!.append(late)
  })
  await page.locator('header leadline-dock .stage, header leadline-dock .lake-day').first().waitFor()
  expect(await page.locator('header leadline-dock .lake-day').count()).toBe(0)
  // What it tells is written down as it comes.
  await at('events').getByRole('button', { name: 'One section more' }).click()
  await expect.poll(() => page.locator('#log').innerText(), SOON).toMatch(/leadline-change: 6 sections/)
  // The frame and its messages, both ways.
  await page.locator('#frame').evaluate((section) => section.scrollIntoView())
  const frame = page.frameLocator('#frame iframe')
  await frame.locator('.sum-bar').waitFor()
  await page.locator('#metric').click()
  await expect.poll(() => frame.locator('.leg-length').first().textContent(), SOON).toMatch(/ m$/)
  await page.locator('#design').click()
  await expect
    .poll(() => page.locator('#answer').innerText(), SOON)
    .toBe('Quillet Cove: 5 depths, 5 sections')
  await close()
})

test('the code that is shown is the code that runs, to be read and copied; axe finds nothing', async () => {
  const { page, close } = await gallery(PHONE)
  await page.locator('#two-lines .live .app').waitFor()
  expect(await page.locator('#two-lines figure code').innerText()).toBe(
    '<script type="module" src="./leadline.js"></script>\n<leadline-dock></leadline-dock>',
  )
  for (const id of WAYS) {
    const told = await page.locator(`#${id}`).evaluate((section) => {
      const template = section.querySelector('template')!
      const read = document.createElement('template')
      read.innerHTML = section.querySelector('figure code')!.textContent!
      const plain = (of: HTMLTemplateElement) => of.innerHTML.replace(/\s+/g, ' ').trim()
      return { shown: plain(read), run: plain(template) }
    })
    expect(told.shown, id).toBe(told.run)
  }
  await page.locator('#your-look').evaluate((section) => section.scrollIntoView())
  const file = page.locator('#your-look figure').nth(1).locator('code')
  const written = readFileSync(join(inject('dist'), 'gallery/harbor.css'), 'utf8').trimEnd()
  await expect.poll(() => file.textContent(), SOON).toBe(written)
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0)
  // Each planner has the same regions, and there are ten of them.
  const { violations } = await new AxeBuilder({ page: page as never })
    .options({ resultTypes: ['violations'], rules: { 'landmark-unique': { enabled: false } } })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
    .setLegacyMode(true)
    .analyze()
  expect(violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.flat().at(-1)).join(' | ')}`)).toEqual(
    [],
  )
  await close()
})
