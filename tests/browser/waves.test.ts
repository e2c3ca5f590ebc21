/** Waves on the page: an exposure picked or typed, what it comes to, the deck heights that clear it, the crests in the strip. */
import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { nextFrame, open, PHONE, read, withBrowser } from './support/open.ts'

withBrowser()

const field = (page: Page, name: string) => page.getByRole('textbox', { name })
const type = async (page: Page, name: string, text: string): Promise<void> => {
  await field(page, name).fill(text)
  await field(page, name).press('Enter')
  await nextFrame(page)
}
const hint = (page: Page) => page.locator('.choice:has([value=sheltered]) > .hint').textContent()
const site = (page: Page) => read(page, (e) => e.design.site)

test('an exposure picked raises its waves, and a tap puts the deck clear of them', async () => {
  const { page, close } = await open()
  // Its wind is no usual one.
  await expect.poll(() => page.getByRole('radio', { name: /^Your own figures/ }).isChecked()).toBe(true)
  expect(await hint(page)).toBe(
    'Wind like that makes waves 4 3/4 in high, one every 1.0 s. The highest of them reach 4 1/4 in above the water.',
  )
  await page.getByRole('radio', { name: /^Sheltered cove/ }).check()
  expect((await site(page)).wind).toEqual({ speed: 9, fetch: 250 })
  await page.getByRole('radio', { name: /^Open, small lake/ }).check()
  expect((await site(page)).wind).toEqual({ speed: 15, fetch: 1800 })
  expect(await hint(page)).toContain('waves 1 ft 5 in high, one every 2.0 s')
  const crest = page.locator('.finding[data-code=crest-reaches-frame], .finding', {
    hasText: 'In a strong wind, waves reach the frame',
  })
  await crest.first().waitFor()

  const before = await read(page, (e) => e.dock.waves!)
  const taken = page.getByRole('button', { name: 'if you raise and lower it' })
  expect(await taken.getAttribute('aria-pressed')).toBe('false')
  await taken.click()
  const { deck, waves } = await read(page, (e) => ({
    deck: e.design.dock.deckHeight,
    waves: e.dock.waves!,
  }))
  expect(deck).toBeGreaterThanOrEqual(before.recommendedDeckHeight - 1e-6)
  expect(deck).toBeLessThan(before.recommendedDeckHeight + 0.0127)
  expect(waves.recommendedDeckHeight).toBe(before.recommendedDeckHeight)
  expect(await taken.getAttribute('aria-pressed')).toBe('true')
  await crest.first().waitFor({ state: 'detached' })
  await page.getByRole('button', { name: 'if you leave it alone all season' }).click()
  expect(await read(page, (e) => e.design.dock.deckHeight)).toBeGreaterThanOrEqual(
    before.recommendedAllSeason - 1e-6,
  )
  // Each tap is a step of its own.
  await page.getByRole('button', { name: 'Undo' }).click()
  expect(await read(page, (e) => e.design.dock.deckHeight)).toBe(deck)
  await close()
})

test('an exposed lake brings the crests to the frame, and what the finding offers takes it away', async () => {
  const { page, close } = await open()
  const finding = page.locator('.finding', { hasText: 'In a strong wind, waves reach the frame' })
  expect(await finding.count()).toBe(0)
  await page.getByRole('radio', { name: /^Open, small lake/ }).check()
  await finding.waitFor()
  await finding.getByRole('button', { name: /^Raise the deck to/ }).click()
  await finding.waitFor({ state: 'detached' })
  const { deck, least } = await read(page, (e) => ({
    deck: e.design.dock.deckHeight,
    least: e.dock.waves!.recommendedDeckHeight,
  }))
  expect(deck).toBeGreaterThanOrEqual(least - 1e-6)
  // A higher deck may begin elsewhere, in other water.
  expect(deck).toBeLessThan(least + 0.03)
  await close()
})

