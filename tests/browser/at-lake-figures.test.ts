/** Figures of another day at the lake: how far each leg goes in spring, on the screen and on paper; one that was written wrong; and back from the page that plans. */
import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { expect, inject, test } from 'vitest'
import { getDocument } from '../support/pdfjs.ts'
import { begun, phone, write } from '../support/records.ts'
import { open, PHONE, withBrowser } from './support/open.ts'

withBrowser()

const INCH = 0.0254

const title = (page: Page) => page.locator('.lake-day h2').innerText()
const said = (page: Page) => page.locator('.lake-day main').innerText()
const titled = (page: Page, to: string) => expect.poll(() => title(page), { timeout: 20_000 }).toBe(to)
const tap = (page: Page, name: string | RegExp) =>
  page.getByRole('button', { name, exact: typeof name === 'string' }).tap()
const pick = (page: Page, name: string | RegExp) =>
  page.getByRole('radio', { name }).locator('xpath=ancestor::label').tap()
const row = (page: Page, leg: number) =>
  page.getByRole('row').filter({ has: page.getByRole('rowheader', { name: String(leg), exact: true }) })

async function textOf(data: Uint8Array): Promise<string> {
  const document = await getDocument({ data }).promise
  const pages = Array.from({ length: document.numPages }, async (_, i) => {
    const { items } = await (await document.getPage(i + 1)).getTextContent()
    return items.map((item) => ('str' in item ? item.str : '')).join(' ')
  })
  return (await Promise.all(pages)).join(' ')
}

/** Last year: the lake 4 in under the survey's, the deck where it was planned, each leg as many inches from sole to deck. */
function lastYear() {
  const on = phone(begun(), 'phone-b')
  const level = -4 * INCH
  write(on, { kind: 'level', level, from: 'said', keep: 'planned' }, '2025')
  on.record.legs.forEach(({ id }, i) => {
    const set = { kind: 'set', leg: id, stock: null, height: (24 + i) * INCH } as const
    write(on, { ...set, level, keep: 'planned', how: 'measured' }, '2025')
  })
  return on.record
}

/** The day at the lake with a record opened. */
async function atLakeWith(record: object, viewport: { width: number; height: number } = PHONE) {
  const opened = await open({ path: '/waterside.html', viewport, hasTouch: true, fresh: true })
  const buffer = Buffer.from(JSON.stringify(record))
  const file = { name: 'cove.record.json', mimeType: 'application/json', buffer }
  await opened.page.locator('.lake-day input[type="file"]').first().setInputFiles(file)
  await titled(opened.page, 'Quillet Cove')
  return opened
}

