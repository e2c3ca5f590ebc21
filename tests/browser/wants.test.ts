/** What is asked for in the words of whoever asks: how far out, which shape, what decking, which of three docks. */
import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { choose } from './support/choose.ts'
import { nextFrame, open, PHONE, read, withBrowser } from './support/open.ts'

withBrowser()

const FT = 0.3048
const asked = (page: Page) => read(page, (e) => e.design.dock)
const far = (page: Page) => page.getByRole('textbox', { name: 'Reach from the water’s edge' })

test('forty feet out is typed as such, and says which sections that takes and what they really reach', async () => {
  const { page, close } = await open({ viewport: PHONE })
  await far(page).fill('40 ft')
  await far(page).press('Enter')
  await nextFrame(page)
  const { sections } = await asked(page)
  const reach = await read(page, (e) => Math.max(...e.dock.sections.map(({ x, length }) => x + length)))
  expect(reach).toBeGreaterThanOrEqual(40 * FT - 1e-6)
  expect(reach).toBeLessThan(40 * FT + 8 * FT + 0.03)
  const hint = page.getByText('For 40 ft:')
  expect(await hint.textContent()).toMatch(
    new RegExp(`^For 40 ft: ${sections} sections in all, counting the ramp. They reach 4\\d ft.*lake end`),
  )
  // One step of undo; a longer dock is another wish.
  await page.getByRole('button', { name: 'One section more' }).click()
  expect(await hint.count()).toBe(0)
  // An arrow is a section.
  await far(page).press('ArrowDown')
  expect((await asked(page)).sections).toBe(sections)
  await close()
})

test('the ends go by the names that people have for them, and how steep the ramp is is told on request', async () => {
  const { page, close } = await open()
  await choose(page.getByRole('radio', { name: 'L, to the left' }))
  expect((await asked(page)).head).toEqual({ shape: 'left', sections: 1 })
  await page.getByRole('button', { name: 'More at the end' }).click()
  expect((await asked(page)).head).toEqual({ shape: 'left', sections: 2 })
  await choose(page.getByRole('radio', { name: 'T', exact: true }))
  expect((await asked(page)).head).toEqual({ shape: 'tee', sections: 2 })
  // Its words come in a chunk of their own.
  await page.getByText(/gently (up|down) to the dock, with a .* step up at the shore/).waitFor()
  expect(await page.getByText(/^1 in [\d.]+:/).count()).toBe(0)
  await page.getByText('How steep is that?').click()
  await page.getByText(/^1 in [\d.]+:/).waitFor()
  await close()
})

test('decking is picked by material and color, with its price; the list follows, and cedar again is as if nobody had asked', async () => {
  const { page, close } = await open()
  const before = await asked(page)
  const total = (): Promise<number> => read(page, (e) => e.dock.totals.price)
  const cedar = await total()
  const gray = page.getByRole('radio', { name: /^Composite, driftwood gray/ })
  expect(await page.locator('label', { has: gray }).textContent()).toContain('$1,980')
  await choose(gray)
  expect((await asked(page)).finish).toBe('composite-gray')
  expect((await total()) - cedar).toBe(49_000)
  await choose(page.getByRole('radio', { name: /^Cedar/ }))
  expect(await asked(page)).toEqual(before)
  await close()
})

test('three whole docks stand side by side, each with its price and what is to be fixed; one tap takes one, one undo gives the own one back', async () => {
  const { page, close } = await open({ viewport: PHONE })
  const before = await asked(page)
  await page.getByText('Compare three docks').click()
  const cards = page.locator('.whole-docks article')
  await cards.nth(2).waitFor()
  expect(await cards.locator('h3').allTextContents()).toEqual(['Lowest price', 'Comfort', 'More room'])
  expect(await cards.locator('svg rect:not(.land)').count()).toBeGreaterThan(12)
  for (const text of await cards.allTextContents())
    expect(text).toMatch(/Can be built\.\$[\d,.]+ for the parts/)
  const room = cards.nth(2)
  const price = (await room.locator('.whole-price strong').textContent())!.replace(/[^\d.]/g, '')
  await room.getByRole('button', { name: 'Take it' }).click()
  expect((await asked(page)).head).toEqual({ shape: 'tee', sections: 2 })
  expect(await read(page, (e) => e.dock.totals.price)).toBe(Math.round(Number(price) * 100))
  expect(await room.getByRole('button').textContent()).toBe('Yours now')
  // The other two are still there to be looked at.
  expect(await cards.count()).toBe(3)
  await page.getByRole('button', { name: 'Undo' }).click()
  expect(await asked(page)).toEqual(before)
  expect(await cards.count()).toBe(3)
  const { violations } = await new AxeBuilder({ page }).include('leadline-dock').analyze()
  expect(violations.map(({ id }) => id)).toEqual([])
  await close()
})

test('an extra goes where its edge is touched; by keyboard to the middle of what is free; it is moved by typing and taken away', async () => {
  const { page, close } = await open({ viewport: PHONE })
  const before = await asked(page)
  await page.getByText('Put one in its place').click()
  await choose(page.getByRole('radio', { name: 'Mooring cleat' }))
  const edge = page.getByRole('button', { name: 'left edge of section 3', exact: true })
  const box = (await edge.boundingBox())!
  // The lake is above: a quarter of 8 ft from its shoreward end, on the half inch.
  await edge.click({ position: { x: box.width / 2, y: (3 * box.height) / 4 } })
  const [cleat] = (await asked(page)).placed!
  expect(cleat).toMatchObject({ code: 'cleat', section: 's3', edge: 'left' })
  expect(cleat!.along).toBeGreaterThan(0.5)
  expect(cleat!.along).toBeLessThan(0.72)
  expect(await read(page, (e) => e.dock.findings.filter((f) => f.code === 'extra-no-place').length)).toBe(0)
  await page.getByRole('button', { name: 'lake edge of section 5', exact: true }).focus()
  await page.keyboard.press('Enter')
  expect((await asked(page)).placed![1]).toMatchObject({ section: 's5', edge: 'end' })
  const where = page.getByRole('textbox', { name: 'Mooring cleat: left edge of section 3, this far along' })
  await where.fill('4 ft')
  await where.press('Enter')
  expect((await asked(page)).placed![0]!.along).toBeCloseTo(4 * FT, 6)
  await page.getByRole('button', { name: 'Remove Mooring cleat: lake edge of section 5' }).click()
  await page.getByRole('button', { name: 'Remove Mooring cleat: left edge of section 3' }).click()
  expect(await asked(page)).toEqual(before)
  const { violations } = await new AxeBuilder({ page }).include('leadline-dock').analyze()
  expect(violations.map(({ id }) => id)).toEqual([])
  await close()
})
