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
const ARGS = [
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
  /** Loaded anew, where loading is what the test is about, or where it leaves something behind in the page. */
  readonly fresh?: boolean
}

export interface Opened {
  readonly page: Page
  readonly context: BrowserContext
  /** Addresses asked for. */
  readonly requests: readonly string[]
  /** Fails where anything went wrong; what was opened here goes to the next test, or is closed. */
  close(): Promise<void>
}

/** By whether they give WebGL; started when a test of the worker first asks for one. */
const browsers = new Map<boolean, Promise<Browser>>()

/** One browser for all files of a worker, with the pages that they leave gone; it ends with the worker. */
export function browserFor(webgl: boolean): Promise<Browser> {
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

/** Every page of the file, those of tests that failed too. */
export async function closePages(): Promise<void> {
  free.clear()
  for (const browser of browsers.values())
    for (const context of (await browser).contexts()) await context.close()
}

/** To be called at the top of a test file: its pages are closed after its tests. */
export function withBrowser(): void {
  afterAll(closePages)
}

/** For anything that is waited for, ms: a processor that draws WebGL for several tests at once takes its time. */
export const PATIENCE = 90_000

interface Loaded {
  readonly context: BrowserContext
  readonly page: Page
  readonly site: string
  /** What was asked for, thrown, or written as an error that should not have been. */
  readonly wrong: string[]
  readonly requests: string[]
}

/** In the page. */
interface Recorded {
  leadlineEvents: unknown[]
  violations: string[]
  leadlineReady: Promise<void>
  /** Takes the elements out, forgets what they told, and puts new ones in their places, which keep under other keys. */
  leadlineAgain(): Promise<void>
}

/** Pages that no test has now, by what cannot be changed once they are loaded. */
const free = new Map<string, Loaded>()

/**
 * A page with its element begun: the page that the test before it in the file has left, with new elements in it and nothing kept, for
 * loading takes many times as long as all that most tests do. Whatever must come before the page is loaded has one of its own, as has `fresh`.
 * One that a test did not close, for it failed, is not used again.
 */
export async function open(options: OpenOptions = {}): Promise<Opened> {
  const {
    path = '/example.html',
    webgl = false,
    context: given,
    elements = 1,
    expected,
    before,
    without,
    at: site = inject('site'),
    clock = false,
    fresh = false,
    viewport = DESKTOP,
    colorScheme = 'light',
    reducedMotion = 'reduce',
    ...rest
  } = options
  const own = fresh || given || elements === 0 || before || without || clock || path.includes('#')
  const kind = own ? null : JSON.stringify([site, path, webgl, elements, rest])
  const used = kind === null ? undefined : free.get(kind)
  if (kind !== null) free.delete(kind)
  const screen = { viewport, colorScheme, reducedMotion }
  const loaded =
    used ??
    (await load(given ?? (await (await browserFor(webgl)).newContext({ ...screen, ...rest })), {
      webgl,
      elements,
      before,
      without,
      clock,
      url: site + path,
      site,
    }))
  const { context, page, requests, wrong } = loaded
  if (used) {
    if (viewport) await page.setViewportSize(viewport)
    await page.emulateMedia({ colorScheme, reducedMotion })
    await beginAgain(page)
  }
  return {
    page,
    context,
    requests,
    async close() {
      const violations = await page.evaluate(() => (window as unknown as Recorded).violations.splice(0))
      const here = kind !== null && new URL(page.url()).pathname === new URL(site + path).pathname
      if (!here) {
        await page.close()
        if (!given) await context.close()
      }
      expect(violations, 'violations of the policy').toEqual([])
      expect(
        wrong.splice(0).filter((line) => !expected?.test(line)),
        'errors of the page',
      ).toEqual([])
      if (here) free.set(kind, loaded)
    },
  }
}

interface Loading {
  readonly before: OpenOptions['before']
  readonly without: OpenOptions['without']
  readonly webgl: boolean
  readonly elements: number
  readonly clock: boolean
  readonly site: string
  readonly url: string
}

async function load(
  context: BrowserContext,
  { webgl, elements, before, without, clock, site, url }: Loading,
): Promise<Loaded> {
  const page = await context.newPage()
  page.setDefaultTimeout(PATIENCE)
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
    // The drawing of pixels by a processor is slow, as Chromium says of each canvas that is read back.
    const ours =
      message.type() === 'error' ||
      (message.type() === 'warning' && !/GPU stall|GL Driver/.test(message.text()))
    if (ours || message.text().includes('Content Security Policy')) wrong.push(message.text())
  })
  await page.addInitScript(
    ({ webgl, elements }) => {
      if (!webgl) {
        const given = HTMLCanvasElement.prototype.getContext as (...args: unknown[]) => unknown
        HTMLCanvasElement.prototype.getContext = function (this: HTMLCanvasElement, ...args: unknown[]) {
          return args[0] === '2d' ? given.apply(this, args) : null
        } as typeof HTMLCanvasElement.prototype.getContext
      }
      const events: { type: string; detail: unknown }[] = []
      Object.assign(window, { leadlineEvents: events, violations: [] as string[] })
      document.addEventListener('securitypolicyviolation', (event) => {
        ;(window as unknown as Recorded).violations.push(`${event.violatedDirective} ${event.blockedURI}`)
      })
      for (const type of ['leadline-input', 'leadline-change', 'leadline-request', 'leadline-error'])
        document.addEventListener(type, (event) => {
          events.push({ type, detail: (event as CustomEvent).detail })
        })
      /** From now on for so many elements, and for the scene of one. */
      const wait = (elements: number): void => {
        const ready = new Promise<void>((done) => {
          let left = Math.max(1, elements)
          document.addEventListener('leadline-ready', () => --left === 0 && done())
        })
        const scene = new Promise<void>((done) =>
          document.addEventListener('leadline-scene-ready', () => done()),
        )
        Object.assign(window, { leadlineReady: ready, leadlineScene: scene })
      }
      wait(elements)
      // As they stand in the page, before anybody changes them.
      document.addEventListener('DOMContentLoaded', () => {
        const written = [...document.querySelectorAll('leadline-dock')].map((e) => ({
          element: e.cloneNode() as Element,
          parent: e.parentElement!,
        }))
        let times = 0
        Object.assign(window, {
          leadlineAgain: async () => {
            const old = [...document.querySelectorAll('leadline-dock')]
            for (const each of old) each.remove()
            // A moment later they take it that they were not only moved, and end.
            while (old.some((each) => each.shadowRoot!.querySelector('.root')))
              await new Promise((done) => setTimeout(done, 10))
            history.replaceState(null, '', location.pathname + location.search)
            localStorage.removeItem('leadline-units')
            window.scrollTo(0, 0)
            events.length = 0
            wait(written.length)
            times++
            for (const { element, parent } of written) {
              const one = element.cloneNode() as Element
              // What the one before it kept, and may still be writing down, is none of its business.
              const key = one.getAttribute('storage-key')
              if (key !== null) one.setAttribute('storage-key', `${key}-${times}`)
              parent.append(one)
            }
            await (window as unknown as Recorded).leadlineReady
          },
        })
      })
    },
    { webgl, elements },
  )
  if (before) await page.addInitScript(before)
  if (clock) await page.clock.install()
  if (without) await page.route(without, (route) => route.abort())
  await page.goto(url)
  if (elements > 0) await page.evaluate(() => (window as unknown as Recorded).leadlineReady)
  return { context, page, site, wrong, requests }
}

/** The page as it was when it had been loaded, but that its code is there. */
async function beginAgain(page: Page): Promise<void> {
  // Nothing may be under the pointer of the next test.
  await page.mouse.move(0, 0)
  await page.evaluate(() => (window as unknown as Recorded).leadlineAgain())
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
