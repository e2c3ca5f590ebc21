/** What a shop and a crew see first: the quote in one tap with a comparison, findings and legs without a price. */
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { type Design, demoDesign } from '../../rules/index.ts'
import { linkOf } from '../../src/autosave/link.ts'
import { open, PHONE, read, withBrowser } from './support/open.ts'

withBrowser()

const lookedOnBy = (page: Page, audience: string) =>
  page.locator('leadline-dock').evaluate((e, audience) => e.setAttribute('audience', audience), audience)
const settled = (page: Page) =>
  expect.poll(() => page.locator('.stands [role=status]').textContent(), { timeout: 60_000 }).not.toBe('')

test('the shop has the quote in one tap, with the customer on it, and a pasted link beside it: headline first', async () => {
  const { page, close } = await open({ webgl: false })
  await lookedOnBy(page, 'shop')
  await settled(page)
  expect(await page.getByRole('button', { name: 'Ask for a quote' }).count()).toBe(0)
  await page.getByRole('button', { name: 'Quote', exact: true }).click()
  const customer = page.getByLabel('Customer: name and contact')
  await customer.fill('A. Example, 555 0100')
  await customer.blur()
  expect(await read(page, (e) => e.design.job)).toEqual({ customer: 'A. Example, 555 0100' })
  expect(await page.getByLabel('Which').inputValue()).toBe('quote')
  const wide: Design = { ...demoDesign, dock: { ...demoDesign.dock, frame: '5x8', sections: 6 } }
  const link = page.getByLabel('Or paste a link')
  await link.fill('https://shop.example/plan#leadline=cut')
  expect(await page.locator('.since .fault').textContent()).toMatch(/^That link cannot be compared with: /)
  await link.fill(`https://shop.example/plan${linkOf(wide)}`)
  await page.locator('.headline').waitFor()
  expect(await page.locator('.headline').textContent()).toMatch(
    /^5 ft → 4 ft wide, one section less, [-−]\$[\d,.]+$/,
  )
  expect(await page.locator('.since .fault').count()).toBe(0)
  // Nothing of the dock in hand is another for it.
  expect(await read(page, (e) => e.design.dock.sections)).toBe(demoDesign.dock.sections)
  await page.getByRole('button', { name: 'Do not compare' }).click()
  expect(await page.locator('.headline').count()).toBe(0)
  await close()
})

test('the crew sees no price, and what was found and every leg and the papers first; what changes the dock is folded away', async () => {
  const { page, close } = await open({ webgl: false })
  await lookedOnBy(page, 'crew')
  await settled(page)
  await page.locator('.by-number dd').first().waitFor()
  expect(await page.locator('.app').textContent()).not.toContain('$')
  const tops = await page
    .locator('.side')
    .evaluate((panel) =>
      ['.by-number', '.papers', '.stands', '.change'].map(
        (one) => panel.querySelector(one)!.getBoundingClientRect().top,
      ),
    )
  expect(tops).toEqual([...tops].sort((a, b) => a - b))
  // A stray tap finds nothing in the panel that changes the dock, until it is unfolded.
  expect(await page.locator('.panel .group').count()).toBe(0)
  await page.getByText('Papers and models').click()
  expect(await page.getByLabel('Which', { exact: true }).inputValue()).toBe('set-up')
  await page.getByText('Change the dock').click()
  await page.locator('.panel .change .group').first().waitFor()
  await close()
})

test.each([PHONE, { width: 320, height: 640 }, { width: 1366, height: 650 }])(
  'the sum holds its verdict, price and button side by side, nothing over another: %j',
  async (viewport) => {
    const { page, close } = await open({ webgl: false, viewport })
    await settled(page)
    const boxes = await page.locator('.sum-bar').evaluate((bar) => {
      const of = (e: Element) => e.getBoundingClientRect()
      const inner = [...bar.querySelectorAll('.short > span:not(.unseen), .figures > *, .main')].map(of)
      const whole = of(bar)
      return {
        out: inner.filter((b) => b.left < whole.left || b.right > whole.right + 0.5).length,
        over: inner.flatMap((a, i) =>
          inner
            .slice(i + 1)
            .filter(
              (b) =>
                Math.min(a.right, b.right) - Math.max(a.left, b.left) > 0.5 &&
                Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 0.5,
            ),
        ).length,
        plus: bar.querySelector('.figures span')!.getClientRects().length,
      }
    })
    expect(boxes).toEqual({ out: 0, over: 0, plus: 1 })
    await close()
  },
)
