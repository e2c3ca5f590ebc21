/** The scene outlives whatever happens to its context, its box and its place in the document. */
import { describe, expect, it } from 'vitest'
import { colors, differing, shot } from './scene-pixels.ts'
import { openScenes, withScenes } from './scene-support.ts'

withScenes()

/** Of a picture whose size does not matter: each frame is drawn by the processor. */
const SMALL = [320, 200] as const

describe('whatever happens to it', () => {
  it('a lost context comes back by itself, with the same picture', async () => {
    const { page, close } = await openScenes([{ size: SMALL }])
    const before = await shot(page)
    await page.evaluate(async () => {
      const gl = scenes.shown[0]!.canvas().getContext('webgl2')!
      const lose = gl.getExtension('WEBGL_lose_context')!
      const lost = new Promise((done) => scenes.shown[0]!.canvas().addEventListener('webglcontextlost', done))
      lose.loseContext()
      await lost
      // A change meanwhile is not lost.
      scenes.shown[0]!.store.getState().set({ waterLevel: 0.1 })
      await scenes.drawnAtRest()
      scenes.shown[0]!.store.getState().set({ waterLevel: 0 })
      const back = new Promise((done) =>
        scenes.shown[0]!.canvas().addEventListener('webglcontextrestored', done),
      )
      lose.restoreContext()
      await back
      await scenes.settled()
    })
    const after = await shot(page)
    expect(colors(after)).toBeGreaterThan(150)
    expect(differing(before, after)).toBeLessThan(50)
    await close()
  })

  it('one that stays away can be asked for again', async () => {
    const { page, close } = await openScenes([{ size: SMALL }])
    await page.evaluate(() =>
      scenes.shown[0]!.canvas().getContext('webgl2')!.getExtension('WEBGL_lose_context')!.loseContext(),
    )
    const button = page.getByRole('button', { name: 'Bring it back' })
    await button.waitFor({ timeout: 10_000 })
    await button.click()
    await page.evaluate(() => scenes.settled().then(() => {}))
    expect(await button.isVisible()).toBe(false)
    expect(await page.evaluate(() => scenes.shown[0]!.canvas().getContext('webgl2')!.isContextLost())).toBe(
      false,
    )
    expect(colors(await shot(page))).toBeGreaterThan(150)
    await close()
  })

  it('without WebGL it throws an error of its own and leaves nothing behind', async () => {
    const { page, close } = await openScenes([], { fresh: true })
    const told = await page.evaluate(() => {
      HTMLCanvasElement.prototype.getContext = () => null
      try {
        scenes.show({})
        return 'no error'
      } catch (error) {
        return [
          error instanceof scenes.NoWebGLError,
          (error as { code?: string }).code,
          document.querySelectorAll('.scene, canvas').length,
          document.adoptedStyleSheets.length,
        ]
      }
    })
    expect(told).toEqual([true, 'no-webgl', 0, 0])
    await close()
  })

  it('in a box without a size it waits, and comes when there is one; hidden, it draws nothing', async () => {
    const { page, close } = await openScenes([])
    const frames = await page.evaluate(async () => {
      const i = scenes.show({ size: [0, 0] })
      const { stats, host, store } = scenes.shown[i]!
      const none = await scenes.drawnAtRest(i)
      host.style.width = '320px'
      host.style.height = '200px'
      await scenes.settled(i)
      const some = stats().frames
      host.style.display = 'none'
      // Until the browser has told of it.
      await scenes.drawnAtRest(i)
      store.getState().set({ waterLevel: 0.2 })
      const whileHidden = await scenes.drawnAtRest(i)
      host.style.display = ''
      const after = await scenes.drawn(1, i)
      await scenes.settled(i)
      return { none, some, whileHidden, after }
    })
    expect(frames.none).toBe(0)
    expect(frames.some).toBeGreaterThan(0)
    expect(frames.whileHidden).toBe(0)
    expect(frames.after).toBeGreaterThan(0)
    expect(colors(await shot(page))).toBeGreaterThan(150)
    await close()
  })

  it('moved in the document it goes on', async () => {
    const { page, close } = await openScenes([{ size: SMALL }])
    const before = await shot(page)
    await page.evaluate(async () => {
      const { host } = scenes.shown[0]!
      const other = document.body.appendChild(document.createElement('section'))
      other.append(host)
      await scenes.set({ person: false })
      await scenes.set({ person: true })
    })
    expect(differing(before, await shot(page))).toBeLessThan(40)
    await close()
  })

  it('two on a page are two, and one taken away leaves the other', async () => {
    const { page, close } = await openScenes([{ size: SMALL }, { size: SMALL, view: { view: 'end' } }], {
      height: 620,
    })
    const told = await page.evaluate(async () => {
      const [a, b] = scenes.shown as [(typeof scenes.shown)[0], (typeof scenes.shown)[0]]
      const before = b.stats().frames
      await scenes.set({ waterLevel: 0.2 }, 0)
      const untouched = b.stats().frames - before
      const given = a.canvas()
      a.mounted.dispose()
      await scenes.lost([given])
      await scenes.set({ waterLevel: 0.2 }, 1)
      return {
        untouched,
        alive: !b.canvas().getContext('webgl2')!.isContextLost(),
        boxes: document.querySelectorAll('.scene').length,
        sheets: document.adoptedStyleSheets.length,
      }
    })
    expect(told).toEqual({ untouched: 0, alive: true, boxes: 1, sheets: 1 })
    await close()
  })

  it('mounted and taken away many times it gives all contexts back', async () => {
    const { page, close } = await openScenes([])
    const alive = await page.evaluate(async () => {
      const kept: HTMLCanvasElement[] = []
      for (let i = 0; i < 20; i++) {
        const n = scenes.show({ size: [200, 160] })
        kept.push(scenes.shown[n]!.canvas())
        scenes.shown[n]!.mounted.dispose()
        scenes.shown[n]!.host.remove()
      }
      return scenes.lost(kept)
    })
    expect(alive).toBe(0)
    await close()
  })
})
