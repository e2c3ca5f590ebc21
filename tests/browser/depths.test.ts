import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { open, PHONE, read, withBrowser } from './support/open.ts'

withBrowser()

const table = async (page: Page) => {
  await page.locator('summary', { hasText: 'How deep is it?' }).click()
  await page.locator('.depths table').waitFor()
}
const soundings = (page: Page) =>
  read(page, (e) =>
    e.design.site.soundings.map((s) => [s.distance, s.depth].map((n) => Math.round(n * 1e4) / 1e4)),
  )
const cell = (page: Page, row: number, name: 'distance' | 'depth') =>
  page.locator(`tr[data-row="${row}"] [data-cell="${name}"] input`)

/** As a spreadsheet puts it on the clipboard. */
const paste = (page: Page, row: number, name: 'distance' | 'depth', text: string) =>
  cell(page, row, name).evaluate((input, text) => {
    const clipboardData = new DataTransfer()
    clipboardData.setData('text/plain', text)
    input.dispatchEvent(
      new ClipboardEvent('paste', { clipboardData, bubbles: true, composed: true, cancelable: true }),
    )
  }, text)

test('depths are typed the way people type them, and never with a sign', async () => {
  const { page, close } = await open()
  await table(page)
  expect(await cell(page, 0, 'depth').inputValue()).toBe('2 ft 11 1/2 in')
  await cell(page, 4, 'depth').fill('5\' 2½"')
  await cell(page, 4, 'depth').press('Enter')
  expect((await soundings(page))[4]).toEqual([12, 1.5875])
  await cell(page, 0, 'depth').fill('80 cm')
  await cell(page, 0, 'depth').press('Tab')
  expect((await soundings(page))[0]).toEqual([-3, -0.8])
  await page.locator('tr[data-row="0"] select').selectOption({ label: 'in the water' })
  expect((await soundings(page))[0]).toEqual([3, 0.8])
  await page.keyboard.press('Control+z')
  await close()
})

test('what is no length is told in place and changes nothing', async () => {
  const { page, close } = await open()
  await table(page)
  const before = await soundings(page)
  await cell(page, 2, 'depth').fill('deep')
  await cell(page, 2, 'depth').blur()
  expect(await page.locator('tr[data-row="2"] .fault').textContent()).toContain('couldn’t read that')
  expect(await cell(page, 2, 'depth').getAttribute('aria-invalid')).toBe('true')
  await cell(page, 3, 'distance').fill('12 m')
  await cell(page, 3, 'distance').blur()
  expect(await page.locator('tr[data-row="3"] .fault').textContent()).toContain(
    'already have a depth at 39 ft 4 1/2 in',
  )
  expect(await soundings(page)).toEqual(before)
  await close()
})

test('a paste from a spreadsheet is taken in as one step; lines that cannot be read wait to be put right', async () => {
  const { page, close } = await open()
  await table(page)
  await page.getByRole('radio', { name: 'm', exact: true }).check({ force: true })
  await paste(
    page,
    1,
    'distance',
    'Distance\tDepth\r\n0\t0\r\n5\t0,6\r\n10\tabout 1\r\n14\t1,9\r\n18\t2,2\r\n22\t2,4',
  )
  expect(await soundings(page)).toEqual([
    [-3, -0.9],
    [0, 0],
    [5, 0.6],
    // The line that could not be read has written nothing over.
    [8, 0.9],
    [14, 1.9],
    [18, 2.2],
    [22, 2.4],
  ])
  expect(await page.locator('.depths [role=status]').textContent()).toContain('5 depths taken in')
  const draft = page.locator('tr.draft')
  expect(await draft.locator('.fault').last().textContent()).toContain('couldn’t read that')
  await draft.getByLabel('How deep or high').fill('1,1')
  await draft.getByLabel('How deep or high').press('Enter')
  expect((await soundings(page)).at(-1)).toEqual([10, 1.1])
  expect(await draft.count()).toBe(0)
  await page.getByRole('button', { name: 'Undo' }).click()
  await page.getByRole('button', { name: 'Undo' }).click()
  expect((await soundings(page)).length).toBe(5)
  await close()
})

test('rows are added and taken out; the last one stays', async () => {
  const { page, close } = await open({ viewport: PHONE, hasTouch: true })
  await table(page)
  await page.getByRole('button', { name: 'Add a depth' }).click()
  expect((await soundings(page)).at(-1)).toEqual([16, 1.4])
  for (let i = 0; i < 5; i++) await page.locator('tr[data-row="0"] button').click()
  expect(await soundings(page)).toEqual([[16, 1.4]])
  expect(await page.locator('tr[data-row="0"] button').isDisabled()).toBe(true)
  await close()
})

test('a remedy is one tap and one step', async () => {
  const { page, close } = await open()
  await page.getByRole('slider', { name: 'How high over the water' }).and(page.locator('.handle')).focus()
  await page.keyboard.press('Shift+ArrowDown')
  await page.keyboard.press('Shift+ArrowDown')
  expect(await page.locator('.sum-bar .short').textContent()).toMatch(/^Fix /)
  const raise = page.getByRole('button', { name: /^Raise the deck to/ }).first()
  await raise.click()
  expect(await read(page, (e) => e.dock.findings.some((f) => f.severity === 'stop'))).toBe(false)
  await page.getByRole('button', { name: 'Undo' }).click()
  expect(await read(page, (e) => e.dock.findings.some((f) => f.severity === 'stop'))).toBe(true)
  await close()
})
