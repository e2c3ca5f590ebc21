/** Once for all tests in a browser: is the page built, which browser is there, and a server for both. */
import { existsSync } from 'node:fs'
import { resolve } from 'node:path'
import type { TestProject } from 'vitest/node'
import { findBrowser, findFirefox } from './find-browser.ts'
import { serve } from './server.ts'

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const dist = resolve(process.env.LEADLINE_DIST ?? 'dist')
  if (!existsSync(`${dist}/leadline.js`))
    throw new Error(`No page in ${dist}: run \`npm run build:page\` first`)
  const browser = await findBrowser()
  process.stdout.write(`Browser: ${browser.path} (${browser.from})\n`)
  const firefox = findFirefox()
  process.stdout.write(
    firefox
      ? `Firefox: ${firefox.path} (${firefox.from})\n`
      : 'Firefox: not found, so its tests are skipped: install firefox-esr or firefox, or set FIREFOX to its path\n',
  )
  const site = await serve([dist, resolve('tests/browser/pages')])
  project.provide('site', site.url)
  project.provide('dist', dist)
  project.provide('browser', { path: browser.path, ...(browser.env ? { env: { ...browser.env } } : {}) })
  project.provide('firefox', firefox?.path ?? null)
  return () => site.close()
}