test('wind, open water, depth and wakes are typed in the units of the screen', async () => {
  const { page, close } = await open()
  await page.locator('summary', { hasText: 'Wind and waves in numbers' }).click()
  await field(page, 'Strongest wind').waitFor()
  expect(await field(page, 'Strongest wind').inputValue()).toBe('22 mph')
  expect(await field(page, 'Open water upwind').inputValue()).toBe('0.25 mi')
  await type(page, 'Strongest wind', '30')
  await type(page, 'Open water upwind', '1.5')
  expect((await site(page)).wind!.speed).toBeCloseTo(30 * 0.44704, 6)
  expect((await site(page)).wind!.fetch).toBeCloseTo(1.5 * 1609.344, 4)
  expect(await page.getByRole('radio', { name: 'Your own figures 30 mph over 1.5 mi' }).isChecked()).toBe(
    true,
  )
  // A plain number that no lake has in miles is feet.
  await type(page, 'Open water upwind', '900')
  expect((await site(page)).wind!.fetch).toBeCloseTo(900 * 0.3048, 5)
  await type(page, 'Average depth along it', '6 ft')
  expect((await site(page)).wind!.depth).toBeCloseTo(6 * 0.3048, 6)
  await type(page, 'Average depth along it', '')
  expect((await site(page)).wind!.depth).toBeNull()
  await type(page, 'Height of boat wakes', '1 ft')
  expect((await site(page)).wake).toBeCloseTo(0.3048, 6)
  expect(await read(page, (e) => e.dock.waves!.crest)).toBeCloseTo(0.7 * 0.3048, 4)
  await type(page, 'Strongest wind', 'a gale')
  expect(await page.getByRole('alert').textContent()).toBe(
    'We couldn’t read that as a speed. Try 25 mph or 20 kn.',
  )
  expect((await site(page)).wind!.speed).toBeCloseTo(30 * 0.44704, 6)
  const { violations } = await new AxeBuilder({ page: page as never })
    .include(['leadline-dock', '.exposure'] as never)
    .setLegacyMode(true)
    .analyze()
  expect(violations.map((v) => v.id)).toEqual([])
  await page.getByRole('radio', { name: 'm', exact: true }).check()
  expect(await field(page, 'Open water upwind').inputValue()).toBe('274 m')
  await type(page, 'Strongest wind', '12')
  expect((await site(page)).wind!.speed).toBe(12)
  await field(page, 'Strongest wind').press('ArrowUp')
  expect((await site(page)).wind!.speed).toBe(13)
  await close()
})

const overlaps = (page: Page) =>
  page.locator('leadline-dock').evaluate((element) => {
    const texts = [...element.shadowRoot!.querySelectorAll('.strip text')].map((text) => ({
      says: text.textContent!,
      ours: text.closest('.crests') !== null,
      box: text.getBoundingClientRect(),
    }))
    const bad: string[] = []
    for (const a of texts.filter(({ ours }) => ours))
      for (const b of texts) {
        if (a === b) continue
        const wide = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left)
        const high = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top)
        // Lines of words stand closer than the boxes of their letters.
        if (wide > 1 && high > 4) bad.push(`"${a.says}" lies on "${b.says}"`)
      }
    // Where there is no room between the legs it is told under the drawing.
    const under = element.shadowRoot!.querySelector('.crest-told')?.textContent?.split(/: | · /) ?? []
    return { bad, told: [...texts.filter(({ ours }) => ours).map(({ says }) => says), ...under] }
  })

test.each([
  ['a desktop', { width: 1280, height: 900 }, 4],
  ['a phone', PHONE, 4],
] as const)(
  'the strip tells on %s what is left under the frame, on no other words',
  async (_screen, viewport, lines) => {
    const { page, close } = await open({ viewport })
    for (const exposure of [/^Sheltered cove/, /^Open, small lake/, /^Exposed, big lake/])
      for (const units of ['ft', 'm']) {
        await page.getByRole('radio', { name: exposure }).check()
        await page.getByRole('radio', { name: units, exact: true }).check()
        await nextFrame(page)
        const { bad, told } = await overlaps(page)
        expect(bad, `${exposure} ${units}`).toEqual([])
        expect(told.length, `${exposure} ${units}: ${told}`).toBeGreaterThanOrEqual(1)
        expect(told.at(-1)).toMatch(/ (clear|too high)$/)
      }
    await page.getByRole('radio', { name: /^Sheltered cove/ }).check()
    await nextFrame(page)
    expect((await overlaps(page)).told).toHaveLength(lines)
    // Clear today and not at high water: what is to be done is said, where the verdict stands that it can be built.
    const { clear, clearHigh } = await read(page, (e) => e.dock.waves!)
    expect([clear > 0, clearHigh < 0]).toEqual([true, true])
    expect(await page.locator('.crest-raise').textContent()).toMatch(
      /at high water.*: raise the dock then\.$/,
    )
    // The names of the levels end at the picture's edge, over no leg.
    const crossed = await page.locator('leadline-dock').evaluate((element) => {
      const boxes = (name: string) =>
        [...element.shadowRoot!.querySelectorAll(`.strip ${name}`)].map((e) => e.getBoundingClientRect())
      return boxes('.level-name').filter((a) =>
        boxes('.leg-reach').some(
          (b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom,
        ),
      ).length
    })
    expect(crossed).toBe(0)
    // The line is where the crests are: on the scale of the levels.
    const { crest, high, low, waves } = await page.locator('leadline-dock').evaluate((element) => {
      const of = (name: string) => element.shadowRoot!.querySelector(name)!.getBoundingClientRect()
      const { dock, design } = element as never as {
        dock: { waves: { crest: number } }
        design: { site: { levels: { low: number; high: number } } }
      }
      return {
        crest: of('.crest.today').bottom,
        high: { y: of('.level.high').top, z: design.site.levels.high },
        low: { y: of('.level.low').top, z: design.site.levels.low },
        waves: dock.waves.crest,
      }
    })
    const perMeter = (low.y - high.y) / (high.z - low.z)
    expect(Math.abs(crest - (high.y + (high.z - waves) * perMeter))).toBeLessThan(4)
    await close()
  },
)
