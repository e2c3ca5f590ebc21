/** Builds the page of `scene-page.ts` as the real one is built, serves it under the strict policy, and opens it. */
import { existsSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import react from '@vitejs/plugin-react'
import type { Page } from 'playwright-core'
import { build } from 'vite'
import { afterAll, beforeAll, expect, inject } from 'vitest'
import { trimThree } from '../../src/build/trim-three/plugin.ts'
import type { SceneApi, Wanted } from './scene-page.ts'
import { browserFor, closePages, PATIENCE } from './support/open.ts'
import { type Site, serve } from './support/server.ts'

const HTML = `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Scenes</title><link rel="icon" href="data:,">
<link rel="stylesheet" href="page.css"><script type="module" src="scene-page.js"></script></head><body></body></html>`

declare global {
  /** In the page, not here. */
  const scenes: SceneApi
}

/** Of this run of the tests: its workers have one parent. */
const FOLDER = join(tmpdir(), `leadline-scenes-${process.ppid}`)
/** What an earlier run left, ms. */
const STALE = 3_600_000

let site: Site
/** Free to be used by the next test, by whether it has a touch screen: once loaded, a page has its shaders' code and three compiled. */
const free = new Map<boolean, Loaded>()

interface Loaded {
  readonly page: Page
  /** What was thrown, or written to the console as an error. */
  readonly wrong: string[]
}

/** To be called at the top of a test file: a page for all of its tests. */
export function withScenes(): void {
  beforeAll(async () => {
    await buildOnce()
    site = await serve([FOLDER])
  }, 120_000)
  afterAll(async () => {
    free.clear()
    await closePages()
    await site?.close()
  })
}

/** Once a run. */
async function buildOnce(): Promise<void> {
  const mark = join(FOLDER, 'built-for')
  // Numbers of processes come again, addresses hardly with them.
  if (existsSync(mark) && readFileSync(mark, 'utf8') === inject('site')) return
  for (const name of readdirSync(tmpdir())) {
    const folder = join(tmpdir(), name)
    if (!name.startsWith('leadline-scenes-')) continue
    if (folder === FOLDER || Date.now() - statSync(folder).mtimeMs > STALE)
      rmSync(folder, { recursive: true, force: true })
  }
  // Else the test runner's own environment would bring React's development build in.
  const environment = process.env.NODE_ENV
  process.env.NODE_ENV = 'production'
  await build({
    configFile: false,
    logLevel: 'error',
    plugins: [react(), trimThree()],
    build: {
      outDir: FOLDER,
      emptyOutDir: false,
      target: 'es2022',
      modulePreload: false,
      chunkSizeWarningLimit: 4000,
      rolldownOptions: {
        input: { 'scene-page': resolve('tests/browser/scene-page.ts') },
        output: { entryFileNames: '[name].js' },
      },
    },
  })
  if (environment !== undefined) process.env.NODE_ENV = environment
  writeFileSync(join(FOLDER, 'index.html'), HTML)
  writeFileSync(join(FOLDER, 'page.css'), 'html, body { margin: 0 }')
  writeFileSync(mark, inject('site'))
}

export interface OpenedScenes {
  readonly page: Page
  close(): Promise<void>
}

export interface PageOptions {
  /** As large as the first scene, without more words. */
  readonly width?: number
  readonly height?: number
  readonly dark?: boolean
  readonly motion?: boolean
  readonly touch?: boolean
  readonly fresh?: boolean
}

async function load(touch: boolean): Promise<Loaded> {
  const context = await (await browserFor(true)).newContext({ deviceScaleFactor: 1, hasTouch: touch })
  const page = await context.newPage()
  page.setDefaultTimeout(PATIENCE)
  const wrong: string[] = []
  page.on('pageerror', (error) => wrong.push(error.stack ?? error.message))
  page.on('console', (message) => message.type() === 'error' && wrong.push(message.text()))
  await page.goto(`${site.url}/index.html`)
  return { page, wrong }
}

/**
 * Shows the scenes wanted, settled, on the page of this file; `fresh`: on one of its own, where the test leaves something behind. One
 * that a test did not close, for it failed, is not used again.
 */
export async function openScenes(
  wanted: readonly Wanted[],
  options: PageOptions = {},
): Promise<OpenedScenes> {
  const [wide, high] = wanted[0]?.size ?? [640, 400]
  const { width = wide, height = high, dark = false, motion = false, touch = false, fresh = false } = options
  const loaded = (fresh ? undefined : free.get(touch)) ?? (await load(touch))
  if (!fresh) free.delete(touch)
  const { page, wrong } = loaded
  await page.setViewportSize({ width, height })
  await page.emulateMedia({
    colorScheme: dark ? 'dark' : 'light',
    reducedMotion: motion ? 'no-preference' : 'reduce',
  })
  for (const one of wanted) await page.evaluate((one) => void scenes.show(one), one)
  for (let i = 0; i < wanted.length; i++) await page.evaluate((i) => scenes.settled(i), i)
  return {
    page,
    async close() {
      if (fresh) await page.context().close()
      else {
        await page.evaluate(() => scenes.clear())
        // Nothing may be under the pointer when the next scene comes.
        await page.mouse.move(0, 0)
      }
      expect(wrong, 'errors of the page').toEqual([])
      if (!fresh) free.set(touch, loaded)
    },
  }
}
