/** A shop with a price list makes its catalog on the page: the list, by hand, wrong and right, saved, opened, loaded again, on a phone. */
import { readFileSync } from 'node:fs'
import AxeBuilder from '@axe-core/playwright'
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { type Catalog, parseCatalogText } from '../../rules/index.ts'
import type { LeadlineCatalogEditor } from '../../src/catalog-editor/leadline-catalog-editor.tsx'
import type { LeadlineDock } from '../../src/element/leadline-dock.ts'
import { PRICE_LIST } from '../catalog-editor/sample-price-list.ts'
import { open, PHONE, withBrowser } from './support/open.ts'

withBrowser()

const editorPage = (options = {}) => open({ path: '/catalog-editor.html', elements: 0, ...options })
const section = (page: Page, name: string) =>
  page.getByRole('navigation').getByRole('button', { name: new RegExp(`^${name}`) })
const inHand = (page: Page) =>
  page.evaluate(() => {
    const editor = document.querySelector<HTMLElement>(
      'leadline-catalog-editor',
    ) as unknown as LeadlineCatalogEditor
    return { catalog: editor.catalog, issues: editor.issues }
  })
const dockParts = (page: Page) =>
  page.evaluate(
    () =>
      (document.querySelector('leadline-dock') as LeadlineDock).dock?.parts.map(({ code, unitPrice }) => [
        code,
        unitPrice,
      ]) ?? [],
  )

async function takeIn(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Price list…' }).click()
  await page.getByLabel('Rows of your price list').fill(PRICE_LIST)
  await page.getByRole('button', { name: 'Read it' }).click()
  // The keyboard goes on at the heading, and need not go through every row.
  expect(await focused(page)).toBe('Take in a price list')
  await page.getByRole('button', { name: 'Past the rows' }).click()
  expect(await focused(page)).toBe('Take in 55 rows')
  await page.keyboard.press('Enter')
  await expect.poll(() => focused(page)).toBe('Frames')
}

/** What has the keyboard within the editor. */
const focused = (page: Page): Promise<string | null | undefined> =>
  page.locator('leadline-catalog-editor').evaluate((e) => e.shadowRoot?.activeElement?.textContent)

async function saved(page: Page, button: string | RegExp): Promise<Catalog> {
  await page.getByRole('button', { name: 'Save…' }).click()
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button }).click(),
  ])
  const parsed = parseCatalogText(readFileSync(await file.path(), 'utf8'))
  if (!parsed.ok) throw new Error(parsed.issues.map(({ path, message }) => `${path}: ${message}`).join('\n'))
  return parsed.value
}

test('from a price list to a saved catalog: the dock is built of it, what is wrong is told in place, and a reload loses nothing', async () => {
  const { page, close } = await editorPage()
  await page.getByRole('heading', { name: 'Your shop', exact: true }).waitFor()
  await page.getByLabel('Name', { exact: true }).first().fill('Alder Cove Docks')
  await page.getByLabel('Id', { exact: true }).fill('alder-cove')
  await takeIn(page)
  // The dock beside it takes the shop's own parts, on a frame of its own.
  await expect.poll(() => dockParts(page), { timeout: 60_000 }).toContainEqual(['F-48', 41200])
  expect(await dockParts(page)).toContainEqual(['HB-2', 1940])

  // A price by hand; then one that is none.
  await section(page, 'Frames').click()
  await page.getByLabel('Price').first().fill('433.50')
  await page.keyboard.press('Enter')
  await page.keyboard.press('Control+z')
  expect(await page.getByLabel('Price').first().inputValue()).toBe('412.00')
  await page.keyboard.press('Control+Shift+z')
  await expect.poll(() => dockParts(page)).toContainEqual(['F-48', 43350])
  await page.getByText('Details').first().click()
  await page.getByLabel('Length', { exact: true }).first().fill('eight feet')
  await page.keyboard.press('Enter')
  await expect.poll(async () => (await inHand(page)).issues.length).toBe(1)
  const told = page.getByText(/“eight feet”; expected a number from/).last()
  await told.waitFor()
  expect(await page.getByText('One thing to put right', { exact: false }).isVisible()).toBe(true)
  // The dock goes on with the last that was right.
  expect(await dockParts(page)).toContainEqual(['F-48', 43350])

  await page.reload()
  await page.getByText('One thing to put right', { exact: false }).waitFor()
  await page.getByRole('button', { name: 'frames[0].length' }).click()
  const field = page.getByLabel('Length', { exact: true }).first()
  expect(await field.inputValue()).toBe('eight feet')
  expect(await field.evaluate((e) => (e.getRootNode() as ShadowRoot).activeElement === e)).toBe(true)
  await field.fill('8 ft')
  await page.keyboard.press('Enter')
  await expect.poll(async () => (await inHand(page)).issues.length).toBe(0)

  const catalog = await saved(page, 'Save alder-cove.catalog.json')
  expect(catalog).toMatchObject({ name: 'Alder Cove Docks', id: 'alder-cove', edition: '2026-2' })
  expect(catalog.frames[0]).toMatchObject({ code: 'F-48', price: 43350, length: 2.4384 })
  expect(catalog.extras.filter(({ place }) => place === 'edge')).toHaveLength(40)
  await close()
})

