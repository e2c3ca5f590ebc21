/**
 * A page of the built site in a real browser. What every test holds by itself: nothing is asked of another origin, nothing breaks the
 * policy, nothing is thrown, nothing is written to the console as an error.
 */
import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core'
import { chromium } from 'playwright-core'
import { afterAll, expect, inject } from 'vitest'
import type { Catalog, Dock } from '../../../rules/index.ts'
import type { LeadlineDock } from '../../../src/element/leadline-dock.ts'

const BARE = [
  '--no-sandbox',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--js-flags=--expose-gc',
]

/**
 * For pages with the scene: WebGL is drawn by the processor, and so looks the same on every machine. Words and lines are not drawn that
 * way, which takes four times the work and shows no difference.
 */
export const ARGS = [
  ...BARE,
  '--use-gl=angle',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--disable-gpu-rasterization',
]

/** For pages without: nothing is drawn by a renderer of WebGL, the putting together of the page neither. */
const WITHOUT_SCENE = [...BARE, '--disable-gpu']

export const DESKTOP = { width: 1440, height: 900 } as const
export const PHONE = { width: 390, height: 844 } as const

export interface OpenOptions extends BrowserContextOptions {
  readonly path?: string
  /** False: the browser gives no WebGL context, as on a machine without graphics. */
  readonly webgl?: boolean
  /** A context to go on in, with what it has stored. */
  readonly context?: BrowserContext
  /** Elements to wait for; none: the test puts them in itself, `leadlineReady` then tells of the first. */
  readonly elements?: number
  /** Messages that this test brings about on purpose. */
  readonly expected?: RegExp
  /** Runs in the page before anything of it. */
  readonly before?: () => void
  /** Addresses that cannot be had. */
  readonly without?: RegExp
  /** Another site than the one that all tests share. */
  readonly at?: string
  /** The page's time is the test's to run: `page.clock`. */
  readonly clock?: boolean
}

export interface Opened {
  readonly page: Page
  readonly context: BrowserContext
  /** Addresses asked for. */
  readonly requests: readonly string[]
  /** Fails where anything went wrong; closes the page, and the context where it was made here. */
  close(): Promise<void>
}

/** By whether they give WebGL; started when a test first asks for one. */
const browsers = new Map<boolean, Promise<Browser>>()

function browserFor(webgl: boolean): Promise<Browser> {
  const { path, env } = inject('browser')
  const started =
    browsers.get(webgl) ??
    chromium.launch({
      executablePath: path,
      args: webgl ? ARGS : WITHOUT_SCENE,
      ...(env ? { env: { ...(process.env as Record<string, string>), ...env } } : {}),
    })
  browsers.set(webgl, started)
  return started
}

/** To be called at the top of a test file: its browsers are closed after its tests. */
export function withBrowser(): void {
  afterAll(async () => {
    for (const browser of browsers.values()) await (await browser).close()
    browsers.clear()
  })
}

export async function open(options: OpenOptions = {}): Promise<Opened> {
  const {
    path = '/index.html',
    webgl = false,
    context: given,
    elements = 1,
    expected,
    before,
    without,
    at: site = inject('site'),
    clock = false,
    ...rest
  } = options
  const context =
    given ??
    (await (await browserFor(webgl)).newContext({ viewport: DESKTOP, reducedMotion: 'reduce', ...rest }))
  const page = await context.newPage()
  const wrong: string[] = []
  const requests: string[] = []
  page.on('request', (request) => {
    const url = request.url()
    requests.push(url)
    if (!url.startsWith(site) && !url.startsWith('blob:') && !url.startsWith('data:'))
      wrong.push(`asked for ${url}`)
  })
  page.on('pageerror', (error) => wrong.push(`thrown: ${error.stack ?? error.message}`))
  page.on('console', (message) => {
    if (message.type() === 'error' || message.text().includes('Content Security Policy'))
      wrong.push(message.text())
  })
  await page.addInitScript(
    ({ webgl, elements }) => {
      if (!webgl) HTMLCanvasElement.prototype.getContext = () => null
      const events: { type: string; detail: unknown }[] = []
      Object.assign(window, { leadlineEvents: events, violations: [] as string[] })
      document.addEventListener('securitypolicyviolation', (event) => {
        ;(window as unknown as { violations: string[] }).violations.push(
          `${event.violatedDirective} ${event.blockedURI}`,
        )
      })
      for (const type of ['leadline-input', 'leadline-change', 'leadline-request', 'leadline-error'])
        document.addEventListener(type, (event) => {
          events.push({ type, detail: (event as CustomEvent).detail })
        })
      const ready = new Promise<void>((done) => {
        let left = Math.max(1, elements)
        document.addEventListener('leadline-ready', () => --left === 0 && done())
      })
      const scene = new Promise<void>((done) =>
        document.addEventListener('leadline-scene-ready', () => done()),
      )
      Object.assign(window, { leadlineReady: ready, leadlineScene: scene })
    },
    { webgl, elements },
  )
  if (before) await page.addInitScript(before)
  if (clock) await page.clock.install()
  if (without) await page.route(without, (route) => route.abort())
  await page.goto(site + path)
  if (elements > 0)
    await page.evaluate(() => (window as unknown as { leadlineReady: Promise<void> }).leadlineReady)
  return {
    page,
    context,
    requests,
    async close() {
      const violations = await page.evaluate(() => (window as unknown as { violations: string[] }).violations)
      await page.close()
      if (!given) await context.close()
      expect(violations, 'violations of the policy').toEqual([])
      expect(
        wrong.filter((line) => !expected?.test(line)),
        'errors of the page',
      ).toEqual([])
    },
  }
}

/** Waits for the next picture. */
export const nextFrame = (page: Page): Promise<unknown> =>
  page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))))

/** An element that has its catalog, and so a dock. */
export type Begun = Omit<LeadlineDock, 'dock' | 'catalog'> & {
  readonly dock: Dock
  readonly catalog: Catalog
}

/** Reads from the first element: its design, its dock. */
export const read = <T>(page: Page, get: (element: Begun) => T): Promise<T> =>
  page
    .locator('leadline-dock')
    .first()
    .evaluate(get as unknown as (element: HTMLElement) => T)

/** All events of a kind so far. */
export const events = (page: Page, type: string): Promise<{ detail: never }[]> =>
  page.evaluate(
    (wanted) =>
      (window as unknown as { leadlineEvents: { type: string; detail: never }[] }).leadlineEvents.filter(
        (event) => event.type === wanted,
      ),
    type,
  )

/** Waits for the next event of a kind, which may come when the dock is judged, and gives all so far. */
export async function told(page: Page, type: string, least = 1): Promise<{ detail: never }[]> {
  await expect
    .poll(async () => (await events(page, type)).length, { timeout: 60_000, message: type })
    .toBeGreaterThanOrEqual(least)
  return events(page, type)
}

declare module 'vitest' {
  interface ProvidedContext {
    site: string
    dist: string
    browser: { path: string; env?: Record<string, string> }
  }
}
