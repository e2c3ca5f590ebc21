import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { choose } from './support/choose.ts'
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
  await choose(page.getByRole('radio', { name: 'm', exact: true }))
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
  expect(await page.locator('.depths [role=status]').textContent()).toContain('5 depths added')
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

const draftOf = (page: Page) => ({
  row: page.locator('tr.draft'),
  far: page.locator('tr.draft').getByLabel('How far from shore'),
  deep: page.locator('tr.draft').getByLabel('How deep or high'),
})

test('rows are added and taken out; the last one stays', async () => {
  const { page, close } = await open({ viewport: PHONE, hasTouch: true })
  await table(page)
  await page.getByRole('button', { name: 'Add a depth' }).click()
  const { far, deep } = draftOf(page)
  await far.fill('16 m')
  await deep.fill('1.5 m')
  await deep.press('Enter')
  expect((await soundings(page)).at(-1)).toEqual([16, 1.5])
  for (let i = 0; i < 5; i++) await page.locator('tr[data-row="0"] button').click()
  expect(await soundings(page)).toEqual([[16, 1.5]])
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

test('a new row is empty and counts for nothing until both of its figures are typed; the hand is in its distance', async () => {
  const { page, close } = await open()
  await table(page)
  const before = await soundings(page)
  const dock = () => read(page, (e) => e.dock.fingerprint.all)
  const code = await dock()
  await page.getByRole('button', { name: 'Add a depth' }).click()
  const { row, far, deep } = draftOf(page)
  const focused = (field: typeof far) =>
    field.evaluate((e) => e === (e.getRootNode() as ShadowRoot).activeElement)
  await expect.poll(() => focused(far)).toBe(true)
  expect([await far.inputValue(), await deep.inputValue()]).toEqual(['', ''])
  expect(await row.textContent()).toContain('Counts once you fill in both.')
  await page.keyboard.type('60')
  await page.keyboard.press('Enter')
  // Half of it says nothing, even left alone.
  await page.getByRole('button', { name: 'Add a depth' }).focus()
  expect(await soundings(page)).toEqual(before)
  expect(await dock()).toBe(code)
  expect(await far.inputValue()).toBe('60')
  await deep.fill('5')
  await deep.press('Enter')
  expect((await soundings(page)).at(-1)).toEqual([18.288, 1.524])
  expect(await row.count()).toBe(0)
  // On to the next, and taken out again nothing was ever there.
  await page.keyboard.press('Enter')
  await row.getByRole('button', { name: 'Remove this line' }).click()
  expect(await row.count()).toBe(0)
  expect(await soundings(page)).toHaveLength(before.length + 1)
  await close()
})

test('of a new row what is doubtful is asked about where it went; on land it is a height', async () => {
  const { page, close } = await open()
  await table(page)
  await page.getByRole('button', { name: 'Add a depth' }).click()
  const { row, far, deep } = draftOf(page)
  await far.fill('50')
  await deep.fill('18')
  await deep.press('Enter')
  expect((await soundings(page)).at(-1)).toEqual([15.24, 5.4864])
  await page.getByRole('button', { name: 'Yes, 1 ft 6 in' }).click()
  expect((await soundings(page)).at(-1)).toEqual([15.24, 0.4572])
  await page.getByRole('button', { name: 'Add a depth' }).click()
  await far.fill('20')
  await deep.fill('4')
  await row.getByLabel('Where').selectOption('on land')
  await page.getByRole('button', { name: 'Add a depth' }).focus()
  expect((await soundings(page)).at(-1)).toEqual([-6.096, -1.2192])
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
    'That is more or less than fits here, so nothing changed.',
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

test('a stake and a mark that stay are typed below the depths, without a sign', async () => {
  const { page, close } = await open()
  await table(page)
  await page.locator('summary', { hasText: 'A stake and a mark that stay' }).click()
  const name = page.getByLabel('Distances from')
  await name.fill('the oak stake')
  await name.press('Enter')
  const site = () => read(page, (e) => ({ stake: e.design.site.stake, mark: e.design.site.benchmark }))
  expect((await site()).stake).toEqual({ name: 'the oak stake', x: 0 })
  const far = page.getByRole('textbox', { name: 'How far from the water’s edge' })
  await far.fill('2 m')
  await far.press('Enter')
  expect((await site()).stake).toEqual({ name: 'the oak stake', x: -2 })
  await page
    .getByRole('combobox', { name: 'How far from the water’s edge' })
    .selectOption({ label: 'beyond it, in the water' })
  expect((await site()).stake).toEqual({ name: 'the oak stake', x: 2 })
  await page.getByLabel('Heights from').fill('bolt')
  await page.getByLabel('Heights from').press('Enter')
  const over = page.getByRole('textbox', { name: 'How far from the water’s surface' })
  await over.fill('80 cm')
  await over.press('Enter')
  expect((await site()).mark).toEqual({ name: 'bolt', above: 0.8 })
  await name.fill('')
  await name.press('Enter')
  expect((await site()).stake).toBeUndefined()
  await close()
})