test('a price list that is not taken in yet, and what was said of it, outlives a reload until it is taken in or put away', async () => {
  const { page, close } = await editorPage({ fresh: true })
  const waits = page.getByText('A price list waits to be taken in.')
  const field = page.getByLabel('Rows of your price list')
  const goOn = page.getByRole('button', { name: 'Go on with it' })
  const shop = page.getByRole('heading', { name: 'Your shop', exact: true })
  const reloaded = async () => {
    await page.reload()
    await shop.waitFor()
  }
  await shop.waitFor()
  expect(await waits.count()).toBe(0)
  await page.getByRole('button', { name: 'Price list…' }).click()
  await field.fill(PRICE_LIST)
  await reloaded()
  await waits.waitFor()
  await goOn.click()
  expect(await field.inputValue()).toBe(PRICE_LIST)

  await page.getByRole('button', { name: 'Read it' }).click()
  await page.getByLabel('Column 5, Weight (lb)').selectOption('none')
  await page.getByLabel('Plain sizes are in').selectOption('in')
  await page.getByLabel('What line 21 is').selectOption('leave')
  await page.getByRole('checkbox', { name: 'legs' }).uncheck()
  const said = () =>
    Promise.all([
      page.getByLabel('Column 5, Weight (lb)').inputValue(),
      page.getByLabel('Plain sizes are in').inputValue(),
      page.getByLabel('What line 21 is').inputValue(),
      page.getByRole('checkbox', { name: 'legs' }).isChecked(),
    ])
  const asSaid = ['none', 'in', 'leave', false]
  expect(await said()).toEqual(asSaid)
  // Left for another section, and come back to; loaded again; put back to the field and read once more.
  await section(page, 'Legs').click()
  await goOn.click()
  expect(await said()).toEqual(asSaid)
  await reloaded()
  await goOn.click()
  expect(await said()).toEqual(asSaid)
  await page.getByRole('button', { name: 'Back to pasting' }).click()
  await page.getByRole('button', { name: 'Read it' }).click()
  expect(await said()).toEqual(asSaid)

  await page.getByRole('button', { name: /^Take in/ }).click()
  await page.getByRole('heading', { name: 'Frames', exact: true }).waitFor()
  expect(await waits.count()).toBe(0)
  await reloaded()
  expect(await waits.count()).toBe(0)

  await page.getByRole('button', { name: 'Price list…' }).click()
  await field.fill('Code\tName\tPrice')
  await page.getByRole('button', { name: 'Put the list away' }).click()
  expect(await field.inputValue()).toBe('')
  await reloaded()
  expect(await waits.count()).toBe(0)
  await close()
})

