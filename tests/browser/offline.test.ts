/** The demo site without a signal: installed by one visit, and updated under a page that is in use. */
import { cpSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import * as esbuild from 'esbuild'
import type { BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, inject, test } from 'vitest'
import { siteFiles } from '../../src/build/offline/plugin.ts'
import { open, PHONE, read, withBrowser } from './support/open.ts'
import { type Site, serve } from './support/server.ts'

withBrowser()

let folder: string
let site: Site
const atLake = { path: '/lake.html', viewport: PHONE, hasTouch: true, fresh: true } as const

/** A copy of its own: a newer version is put in its place. */
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'leadline-offline-'))
  for (const name of readdirSync(inject('dist')))
    if (!/^(?:es|node|types|guide|schema)$/.test(name))
      cpSync(join(inject('dist'), name), join(folder, name), { recursive: true })
  site = await serve([folder])
})
afterAll(async () => {
  await site.close()
  rmSync(folder, { recursive: true, force: true })
})

const told = (page: Page, what: string) => page.locator(`[data-offline=${what}]`)

/** All that is asked of the network from now on, by the service worker too, fails. */
async function cutOff(context: BrowserContext): Promise<void> {
  await context.setOffline(true)
}

test('one visit, and the whole site works without a signal', async () => {
  const { page, context, close } = await open({
    ...atLake,
    at: site.url,
    expected: /ERR_INTERNET_DISCONNECTED/,
  })
  await told(page, 'ready').waitFor()
  await cutOff(context)
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
