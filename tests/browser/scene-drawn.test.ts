/** What of a dock is drawn, by how much work, and when nothing is. */
import { describe, expect, it } from 'vitest'
import { brightness, colors, differing, shot } from './scene-pixels.ts'
import { openScenes, withScenes } from './scene-support.ts'

withScenes()

/** Of a picture whose size does not matter: each frame is drawn by the processor. */
const SMALL = [320, 200] as const

describe('what is drawn', () => {
  it('is every placement of the dock, once, in at most 40 draw calls, for 5 sections and for 100', async () => {
    for (const sections of [5, 100]) {
      const { page, close } = await openScenes([{ dock: { sections }, size: SMALL }])
      const told = await page.evaluate(() => {
        const { stats, store } = scenes.shown[0]!
        // One more change, so that the shadow is among the calls.
        const { at: _, ...rest } = stats()
        return { ...rest, placements: scenes.dockOf(store.getState()).placements.length }
      })
      expect(told.instances).toBe(told.placements)
      expect(told.placements).toBeGreaterThan(sections * 25)
      expect(told.mostDrawCalls).toBeLessThanOrEqual(40)
      expect(told.triangles).toBeGreaterThan(20_000)
      await close()
    }
  })

  it('is alive and not flat, and told by an event with its numbers', async () => {
    const { page, close } = await openScenes([])
    const detail = await page.evaluate(async () => {
      const ready = new Promise<unknown>((done) =>
        document.addEventListener('leadline-scene-ready', (event) => done((event as CustomEvent).detail), {
          once: true,
        }),
      )
      scenes.show({})
      return ready
    })
    expect(detail).toMatchObject({ instances: 158 })
    await page.evaluate(() => scenes.settled())
    expect(await page.evaluate(() => scenes.shown[0]!.canvas().getContext('webgl2')!.isContextLost())).toBe(
      false,
    )
    expect(colors(await shot(page))).toBeGreaterThan(150)
    await close()
  })

  it('is nothing while nothing changes', async () => {
    const { page, close } = await openScenes([{ size: SMALL }])
    const frames = await page.evaluate(async () => {
      return scenes.drawnAtRest()
    })
    expect(frames).toBe(0)
    // And that it counts: a change is drawn.
    const after = await page.evaluate(async () => {
      const before = scenes.shown[0]!.stats().frames
      await scenes.set({ waterLevel: 0.2 })
      return scenes.shown[0]!.stats().frames - before
    })
    expect(after).toBeGreaterThan(0)
    await close()
  })

  it('changes where a sounding is moved, and comes back to the same picture', async () => {
    const { page, close } = await openScenes([{ view: { view: 'end' }, size: SMALL }])
    const before = await shot(page)
    const edit = (depth: number) =>
      page.evaluate(async (depth) => {
        scenes.shown[0]!.store.getState().edit((design) => ({
          ...design,
          site: {
            ...design.site,
            soundings: design.site.soundings.map((s, i) => (i === 4 ? { ...s, depth } : s)),
          },
        }))
        await scenes.settled()
      }, depth)
    await edit(1.8)
    expect(differing(before, await shot(page))).toBeGreaterThan(750)
    await edit(1.4)
    expect(differing(before, await shot(page))).toBeLessThan(40)
    await close()
  })

  it('shows the water higher, and dusk in the dark theme', async () => {
    const { page, close } = await openScenes([{ size: SMALL }])
    const before = await shot(page)
    await page.evaluate(() => scenes.set({ waterLevel: 0.25 }).then(() => {}))
    const high = await shot(page)
    expect(differing(before, high)).toBeGreaterThan(1250)
    await page.evaluate(() => scenes.set({ theme: 'dark' }).then(() => {}))
    expect(brightness(await shot(page))).toBeLessThan(brightness(high) * 0.75)
    await close()
  })
})