test('columns that are taken as what they are not are told where they are chosen, before anything is taken in', async () => {
  const { page, close } = await editorPage()
  await page.getByRole('heading', { name: 'Your shop', exact: true }).waitFor()
  await page.getByRole('button', { name: 'Price list…' }).click()
  await page.getByLabel('Rows of your price list').fill(PRICE_LIST)
  await page.getByRole('button', { name: 'Read it' }).click()
  const takeIt = page.getByRole('button', { name: /^Take in/ })
  const told = page.locator('#price-list-doubts li')
  await takeIt.waitFor()
  expect(await told.count()).toBe(0)
  const price = page.getByLabel('Column 3, Retail price')
  await price.selectOption('mass')
  // The other column that is a weight stays one.
  expect(await page.getByLabel('Column 5, Weight (lb)').inputValue()).toBe('mass')
  expect(await told.allTextContents()).toEqual([
    'Columns 3, 5 are all taken as weight; only the first of them counts. Line 4: “$498.00” counts, “112” does not.',
    'Column 3, Retail price: taken as weight, though its heading says something else. Line 3 has “$412.00”; expected a weight such as 85 lb.',
    '55 of 55 rows would give nothing. Line 3, Dock section 4 x 8 ft: no price. Is each column what it should be?',
  ])
  expect(await takeIt.getAttribute('aria-describedby')).toBe('price-list-doubts')
  await price.selectOption('price')
  await expect.poll(() => told.count()).toBe(0)
  expect(await takeIt.getAttribute('aria-describedby')).toBeNull()
  await page.getByRole('button', { name: 'Put the list away' }).click()

  await page.getByLabel('Rows of your price list').fill('Code\tName\tPrice\tLength\nL-60\tLeg\t90.00\t60')
  await page.getByRole('button', { name: 'Read it' }).click()
  await page
    .getByText(
      'Line 2, Leg, measures 60 ft; expected for “Leg”: 1 ft 6 in to 30 ft. With plain sizes in inches it would be 5 ft.',
    )
    .waitFor()
  await page.getByLabel('Plain sizes are in').selectOption('in')
  await expect.poll(() => told.count()).toBe(0)
  await page.getByRole('button', { name: 'Put the list away' }).click()
  await close()
})

test('by keyboard and search, in either unit, with undo; another file and one that is wrong; nothing against the rules of accessibility', async () => {
  const { page, close } = await editorPage()
  await page.getByRole('heading', { name: 'Your shop', exact: true }).waitFor()
  await page.getByLabel('Search the catalog').fill('braced from')
  await page.keyboard.press('Tab')
  await page.keyboard.press('Enter')
  const from = page.getByLabel('Braced from')
  await expect
    .poll(() => from.evaluate((e) => (e.getRootNode() as ShadowRoot).activeElement === e))
    .toBe(true)
  expect(await from.inputValue()).toBe('5 ft')
  await page.keyboard.type('6 ft')
  await page.keyboard.press('Enter')
  await page.getByRole('button', { name: 'm, mm, kg' }).click()
  expect(await from.inputValue()).toBe('1.8288 m')
  expect(await page.locator('leadline-dock').getAttribute('units')).toBe('metric')
  await page.keyboard.press('Control+z')
  expect(await from.inputValue()).toBe('1.524 m')
  await page.keyboard.press('Control+Shift+z')
  expect(await from.inputValue()).toBe('1.8288 m')
  await page.getByRole('button', { name: 'Changes', exact: true }).click()
  await page.getByText('Rules of thumb, Value: 1.524 m → 1.8288 m').waitFor()
  await page.getByRole('button', { name: /^Put back/ }).click()
  expect((await inHand(page)).catalog?.rules.braceFrom.value).toBe(1.524)

  const opened = page.locator('leadline-catalog-editor input[type="file"]').first()
  await opened.setInputFiles({
    name: 'own.json',
    mimeType: 'application/json',
    buffer: Buffer.from('{"format":"leadline/design"}'),
  })
  await page.getByText('own.json is no catalog', { exact: false }).waitFor()
  // Its styles are the editor's own: the dock's come later than its page, and not here.
  const bad = page.locator('leadline-catalog-editor .telling .notice.bad')
  expect(await bad.evaluate((e) => getComputedStyle(e).borderInlineStartWidth)).toBe('4px')
  const shop = readFileSync('tests/support/metric-shop.json')
  await opened.setInputFiles({ name: 'shop.json', mimeType: 'application/json', buffer: shop })
  await page.getByText('Opened Stegbau Musterwinkel', { exact: false }).waitFor()
  await expect.poll(() => dockParts(page)).toContainEqual(['R100', 51900])
  for (const name of ['Frames', 'Names in languages']) {
    await section(page, name).click()
    const { violations } = await new AxeBuilder({ page })
      .include('leadline-catalog-editor')
      .exclude('leadline-dock')
      .analyze()
    expect(
      violations.map(({ id, nodes }) => [name, id, nodes[0]?.html]),
      name,
    ).toEqual([])
  }
  await close()
})

