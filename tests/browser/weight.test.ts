/** What it weighs: bytes on the way, memory in the long run. */
import { basename } from 'node:path'
import { expect, inject, test } from 'vitest'
import { faultsOf, readSizes, tableOf } from '../../src/build/size.ts'
import { mountOneByOne, watchHeld } from './support/mounts.ts'
import { open, withBrowser } from './support/open.ts'

withBrowser()

test('every byte keeps to its budget: before the first picture, with the 3D scene, each chunk that comes later', () => {
  const sizes = readSizes(inject('dist'))
  expect(sizes.first.files.length).toBeGreaterThan(1)
  expect(faultsOf(sizes), tableOf(sizes)).toEqual([])
})

test('before the first picture comes what is counted as that, and nothing of the 3D scene', async () => {
  const sizes = readSizes(inject('dist'))
  const first = sizes.first.files.map((file) => basename(file))
  const scene = sizes.all.files.map((file) => basename(file)).filter((file) => !first.includes(file))
  const { page, close } = await open({ path: '/bare.html', elements: 0, webgl: true })
  await page.evaluate(() =>
    document.body.insertAdjacentHTML('beforeend', '<leadline-dock start="example"></leadline-dock>'),
  )
  // As text: what runs the tests would make an import of its own of it.
  await page.evaluate("import('./leadline.js').then(() => 0)")
  const loaded = await page.evaluate(async () => {
    await (window as unknown as { leadlineReady: Promise<void> }).leadlineReady
    const before = performance.getEntriesByType('resource').map((entry) => entry.name)
    await (window as unknown as { leadlineScene: Promise<void> }).leadlineScene
    return { before, after: performance.getEntriesByType('resource').map((entry) => entry.name) }
  })
  const names = (urls: readonly string[]): string[] => urls.map((url) => basename(url))
  expect(names(loaded.before)).toEqual(expect.arrayContaining(first))
  expect(names(loaded.before).filter((name) => scene.includes(name))).toEqual([])
  expect(names(loaded.after)).toEqual(expect.arrayContaining(scene))
  await close()
})

test('the heap stays flat over 1,000 edits', { timeout: 300_000 }, async () => {
  const { page, context, close } = await open({ path: '/bare.html', elements: 0 })
  await page.evaluate(() =>
    document.body.insertAdjacentHTML('beforeend', '<leadline-dock start="example"></leadline-dock>'),
  )
  await page.evaluate("import('./leadline.js').then(() => leadlineReady)")
  const held = await watchHeld(context, page)
  const heap = async (): Promise<number> => {
    await page.evaluate(() => {
      ;(window as unknown as { leadlineEvents: unknown[] }).leadlineEvents.length = 0
    })
    return (await held()).bytes
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
  const held = await watchHeld(context, page)
  await mountOneByOne(page, 8)
  const before = await held()
  await mountOneByOne(page, 40)
  const after = await held()
  expect(after.bytes - before.bytes, JSON.stringify([before, after])).toBeLessThan(1_500_000)
  expect(after.nodes - before.nodes, JSON.stringify([before, after])).toBeLessThan(400)
  expect(after.listeners - before.listeners, JSON.stringify([before, after])).toBeLessThan(60)
  await close()
})
