/** What it weighs: bytes on the way, memory in the long run. */
import { readdirSync, readFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { expect, inject, test } from 'vitest'
import { open, withBrowser } from './support/open.ts'

withBrowser()

/** kB are 1000 bytes. First: all that comes before the 3D scene without a touch. */
const FIRST = 115_000
const ALL = 320_000

const weigh = (file: string): number => gzipSync(readFileSync(file), { level: 9 }).length

/** A file and all that it imports at once, not on demand. */
function withImports(file: string, seen = new Set<string>()): Set<string> {
  if (seen.has(file)) return seen
  seen.add(file)
  for (const [, path] of readFileSync(file, 'utf8').matchAll(
    /(?:^|[;}\s])(?:import|export)[^"'`();]*?(?:from)?\s*["'](\.[^"']+)["']/g,
  ))
    withImports(join(file, '..', path!), seen)
  return seen
}

test('the bytes before the first picture keep to their budget', () => {
  const files = [...withImports(join(inject('dist'), 'leadline.js'))]
  expect(files.length).toBeGreaterThan(1)
  const sizes = files.map((file) => [basename(file), weigh(file)] as const)
  expect(
    sizes.reduce((sum, [, n]) => sum + n, 0),
    JSON.stringify(sizes),
  ).toBeLessThanOrEqual(FIRST)
})

test('all bytes, with the 3D scene, keep to their budget', () => {
  const dist = inject('dist')
  const files = [
    join(dist, 'leadline.js'),
    ...readdirSync(join(dist, 'leadline')).map((name) => join(dist, 'leadline', name)),
  ]
  const sizes = files
    .filter((file) => file.endsWith('.js'))
    .map((file) => [basename(file), weigh(file)] as const)
  expect(
    sizes.reduce((sum, [, n]) => sum + n, 0),
    JSON.stringify(sizes),
  ).toBeLessThanOrEqual(ALL)
})

test('nothing of the 3D scene comes before the first picture', async () => {
  const { requests, close } = await open()
  const before = requests.filter((url) => url.endsWith('.js'))
  expect(before.some((url) => /scene/.test(url))).toBe(false)
  await close()
})

test('the heap stays flat over 1,000 edits', { timeout: 300_000 }, async () => {
  const { page, context, close } = await open({ path: '/bare.html', elements: 0 })
  await page.evaluate(() => document.body.append(document.createElement('leadline-dock')))
  await page.evaluate("import('./leadline.js').then(() => leadlineReady)")
  const session = await context.newCDPSession(page)
  const heap = async (): Promise<number> => {
    await page.evaluate(() => {
      ;(window as unknown as { leadlineEvents: unknown[] }).leadlineEvents.length = 0
    })
    for (let i = 0; i < 3; i++) await session.send('HeapProfiler.collectGarbage')
    return (await session.send('Runtime.getHeapUsage')).usedSize
  }
  const edit = (times: number) =>
    page.locator('leadline-dock').evaluate(async (element, times) => {
      const root = element.shadowRoot!
      const events = (window as unknown as { leadlineEvents: unknown[] }).leadlineEvents
      const buttons = [...root.querySelectorAll<HTMLButtonElement>('.stepper button')].slice(0, 2)
      for (let i = 0; i < times; i++) {
        buttons[i % 2]!.click()
        events.length = 0
        if (i % 20 === 0) await new Promise((done) => setTimeout(done))
      }
    }, times)
  // The first hundred fill the undo list, which is bounded.
  await edit(200)
  const before = await heap()
  await edit(1000)
  const after = await heap()
  expect(after - before, `${before} → ${after} bytes`).toBeLessThan(1_000_000)
  await close()
})

test('the heap and the page stay flat over 40 mounts', { timeout: 300_000 }, async () => {
  const { page, context, close } = await open({ path: '/bare.html', elements: 0 })
  await page.evaluate("import('./leadline.js').then(() => 0)")
  const session = await context.newCDPSession(page)
  const heap = async (): Promise<{ bytes: number; nodes: number; listeners: number }> => {
    for (let i = 0; i < 3; i++) await session.send('HeapProfiler.collectGarbage')
    const { usedSize } = await session.send('Runtime.getHeapUsage')
    const { nodes, jsEventListeners } = await session.send('Memory.getDOMCounters')
    return { bytes: usedSize, nodes, listeners: jsEventListeners }
  }
  const mounts = (times: number) =>
    page.evaluate(async (times) => {
      for (let i = 0; i < times; i++) {
        const element = document.createElement('leadline-dock')
        const ready = new Promise((done) => element.addEventListener('leadline-ready', done, { once: true }))
        document.body.append(element)
        await ready
        element.remove()
        await new Promise((done) => setTimeout(done, 100))
      }
    }, times)
  await mounts(8)
  const before = await heap()
  await mounts(40)
  const after = await heap()
  expect(after.bytes - before.bytes, JSON.stringify([before, after])).toBeLessThan(1_500_000)
  expect(after.nodes - before.nodes, JSON.stringify([before, after])).toBeLessThan(400)
  expect(after.listeners - before.listeners, JSON.stringify([before, after])).toBeLessThan(60)
  await close()
})
