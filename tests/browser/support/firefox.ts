/**
 * The built site in Firefox, driven by WebDriver BiDi. What every page of it holds by itself, as in Chromium: nothing is asked of another
 * origin, nothing breaks the policy, nothing is thrown, nothing is written to the console as an error.
 */
import puppeteer, { type Browser, type Page } from 'puppeteer-core'
import { expect, inject } from 'vitest'
import { PATIENCE } from './open.ts'

/** In the page. */
interface Recorded {
  violations: string[]
  leadlineReady: Promise<void>
}

export interface OpenedInFirefox {
  readonly page: Page
  /** Loads it anew, or another of the site's pages, and waits for its element. */
  load(path: string): Promise<void>
  /** Fails where anything went wrong. */
  close(): Promise<void>
}

export const startFirefox = (): Promise<Browser> => {
  const executablePath = inject('firefox')
  if (executablePath === null) throw new Error('startFirefox: there is none')
  return puppeteer.launch({ browser: 'firefox', executablePath, headless: true, timeout: PATIENCE })
}

/** A page with nothing kept. */
export async function openInFirefox(
  browser: Browser,
  { width, height }: { readonly width: number; readonly height: number },
): Promise<OpenedInFirefox> {
  const site = inject('site')
  const context = await browser.createBrowserContext()
  const page = await context.newPage()
  page.setDefaultTimeout(60_000)
  await page.setViewport({ width, height })
  const wrong: string[] = []
  page.on('request', (request) => {
    if (!/^(?:blob|data|about):/.test(request.url()) && !request.url().startsWith(site))
      wrong.push(`asked for ${request.url()}`)
  })
  page.on('pageerror', (error) => wrong.push(`thrown: ${error instanceof Error ? error.stack : error}`))
  page.on('console', (message) => {
    // What Firefox says of WebGL where the machine has no graphics is a warning, and the drawing stays.
    if (message.type() === 'error' || message.text().includes('Content-Security-Policy'))
      wrong.push(message.text())
  })
  await page.evaluateOnNewDocument(() => {
    const violations: string[] = []
    document.addEventListener('securitypolicyviolation', (event) =>
      violations.push(`${event.violatedDirective} ${event.blockedURI}`),
    )
    const leadlineReady = new Promise<void>((done) =>
      document.addEventListener('leadline-ready', () => done()),
    )
    Object.assign(window, { violations, leadlineReady })
  })
  const held = async (): Promise<void> => {
    const violations = await page.evaluate(() => (window as unknown as Recorded).violations)
    expect(violations, 'violations of the policy').toEqual([])
    expect(wrong.splice(0), 'errors of the page').toEqual([])
  }
  return {
    page,
    async load(path) {
      if (page.url().startsWith(site)) await held()
      await page.goto(site + path)
      await page.evaluate(() => (window as unknown as Recorded).leadlineReady)
    },
    async close() {
      await held()
      await context.close()
    },
  }
}

declare module 'vitest' {
  interface ProvidedContext {
    /** Path; null: there is none here. */
    firefox: string | null
  }
}
