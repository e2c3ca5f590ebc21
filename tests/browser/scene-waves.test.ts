/** The water while it is played: frames then, none otherwise, and the surface where the same trains say that it is. */
import { describe, expect, it } from 'vitest'
import { footprintOfAll } from '../../rules/layout/footprint.ts'
import { seaOf, shareAt, surfaceAt } from '../../src/scene/water/wave-trains.ts'
import { differing, shot } from './scene-pixels.ts'
import { openScenes, withScenes } from './scene-support.ts'
import { someOf } from './support/at-length.ts'

withScenes()

const WIND = { speed: 15, fetch: 1800 }
const BARE = { labels: false, person: false } as const
/** Of a picture whose size does not matter: each frame is drawn by the processor. */
const SMALL = [320, 200] as const

describe('waves in the scene', () => {
  it('draw frames while they are played, and none before, after, or out of sight', async () => {
    const { page, close } = await openScenes([{ site: { wind: WIND }, view: BARE, size: SMALL }], {
      motion: true,
    })
    const flat = await shot(page)
    const told = await page.evaluate(async () => {
      const { stats, store, host } = scenes.shown[0]!
      const before = await scenes.drawnAtRest()
      store.getState().set({ waves: true })
      const played = await scenes.drawn(5)
      const still = stats().still
      host.style.marginTop = '4000px'
      // The browser tells late of what it no longer shows while the processor still draws.
      let away = await scenes.drawnAtRest()
      for (let i = 0; i < 20 && away > 0; i++) away = await scenes.drawnAtRest()
      host.style.marginTop = ''
      const again = await scenes.drawn(2)
      await scenes.set({ waves: false })
      return { before, played, still, away, again, after: await scenes.drawnAtRest() }
    })
    expect(told).toMatchObject({ before: 0, still: false, away: 0, after: 0 })
    expect(told.played).toBeGreaterThanOrEqual(5)
    expect(told.again).toBeGreaterThanOrEqual(2)
    // The water lies as it did.
    expect(differing(flat, await shot(page))).toBeLessThan(20)
    await close()
  })

  const MOVING = [
    ['the water', { waves: true }],
    ['the dock that sways', { sway: 'across' }],
  ] as const
  for (const [what, view] of someOf(MOVING, 1))
    it(`no frame of ${what} is drawn in a tab that nobody looks at, and it goes on when somebody does`, async () => {
      const { page, close } = await openScenes([{ site: { wind: WIND }, view: BARE, size: SMALL }], {
        motion: true,
      })
      const told = await page.evaluate(async (moving) => {
        const look = (hidden: boolean): void => {
          Object.defineProperty(document, 'hidden', { configurable: true, get: () => hidden })
          document.dispatchEvent(new Event('visibilitychange'))
        }
        scenes.shown[0]!.store.getState().set(moving)
        const played = await scenes.drawn(3)
        look(true)
        // One that was under way may still be told.
        await new Promise((done) => setTimeout(done, 300))
        const away = await scenes.drawnAtRest()
        look(false)
        return { played, away, again: await scenes.drawn(3) }
      }, view)
      expect(told.played).toBeGreaterThanOrEqual(3)
      expect(told.away).toBe(0)
      expect(told.again).toBeGreaterThanOrEqual(3)
      await close()
    })

  it('stand still for those who want no motion: one picture, and what it shows is said', async () => {
    const { page, close } = await openScenes([{ site: { wind: WIND }, view: BARE, size: SMALL }])
    const flat = await shot(page)
    const frames = await page.evaluate(async () => {
      await scenes.set({ waves: true })
      return scenes.drawnAtRest()
    })
    expect(frames).toBe(0)
    expect(differing(flat, await shot(page))).toBeGreaterThan(1000)
    expect(await page.locator('.scene-caption').textContent()).toBe(
      'Waves 1 ft 5 in high, one in ten 1 ft 9 1/2 in, 19 ft long, one every 2.0 s. Drawn to scale.',
    )
    await page.evaluate(() => scenes.shown[0]!.store.getState().set({ units: 'metric' }))
    expect(await page.locator('.scene-caption').textContent()).toContain('5.50 m long')
    await page.evaluate(() => scenes.shown[0]!.store.getState().set({ waves: false }))
    expect(await page.locator('.scene-caption').isVisible()).toBe(false)
    await close()
  })

  it('stand as high as they were worked out: the line along the cut is where the trains add up to', async () => {
    const { page, close } = await openScenes(
      [{ site: { wind: WIND }, view: { ...BARE, view: 'lake', cut: true, waves: true } }],
      {
        width: 900,
        height: 420,
      },
    )
    const dock = await page.evaluate(() => {
      const { store } = scenes.shown[0]!
      return scenes.dockOf(store.getState())
    })
    const sea = seaOf(dock.waves, 0)!
    const { x1, y0 } = footprintOfAll(dock.sections)!
    const plane = y0 - 0.45
    const { data, width } = await shot(page)
    const brightness = (x: number, y: number): number =>
      data[4 * (y * width + x)]! + data[4 * (y * width + x) + 1]! + data[4 * (y * width + x) + 2]!
    const found: number[] = []
    for (let k = 0; k < 24; k++) {
      // Out beyond the dock, where nothing stands before or behind it.
      const x = x1 - 4 + k * 0.2
      const z = surfaceAt(sea, x, plane, 0, shareAt(sea, 1.1))
      const at = await page.evaluate(([x, y, z]) => scenes.shown[0]!.stats().at(x!, y!, z!), [x, plane, z])
      const [px, py] = [Math.round(at!.x), Math.round(at!.y)]
      const rows = Array.from({ length: 31 }, (_, i) => py - 15 + i)
      const line = rows.reduce((best, row) => (brightness(px, row) > brightness(px, best) ? row : best))
      found.push(Math.abs(line - py))
    }
    expect(found.sort((a, b) => a - b)[Math.floor(found.length * 0.8)]).toBeLessThanOrEqual(2)
    await close()
  })
})
