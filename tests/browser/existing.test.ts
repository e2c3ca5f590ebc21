/** A dock that is there already: counted by hand, and taken from a file; what it leaves to be bought, and what that costs. */
import { expect, test } from 'vitest'
import { type Design, demoCatalog, demoDesign, derive, packingList } from '../../rules/index.ts'
import { open, read, withBrowser } from './support/open.ts'

withBrowser()

test('sections and legs that are there are used where they fit, and only the rest is to be paid', async () => {
  const { page, close } = await open()
  const before = await read(page, (e) => e.dock.totals.price)
  await page.getByText('I already have a dock').click()
  await page.getByRole('button', { name: 'One more in hand: Frame 4 x 8 ft' }).click()
  await page.getByRole('button', { name: 'One more in hand: Leg 4 ft' }).click()
  await page.getByRole('button', { name: 'One more in hand: Leg 10 ft' }).click()
  const used = page.getByRole('region', { name: 'You have these already, and they are used' })
  await used.getByText('1 × Frame 4 x 8 ft: s2').waitFor()
  expect(await used.getByRole('listitem').count()).toBe(2)
  expect(await page.getByRole('region', { name: 'Left over' }).textContent()).toContain('1 × Leg 10 ft')
  const { existing, totals } = await read(page, (e) => e.dock)
  expect(totals.price).toBe(before)
  expect(existing!.price).toBeLessThan(before)
  await page.getByText('for what is new', { exact: false }).first().waitFor()
  // Each is one step of undo, and counted away it is gone.
  await page.getByRole('button', { name: 'One less in hand: Leg 10 ft' }).click()
  await page.getByText('Nothing is left over.').waitFor()
  await page.getByRole('button', { name: 'I have no dock yet' }).click()
  expect(await read(page, (e) => e.design.dock.existing)).toBe(undefined)
  expect(await read(page, (e) => e.dock.existing)).toBe(null)
  await close()
})

test('a saved packing list and a dock’s file say the same, and a file that cannot be read says why and changes nothing', async () => {
  const { page, close } = await open()
  await page.getByText('I already have a dock').click()
  const old: Design = { ...demoDesign, dock: { ...demoDesign.dock, sections: 4 } }
  const pick = page.getByLabel('Take it from a file')
  const take = (name: string, text: string): Promise<void> =>
    pick
      .and(page.locator('input'))
      .setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) })
  await take('old.json', JSON.stringify(old))
  await page
    .getByRole('region', { name: 'To be bought' })
    .getByText('1 × Frame 4 x 8 ft', { exact: true })
    .waitFor()
  const fromDesign = await read(page, (e) => e.design.dock.existing)
  expect(fromDesign!.sections).toEqual({ '4x8': 4 })
  await take('broken.json', '{ "format": ')
  expect(await page.getByRole('alert').textContent()).toMatch(/^broken\.json cannot be read: /)
  expect(await read(page, (e) => e.design.dock.existing)).toEqual(fromDesign)
  await page.getByLabel('Or paste its link').fill('https://dock.example/#leadline=x')
  await page.getByText('That link is damaged or cut short').waitFor()
  expect(await read(page, (e) => e.design.dock.existing)).toEqual(fromDesign)
  await page.getByRole('button', { name: 'I have no dock yet' }).click()
  await take('list.json', JSON.stringify(packingList(derive(old, demoCatalog), demoCatalog)))
  await page.getByRole('region', { name: 'To be bought' }).waitFor()
  expect(await read(page, (e) => e.design.dock.existing)).toEqual(fromDesign)
  await close()
})
