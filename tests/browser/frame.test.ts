/** The planner in a frame of another site: told only to pages on its list, checked to the last key, as high as what is in it. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Frame, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, inject, test } from 'vitest'
import type { Design } from '../../rules/index.ts'
import type { LeadlineDock } from '../../src/element/leadline-dock.ts'
import { open, withBrowser } from './support/open.ts'
import { SOON } from './support/papers.ts'
import { type Site, serve } from './support/server.ts'

withBrowser()

/** Another origin, which serves the built page's files. */
let other: Site
beforeAll(async () => {
  other = await serve([inject('dist')])
})
afterAll(() => other.close())

interface Heard {
  readonly type: string
  readonly detail?: { design?: Design; id?: string; totals?: unknown }
}

/** A page with the planner of the other site in a frame, whose list has these origins. */
async function framed(
  origins: (site: string) => string,
  attributes = '',
): Promise<{ page: Page; frame: Frame; close(): Promise<void> }> {
  const { page, close } = await open({
    path: '/bare.html',
    elements: 0,
    fresh: true,
    expected: /asked for http:\/\/127/,
  })
  const html = readFileSync(join(inject('dist'), 'frame.html'), 'utf8')
  const listed = html
    .replace('content=""', `content="${origins(inject('site'))}"`)
    .replace('loading="eager"', 'loading="eager" start="example"')
  expect(listed).not.toBe(html)
  await page.route(`${other.url}/frame.html`, (route) =>
    route.fulfill({ contentType: 'text/html', body: listed }),
  )
  // The host's own policy: it names the other site, and no more.
  const policy = `default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; frame-src ${other.url}`
  const host = `<!doctype html><meta charset="utf-8" /><link rel="icon" href="./icon.svg" /><title>Host</title><div id="above"></div>
    <iframe data-leadline="${other.url}/frame.html" title="Dock planner" width="900" height="900" ${attributes}></iframe>
    <script src="./frame-host.js"></script>`
  await page.route('**/host-of-frame.html', (route) =>
    route.fulfill({ contentType: 'text/html', headers: { 'content-security-policy': policy }, body: host }),
  )
  await page.addInitScript(() => {
    if (window !== top) {
      addEventListener('message', ({ data }) => {
        if (data === 'last') document.documentElement.dataset.last = 'heard'
      })
      return
    }
    const heard: unknown[] = []
    const raw: unknown[] = []
    Object.assign(window, { heard, raw })
    for (const type of ['ready', 'change', 'error'])
      document.addEventListener(`leadline-${type}`, (event) =>
        heard.push({ type, detail: (event as CustomEvent).detail }),
      )
    addEventListener('message', ({ data }) => raw.push(data))
  })
  await page.goto(`${inject('site')}/host-of-frame.html`)
  await expect.poll(() => page.frames().length).toBe(2)
  const frame = page.frames()[1]!
  await frame.locator('.sum-bar').waitFor()
  return { page, frame, close }
}

const heard = (page: Page, type: string): Promise<Heard[]> =>
  page.evaluate(
    (type) => (window as unknown as { heard: Heard[] }).heard.filter((one) => one.type === type),
    type,
  )

test('a page on the list is told, sets and asks; what is no message of ours is nothing', async () => {
  const { page, frame, close } = await framed((site) => `https://else.example ${site}`, 'data-takes-requests')
  await expect.poll(async () => (await heard(page, 'ready')).length, SOON).toBe(1)
  // As high as what is in it, so that nothing in it scrolls.
  await expect
    .poll(() => frame.evaluate(() => document.documentElement.scrollHeight - innerHeight))
    .toBeLessThanOrEqual(0)
  expect(await page.locator('iframe').evaluate((e) => e.clientHeight)).toBeGreaterThan(600)

  await frame.getByRole('button', { name: 'One section more' }).click()
  await expect
    .poll(async () => (await heard(page, 'change')).at(-1)?.detail?.design?.dock.sections, SOON)
    .toBe(6)
  await page.evaluate(() => {
    const frame = document.querySelector('iframe') as unknown as { leadline: { set(what: object): void } }
    frame.leadline.set({ attributes: { units: 'metric', theme: 'dark' } })
  })
  await expect.poll(() => frame.locator('.leg-length').first().textContent()).toMatch(/ m$/)
  const ask = (what: string, rest = '{}') =>
    page.evaluate(`document.querySelector('iframe').leadline.ask('${what}', ${rest}).then(
      (value) => value instanceof Blob ? [value.name ?? '', value.type] : value, (error) => error.message)`)
  expect(await ask('design')).toMatchObject({ dock: { sections: 6 } })
  expect(await ask('export', "{ wanted: { format: 'csv', what: 'packing' } }")).toEqual([
    'Quillet-Cove-packing.csv',
    'text/csv',
  ])
  expect(await ask('export', "{ wanted: { format: 'doc' } }")).toMatch(/^format: doc; expected/)
  expect(await ask('reset')).toBe(null)
  expect(await frame.locator('leadline-dock').evaluate((e) => (e as LeadlineDock).design.dock.sections)).toBe(
    5,
  )

  // Unknown keys, values, kinds: none is heeded, none is answered.
  const answers = await page.evaluate(async (origin) => {
    const { raw } = window as unknown as { raw: unknown[] }
    const to = document.querySelector('iframe')!.contentWindow!
    const before = raw.length
    for (const message of [
      null,
      'hello',
      { leadline: 1 },
      { leadline: 2, type: 'set', attributes: { theme: 'light' } },
      { leadline: 1, type: 'set', attributes: { theme: 'light', onclick: 'alert(1)' } },
      { leadline: 1, type: 'set', attributes: { 'request-url': 'https://evil.example' } },
      { leadline: 1, type: 'set', attributes: { theme: 'light' }, more: true },
      { leadline: 1, type: 'ask', id: '', what: 'design' },
      { leadline: 1, type: 'ask', id: 'x', what: 'eval' },
      { leadline: 1, type: 'seen', top: Number.NaN, bottom: 0 },
    ])
      to.postMessage(message, origin)
    // Heard after all of them, and answered.
    const { leadline } = document.querySelector('iframe') as unknown as {
      leadline: { ask(what: string): Promise<unknown> }
    }
    await leadline.ask('design')
    return raw.length - before
  }, other.url)
  expect(answers).toBe(1)
  expect(await frame.locator('leadline-dock').evaluate((e) => e.outerHTML)).toContain('theme="dark"')
  expect(await frame.locator('leadline-dock').evaluate((e) => e.hasAttribute('request-url'))).toBe(false)
  // A design that is none is told as the element tells it.
  await page.evaluate(() => {
    const frame = document.querySelector('iframe') as unknown as { leadline: { set(what: object): void } }
    frame.leadline.set({ design: { format: 'leadline/design', version: 1, site: 7 } })
  })
  await expect.poll(async () => (await heard(page, 'error')).at(-1)?.detail).toMatchObject({ code: 'design' })

  // A request is the page's, which gives the receipt; the dialog stands in what is seen of the frame.
  await page.evaluate(() => {
    document.querySelector<HTMLElement>('#above')!.style.height = '300px'
    document.addEventListener('leadline-request', (event) => {
      event.preventDefault()
      const { detail } = event as CustomEvent<{ receipt?: unknown }>
      detail.receipt = Promise.resolve({ reference: 'R-4' })
    })
    scrollTo(0, 500)
  })
  await expect
    .poll(() =>
      frame.locator('leadline-dock').evaluate((e) => e.style.getPropertyValue('--leadline-frame-top')),
    )
    .toMatch(/^1\d\d(\.\d+)?px$/)
  await frame.locator('.sum-bar .main').click()
  await frame.locator('dialog.request').waitFor()
  const box = (await frame.locator('dialog.request').boundingBox())!
  expect(box.y).toBeGreaterThanOrEqual(0)
  expect(box.y + box.height).toBeLessThanOrEqual(900)
  await frame.getByLabel('Your name').fill('A. Example')
  await frame.getByLabel('Email').fill('a@example.org')
  await frame.getByRole('button', { name: 'Send the request' }).click()
  await frame.locator('dialog .done').waitFor()
  expect(await frame.locator('dialog .done').textContent()).toContain('R-4')
  await close()
})

