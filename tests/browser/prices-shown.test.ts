/** What a shop shows its customers of prices, where it brings docks to, and how it rounds: on the page as on its papers. */
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { type Catalog, type Design, demoCatalog, demoDesign, ENGLISH, moneyIn } from '../../rules/index.ts'
import { estimate } from '../../rules/papers.ts'
import type { LeadlineDock } from '../../src/element/leadline-dock.ts'
import { placedDock } from '../support/placed-dock.ts'
import { open, read, withBrowser } from './support/open.ts'

withBrowser()

const usd = moneyIn('USD', ENGLISH)
const { freight: _, ...terms } = demoCatalog.quote!
const ZONED: Catalog = {
  ...demoCatalog,
  quote: {
    ...terms,
    round: 1000,
    zones: [
      { code: 'near', name: 'To 30 miles', price: 9500 },
      { code: 'far', name: 'To 75 miles', price: 17_500 },
    ],
  },
}
const shown = (prices: 'none' | 'total'): Catalog => ({
  ...demoCatalog,
  shop: { ...demoCatalog.shop, prices },
})

const give = (page: Page, catalog: Catalog): Promise<void> =>
  page.locator('leadline-dock').evaluate((element, given) => {
    ;(element as LeadlineDock).catalog = given
  }, catalog)

test('the customer says where the dock goes to, and has the total of the estimate', async () => {
  const { page, close } = await open()
  await give(page, ZONED)
  await page.getByRole('button', { name: 'Ask for a quote' }).click()
  const dialog = page.locator('dialog.request')
  const field = dialog.getByLabel('Where we bring it')
  await dialog.getByText('It is in no total here.', { exact: false }).waitFor()
  await field.selectOption('far')
  const design: Design = { ...demoDesign, job: { ...demoDesign.job, zone: 'far' } }
  const made = estimate(placedDock(design, ZONED), design, ZONED, { date: '2026-05-01' })
  expect(made.total % 1000).toBe(0)
  await dialog
    .getByText(`Freight to there: $175.00. Estimated total with tax and freight: ${usd(made.total)}.`)
    .waitFor()
  expect(await read(page, (e) => e.design.job)).toEqual(design.job)
  await field.selectOption('near')
  await dialog.getByText(`Freight to there: $95.00.`, { exact: false }).waitFor()
  await close()
})

test('a shop that shows totals has no price at any part, and one that shows none has none at all', async () => {
  const { page, close } = await open()
  await give(page, shown('total'))
  const amounts = async (): Promise<readonly string[]> =>
    (await page.locator('.app').textContent())!.match(/[+-]?\$\s?[\d,]+(?:\.\d\d)?/g) ?? []
  const total = usd(placedDock(demoDesign, demoCatalog).totals.price)
  for (const summary of await page.locator('.panel summary').all())
    if ((await summary.isVisible()) && !(await summary.evaluate((e) => e.closest('details')!.open)))
      await summary.click()
  await expect.poll(async () => [...new Set(await amounts())]).toContain(total)
  const parts = page.locator('.list-of-parts tbody td:nth-of-type(3)')
  expect((await parts.allTextContents()).join('')).toBe('')
  expect((await amounts()).filter((one) => /^[+-]/.test(one))).toEqual([])
  await give(page, shown('none'))
  await expect.poll(amounts).toEqual([])
  await close()
})
