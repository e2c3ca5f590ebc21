import type { BrowserContext, Page } from 'playwright-core'
import { expect, inject, test } from 'vitest'
import { open, read, withBrowser } from './support/open.ts'

withBrowser()

/** Edits a kind of page; 30 in all for a figure to quote: `LEADLINE_LEAVES=10`. */
const EDITS = Number(process.env.LEADLINE_LEAVES ?? 3)
/** As on a laptop of some years ago, and the machine is loaded besides. */
const SLOWER = 4

async function slow(context: BrowserContext, page: Page): Promise<void> {
  const session = await context.newCDPSession(page)
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWER })
}

/** Presses the button, and leaves so many ms later by itself: no message of the test's own comes between. */
const editAndLeave = (page: Page, how: 'reload' | 'leave', after: number): Promise<void> =>
  page
    .evaluate(
      ({ how, after }) => {
        const root = document.querySelector('leadline-dock')!.shadowRoot!
        root.querySelector<HTMLElement>('button[aria-label="One section more"]')!.click()
        const go = (): void => (how === 'reload' ? location.reload() : location.assign('/bare.html'))
        if (after === 0) go()
        else setTimeout(go, after)
        // Until the page is gone.
        return new Promise<void>(() => {})
      },
      { how, after },
    )
    .catch(() => {})

const ready = (page: Page): Promise<void> =>
  page.evaluate(() => (window as unknown as { leadlineReady: Promise<void> }).leadlineReady)

test.each([
  ['with a link and kept on the device', '/example.html', 5],
  ['kept on the device alone', '/kept.html', 5],
  ['in its link alone', '/linked.html', 5],
])('the last edit is there after a reload at any moment: %s', async (_, path, first) => {
  const { page, context, close } = await open({ path, fresh: true })
  await slow(context, page)
  const lost: string[] = []
  let sections = first
  for (let i = 0; i < EDITS; i++) {
    const after = Math.round((400 * i) / Math.max(1, EDITS - 1))
    const how = i % 2 === 1 && path !== '/linked.html' ? 'leave' : 'reload'
    await Promise.all([page.waitForEvent('load'), editAndLeave(page, how, after)])
    if (how === 'leave') await page.goto(inject('site') + path)
    await ready(page)
    const now = await read(page, (e) => e.design.dock.sections!)
    if (now !== sections + 1) lost.push(`${how} after ${after} ms: ${now}, not ${sections + 1}`)
    sections = now
  }
  expect(lost).toEqual([])
  await close()
})

test('what is being typed when the page is left counts, and so does a drag that was never let go', async () => {
  const { page, close } = await open({ path: '/kept.html', fresh: true })
  const field = page.getByRole('textbox', { name: /Name of this dock/ })
  await field.fill('Half typed')
  await page.reload()
  await ready(page)
  expect(await read(page, (e) => e.design.name)).toBe('Half typed')
  // Where there is no scene its buttons go when that is known, and what is under them moves up.
  await page.locator('.stage-controls .coming').first().waitFor({ state: 'detached' })
  const handle = page.getByRole('slider', { name: 'How high over the water' }).and(page.locator('.handle'))
  const box = (await handle.boundingBox())!
  const before = await read(page, (e) => e.design.dock.deckHeight)
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2)
  await page.mouse.down()
  await page.mouse.move(box.x + box.width / 2, box.y - 30, { steps: 4 })
  const dragged = await read(page, (e) => e.design.dock.deckHeight)
  expect(dragged).toBeGreaterThan(before)
  await page.reload()
  await ready(page)
  expect(await read(page, (e) => e.design.dock.deckHeight)).toBe(dragged)
  await close()
})

test('without its database a browser keeps the dock, and the earlier ones, all the same', async () => {
  const { page, close } = await open({
    path: '/kept.html',
    before: () => Object.defineProperty(window, 'indexedDB', { get: () => undefined }),
  })
  await page.getByRole('button', { name: 'One section more' }).click()
  await page.locator('summary', { hasText: 'File' }).click()
  await page.getByRole('button', { name: 'Start over' }).click()
  await page.getByRole('button', { name: 'One section less' }).click()
  await page.reload()
  await ready(page)
  expect(await read(page, (e) => e.design.dock.sections)).toBe(4)
  await page.locator('summary', { hasText: 'File' }).click()
  await page.getByRole('button', { name: 'Earlier docks' }).click()
  await page.locator('.sheet .sub').first().click()
  expect(await read(page, (e) => e.design.dock.sections)).toBe(6)
  await close()
})

test('a database that never answers does not keep the page from beginning', async () => {
  const { page, close } = await open({
    path: '/kept.html',
    before: () => {
      indexedDB.open = () => new EventTarget() as IDBOpenDBRequest
    },
  })
  await page.getByRole('button', { name: 'One section more' }).click()
  await page.reload()
  await ready(page)
  expect(await read(page, (e) => e.design.dock.sections)).toBe(6)
  await close()
})

test('a save that the browser ends throws nothing, and the edit is kept', async () => {
  const { page, close } = await open({
    path: '/kept.html',
    before: () => {
      const real = IDBDatabase.prototype.transaction
      IDBDatabase.prototype.transaction = function (...args: Parameters<typeof real>) {
        const made = real.apply(this, args)
        if (args[1] === 'readwrite') {
          made.addEventListener('abort', () => {
            const { dataset } = document.documentElement
            dataset.ended = String(Number(dataset.ended ?? 0) + 1)
          })
          queueMicrotask(() => made.abort())
        }
        return made
      }
    },
  })
  const ended = () => page.evaluate(() => Number(document.documentElement.dataset.ended ?? 0))
  const before = await ended()
  await page.getByRole('button', { name: 'One section more' }).click()
  await expect.poll(ended, { timeout: 10_000 }).toBeGreaterThan(before)
  await page.reload()
  await ready(page)
  expect(await read(page, (e) => e.design.dock.sections)).toBe(6)
  // `close` fails where anything was thrown unhandled.
  await close()
})
