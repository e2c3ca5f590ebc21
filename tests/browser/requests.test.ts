import { resolve } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, inject, test } from 'vitest'
import { demoCatalog, parseRequest, verifyRequest } from '../../rules/index.ts'
import { events, open, read, withBrowser } from './support/open.ts'
import { type Site, serve } from './support/server.ts'

withBrowser()

let site: Site
beforeAll(async () => {
  site = await serve([inject('dist'), resolve('tests/browser/pages')])
})
afterAll(() => site.close())

const to = (page: Page, url: string): Promise<void> =>
  page.locator('leadline-dock').evaluate(
    (e, url) =>
      new Promise<void>((done) => {
        e.addEventListener('leadline-ready', () => done(), { once: true })
        e.setAttribute('request-url', url)
      }),
    url,
  )
const fill = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: 'Ask for a quote' }).click()
  await page.getByLabel('Your name').fill('A. Example')
  await page.getByLabel('Email').fill('a@example.org')
}
const send = (page: Page) => page.getByRole('button', { name: 'Send the request' })
const at = () => ({ at: site.url, path: '/sources.html', expected: /50[03]|Failed to load/ })

test.each([
  ['./login', 'Not confirmed: the shop’s server answered, but didn’t say it has your request.'],
  ['./page', 'Not confirmed: the shop’s server answered, but didn’t say it has your request.'],
  ['./empty', 'Not confirmed: the shop’s server answered, but didn’t say it has your request.'],
  ['./broken', 'Not sent: the shop’s server turned it down (its answer: 500).'],
  ['./refused', 'Not sent: the shop’s server turned it down (its answer: 503).'],
])('a server that answers %s is not told as sent, and the customer has other ways', async (url, said) => {
  const { page, close } = await open(at())
  await to(page, url)
  await fill(page)
  await send(page).click()
  await page.locator('.not-sent').waitFor()
  expect(await page.locator('.not-sent .fault').textContent()).toBe(said)
  expect(await page.locator('dialog .done').count()).toBe(0)
  for (const name of ['Try again', 'Save the dock as a file', 'Copy the request', 'Write an email'])
    expect(await page.getByRole('button', { name }).count(), name).toBe(1)
  expect(await page.getByLabel('Your name').inputValue()).toBe('A. Example')
  expect((await events(page, 'leadline-error')).at(-1)?.detail).toMatchObject({ code: 'request', path: url })
  await close()
})

test('a server that hangs is given up in time; what is tried again there goes under the same number', async () => {
  const { page, close } = await open({ ...at(), clock: true })
  await to(page, './hang')
  await fill(page)
  const before = site.posted.length
  await send(page).click()
  await page.getByRole('button', { name: 'Sending…' }).waitFor()
  await expect.poll(() => site.posted.length).toBe(before + 1)
  await page.clock.runFor(21_000)
  await page.locator('.not-sent').waitFor()
  expect(await page.locator('.not-sent .fault').textContent()).toContain('no answer came in time')
  await page.getByRole('button', { name: 'Try again' }).click()
  await expect.poll(() => site.posted.length).toBe(before + 2)
  const [first, second] = site.posted.slice(before)
  expect(first!.key).toMatch(/^[0-9a-f-]{36}$/)
  expect(second!.key).toBe(first!.key)
  expect(second!.body).toBe(first!.body)
  await close()
})

test('a receipt is what counts as sent; the same request sent twice is one, another dock is another', async () => {
  const { page, close } = await open(at())
  const send1 = async (): Promise<string> => {
    await fill(page)
    await send(page).click()
    await page.locator('dialog .done').waitFor()
    const said = await page.locator('dialog .done').textContent()
    await page.getByRole('button', { name: 'Close' }).click()
    return said!
  }
  const first = await send1()
  const code = (await read(page, (e) => e.dock.fingerprint.all)).slice(0, 12)
  expect(first).toMatch(
    /^Sent. The shop has it as R-\d+\. Your request number is [0-9a-f]{8}, your check code /,
  )
  expect(first).toContain(code)
  expect(await send1()).toBe(first)
  await page.getByRole('button', { name: 'One section more' }).click()
  expect(await send1()).not.toBe(first)
  const body = JSON.parse(site.posted.at(-1)!.body) as Record<string, unknown>
  expect(body).toMatchObject({
    format: 'leadline/request',
    version: 1,
    id: site.posted.at(-1)!.key,
    design: await read(page, (e) => e.design),
    catalog: { id: demoCatalog.id, version: demoCatalog.edition },
    fingerprint: await read(page, (e) => e.dock.fingerprint),
    totals: await read(page, (e) => e.dock.totals),
    contact: { name: 'A. Example', contact: 'a@example.org', note: '', email: 'a@example.org' },
    reference: site.posted.at(-1)!.key!.slice(0, 8),
  })
  // Whoever receives it can work it out again.
  const received = parseRequest(body)
  expect(received.ok && verifyRequest(received.value, demoCatalog)).toEqual([])
  expect(Math.abs(Date.parse(String(body.at)) - Date.now())).toBeLessThan(60_000)
  await close()
})