test('how far each leg goes is told against last year, on paper too; a figure that was wrong is put right in its place', async () => {
  const { page, close } = await atLakeWith(lastYear())
  await tap(page, 'How far each leg goes up or down')
  // As last year, until somebody says otherwise: 4 in under the survey's.
  await expect.poll(() => said(page)).toContain('4 in lower than when the depths were measured')
  await pick(page, 'Higher than in 2025')
  await page.getByRole('textbox', { name: 'By how much' }).fill('3 in')
  // 3 in up from 4 in under: 1 in under. A deck as high over that as planned is 1 in lower, and each leg 1 in shorter.
  await expect.poll(() => said(page)).toContain('1 in lower than when the depths were measured')
  await pick(page, /^1 ft 5 3\/4 in over today’s water/)
  for (const [leg, deck] of [
    [1, '1 ft 11 in'],
    [5, '2 ft 3 in'],
  ] as const)
    expect(await row(page, leg).innerText()).toMatch(new RegExp(`draw the leg up by 1 in\\s+${deck}`))
  const paper = async (): Promise<string> => {
    const [made] = await Promise.all([page.waitForEvent('download'), tap(page, 'Print it (PDF)')])
    expect(made.suggestedFilename()).toMatch(/\.pdf$/)
    return textOf(new Uint8Array(await readFile(await made.path())))
  }
  const text = await paper()
  expect(text.match(/1 in shorter/g)).toHaveLength(10)
  expect(text).toContain('keeps its height over the water')
  // Leg 5 stood at 2 ft 6 in: 2 in more than was written down.
  await tap(page, 'All that can be done here')
  await tap(page, 'How each leg stands')
  await titled(page, 'How each leg stands, 2025')
  await page.getByLabel('A figure is wrong: put it right').selectOption({ label: 'Leg 5' })
  await page
    .getByRole('textbox', { name: 'Bottom of the foot pad to the top of the frame, as set' })
    .fill('29 in')
  await page.getByText('That is 2 ft 6 in to the deck.').waitFor()
  await tap(page, 'Put it right')
  await expect.poll(() => row(page, 5).innerText()).toMatch(/2 ft 5 in\s+2 ft 6 in/)
  // Both stand there, the one that holds last.
  const written = await page.getByRole('listitem').allInnerTexts()
  expect(written.map((line) => /set to (.*) to the deck/.exec(line)?.[1])).toEqual(['2 ft 4 in', '2 ft 6 in'])
  await page.reload()
  await titled(page, 'How each leg stands, 2025')
  expect(await row(page, 5).innerText()).toContain('2 ft 6 in')
  // Another spring goes by it; from where papers are.
  await tap(page, 'Share, save or print the record')
  await tap(page, /^Paper for next spring/)
  await titled(page, `Setting it up in ${new Date().getFullYear()}`)
  // With what was tried before: the lake 3 in higher, the deck 1 in lower. Then without it: as it stood.
  expect(await row(page, 5).innerText()).toMatch(/draw the leg up by 1 in\s+2 ft 5 in/)
  expect(await row(page, 6).innerText()).toMatch(/draw the leg up by 1 in\s+2 ft 4 in/)
  await page.getByRole('textbox', { name: 'By how much' }).fill('')
  await pick(page, 'Where it stood last year')
  expect(await row(page, 5).innerText()).toMatch(/the same\s+2 ft 6 in/)
  expect(await row(page, 6).innerText()).toMatch(/the same\s+2 ft 5 in/)
  await close()
})

test('half-typed figures outlive a reload; last year’s lake stood lower than was told, and next spring goes by it', async () => {
  const { page, close } = await atLakeWith(lastYear())
  const spring = `Setting it up in ${new Date().getFullYear()}`
  const by = page.getByRole('textbox', { name: 'By how much' })
  const reloaded = async (to: string) => {
    await page.reload()
    await titled(page, to)
  }
  await tap(page, 'How far each leg goes up or down')
  await titled(page, spring)
  await pick(page, 'Higher than in 2025')
  await by.fill('3 in')
  await pick(page, /^1 ft 5 3\/4 in over today’s water/)
  await reloaded(spring)
  expect(await by.inputValue()).toBe('3 in')
  expect(await page.getByRole('radio', { name: 'Higher than in 2025' }).isChecked()).toBe(true)
  expect(await page.getByRole('radio', { name: /^1 ft 5 3\/4 in over today’s water/ }).isChecked()).toBe(true)
  await expect.poll(() => said(page)).toContain('1 in lower than when the depths were measured')
  await by.fill('3 1/')
  await reloaded(spring)
  expect(await by.inputValue()).toBe('3 1/')
  await by.fill('')

  const heights = 'How each leg stands, 2025'
  const which = page.getByLabel('A figure is wrong: put it right')
  const frame = page.getByRole('textbox', { name: 'Bottom of the foot pad to the top of the frame, as set' })
  await tap(page, 'All that can be done here')
  await tap(page, 'How each leg stands')
  await titled(page, heights)
  await which.selectOption({ label: 'Leg 5' })
  await frame.fill('29')
  // Another leg has figures of its own.
  await which.selectOption({ label: 'Leg 6' })
  expect(await frame.inputValue()).toBe('')
  await which.selectOption({ label: 'Leg 5' })
  await reloaded(heights)
  expect(await which.locator('option:checked').innerText()).toBe('Leg 5')
  expect(await frame.inputValue()).toBe('29')

  await which.selectOption({ label: 'How the lake stood' })
  await pick(page, 'Lower than when the depths were measured')
  await by.fill('6 in')
  await reloaded(heights)
  expect(await by.inputValue()).toBe('6 in')
  expect(await said(page)).toContain('4 in lower than when the depths were measured')
  await tap(page, 'Put it right')
  await expect.poll(() => by.inputValue()).toBe('')
  const written = await page.getByRole('listitem').allInnerTexts()
  expect(written.map((line) => /\d+ in lower/.exec(line)?.[0])).toEqual(['4 in lower', '6 in lower'])
  // The legs are as long as they were.
  expect(await row(page, 5).innerText()).toContain('2 ft 4 in')
  // The lake 2 in lower than told, and the deck with it: to where it was planned each leg is 2 in longer.
  await tap(page, 'All that can be done here')
  await tap(page, 'How far each leg goes up or down')
  await titled(page, spring)
  await expect.poll(() => said(page)).toContain('6 in lower than when the depths were measured')
  await pick(page, /^Where it was planned/)
  expect(await row(page, 5).innerText()).toMatch(/by 2 in\s+2 ft 6 in/)
  await pick(page, /^Where it stood last/)
  expect(await row(page, 5).innerText()).toMatch(/the same\s+2 ft 4 in/)
  await close()
})

