/** What is sent is what was shown and agreed to; what cannot be sent waits, is said to, and can be taken back. */
import { resolve } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, inject, test } from 'vitest'
import { parseRequest } from '../../rules/index.ts'
import { open, read, withBrowser } from './support/open.ts'
import { type Site, serve } from './support/server.ts'

withBrowser()

let site: Site
beforeAll(async () => {
  site = await serve([inject('dist'), resolve('tests/browser/pages')])
})
afterAll(() => site.close())

const at = () => ({ at: site.url, path: '/sources.html', fresh: true, expected: /Failed to load|ERR_/ })
const TEXT = 'We keep what you send for a year, to make your quote.'

const ask = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: 'Ask for a quote' }).click()
  await page.getByLabel('Your name').fill('A. Example')
  await page.getByLabel('Email').fill('a@example.org')
}
const send = (page: Page) => page.getByRole('button', { name: 'Send the request' })
const keptIn = (page: Page): Promise<string[]> =>
  page.evaluate(() => Object.keys(localStorage).filter((name) => name.startsWith('leadline-request/')))
const sentBodies = (): Record<string, unknown>[] => site.posted.map(({ body }) => JSON.parse(body))

test('a box that the shop asks for is ticked first; what is shown is what is sent', async () => {
  const { page, close } = await open(at())
  await page.locator('leadline-dock').evaluate((e, text) => {
    const element = e as unknown as { catalog: { shop?: object } }
    const consent = { text, tick: true, web: 'https://shop.example/privacy' }
    element.catalog = { ...element.catalog, shop: { ...element.catalog.shop, consent } }
  }, TEXT)
  await expect.poll(() => read(page, (e) => e.catalog.shop?.consent?.text)).toBe(TEXT)
  await ask(page)
  expect(await page.locator('dialog .consent p').first().textContent()).toContain(TEXT)
  expect(await page.getByRole('link', { name: 'More about that' }).getAttribute('rel')).toContain('noopener')
  const before = site.posted.length
  await send(page).click()
  expect(await page.locator('dialog .fault').allTextContents()).toEqual([
    'Please tick the box: the shop asks for it before it takes a request.',
  ])
  expect(
    await page.evaluate(() =>
      document.querySelector('leadline-dock')!.shadowRoot!.activeElement?.getAttribute('name'),
    ),
  ).toBe('agreed')
  expect(site.posted.length).toBe(before)
  await page.getByLabel('I agree').check()
  await page.getByText('See everything that is sent').click()
  const shown = JSON.parse((await page.locator('dialog .exactly').textContent())!)
  // By Enter, as in any form.
  await page.getByLabel('Email').press('Enter')
  await page.locator('dialog .done').waitFor()
  const body = sentBodies().at(-1)!
  const { format: _f, version: _v, id: _i, at: _a, reference: _r, ...rest } = body
  expect(rest).toEqual(shown)
  expect(body.consent).toEqual({ text: TEXT, ticked: true })
  expect(parseRequest(body).ok).toBe(true)
  await close()
})

test('without a connection it waits, says so, and goes once there is one, once and under the same number', async () => {
  const { page, context, close } = await open(at())
  const before = site.posted.length
  await ask(page)
  expect(await keptIn(page)).toEqual([])
  await context.setOffline(true)
  await send(page).click()
  await page.locator('.not-sent').waitFor()
  expect(await page.locator('.not-sent .fault').textContent()).toMatch(
    /^Waiting, not sent: .* Your request [0-9a-f]{8} is kept/,
  )
  expect(await page.locator('dialog .done').count()).toBe(0)
  expect(site.posted.length).toBe(before)
  const [name, ...more] = await keptIn(page)
  expect(more).toEqual([])
  await context.setOffline(false)
  await page.locator('dialog .done').waitFor()
  expect(await page.locator('dialog .done').textContent()).toMatch(/^Sent\. /)
  expect(site.posted.length).toBe(before + 1)
  expect(name!.endsWith(`/${site.posted.at(-1)!.key}`)).toBe(true)
  expect(sentBodies().at(-1)!.id).toBe(site.posted.at(-1)!.key)
  expect(await keptIn(page)).toEqual([])
  await close()
})

