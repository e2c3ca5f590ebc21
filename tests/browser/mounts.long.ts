/** `npm run test:long`: what nobody wants to wait for at every change. The figures are printed, to be told. */
import { expect, test } from 'vitest'
import { type Held, mountOneByOne, watchHeld } from './support/mounts.ts'
import { open, withBrowser } from './support/open.ts'

withBrowser()

const TIMES = 500
const BEFORE = 20

const runs = [
  { what: 'drawn', webgl: false, until: 'leadline-ready' },
  { what: 'with its 3D scene', webgl: true, until: 'leadline-scene-ready' },
] as const

test.each(runs)(`heap, nodes and listeners stay flat over ${TIMES} mounts, each $what`, async (run) => {
  const { page, context, close } = await open({
    path: '/bare.html',
    elements: 0,
    webgl: run.webgl,
    viewport: { width: 360, height: 560 },
  })
  await page.evaluate("import('./leadline.js').then(() => 0)")
  const held = await watchHeld(context, page)
  await mountOneByOne(page, BEFORE, run.until)
  const all: Held[] = [await held()]
  const begun = performance.now()
  for (let i = 0; i < 5; i++) {
    await mountOneByOne(page, TIMES / 5, run.until)
    all.push(await held())
  }
  const seconds = (performance.now() - begun) / 1000
  process.stdout.write(`${TIMES} mounts, each ${run.what}, ${seconds.toFixed(0)} s\n`)
  process.stdout.write('  mounts  heap, kB    nodes  listeners\n')
  all.forEach(({ bytes, nodes, listeners }, i) => {
    const row = [(i * TIMES) / 5, Math.round(bytes / 1000), nodes, listeners]
    process.stdout.write(`${row.map((n) => String(n).padStart(8)).join('  ')}\n`)
  })
  const [first, last] = [all[0]!, all.at(-1)!]
  expect(last.bytes - first.bytes, JSON.stringify(all)).toBeLessThan(2_000_000)
  expect(last.nodes - first.nodes, JSON.stringify(all)).toBeLessThan(400)
  expect(last.listeners - first.listeners, JSON.stringify(all)).toBeLessThan(60)
  await close()
})
