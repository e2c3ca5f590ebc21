/** What is asked for in the words of whoever asks: how far out, which shape, what decking, which of three docks. */
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { nextFrame, open, PHONE, read, withBrowser } from './support/open.ts'

withBrowser()

const FT = 0.3048
const asked = (page: Page) => read(page, (e) => e.design.dock)
const far = (page: Page) => page.getByRole('textbox', { name: "Reach from the water's edge" })

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
    new RegExp(`^For 40 ft: ${sections} sections with the ramp. They reach 4\\d ft.*lake end`),
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
  await page.getByRole('radio', { name: 'L, to the left' }).check({ force: true })
  expect((await asked(page)).head).toEqual({ shape: 'left', sections: 1 })
  await page.getByRole('button', { name: 'More at the end' }).click()
  expect((await asked(page)).head).toEqual({ shape: 'left', sections: 2 })
  await page.getByRole('radio', { name: 'T', exact: true }).check({ force: true })
  expect((await asked(page)).head).toEqual({ shape: 'tee', sections: 2 })
  expect(await page.getByText(/gently (up|down) to the dock; .* step up at the shore/).count()).toBe(1)
  expect(await page.getByText(/^1 in [\d.]+:/).count()).toBe(0)
  await page.getByText('How steep is that?').click()
  expect(await page.getByText(/^1 in [\d.]+:/).count()).toBe(1)
  await close()
})