test("a form of the page's own is agreed to by our box, shown as it is sent, and waits for a connection too", async () => {
  const { page, context, close } = await open(at())
  await page.locator('leadline-dock').evaluate((e, text) => {
    e.innerHTML =
      '<form slot="request" id="own"><input name="name" value="A. Example" /><input name="email" /><input name="agreed" value="yes" /></form>'
    const element = e as unknown as { catalog: { shop?: object } }
    element.catalog = {
      ...element.catalog,
      shop: { ...element.catalog.shop, consent: { text, tick: true } },
    }
  }, TEXT)
  await expect.poll(() => read(page, (e) => e.catalog.shop?.consent?.text)).toBe(TEXT)
  await page.getByRole('button', { name: 'Ask for a quote' }).click()
  await page.locator('#own [name=email]').fill('a@example.org')
  expect(await page.locator('dialog .consent p').first().textContent()).toContain(TEXT)
  const before = site.posted.length
  await send(page).click()
  // A field of the form's by that name is no box beside the shop's text.
  expect(await page.locator('dialog .fault').allTextContents()).toEqual([
    'Please tick the box: the shop asks for it before it takes a request.',
  ])
  await page.getByLabel('I agree').check()
  await page.getByText('See everything that is sent').click()
  const shown = JSON.parse((await page.locator('dialog .exactly').textContent())!)
  expect(shown.contact).toEqual({
    ...{ name: 'A. Example', contact: 'a@example.org', email: 'a@example.org' },
    note: 'agreed: yes',
  })
  await context.setOffline(true)
  await send(page).click()
  await page.locator('.not-sent').waitFor()
  expect(await page.locator('#own').isVisible()).toBe(false)
  expect(await keptIn(page)).toHaveLength(1)
  expect(site.posted.length).toBe(before)
  await context.setOffline(false)
  await page.locator('dialog .done').waitFor()
  expect(site.posted.length).toBe(before + 1)
  const { format: _f, version: _v, id: _i, at: _a, reference: _r, ...rest } = sentBodies().at(-1)!
  expect(rest).toEqual(shown)
  expect(rest.consent).toEqual({ text: TEXT, ticked: true })
  await close()
})

test('what was not sent goes at the next visit, and what was taken back does not', async () => {
  const { page, close } = await open(at())
  const before = site.posted.length
  let away = true
  await page.route('**/asked', (route) => (away ? route.abort() : route.continue()))
  await ask(page)
  await send(page).click()
  await page.locator('.not-sent').waitFor()
  const [name] = await keptIn(page)
  await page.getByRole('button', { name: 'Close' }).click()
  // It stands on the page, not in the dialog alone.
  await page.getByText(/^Waiting, not sent: your request [0-9a-f]{8} of /).waitFor()
  away = false
  await page.reload()
  await page.getByText(/^Sent\. The shop has your request [0-9a-f]{8}, which was waiting/).waitFor()
  expect(site.posted.length).toBe(before + 1)
  expect(name!.endsWith(`/${site.posted.at(-1)!.key}`)).toBe(true)
  expect(await keptIn(page)).toEqual([])

  away = true
  await ask(page)
  await page.getByLabel('Phone').fill('555 0100')
  await send(page).click()
  await page.locator('.not-sent').waitFor()
  expect((await keptIn(page)).length).toBe(1)
  await page.locator('dialog').getByRole('button', { name: 'Take it back' }).click()
  await page.getByText('Taken back. Nothing is sent.').waitFor()
  // What was typed is still there.
  expect(await page.getByLabel('Phone').inputValue()).toBe('555 0100')
  expect(await keptIn(page)).toEqual([])
  away = false
  await page.evaluate(() => dispatchEvent(new Event('online')))
  await page.reload()
  await page.getByRole('button', { name: 'Ask for a quote' }).waitFor()
  expect(site.posted.length).toBe(before + 1)
  await close()
})

test('a device that keeps nothing is told as one', async () => {
  const { page, close } = await open({
    ...at(),
    before: () => {
      Storage.prototype.setItem = () => {
        throw new DOMException('full', 'QuotaExceededError')
      }
    },
  })
  await page.route('**/asked', (route) => route.abort())
  await ask(page)
  await send(page).click()
  await page.locator('.not-sent').waitFor()
  expect(await page.locator('.not-sent .fault').textContent()).toBe(
    'Not sent: we couldn’t reach the shop’s server. This device keeps nothing of it either, so nothing will be sent by itself.',
  )
  expect(await page.getByRole('button', { name: 'Try again' }).count()).toBe(1)
  await close()
})
