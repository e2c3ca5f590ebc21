import type { Page, Route } from 'playwright-core'
import { expect, test } from 'vitest'
import { events, open, read, withBrowser } from './support/open.ts'

withBrowser()

const gone = (route: Route) => route.fulfill({ status: 404, body: '' })
const QUIET = /404|Failed to load|ERR_/
const more = (page: Page) => page.getByRole('button', { name: 'One section more' })
const ready = (page: Page) =>
  page.evaluate(() => (window as unknown as { leadlineReady: Promise<void> }).leadlineReady)

test.each([['/kept.html'], ['/linked.html'], ['/plain-element.html']])(
  'a part that went with an older edition of the site is told where the click was, and a reload keeps the work (%s)',
  async (path) => {
    const { page, close } = await open({
      path,
      expected: QUIET,
      viewport: { width: 390, height: 844 },
      fresh: true,
    })
    await more(page).click()
    await page.route(/leadline\/request-dialog-/, gone)
    const button = page.getByRole('button', { name: 'Ask for a quote' })
    await button.click()
    const said = page.locator('.asked .missing')
    await said.waitFor()
    expect(await said.textContent()).toContain('Reload the page to go on')
    // In sight, and next to what was pressed.
    const [there, pressed] = [(await said.boundingBox())!, (await button.boundingBox())!]
    expect(Math.abs(pressed.y - (there.y + there.height))).toBeLessThan(120)
    expect(there.y).toBeGreaterThanOrEqual(0)
    expect(there.y + there.height).toBeLessThanOrEqual(844)
    await page.unroute(/leadline\/request-dialog-/)
    await Promise.all([
      page.waitForEvent('load'),
      page.getByRole('button', { name: 'Reload the page' }).click(),
    ])
    await ready(page)
    expect(await read(page, (e) => e.design.dock.sections)).toBe(6)
    await page.getByRole('button', { name: 'Ask for a quote' }).click()
    await page.getByLabel('Your name').waitFor()
    await close()
  },
)

test('a scene that went with an older edition is told under the drawing, which stays', async () => {
  const { page, close } = await open({ path: '/kept.html', expected: QUIET, without: /leadline\/scene-/ })
  const said = page.locator('.picture .missing')
  await said.waitFor()
  expect(await said.textContent()).toContain('Reload the page to go on')
  expect(await page.locator('.stage svg').count()).toBeGreaterThan(0)
  // Nothing is offered that only the scene has, and all else goes on.
  expect(await page.getByRole('group', { name: 'View' }).count()).toBe(0)
  await more(page).click()
  expect(await read(page, (e) => e.design.dock.sections)).toBe(6)
  await close()
})

test('kept for that reload alone, where the page asked for no keeping', async () => {
  const { page, close } = await open({ path: '/plain-element.html', fresh: true })
  await more(page).click()
  await page.reload()
  await ready(page)
  expect(await read(page, (e) => e.design.dock.sections)).toBe(5)
  await close()
})

test('without a connection it is that which is told; with one again it comes, by a reload where the browser remembers', async () => {
  const { page, context, close } = await open({ path: '/kept.html', expected: QUIET, fresh: true })
  // What the page still fetches by itself is not what is asked for here.
  await page.waitForLoadState('networkidle')
  await context.setOffline(true)
  await page.getByRole('button', { name: 'Ask for a quote' }).click()
  const said = page.locator('.asked .missing')
  await said.waitFor()
  expect(await said.textContent()).toContain('Check your connection')
  await context.setOffline(false)
  await said.getByRole('button', { name: 'Try again' }).click()
  // A browser may hold on to what once failed, and never ask for it again: then it is the reload that helps.
  const reload = page.getByRole('button', { name: 'Reload the page' })
  await page.locator('dialog.request').or(reload).waitFor()
  if (await reload.isVisible()) {
    await Promise.all([page.waitForEvent('load'), reload.click()])
    await ready(page)
    await page.getByRole('button', { name: 'Ask for a quote' }).click()
  }
  await page.locator('dialog.request').waitFor()
  await close()
})

test('a link that cannot be made for want of its code says so', async () => {
  const { page, close } = await open({
    path: '/linked.html',
    expected: QUIET,
    without: /leadline\/link-/,
  })
  await more(page).click()
  await page.locator('.notice.bad').waitFor()
  expect(await page.locator('.notice.bad').textContent()).toContain('Reload the page to go on')
  expect((await events(page, 'leadline-error'))[0]?.detail).toMatchObject({ code: 'link' })
  // Once, not at every edit.
  await page.getByRole('button', { name: 'Close' }).click()
  await more(page).click()
  // Its link is tried a quarter of a second after an edit, when the hand rests; nothing is told of it then.
  await page.waitForTimeout(500)
  expect((await events(page, 'leadline-error')).length).toBe(1)
  await close()
})

test('what is thrown when it begins leaves a word, an event and ways on instead of a blank', async () => {
  const { page, close } = await open({
    path: '/bare.html',
    elements: 0,
    before: () => {
      const real = Object.freeze
      Object.freeze = ((value: object) => {
        // What a dock is given out as.
        if ((window as unknown as { broken: boolean }).broken && value && 'fingerprint' in value)
          throw new Error('thrown on purpose')
        return real(value)
      }) as typeof real
    },
  })
  await page.evaluate("import('./leadline.js')")
  await page.evaluate(() => {
    Object.assign(window, { broken: true })
    document.body.insertAdjacentHTML('beforeend', '<leadline-dock start="example"></leadline-dock>')
  })
  await page.locator('.failed').waitFor()
  expect(await page.locator('.failed').textContent()).toContain('Something went wrong here')
  expect((await events(page, 'leadline-error'))[0]?.detail).toMatchObject({
    code: 'start',
    message: 'thrown on purpose',
  })
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as a file' }).click(),
  ])
  expect(download.suggestedFilename()).toMatch(/\.leadline\.json$/)
  await page.evaluate(() => Object.assign(window, { broken: false }))
  await page.getByRole('button', { name: 'Try again' }).click()
  await page.locator('.sum-bar').waitFor()
  await close()
})