/** Origins that are not the page's, though they look alike. */
const ALIKE = (site: string): string => `* null ${site}/ ${site}0 ${site.replace('http:', 'https:')}`

test.each([
  ['none', () => ''],
  ['others that look alike', ALIKE],
])(
  'a page that is not on the list (%s) is told nothing and sets nothing; the planner works all the same',
  async (_, origins) => {
    const { page, frame, close } = await framed(origins)
    await page.evaluate(() => {
      const frame = document.querySelector('iframe') as unknown as { leadline: { set(what: object): void } }
      frame.leadline.set({ attributes: { units: 'metric' } })
    })
    await frame.getByRole('button', { name: 'One section more' }).click()
    await expect
      .poll(() => frame.locator('leadline-dock').evaluate((e) => (e as LeadlineDock).design.dock.sections))
      .toBe(6)
    // Messages come in the order in which they were sent: what the planner had told would be there before this, and what it was told, heeded.
    await page.evaluate(
      (to) => document.querySelector('iframe')!.contentWindow!.postMessage('last', to),
      other.url,
    )
    await expect.poll(() => frame.evaluate(() => document.documentElement.dataset.last)).toBe('heard')
    await frame.evaluate(() => parent.postMessage('last', '*'))
    const raw = () => page.evaluate(() => (window as unknown as { raw: unknown[] }).raw)
    await expect.poll(raw).toContain('last')
    expect(await raw()).toEqual(['last'])
    expect(await frame.locator('leadline-dock').evaluate((e) => e.hasAttribute('units'))).toBe(false)
    await close()
  },
)

test('the browser takes every file of the list for what it is, and refuses one that was changed', async () => {
  const { page, close } = await open({
    path: '/bare.html',
    elements: 0,
    fresh: true,
    expected: /integrity|ERR_FAILED|Failed to/,
  })
  const { integrity } = JSON.parse(readFileSync(join(inject('dist'), 'leadline/integrity.json'), 'utf8')) as {
    integrity: Record<string, string>
  }
  expect(Object.keys(integrity)).toEqual(
    expect.arrayContaining(['./leadline.js', './frame.js', './frame-host.js']),
  )
  // What may be kept for good has its bytes in its name.
  for (const path of Object.keys(integrity))
    if (path.startsWith('./leadline/')) expect(path).toMatch(/-[\w-]{8}\.js$/)
  const load = (map: object) =>
    page.evaluate((map) => {
      const script = (path: string, integrity: string) =>
        new Promise<boolean>((done) => {
          const tag = document.createElement('script')
          Object.assign(tag, {
            type: 'module',
            integrity,
            src: path,
            onload: () => done(true),
            onerror: () => done(false),
          })
          document.head.append(tag)
        })
      return Promise.all(Object.entries(map).map(([path, hash]) => script(path, hash as string)))
    }, map)
  // Workers listen for jobs, where a page has none to give.
  const files = Object.entries(integrity).filter(([path]) => !/worker|frame/.test(path))
  expect(new Set(await load(Object.fromEntries(files)))).toEqual(new Set([true]))
  expect(files.length).toBeGreaterThan(50)
  const [, hash] = files[0]!
  expect(await load({ './frame.js?again': hash })).toEqual([false])
  await close()
})