/** How many lines each figure of the tables takes. */
const linesOfFigures = (page: Page) =>
  page.locator('.lake-table .length').evaluateAll((cells) =>
    cells.flatMap((cell) => {
      const spans = [...cell.querySelectorAll('span')]
      const tops = new Set(spans.map((span) => Math.round(span.getBoundingClientRect().top)))
      const lines = spans.some((span) => span.getClientRects().length > 1) ? 99 : tops.size
      return spans.length > 0 ? [lines] : []
    }),
  )

test('on the narrowest phone a figure of a table stands on one line, in any language and unit; a leg’s own length under it', async () => {
  const on = phone(begun(), 'phone-b')
  on.record.legs.forEach(({ id, planned }, i) => {
    const height = (24.75 + 5 * i) * INCH
    const set = { kind: 'set', leg: id, stock: planned!.stock, height, keep: 'planned' } as const
    write(on, { ...set, level: 0, how: 'measured' }, '2025')
  })
  const { page, close } = await atLakeWith(on.record, { width: 320, height: 640 })
  const lake = page.locator('leadline-dock').first()
  const told = async (legs: number) => {
    for (const lang of ['de', 'es', 'fr', 'en'])
      for (const units of ['metric', 'imperial']) {
        await lake.evaluate(
          (e, [to, unit]) => {
            e.setAttribute('lang', to!)
            e.setAttribute('units', unit!)
          },
          [lang, units],
        )
        const inches = lang === 'fr' ? /\d\spo/ : /\d\sin/
        const figure = units === 'metric' ? /\d\sm/ : inches
        await expect.poll(() => page.locator('.lake-table .length').first().innerText()).toMatch(figure)
        const lines = await linesOfFigures(page)
        expect(lines.length, lang).toBeGreaterThanOrEqual(legs)
        expect(new Set(lines), `${lang} ${units}`).toEqual(new Set([1]))
        expect(await page.evaluate(() => document.documentElement.scrollWidth), lang).toBeLessThanOrEqual(320)
      }
  }
  await tap(page, 'How each leg stands')
  await titled(page, 'How each leg stands, 2025')
  await told(20)
  expect(await row(page, 10).innerText()).toMatch(/5 ft 9 3\/4 in\s+Length 7 ft$/)
  // With room for it the length has a column of its own.
  await page.setViewportSize(PHONE)
  await expect.poll(() => row(page, 10).innerText()).toMatch(/5 ft 9 3\/4 in\s+7 ft$/)
  expect(new Set(await linesOfFigures(page))).toEqual(new Set([1]))
  await page.setViewportSize({ width: 320, height: 640 })
  await tap(page, 'All that can be done here')
  await tap(page, 'How far each leg goes up or down')
  await titled(page, `Setting it up in ${new Date().getFullYear()}`)
  await told(10)
  await close()
})

