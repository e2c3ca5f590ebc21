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

test('a row is sorted by distance when it is left, and whoever is on the way to another gets there', async () => {
  const { page, close } = await open()
  await table(page)
  const shown = () =>
    page
      .locator('.depths tbody [data-cell="distance"] input')
      .evaluateAll((all) => all.map((input) => (input as HTMLInputElement).value))
  await cell(page, 1, 'distance').fill('45 ft')
  await cell(page, 1, 'distance').press('Tab')
  // Still there while the hand is in it.
  expect((await shown())[1]).toBe('45 ft')
  await cell(page, 2, 'depth').focus()
  expect(await shown()).toEqual(['9 ft 10 in', '13 ft 1 1/2 in', '26 ft 3 in', '39 ft 4 1/2 in', '45 ft'])
  const focused = await page.evaluate(
    () =>
      (document.querySelector('leadline-dock')!.shadowRoot!.activeElement as HTMLInputElement | null)?.value,
  )
  expect(focused).toBe('1 ft 7 3/4 in')
  await close()
})

test('a new row is where the hand is, its distance first', async () => {
  const { page, close } = await open()
  await table(page)
  await page.getByRole('button', { name: 'Add a depth' }).click()
  await expect
    .poll(() =>
      cell(page, 5, 'distance').evaluate((e) => e === (e.getRootNode() as ShadowRoot).activeElement),
    )
    .toBe(true)
  await page.keyboard.type('60')
  await page.keyboard.press('Enter')
  expect((await soundings(page)).at(-1)).toEqual([18.288, 1.4])
  await close()
})

test('what is told under a field moves no other column', async () => {
  const { page, close } = await open()
  await table(page)
  const left = async () => (await cell(page, 2, 'depth').boundingBox())!
  const before = await left()
  await cell(page, 2, 'distance').fill('39 ft 4 1/2 in')
  await cell(page, 2, 'distance').blur()
  await cell(page, 3, 'distance').fill('about here')
  await cell(page, 3, 'distance').blur()
  expect(await page.locator('tr[data-row="3"] .fault').count()).toBe(1)
  const after = await left()
  expect([after.x, after.width]).toEqual([before.x, before.width])
  const field = (await cell(page, 3, 'distance').boundingBox())!
  const told = (await page.locator('tr[data-row="3"] .fault').boundingBox())!
  expect(field.width).toBeCloseTo((await cell(page, 2, 'distance').boundingBox())!.width, 0)
  expect(told.width).toBeLessThanOrEqual(field.width + 1)
  await close()
})

test('on a phone the columns have their heads over them', async () => {
  const { page, close } = await open({ viewport: PHONE, hasTouch: true })
  await table(page)
  for (const [name, column] of [
    ['How far from shore', 'distance'],
    ['How deep or high', 'depth'],
  ] as const) {
    const head = (await page.getByRole('columnheader', { name }).boundingBox())!
    const field = (await cell(page, 0, column).boundingBox())!
    expect(Math.abs(head.x - field.x)).toBeLessThan(6)
    expect(head.y + head.height).toBeLessThanOrEqual(field.y)
  }
  await close()
})

test('a bare 18 is taken and asked about; so is what is too deep or too far to be likely', async () => {
  const { page, close } = await open()
  await table(page)
  await cell(page, 4, 'depth').fill('18')
  await cell(page, 4, 'depth').press('Enter')
  expect((await soundings(page))[4]).toEqual([12, 5.4864])
  const asks = page.locator('tr[data-row="4"] .asks')
  expect(await asks.textContent()).toContain('Did you mean 1 ft 6 in?')
  await asks.getByRole('button').click()
  expect((await soundings(page))[4]).toEqual([12, 0.4572])
  expect(await asks.count()).toBe(0)
  await cell(page, 4, 'depth').fill('61 ft')
  await cell(page, 4, 'depth').press('Enter')
  expect(await asks.textContent()).toContain('61 ft is very deep')
  await cell(page, 4, 'distance').fill('1001 ft')
  await cell(page, 4, 'distance').press('Enter')
  expect(await asks.first().textContent()).toContain('1001 ft is a long way out')
  expect((await soundings(page))[4]).toEqual([305.1048, 18.5928])
  await close()
})

test('what cannot be is told in words of the page', async () => {
  const { page, close } = await open()
  await table(page)
  await cell(page, 4, 'depth').fill('1000 ft')
  await cell(page, 4, 'depth').press('Enter')
  expect(await page.locator('tr[data-row="4"] .fault').textContent()).toBe(
    'That is more or less than can be here, so nothing was changed.',
  )
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
