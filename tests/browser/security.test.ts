/** What a page may forbid, and what others may try: each browser's own guard stands, and the element works within it or says what it lacks. */
import { createServer } from 'node:http'
import { resolve } from 'node:path'
import type { Frame, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest'
import { demoCatalog, demoDesign } from '../../rules/index.ts'
import { events, open, read, withBrowser } from './support/open.ts'
import { openPapers, SOON } from './support/papers.ts'
import { type Site, serve } from './support/server.ts'

withBrowser()

const FOLDERS = [inject('dist'), resolve('tests/browser/pages')]
let trusting: Site
let host: Site
let shared: Site
beforeAll(async () => {
  trusting = await serve(FOLDERS, {
    policy: "; require-trusted-types-for 'script'; trusted-types leadline",
  })
  // Whatever other site it is that frames it or gives it catalogs.
  host = await serve(FOLDERS, { policy: '; frame-src *', connect: '*' })
  shared = await serve(FOLDERS, { shared: true })
})
afterAll(() => Promise.all([trusting.close(), host.close(), shared.close()]))

test('where only trusted types become scripts, all of it works, in its workers too', async () => {
  const { page, close } = await open({
    ...{ at: trusting.url, path: '/sources.html', fresh: true },
    // What this test tries itself; anything else that is not trusted is a violation, and found as one.
    expected: /'TrustedHTML'/,
  })
  const workers: string[] = page.workers().map((worker) => worker.url())
  page.on('worker', (worker) => workers.push(worker.url()))
  // It is enforced.
  expect(
    await page.evaluate(() => {
      try {
        document.createElement('p').innerHTML = '<b>x</b>'
        return 'taken'
      } catch (error) {
        return (error as Error).name
      }
    }),
  ).toBe('TypeError')
  // And told, that once.
  const violations = (): Promise<string[]> =>
    page.evaluate(() => (window as unknown as { violations: string[] }).violations.splice(0))
  await expect.poll(violations).toEqual(['require-trusted-types-for trusted-types-sink'])
  await page.getByRole('button', { name: 'One section more' }).click()
  await expect
    .poll(() => read(page, (e) => e.dock.structure?.deep === true && !e.dock.pending), SOON)
    .toBe(true)
  await page.getByRole('button', { name: 'Ask for a quote' }).click()
  await page.getByLabel('Your name').fill('<img src=x onerror="document.title = 1">')
  await page.getByLabel('Email').fill('a@example.org')
  await page.getByRole('button', { name: 'Send the request' }).click()
  await page.locator('dialog .done').waitFor()
  await page.getByRole('button', { name: 'Close' }).click()
  await openPapers(page)
  const [download] = await Promise.all([
    page.waitForEvent('download', { timeout: 60_000 }),
    page.locator('[data-format=pdf]').click(),
  ])
  expect(download.suggestedFilename()).toMatch(/\.pdf$/)
  expect(workers.map((url) => /(\w+)-worker-/.exec(url)?.[1]).sort()).toEqual(
    expect.arrayContaining(['assessment', 'file']),
  )
  expect(await page.title()).toBe('From files')
  await close()
})

describe('in a frame', () => {
  const framed = async (page: Page, url: string, sandbox: string | null): Promise<Frame> => {
    await page.evaluate(
      ({ url, sandbox }) => {
        const frame = document.createElement('iframe')
        if (sandbox !== null) frame.setAttribute('sandbox', sandbox)
        Object.assign(frame, { src: url, width: '1200', height: '800' })
        document.body.append(frame)
      },
      { url, sandbox },
    )
    await expect.poll(() => page.frames().some((frame) => frame.url() === url), SOON).toBe(true)
    const frame = page.frames().find((one) => one.url() === url)!
    await frame.evaluate(() => (window as unknown as { leadlineReady: Promise<void> }).leadlineReady)
    return frame
  }
  /** The frame's own site is another than the page's. */
  const at = () => ({
    at: host.url,
    path: '/bare.html',
    fresh: true,
    elements: 0,
    expected: /asked for|Worker|worker/,
  })
  const deep = (frame: Frame): Promise<boolean> =>
    frame.evaluate(() => {
      const { dock } = document.querySelector('leadline-dock')!
      return dock?.structure?.deep === true && !dock.pending
    })
  const errorsIn = (frame: Frame): Promise<string[]> =>
    frame.evaluate(() =>
      (window as unknown as { leadlineEvents: { type: string; detail: { code: string } }[] }).leadlineEvents
        .filter(({ type }) => type === 'leadline-error')
        .map(({ detail }) => detail.code),
    )

  test('that is sandboxed, of no origin: it works, says that nothing is kept, and a request is sent', async () => {
    const { page, close } = await open(at())
    const frame = await framed(page, `${shared.url}/kept.html`, 'allow-scripts')
    expect(await frame.evaluate(() => origin)).toBe('null')
    await frame.getByRole('button', { name: 'One section more' }).click()
    await expect.poll(() => deep(frame), SOON).toBe(true)
    await expect.poll(() => errorsIn(frame), SOON).toContain('storage')
    expect(await frame.locator('.notice').textContent()).toContain('won’t save anything')
    const before = shared.posted.length
    await frame.locator('leadline-dock').evaluate((e) => e.setAttribute('request-url', './asked'))
    await frame.getByRole('button', { name: 'Ask for a quote' }).click()
    await frame.getByLabel('Your name').fill('A. Example')
    await frame.getByLabel('Email').fill('a@example.org')
    // A frame that may not submit forms has a button all the same.
    await frame.getByRole('button', { name: 'Send the request' }).click()
    await frame.locator('dialog .done').waitFor()
    expect(shared.posted.length).toBe(before + 1)
    await close()
  })

  test('of another site: it works, keeps its dock, and neither reaches into the other', async () => {
    const { page, close } = await open(at())
    const url = `${shared.url.replace('127.0.0.1', 'localhost')}/kept.html`
    const frame = await framed(page, url, null)
    await frame.getByRole('button', { name: 'One section more' }).click()
    await expect.poll(() => deep(frame), SOON).toBe(true)
    expect(await errorsIn(frame)).toEqual([])
    const sections = (): Promise<number | undefined> =>
      frame.evaluate(() => document.querySelector('leadline-dock')!.design.dock.sections)
    const before = await sections()
    expect(before).toBe(demoDesign.dock.sections! + 1)
    await frame.goto(url)
    await frame.evaluate(() => (window as unknown as { leadlineReady: Promise<void> }).leadlineReady)
    expect(await sections()).toBe(before)
    expect(
      await frame.evaluate(() => {
        try {
          return parent.document.title
        } catch (error) {
          return (error as Error).name
        }
      }),
    ).toBe('SecurityError')
    await close()
  })
})

describe('a catalog of another site', () => {
  /** Answers with a body under a type, with or without leave to read it; counts what it is asked with. */
  const shop = async (body: string, type: string, leave: boolean) => {
    const cookies: (string | undefined)[] = []
    const server = createServer((request, response) => {
      cookies.push(request.headers.cookie)
      response
        .writeHead(200, {
          'content-type': type,
          'set-cookie': 'who=1',
          ...(leave && { 'access-control-allow-origin': '*' }),
        })
        .end(body)
    })
    await new Promise<void>((done) => server.listen(0, '127.0.0.1', done))
    const address = server.address()
    if (address === null || typeof address === 'string') throw new Error('no port')
    return {
      url: `http://127.0.0.1:${address.port}/shop`,
      cookies,
      close: () => new Promise((done) => server.close(done).closeAllConnections()),
    }
  }
  const told = async (page: Page, url: string): Promise<string> => {
    const before = (await events(page, 'leadline-error')).length
    await page.locator('leadline-dock').evaluate((e, url) => e.setAttribute('catalog', url), url)
    await expect
      .poll(
        async () =>
          (await events(page, 'leadline-error')).length > before
            ? 'refused'
            : await page.evaluate(
                () =>
                  (
                    document.querySelector('leadline-dock') as unknown as {
                      catalog: { edition: string } | null
                    }
                  ).catalog?.edition ?? '',
              ),
        SOON,
      )
      .toMatch(/refused|of another site/)
    const errors = await events(page, 'leadline-error')
    return errors.length > before ? (errors.at(-1)!.detail as { message: string }).message : 'taken'
  }

  test('is taken with leave of that site and as JSON alone; none of it runs, and no cookies go along', async () => {
    const text = JSON.stringify({ ...demoCatalog, edition: 'of another site' })
    const flood = `"${'x'.repeat(9 * 1024 * 1024)}"`
    const shops = await Promise.all([
      shop(text, 'application/json', true),
      shop(text, 'application/json', false),
      shop(`document.title = 'ran'; callback(${text})`, 'text/javascript', true),
      shop('<script>document.title = "ran"</script>', 'text/html', true),
      shop(flood, 'application/json', true),
    ])
    const { page, close } = await open({
      ...{ at: host.url, path: '/sources.html', fresh: true },
      expected: /asked for|CORS|Failed to load|ERR_/,
    })
    const title = await page.title()
    const said: string[] = []
    for (const { url } of shops) said.push(await told(page, url))
    expect(said[0]).toBe('taken')
    expect(said[1]).toMatch(/fetch/i)
    expect(said[2]).toMatch(/not JSON/)
    expect(said[3]).toMatch(/not JSON/)
    expect(said[4]).toMatch(/more than 8388608 characters/)
    expect(await page.title()).toBe(title)
    for (const { cookies } of shops) for (const cookie of cookies) expect(cookie).toBe(undefined)
    await Promise.all(shops.map((one) => one.close()))
    await close()
  })
})
