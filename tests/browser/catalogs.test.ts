import { rmSync, writeFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { afterAll, beforeAll, expect, inject, test } from 'vitest'
import { demoCatalog, demoDesign, derive, ENGLISH, moneyIn, parseCatalog } from '../../rules/index.ts'
import { buildFrameworks, FRAMEWORKS } from './frameworks/build.ts'
import { someOf } from './support/at-length.ts'
import { events, open, read, withBrowser } from './support/open.ts'
import { type Site, serve } from './support/server.ts'

withBrowser()

/** The demo shop's parts at twice their prices: what is shown tells whose prices they are. */
const dearer = (value: unknown, key = ''): unknown =>
  typeof value === 'number' && /price/i.test(key)
    ? 2 * value
    : Array.isArray(value)
      ? value.map((each) => dearer(each, key))
      : value !== null && typeof value === 'object'
        ? Object.fromEntries(
            Object.entries(value).map(([name, each]) => [name, dearer(each, key === 'prices' ? key : name)]),
          )
        : value
const parsed = parseCatalog(dearer({ ...demoCatalog, id: 'dear-shop', currency: 'EUR' }))
if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
const shop = parsed.value

let folder = ''
let site: Site
beforeAll(async () => {
  folder = await buildFrameworks()
  writeFileSync(join(folder, 'shop.json'), JSON.stringify(shop))
  site = await serve([inject('dist'), folder, resolve('tests/browser/pages')])
})
afterAll(async () => {
  await site.close()
  rmSync(folder, { recursive: true })
})

const price = moneyIn(shop.currency, ENGLISH)(derive(demoDesign, shop).totals.price)
const demoPrice = moneyIn(demoCatalog.currency, ENGLISH)(derive(demoDesign, demoCatalog).totals.price)

test('the two shops are told apart by their prices', () => {
  expect(derive(demoDesign, shop).totals.price).toBe(2 * derive(demoDesign, demoCatalog).totals.price)
})

/** How each framework sets it; then with the element's code there only after the page's own. */
const SET = [...FRAMEWORKS, ...FRAMEWORKS.map((name) => `${name}-late`)].map((name) => [name] as const)

test.each(someOf(SET, FRAMEWORKS.length + 1))(
  '%s: the shop’s own price, from an address that is set as a property or attribute',
  async (name) => {
    const { page, close } = await open({ at: site.url, path: `/${name}.html?shop=/shop.json` })
    expect(await page.locator('.sum-bar strong').textContent()).toBe(price)
    expect(await read(page, (e) => e.catalog.id)).toBe(shop.id)
    await close()
  },
)

test.each(SET)('%s: no prices at all where the shop’s are not there, and the page is told', async (name) => {
  const { page, close } = await open({
    at: site.url,
    path: `/${name}.html?shop=/nowhere.json`,
    elements: 0,
    expected: /404/,
  })
  await page.locator('.failed').waitFor()
  await expect.poll(() => events(page, 'leadline-error')).toHaveLength(1)
  expect(await page.locator('.failed').textContent()).toContain('404')
  expect(await read(page, (e) => [e.catalog, e.dock] as unknown)).toEqual([null, null])
  expect(await page.locator('.sum-bar').count()).toBe(0)
  expect(await page.locator('body').textContent()).not.toContain(demoPrice)
  await close()
})

test('a property that is no catalog shows no prices, tells whoever listens after it was put in, and can be mended', async () => {
  const { page, close } = await open({ at: site.url, path: '/bare.html', elements: 0 })
  await page.evaluate("import('/leadline.js')")
  const heard = await page.evaluate(async () => {
    const element = document.createElement('leadline-dock')
    element.setAttribute('start', 'example')
    Object.assign(element, { catalog: { format: 'leadline/catalog', version: 1 } })
    document.body.append(element)
    // As a framework does once the page is drawn.
    return new Promise<{ code: string; path: string }>((done) =>
      element.addEventListener('leadline-error', (event) => done((event as CustomEvent).detail), {
        once: true,
      }),
    )
  })
  expect(heard).toMatchObject({ code: 'catalog' })
  await page.locator('.failed').waitFor()
  await page.locator('leadline-dock').evaluate((e, catalog) => Object.assign(e, { catalog }), shop)
  await page.locator('.sum-bar').waitFor()
  expect(await page.locator('.sum-bar strong').textContent()).toBe(price)
  // And taken away again by a bad one: the prices of before are not those that were asked for.
  await page.locator('leadline-dock').evaluate((e) => Object.assign(e, { catalog: { no: 'catalog' } }))
  await page.locator('.failed').waitFor()
  expect(await page.locator('.sum-bar').count()).toBe(0)
  await close()
})

test('another catalog while the page is open keeps the dock in hand', async () => {
  const { page, close } = await open({ at: site.url, path: '/bare.html', elements: 0 })
  await page.evaluate("import('/leadline.js')")
  await page.evaluate(async () => {
    document.body.insertAdjacentHTML('beforeend', '<leadline-dock start="example"></leadline-dock>')
    await (window as unknown as { leadlineReady: Promise<void> }).leadlineReady
  })
  await page.getByRole('button', { name: 'One section more' }).click()
  await page.locator('leadline-dock').evaluate(
    (e) =>
      new Promise<void>((done) => {
        e.addEventListener('leadline-ready', () => done(), { once: true })
        e.setAttribute('catalog', '/shop.json')
      }),
  )
  expect(await read(page, (e) => [e.catalog.id, e.design.dock.sections])).toEqual([shop.id, 6])
  await page.getByRole('button', { name: 'Undo' }).click()
  expect(await read(page, (e) => e.design.dock.sections)).toBe(5)
  // A catalog as a value takes the place of the one in use: nothing begins anew, and the dock in hand stays.
  await page.getByRole('button', { name: 'One section more' }).click()
  await page.locator('leadline-dock').evaluate((e, catalog) => Object.assign(e, { catalog }), demoCatalog)
  await expect.poll(() => read(page, (e) => e.catalog?.id)).toBe(demoCatalog.id)
  expect(await read(page, (e) => [e.ready, e.design.dock.sections] as unknown)).toEqual([true, 6])
  await page.getByRole('button', { name: 'Undo' }).click()
  expect(await read(page, (e) => e.design.dock.sections)).toBe(5)
  // A design by an address is one step, too.
  await page.locator('leadline-dock').evaluate((e) => Object.assign(e, { design: '/small.json' }))
  await expect.poll(() => read(page, (e) => e.design.name)).toBe('Small one')
  await page.getByRole('button', { name: 'Undo' }).click()
  expect(await read(page, (e) => e.design.name)).toBe('Quillet Cove')
  await close()
})

test('a catalog that is slow is waited for in words, at a height of its own; one that never comes is given up', async () => {
  const { page, close } = await open({
    at: site.url,
    path: '/plain.html?shop=/slow/never/shop.json',
    elements: 0,
    clock: true,
  })
  await page.clock.runFor(1000)
  const box = page.locator('.failed')
  await box.waitFor()
  expect(await box.textContent()).toContain('Loading the shop’s parts')
  expect((await box.boundingBox())!.height).toBeGreaterThan(200)
  await page.clock.runFor(8000)
  await expect.poll(() => box.textContent()).toContain('longer than usual')
  expect(await page.getByRole('button', { name: 'Try again' }).count()).toBe(1)
  await page.clock.runFor(12_000)
  await expect.poll(() => box.textContent()).toContain('no answer within 20 s')
  const [error] = await events(page, 'leadline-error')
  expect(error?.detail).toMatchObject({ code: 'catalog', path: '/slow/never/shop.json' })
  await page.getByRole('button', { name: 'Try again' }).click()
  await page.clock.runFor(1000)
  await expect.poll(() => box.textContent()).toContain('Loading the shop’s parts')
  await close()
})

test('one that takes longer than it stays silent comes', async () => {
  const { page, close } = await open({ at: site.url, path: '/plain.html?shop=/slow/1500/shop.json' })
  expect(await page.locator('.sum-bar strong').textContent()).toBe(price)
  await close()
})