test('in the reader’s language, its heading too, with its decimal mark: both marks are read, and what is being typed stays', async () => {
  const { page, close } = await editorPage({ fresh: true, locale: 'de-DE' })
  await page.getByRole('heading', { name: 'Ihr Betrieb', exact: true }).waitFor()
  expect(await page.locator('html').getAttribute('lang')).toBe('de')
  expect(await page.title()).toBe('Leadline: der Katalog Ihres Betriebs')
  expect(await page.locator('header [data-text]').allTextContents()).toEqual([
    'Der Katalog Ihres Betriebs',
    'Sagen Sie, was Sie herstellen und was es kostet; der Steg daneben wird daraus gebaut.',
    'Am Anfang steht ein erfundener Betrieb.',
    'Anleitung (englisch)',
  ])
  // In meters, as where the browser is from; the dock beside it too.
  const metric = page.getByRole('button', { name: 'm, mm, kg' })
  expect(await metric.getAttribute('aria-pressed')).toBe('true')
  expect(await page.locator('leadline-dock').getAttribute('units')).toBe('metric')
  await section(page, 'Rahmen').click()
  await page.getByText('Einzelheiten').first().click()
  const first = async () => (await inHand(page)).catalog!.frames[0]!
  const length = page.locator('[data-path="frames/0/length"] input')
  const editor = page.locator('leadline-catalog-editor')
  expect(await length.inputValue()).toBe('2,4384 m')
  await length.fill('')
  for (const typed of ['2', '2,', '2,5']) {
    await length.press(typed.at(-1)!)
    expect(await length.inputValue()).toBe(typed)
    // The same figure in other words takes nothing from the hand.
    await editor.evaluate((e, lang) => e.setAttribute('lang', lang), typed.length === 2 ? 'en' : 'de')
    await page.getByRole('button', { name: typed.length === 2 ? 'Price list…' : 'Preisliste…' }).waitFor()
    expect(await length.inputValue()).toBe(typed)
  }
  await length.press('Enter')
  expect((await first()).length).toBe(2.5)
  expect(await length.inputValue()).toBe('2,5 m')
  await length.fill('2.25')
  await length.press('Enter')
  expect(await length.inputValue()).toBe('2,25 m')
  expect((await first()).length).toBe(2.25)
  const price = page.getByLabel('Preis', { exact: true }).first()
  await price.fill('1.234,5')
  await price.press('Enter')
  expect(await price.inputValue()).toBe('1234,50')
  expect((await first()).price).toBe(123450)
  await length.fill('lang')
  await length.press('Enter')
  expect(await page.getByText(/„lang“; erwartet wird eine Zahl von 0,\d+ m bis/).count()).toBeGreaterThan(0)

  await page.locator('#language').selectOption('es')
  await page.getByRole('heading', { name: 'El catálogo de su taller' }).waitFor()
  await page.getByRole('button', { name: 'Lista de precios…' }).waitFor()
  await close()
})

test('on a phone: one of catalog and dock at a time, sections by a list, nothing wider than the window', async () => {
  const { page, close } = await editorPage({ viewport: PHONE, hasTouch: true })
  await page.getByRole('heading', { name: 'Your shop', exact: true }).waitFor()
  const width = () => page.evaluate(() => document.documentElement.scrollWidth)
  await takeIn(page)
  const sections = page.getByRole('navigation').getByLabel('Sections of the catalog')
  for (const value of ['frames', 'extras', 'rules', 'stock']) {
    await sections.selectOption(value)
    expect(await width(), value).toBeLessThanOrEqual(PHONE.width)
  }
  expect(await page.locator('leadline-dock').isVisible()).toBe(false)
  await page.getByRole('button', { name: 'Dock', exact: true }).click()
  expect(await page.locator('leadline-dock').isVisible()).toBe(true)
  await expect.poll(() => dockParts(page), { timeout: 60_000 }).toContainEqual(['F-48', 41200])

  // Its words come with the language, what the schema says of a field too.
  await page.locator('leadline-catalog-editor').evaluate((e) => e.setAttribute('lang', 'de'))
  await page.getByRole('button', { name: 'Katalog', exact: true }).click()
  await page.getByRole('navigation').getByRole('combobox').selectOption('shop')
  await page.getByRole('heading', { name: 'Ihr Betrieb' }).waitFor()
  await page.getByText('Ihre eigene Ausgabe dieses Katalogs').waitFor()
  expect(await width()).toBeLessThanOrEqual(PHONE.width)
  await close()
})