test('a page that takes it may hand a receipt back, and it is sent nowhere else', async () => {
  const { page, close } = await open({ ...at(), fresh: true })
  const before = site.posted.length
  await page.evaluate(() =>
    document.addEventListener('leadline-request', (event) => {
      event.preventDefault()
      ;(event as CustomEvent).detail.receipt = { reference: 'P-5' }
    }),
  )
  await fill(page)
  await send(page).click()
  await page.locator('dialog .done').waitFor()
  expect(await page.locator('dialog .done').textContent()).toContain('This website has your request as P-5')
  expect(site.posted.length).toBe(before)
  await close()
})

test('where nobody takes it nothing is said to be sent: a file, a text, an email instead', async () => {
  const { page, context, close } = await open({ at: site.url, path: '/linked.html', fresh: true })
  await context.grantPermissions(['clipboard-read', 'clipboard-write'])
  await fill(page)
  await send(page).click()
  await page.locator('.not-sent').waitFor()
  expect(await page.locator('.not-sent .fault').textContent()).toContain('nothing was sent')
  expect(await page.getByRole('button', { name: 'Try again' }).count()).toBe(0)
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save the dock as a file' }).click(),
  ])
  expect(download.suggestedFilename()).toBe('Quillet-Cove.leadline.json')
  await page.getByRole('button', { name: 'Copy the request' }).click()
  await page.getByText('Copied.').waitFor()
  const copied = await page.evaluate(() => navigator.clipboard.readText())
  const code = (await read(page, (e) => e.dock.fingerprint.all)).slice(0, 12)
  for (const part of [code, '#leadline=', 'From: A. Example, a@example.org', '$'])
    expect(copied).toContain(part)
  const mail = await page.evaluate(
    () =>
      new Promise<string>((done) => {
        const real = HTMLAnchorElement.prototype.click
        HTMLAnchorElement.prototype.click = function () {
          if (this.href.startsWith('mailto:')) done(this.href)
          else real.call(this)
        }
        const root = document.querySelector('leadline-dock')!.shadowRoot!
        const button = [...root.querySelectorAll('dialog button')].find(
          (each) => each.textContent === 'Write an email',
        )
        ;(button as HTMLElement).click()
      }),
  )
  const draft = new URL(mail)
  expect(draft.searchParams.get('subject')).toBe('Request for a quote: Quillet Cove')
  expect(draft.searchParams.get('body')).toContain(code)
  expect(mail.length).toBeLessThanOrEqual(1900)
  await close()
})

test('what else is wished goes along by itself; a phone number alone is enough, a bad email address is told at its field', async () => {
  const { page, close } = await open(at())
  await page.getByRole('button', { name: 'Ask for a quote' }).click()
  await send(page).click()
  expect(await page.locator('dialog .fault').allTextContents()).toEqual([
    'Please give your name.',
    'Please give an email address or a phone number.',
  ])
  await page.getByLabel('Your name').fill('A. Example')
  await page.getByLabel('Email').fill('at example')
  await page.getByLabel('Phone').fill('555 0100')
  await send(page).click()
  expect(await page.locator('dialog .fault').allTextContents()).toEqual([
    'That does not look like an email address.',
  ])
  await page.getByLabel('Email').fill('')
  await page.getByLabel('Where your shore is').fill('Quillet Cove, north side')
  await page.getByLabel('Set-up in spring').check()
  await page.getByLabel('Delivery to the shore').check()
  const before = site.posted.length
  await send(page).click()
  await expect.poll(() => site.posted.length).toBe(before + 1)
  const body = JSON.parse(site.posted.at(-1)!.body) as Record<string, unknown>
  expect(body).toMatchObject({
    wants: ['delivery', 'set-up'],
    contact: { contact: '555 0100', phone: '555 0100', place: 'Quillet Cove, north side' },
  })
  expect(Object.keys(body.contact as object)).not.toContain('email')
  expect(parseRequest(body).ok).toBe(true)
  await close()
})
