/** Ways in and back at the lake, on a phone: the phone's own Back, the page for the lake with nothing kept, squares read off pictures. */
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { begun, phone, write } from '../support/records.ts'
import { open, PHONE, withBrowser } from './support/open.ts'

withBrowser()

const onPhone = (path: string, more: Parameters<typeof open>[0] = {}) =>
  open({ path, viewport: PHONE, hasTouch: true, fresh: true, ...more })

const title = (page: Page) => page.locator('.lake-day h2').innerText()
const tap = (page: Page, name: string | RegExp) =>
  page.getByRole('button', { name, exact: typeof name === 'string' }).tap()
const titled = (page: Page, to: string) => expect.poll(() => title(page), { timeout: 20_000 }).toBe(to)

/** All legs set in a year. */
function recordOf(season: string) {
  const on = phone(begun(), 'phone-b')
  write(on, { kind: 'level', level: 0, from: 'survey', keep: 'planned' }, season)
  for (const { id, planned } of on.record.legs)
    write(
      on,
      {
        ...{ kind: 'set', leg: id, stock: planned!.stock, height: planned!.height, level: 0 },
        ...{ keep: 'planned', how: 'measured' },
      },
      season,
    )
  return on.record
}

const take = (page: Page, record: unknown) =>
  page
    .locator('.lake-day input[type="file"]')
    .first()
    .setInputFiles({
      name: 'cove.record.json',
      mimeType: 'application/json',
      buffer: Buffer.from(JSON.stringify(record)),
    })

test('with nothing kept the page for the lake shows an example; the phone’s Back goes one screen back, also after a reload', async () => {
  const { page, close } = await onPhone('/lake.html')
  await titled(page, 'Which dock?')
  await tap(page, /^Look round with an example dock/)
  await tap(page, /^Begin with Quillet Cove/)
  await titled(page, 'Quillet Cove')
  await tap(page, /^Set it up/)
  await titled(page, 'How high is the lake today?')
  await page
    .getByRole('radio', { name: /^As on the day/ })
    .locator('xpath=ancestor::label')
    .tap()
  await tap(page, 'Next')
  await titled(page, 'Before anybody gets wet')
  await page.goBack()
  await titled(page, 'How high is the lake today?')
  await page.goForward()
  await titled(page, 'Before anybody gets wet')
  await page.reload()
  await titled(page, 'Before anybody gets wet')
  await page.goBack()
  await titled(page, 'How high is the lake today?')
  await page.goBack()
  await titled(page, 'Quillet Cove')
  // By the screen's own way back nothing is left behind that the phone's Back would come to again.
  await tap(page, /^Share, save or print/)
  await titled(page, 'Share, save, print')
  await tap(page, /^Show squares/)
  await titled(page, 'Show squares to the other phone')
  await page.goBack()
  await titled(page, 'Share, save, print')
  await tap(page, 'All that can be done here')
  await titled(page, 'Quillet Cove')
  await page.goBack()
  await titled(page, 'Which dock?')
  // It is gone on with; another one of the same dock is asked for.
  await tap(page, 'Begin Quillet Cove anew')
  await tap(page, 'No, keep to the one that is here')
  await tap(page, /^Go on with Quillet Cove/)
  await titled(page, 'Quillet Cove')
  await close()
})

test('a new year begins by itself, with last year’s figures; what was open last year is not', async () => {
  const year = new Date().getFullYear()
  const { page, close } = await onPhone('/waterside.html', { clock: true })
  await take(page, recordOf(String(year)))
  await page.getByText(`all 10 legs are set for ${year}`).waitFor()
  await tap(page, /^Finish the last steps/)
  await expect.poll(() => page.locator('.lake-day header').innerText()).toContain(`Set up ${year}`)
  await page.clock.setFixedTime(new Date(`${year + 1}-05-09T09:00:00Z`))
  await page.reload()
  await page.getByText(`Set it up again in ${year + 1}`).waitFor()
  await tap(page, 'How each leg stands')
  await titled(page, `How each leg stands, ${year}`)
  expect(await page.locator('.lake-table').innerText()).not.toContain('–')
  await close()
})

test('squares are read off pictures of the other phone’s screen, some at a time', async () => {
  const from = await onPhone('/waterside.html')
  await take(from.page, recordOf('2025'))
  await tap(from.page, /^Share, save or print/)
  await tap(from.page, /^Show squares/)
  const told = from.page.getByText(/^\d+ of \d+$/)
  const all = Number(/\d+$/.exec(await told.innerText())![0])
  expect(all).toBeGreaterThan(1)
  const shots: Buffer[] = []
  const seen = new Set<string>()
  const until = Date.now() + 60_000
  // Two more than there are: on a slow machine all may come round while one picture is taken, and it is another one than it is taken for.
  while ((seen.size < all || shots.length < all + 2) && Date.now() < until) {
    const shown = await told.innerText()
    const picture = await from.page.screenshot()
    // The next one may have come meanwhile.
    if ((await told.innerText()) !== shown) continue
    seen.add(shown)
    shots.push(picture)
  }
  expect(seen.size).toBe(all)
  const files = shots.map((buffer, i) => ({ name: `${i}.png`, mimeType: 'image/png', buffer }))
  await from.close()
  const to = await onPhone('/waterside.html')
  await tap(to.page, 'Read squares from the other phone')
  const field = to.page.locator('.lake-day input[type="file"]').first()
  await field.setInputFiles(files.slice(0, 1))
  await to.page.getByText(`1 of ${all} parts`).waitFor({ timeout: 20_000 })
  await field.setInputFiles(files.slice(1))
  await to.page.getByText(/Set it up again in/).waitFor({ timeout: 60_000 })
  await to.close()
})