test('the page that plans tells that a dock is being set up, and one touch goes on; what is done stays in reach of a thumb', async () => {
  const { page, close } = await open({ viewport: PHONE, hasTouch: true, fresh: true })
  const told = page.getByText(/^You are setting up/)
  await page.getByRole('button', { name: 'At the lake' }).first().tap()
  await titled(page, 'Which dock?')
  await tap(page, /^Begin with/)
  await tap(page, /^Set it up/)
  await pick(page, /^As on the day/)
  await tap(page, 'Next')
  await titled(page, 'Before anybody gets wet')
  for (const box of await page.getByRole('checkbox').all()) await box.tap()
  await tap(page, 'We are ready')
  for (let now = await title(page); !now.startsWith('How deep'); now = await title(page)) {
    await tap(page, /^(?:Done|We are ready)$/)
    await expect.poll(() => title(page)).not.toBe(now)
  }
  await page.getByRole('textbox').fill('6 in')
  await page.setViewportSize({ width: 844, height: 390 })
  const inReach = async (name: string): Promise<void> => {
    const button = await page.getByRole('button', { name, exact: true }).boundingBox()
    expect(button!.y + button!.height, name).toBeLessThanOrEqual(390)
  }
  await inReach('Use this depth')
  await tap(page, 'Use this depth')
  await titled(page, 'Set leg 1')
  await page.evaluate(() => scrollTo(0, 0))
  await inReach('It is set and tight')
  await page.setViewportSize(PHONE)
  // The battery dies in the middle of another height.
  await tap(page, 'I set it to another height')
  const other = page.getByRole('textbox', { name: 'Bottom of the foot pad to the top of the frame, as set' })
  await other.fill('22 in')
  await page.reload()
  await expect.poll(() => other.inputValue(), { timeout: 20_000 }).toBe('22 in')
  await tap(page, 'It is set and tight')
  await titled(page, 'How deep is it at leg 2?')
  await tap(page, 'All that can be done here')
  await tap(page, 'Back to the plan')
  await expect.poll(() => told.innerText()).toBe('You are setting up Quillet Cove: 1 of 10 legs are set.')
  await tap(page, 'Go on setting up')
  await titled(page, 'How deep is it at leg 2?')
  // What was typed is what it stands at: to the deck an inch more, its panels' height.
  await tap(page, 'All that can be done here')
  await tap(page, 'How each leg stands')
  expect(await row(page, 1).innerText()).toMatch(/1 ft 10 in\s+1 ft 11 in/)
  // Once only: home is home again.
  await page.goBack()
  await titled(page, 'Quillet Cove')
  await close()
})

test('the demo’s page at the lake speaks as the browser does, or as was chosen where docks are planned', async () => {
  const { words } = JSON.parse(await readFile(join(inject('dist'), 'words/de.json'), 'utf8'))
  const { page, close } = await open({ path: '/lake.html', viewport: PHONE, locale: 'de-DE', fresh: true })
  await titled(page, words.waterside['welcome.title'])
  expect(await page.evaluate(() => [document.documentElement.lang, document.title])).toEqual([
    'de',
    'Leadline am See',
  ])
  expect(await page.locator('[data-offline=ready]').textContent()).toContain('ohne Netz')
  await page.evaluate(() => localStorage.setItem('leadline-demo-language', 'en'))
  await page.reload()
  await titled(page, 'Which dock?')
  await close()
})
