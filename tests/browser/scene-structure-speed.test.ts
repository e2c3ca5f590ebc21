/**
 * A sounding dragged at 20 sections: kit and drawing in the task of the pointer, the structure after it. Told in ms and frames; gated as
 * ratios to what the same run measures by itself, for machines and their load differ. No 3D here: what is measured is the page's own work.
 */
import { expect, test } from 'vitest'
import { type Design, demoCatalog, demoDesign, deriveKit } from '../../rules/index.ts'
import { wavesOf } from '../../rules/site/waves/waves.ts'
import { stand } from '../../rules/stand.ts'
import { open, withBrowser } from './support/open.ts'

withBrowser()

/** Of the calibration loop, which takes about 4 ms on an ordinary core. */
const MOST_KIT = 16
/** Of what the engine by itself takes here for kit and structure: what asking a worker and drawing may add. */
const MOST_STRUCTURE = 6

/** Kit and structure by themselves, ms: the median of some, in this process. */
function costOf(design: Design): number {
  const times = Array.from({ length: 15 }, (_, i) => {
    const start = performance.now()
    const kit = deriveKit({ ...design, name: String(i) }, demoCatalog)
    stand(kit, wavesOf(kit), { deep: false })
    return performance.now() - start
  })
  return times.sort((a, b) => a - b)[7]!
}

test('a drag at 20 sections is drawn in the frame, and its structure follows', async () => {
  // A bed so flat that every leg finds a length all the way out.
  const soundings = [-3, 0, 8, 18, 30, 42, 54].map((distance) => ({
    distance,
    offset: 0,
    depth: distance < 0 ? -0.9 : 1.5 * (distance / 54) ** 0.7,
  }))
  const design: Design = {
    ...demoDesign,
    site: { ...demoDesign.site, soundings },
    dock: { ...demoDesign.dock, sections: 20 },
  }
  const before = costOf(design)
  const { page, close } = await open()
  await page.locator('leadline-dock').evaluate((e, design) => Object.assign(e, { design }), design)
  await expect
    .poll(() => page.locator('.stands [role=status]').textContent(), { timeout: 60_000 })
    .not.toBe('')
  const told = await page.locator('leadline-dock').evaluate(async (e) => {
    type Element = HTMLElement & { dock: { structure: object | null; legs: { stock: number | null }[] } }
    const element = e as Element
    const root = e.shadowRoot!
    const median = (list: readonly number[]) => [...list].sort((a, b) => a - b)[list.length >> 1]!
    const frame = () => new Promise((done) => requestAnimationFrame(done))
    /** Arithmetic and small objects, as scripting is. */
    const calibrate = (): number => {
      const start = performance.now()
      let sum = 0
      for (let i = 0; i < 300_000; i++) {
        const point = { x: Math.sin(i), y: Math.sqrt(i), z: i % 7 }
        sum += point.x * point.y + point.z
      }
      if (sum === 1) throw new Error('never')
      return performance.now() - start
    }
    const handle = root.querySelectorAll<SVGElement>('.handle.sounding')[4]!
    const strip = root.querySelector('.strip svg')!
    // What a hand does, but for the hardware: a pointer that is not there cannot be captured.
    handle.setPointerCapture = () => {}
    const at = handle.querySelector('.lead')!.getBoundingClientRect()
    const [x, y] = [at.x + at.width / 2, at.y + at.height / 2]
    const point = (type: string, dy: number): void => {
      handle.dispatchEvent(
        new PointerEvent(type, {
          bubbles: true,
          composed: true,
          cancelable: true,
          pointerId: 1,
          isPrimary: true,
          button: type === 'pointermove' ? -1 : 0,
          buttons: type === 'pointerup' ? 0 : 1,
          clientX: x,
          clientY: y + dy,
        }),
      )
    }
    const path = () => strip.querySelector('.parts')!.outerHTML
    /** Asked once a frame, no more: the processor is the worker's meanwhile. */
    const stood = () =>
      new Promise<void>((done) => {
        const late = performance.now() + 10_000
        const look = (): void => {
          if (element.dock.structure || performance.now() > late) done()
          else requestAnimationFrame(look)
        }
        look()
      })
    const kits: number[] = []
    const structures: number[] = []
    const frames: number[] = []
    const loops: number[] = []
    let unseen = 0
    let stale = 0
    let missing = 0
    const move = async (i: number): Promise<number> => {
      const before = path()
      const start = performance.now()
      point('pointermove', 6 + (i % 20) * 2)
      // The screen's own commit follows in a microtask.
      await Promise.resolve()
      await Promise.resolve()
      kits.push(performance.now() - start)
      if (path() === before) unseen++
      if (element.dock.structure) stale++
      return start
    }
    point('pointerdown', 0)
    for (let i = 0; i < 30; i++) {
      loops.push(calibrate())
      await frame()
      const start = await move(i)
      await stood()
      structures.push(performance.now() - start)
      if (!element.dock.structure) missing++
    }
    for (let i = 0; i < 10; i++) {
      await frame()
      await move(i)
      let count = 0
      let counting = true
      const done = stood().then(() => {
        counting = false
      })
      while (counting) {
        await frame()
        if (counting) count++
      }
      await done
      frames.push(count)
    }
    point('pointerup', 6)
    return {
      // The first ones are not yet compiled.
      kit: median(kits.slice(10)),
      structure: median(structures.slice(10)),
      frames: median(frames),
      loop: median(loops.slice(10)),
      unseen,
      stale,
      missing,
    }
  })
  const { kit, structure, frames, loop } = told
  const cost = (before + costOf(design)) / 2
  process.stdout.write(
    `Drag at 20 sections: kit and drawing ${kit.toFixed(1)} ms, structure ${structure.toFixed(1)} ms and ${frames} frames after the move; calibration loop ${loop.toFixed(1)} ms, the engine by itself ${cost.toFixed(1)} ms; ratios ${(kit / loop).toFixed(1)} and ${(structure / cost).toFixed(1)}\n`,
  )
  expect(told.unseen, 'moves that the strip did not show in their task').toBe(0)
  expect(told.stale, 'moves after which an older structure was still told').toBe(0)
  expect(told.missing, 'moves without a structure').toBe(0)
  expect(kit / loop).toBeLessThan(MOST_KIT)
  expect(structure / cost).toBeLessThan(MOST_STRUCTURE)
  await close()
})
