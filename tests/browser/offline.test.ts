/** The demo site without a signal: installed by one visit, and updated under a page that is in use. */
import { cpSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterEach, beforeEach, expect, inject, test } from 'vitest'
import { demoCatalog } from '../../rules/index.ts'
import { buildOffline, siteFiles } from '../../src/build/offline/plugin.ts'
import { open, PHONE, read, withBrowser } from './support/open.ts'
import { type Site, serve } from './support/server.ts'

withBrowser()

let folder: string
let site: Site
const atLake = { path: '/lake.html', viewport: PHONE, hasTouch: true, fresh: true } as const

/** A copy of its own for each test and each time that it is tried: a newer version is put in its place. */
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'leadline-offline-'))
  for (const name of readdirSync(inject('dist')))
    if (!/^(?:es|node|types|guide|schema)$/.test(name))
      cpSync(join(inject('dist'), name), join(folder, name), { recursive: true })
  site = await serve([folder])
})
afterEach(async () => {
  await site.close()
  rmSync(folder, { recursive: true, force: true })
})

const told = (page: Page, what: string) => page.locator(`[data-offline=${what}]`)

test('one visit, and the whole site works without a signal', async () => {
  const { page, context, close } = await open({
    ...atLake,
    at: site.url,
    expected: /ERR_INTERNET_DISCONNECTED/,
  })
  await told(page, 'ready').waitFor()
  await context.setOffline(true)
  await page.goto('about:blank')
  await page.goto(`${site.url}/lake.html?from=icon`)
  await page.evaluate(() => (window as unknown as { leadlineReady: Promise<void> }).leadlineReady)
  expect(await read(page, (e) => e.design.format)).toBe('leadline/design')
  // Each file that the page could ever ask for, whole.
  const { missing, asked } = await page.evaluate(
    async (files) => {
      const answers = await Promise.all(
        files.map(
          async (url) =>
            [
              url,
              (
                await fetch(url).then(
                  (r) => r.blob(),
                  () => null,
                )
              )?.size ?? 0,
            ] as const,
        ),
      )
      return { asked: answers.length, missing: answers.flatMap(([url, size]) => (size === 0 ? [url] : [])) }
    },
    siteFiles(folder).map(({ url }) => url),
  )
  expect(missing).toEqual([])
  expect(asked).toBeGreaterThan(100)
  // The network is really cut.
  expect(
    await page.evaluate(() =>
      fetch('./host.html').then(
        () => 'came',
        () => 'did not come',
      ),
    ),
  ).toBe('did not come')
  await close()
})

/** Puts a newer version in place of the one that is there: one chunk has another name in it, and the page says so. */
async function deploy(): Promise<{ readonly gone: string; readonly come: string }> {
  const chunks = join(folder, 'leadline')
  const old = readdirSync(chunks).find((name) => /^pdf-[\w-]{8}\.js$/.test(name))!
  const come = 'pdf-NEWERONE.js'
  renameSync(join(chunks, old), join(chunks, come))
  for (const name of readdirSync(chunks)) {
    if (!name.endsWith('.js')) continue
    const text = readFileSync(join(chunks, name), 'utf8')
    if (text.includes(old)) writeFileSync(join(chunks, name), text.replaceAll(old, come))
  }
  const page = join(folder, 'lake.html')
  writeFileSync(page, readFileSync(page, 'utf8').replace(/<title[^>]*>/, '$&Newer: '))
  await buildOffline('.', folder)
  return { gone: `./leadline/${old}`, come: `./leadline/${come}` }
}

const size = (page: Page, url: string): Promise<number> =>
  page.evaluate(async (url) => (await (await fetch(url)).blob()).size, url)

// When Chromium puts a waiting worker to use is its own affair: on a busy machine it takes its time, and is asked twice more.
test('a newer version is told, waits, and takes nothing from the pages that run', { retry: 2 }, async () => {
  const one = await open({ ...atLake, at: site.url, expected: /ERR_INTERNET_DISCONNECTED/ })
  await told(one.page, 'ready').waitFor()
  const two = await open({ ...atLake, at: site.url, context: one.context })
  const { gone, come } = await deploy()
  await one.page.evaluate(async () => (await navigator.serviceWorker.getRegistration())!.update())
  for (const { page } of [one, two]) await told(page, 'update').waitFor()
  const before = await size(one.page, gone)
  expect(before).toBeGreaterThan(1000)
  const renamed = (design: { name: string }) => design.name
  await read(one.page, (e) => {
    e.design = { ...e.design, name: 'While it came' }
  })
  // In the middle of what somebody does the newer version is asked for.
  await one.page.locator('[data-offline=update] button').click()
  await expect.poll(() => one.page.title().catch(() => ''), { timeout: 60_000 }).toContain('Newer: ')
  await one.page.waitForFunction(() =>
    document.querySelector('leadline-dock')?.shadowRoot?.querySelector('.root'),
  )
  // What is kept is in hand a moment later than there is something to see.
  await expect
    .poll(() => read(one.page, (e) => e.design).then(renamed), { timeout: 20_000 })
    .toBe('While it came')
  // The other window was not touched: it is told, and has the chunks of its own version still.
  await told(two.page, 'elsewhere').waitFor()
  expect(await two.page.title()).not.toContain('Newer: ')
  await one.context.setOffline(true)
  expect(await size(two.page, gone)).toBe(before)
  expect(await size(one.page, come)).toBe(before)
  await Promise.all([
    two.page.waitForEvent('load'),
    two.page.locator('[data-offline=elsewhere] button').click(),
  ])
  expect(await two.page.title()).toContain('Newer: ')
  await two.close()
  await one.close()
  await one.context.close()
})

test('the worker of the guide, as it is written there', async () => {
  const own = mkdtempSync(join(tmpdir(), 'leadline-host-'))
  for (const name of ['leadline', 'leadline.js'])
    cpSync(join(inject('dist'), name), join(own, name), { recursive: true })
  const [worker, register] = [
    ...readFileSync('public/guide/offline.md', 'utf8').matchAll(/```js\n\/\/.*\n([\s\S]*?)```/g),
  ].map(([, code]) => code!)
  writeFileSync(join(own, 'service-worker.js'), worker!)
  writeFileSync(join(own, 'register.js'), register!)
  writeFileSync(join(own, 'our-catalog.json'), JSON.stringify(demoCatalog))
  writeFileSync(
    join(own, 'dock.html'),
    `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Dock</title><link rel="icon" href="data:,">
    <script type="module" src="./leadline.js"></script><script type="module" src="./register.js"></script></head>
    <body><leadline-dock catalog="./our-catalog.json" start="example"></leadline-dock></body></html>`,
  )
  const host = await serve([own])
  try {
    const { page, context, close } = await open({ ...atLake, path: '/dock.html', at: host.url })
    await page.evaluate(async () => {
      const { active } = await navigator.serviceWorker.ready
      if (active?.state !== 'activated')
        await new Promise((done) => active?.addEventListener('statechange', done, { once: true }))
    })
    await context.setOffline(true)
    await page.goto('about:blank')
    await page.goto(`${host.url}/dock.html`)
    await page.evaluate(() => (window as unknown as { leadlineReady: Promise<void> }).leadlineReady)
    expect(await read(page, (e) => e.catalog.id)).toBe(demoCatalog.id)
    await close()
  } finally {
    await host.close()
    rmSync(own, { recursive: true, force: true })
  }
})
