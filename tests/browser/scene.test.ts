/** The 3D scene by itself, in a real browser with software rendering. */
import { PNG } from 'pngjs'
import { describe, expect, it } from 'vitest'
import { openScenes, withScenes } from './scene-support.ts'

withScenes()

const shot = async (page: import('playwright-core').Page): Promise<PNG> =>
  PNG.sync.read(await page.screenshot())

/** How many different colors a picture has, counted coarsely: a flat one has one or two. */
function colors({ data }: PNG): number {
  const found = new Set<number>()
  for (let i = 0; i < data.length; i += 4)
    found.add(((data[i]! >> 4) << 8) | ((data[i + 1]! >> 4) << 4) | (data[i + 2]! >> 4))
  return found.size
}

function differing(a: PNG, b: PNG): number {
  let n = 0
  for (let i = 0; i < a.data.length; i += 4)
    if (Math.abs(a.data[i]! - b.data[i]!) + Math.abs(a.data[i + 1]! - b.data[i + 1]!) > 12) n++
  return n
}

describe('what is drawn', () => {
  it('is every placement of the dock, once, in at most 40 draw calls, for 5 sections and for 100', async () => {
    for (const sections of [5, 100]) {
      const { page, close } = await openScenes([{ dock: { sections } }])
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

  it('is nothing while nothing changes: no frame in two seconds', async () => {
    const { page, close } = await openScenes([{}])
    const frames = await page.evaluate(async () => {
      const before = scenes.shown[0]!.stats().frames
      await new Promise((done) => setTimeout(done, 2000))
      return scenes.shown[0]!.stats().frames - before
    })
    expect(frames).toBe(0)
    // And that it counts: a change is drawn.
    const after = await page.evaluate(async () => {
      const before = scenes.shown[0]!.stats().frames
      scenes.shown[0]!.store.getState().set({ waterLevel: 0.2 })
      await scenes.settled()
      return scenes.shown[0]!.stats().frames - before
    })
    expect(after).toBeGreaterThan(0)
    await close()
  })

  it('changes where a sounding is moved, and comes back to the same picture', async () => {
    const { page, close } = await openScenes([{ view: { view: 'side' } }])
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
    expect(differing(before, await shot(page))).toBeGreaterThan(3000)
    await edit(1.4)
    expect(differing(before, await shot(page))).toBeLessThan(40)
    await close()
  })

  it('shows the water higher, and dusk in the dark theme', async () => {
    const { page, close } = await openScenes([{}])
    const before = await shot(page)
    await page.evaluate(() => {
      scenes.shown[0]!.store.getState().set({ waterLevel: 0.25 })
      return scenes.settled().then(() => {})
    })
    const high = await shot(page)
    expect(differing(before, high)).toBeGreaterThan(5000)
    await page.evaluate(() => {
      scenes.shown[0]!.store.getState().set({ theme: 'dark' })
      return scenes.settled().then(() => {})
    })
    const mean = ({ data }: PNG) =>
      data.reduce((sum, value, i) => (i % 4 < 3 ? sum + value : sum), 0) / data.length
    expect(mean(await shot(page))).toBeLessThan(mean(high) * 0.75)
    await close()
  })
})

describe('picking', () => {
  const tap = async (page: import('playwright-core').Page, of: string) => {
    const at = await page.evaluate((id) => {
      const { stats, store } = scenes.shown[0]!
      const leg = scenes.dockOf(store.getState()).legs.find((l) => l.id === id)!
      return stats().at(leg.x, leg.y, leg.bed + leg.setHeight + leg.aboveDeck! * 0.6)
    }, of)
    await page.mouse.click(at!.x, at!.y)
    await page.evaluate(() => scenes.settled().then(() => {}))
  }
  const labels = (page: import('playwright-core').Page) =>
    page.evaluate(() =>
      [...document.querySelectorAll<HTMLElement>('.scene-label')]
        .filter((label) => label.style.visibility !== 'hidden')
        .map((label) => label.textContent),
    )

  it('a leg selects it and shows its measures where they are; again, and it is let go', async () => {
    const { page, close } = await openScenes([{ view: { view: 'lake', units: 'metric' } }])
    await tap(page, 's5.end.right')
    expect(await page.evaluate(() => scenes.shown[0]!.store.getState().selection)).toBe('s5.end.right')
    const leg = await page.evaluate(
      () => scenes.dockOf(scenes.shown[0]!.store.getState()).legs.find((l) => l.id === 's5.end.right')!,
    )
    const text = (await labels(page)).join(' | ')
    for (const measure of [leg.setHeight, leg.aboveDeck!, -leg.bed])
      expect(text).toContain(`${measure.toFixed(2)} m`)
    await tap(page, 's5.end.right')
    expect(await page.evaluate(() => scenes.shown[0]!.store.getState().selection)).toBe(null)
    await close()
  })

  it('pointing lights up what is under the pointer, and nothing beside the dock', async () => {
    const { page, close } = await openScenes([{}])
    const place = await page.evaluate(() => {
      const { stats, store } = scenes.shown[0]!
      const s3 = scenes.dockOf(store.getState()).sections.find((s) => s.id === 's3')!
      return stats().at(s3.x + 1, 0, s3.z)
    })
    await page.mouse.move(place!.x, place!.y)
    await page.evaluate(() => scenes.settled().then(() => {}))
    expect(await page.evaluate(() => scenes.shown[0]!.store.getState().hover)).toBe('s3')
    await page.mouse.move(30, 60)
    await page.evaluate(() => scenes.settled().then(() => {}))
    expect(await page.evaluate(() => scenes.shown[0]!.store.getState().hover)).toBe(null)
    await close()
  })

  it('labels that are shown never lie over one another', async () => {
    const { page, close } = await openScenes([
      { dock: { sections: 14 }, view: { view: 'lake', selection: 's9.end.left' } },
    ])
    const boxes = await page.evaluate(() =>
      [...document.querySelectorAll<HTMLElement>('.scene-label')]
        .filter((label) => label.style.visibility !== 'hidden')
        .map((label) => label.getBoundingClientRect().toJSON() as DOMRect),
    )
    expect(boxes.length).toBeGreaterThan(5)
    for (const [i, a] of boxes.entries())
      for (const b of boxes.slice(i + 1))
        expect(a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom).toBe(false)
    await close()
  })
})

describe('hands', () => {
  it('a drag turns the view, also where it leaves the picture, and a still click does not', async () => {
    const { page, close } = await openScenes([{}])
    const corner = () => page.evaluate(() => scenes.shown[0]!.stats().at(1.05, 0.6, 0.45))
    const before = await corner()
    await page.mouse.move(300, 200)
    await page.mouse.down()
    await page.mouse.up()
    await page.evaluate(() => scenes.settled().then(() => {}))
    expect(await corner()).toEqual(before)
    await page.mouse.move(300, 200)
    await page.mouse.down()
    await page.mouse.move(380, 200, { steps: 4 })
    await page.mouse.move(630, 395, { steps: 4 })
    await page.mouse.up()
    await page.mouse.move(100, 100)
    const after = (await corner())!
    expect(Math.hypot(after.x - before!.x, after.y - before!.y)).toBeGreaterThan(60)
    await page.mouse.move(200, 150)
    expect(await corner()).toEqual(after)
    await close()
  })

  it('the wheel scrolls the page and tells how to zoom; with Ctrl, or after a click, it zooms', async () => {
    const { page, close } = await openScenes([{}], { height: 300 })
    const scrolled = () => page.evaluate(() => window.scrollY)
    const spread = () =>
      page.evaluate(() => {
        const { at } = scenes.shown[0]!.stats()
        const [a, b] = [at(1.05, 0, 0.45)!, at(8.4, 0, 0.45)!]
        return Math.hypot(a.x - b.x, a.y - b.y)
      })
    const before = await spread()
    await page.mouse.move(320, 120)
    await page.mouse.wheel(0, 60)
    await page.waitForFunction(() => window.scrollY > 0)
    expect(await spread()).toBeCloseTo(before, 6)
    expect(await page.locator('.scene-hint').getAttribute('class')).toContain('seen')
    const here = await scrolled()
    await page.keyboard.down('Control')
    await page.mouse.wheel(0, -120)
    await page.keyboard.up('Control')
    await page.waitForFunction((n) => scenes.shown[0]!.stats().at(1.05, 0, 0.45)!.x !== n, before)
    const nearer = await spread()
    expect(nearer).toBeGreaterThan(before * 1.05)
    expect(await scrolled()).toBe(here)
    await page.mouse.click(320, 120)
    await page.mouse.wheel(0, -120)
    await page.evaluate(() => scenes.settled().then(() => {}))
    expect(await spread()).toBeGreaterThan(nearer * 1.05)
    expect(await scrolled()).toBe(here)
    await close()
  })

  it('keys turn it only while it has the focus, and say from where it is seen', async () => {
    const { page, close } = await openScenes([{}])
    const corner = () => page.evaluate(() => scenes.shown[0]!.stats().at(1.05, 0.6, 0.45))
    const before = await corner()
    await page.keyboard.press('ArrowLeft')
    expect(await corner()).toEqual(before)
    await page.keyboard.press('Tab')
    for (let i = 0; i < 9; i++) await page.keyboard.press('ArrowRight')
    expect(await corner()).not.toEqual(before)
    expect(await page.locator('[role=status]').textContent()).toMatch(/^Seen from the (right|lake), /)
    await page.keyboard.press('Home')
    await page.evaluate(() => scenes.settled().then(() => {}))
    const back = (await corner())!
    expect(back.x).toBeCloseTo(before!.x, 3)
    expect(back.y).toBeCloseTo(before!.y, 3)
    const canvas = page.locator('canvas')
    expect(await canvas.getAttribute('role')).toBe('application')
    expect(await canvas.getAttribute('aria-label')).toContain('Quillet Cove')
    expect(await page.locator(`#${await canvas.getAttribute('aria-describedby')}`).textContent()).toContain(
      'Arrow keys',
    )
    await close()
  })

  it('one finger scrolls the page up and down', async () => {
    const { page, close } = await openScenes([{}], { touch: true, height: 300 })
    expect(await page.locator('canvas').evaluate((e) => getComputedStyle(e).touchAction)).toBe('pan-y')
    await page.touchscreen.tap(320, 200)
    const taken = await page.evaluate(() => {
      const canvas = scenes.shown[0]!.canvas()
      const touches = (n: number) =>
        Array.from(
          { length: n },
          (_, i) => new Touch({ identifier: i, target: canvas, clientX: 100 + i, clientY: 99 }),
        )
      const moved = (n: number) => {
        const event = new TouchEvent('touchmove', { touches: touches(n), cancelable: true, bubbles: true })
        canvas.dispatchEvent(event)
        return event.defaultPrevented
      }
      return { one: moved(1), two: moved(2) }
    })
    expect(taken).toEqual({ one: false, two: true })
    await close()
  })
})

describe('whatever happens to it', () => {
  it('a lost context comes back by itself, with the same picture', async () => {
    const { page, close } = await openScenes([{}])
    const before = await shot(page)
    await page.evaluate(async () => {
      const gl = scenes.shown[0]!.canvas().getContext('webgl2')!
      const lose = gl.getExtension('WEBGL_lose_context')!
      const lost = new Promise((done) => scenes.shown[0]!.canvas().addEventListener('webglcontextlost', done))
      lose.loseContext()
      await lost
      // A change meanwhile is not lost.
      scenes.shown[0]!.store.getState().set({ waterLevel: 0.1 })
      await new Promise((done) => setTimeout(done, 200))
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
    expect(differing(before, after)).toBeLessThan(200)
    await close()
  })

  it('one that stays away can be asked for again', async () => {
    const { page, close } = await openScenes([{}])
    await page.evaluate(() =>
      scenes.shown[0]!.canvas().getContext('webgl2')!.getExtension('WEBGL_lose_context')!.loseContext(),
    )
    const button = page.getByRole('button', { name: 'Show it again' })
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
    const { page, close } = await openScenes([])
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
      await new Promise((done) => setTimeout(done, 600))
      const none = stats().frames
      host.style.width = '640px'
      host.style.height = '400px'
      await scenes.settled(i)
      const some = stats().frames
      host.style.display = 'none'
      await new Promise((done) => setTimeout(done, 300))
      const hidden = stats().frames
      store.getState().set({ waterLevel: 0.2 })
      await new Promise((done) => setTimeout(done, 900))
      const still = stats().frames
      host.style.display = ''
      await new Promise((done) => setTimeout(done, 300))
      await scenes.settled(i)
      return { none, some, whileHidden: still - hidden, after: stats().frames - still }
    })
    expect(frames.none).toBe(0)
    expect(frames.some).toBeGreaterThan(0)
    expect(frames.whileHidden).toBe(0)
    expect(frames.after).toBeGreaterThan(0)
    expect(colors(await shot(page))).toBeGreaterThan(150)
    await close()
  })

  it('moved in the document it goes on', async () => {
    const { page, close } = await openScenes([{}])
    const before = await shot(page)
    await page.evaluate(async () => {
      const { host } = scenes.shown[0]!
      const other = document.body.appendChild(document.createElement('section'))
      other.append(host)
      await new Promise((done) => setTimeout(done, 100))
      scenes.shown[0]!.store.getState().set({ person: false })
      await scenes.settled()
      scenes.shown[0]!.store.getState().set({ person: true })
      await scenes.settled()
    })
    expect(differing(before, await shot(page))).toBeLessThan(40)
    await close()
  })

  it('two on a page are two, and one taken away leaves the other', async () => {
    const small = [320, 300] as const
    const { page, close } = await openScenes([{ size: small }, { size: small, view: { view: 'side' } }], {
      height: 620,
    })
    const told = await page.evaluate(async () => {
      const [a, b] = scenes.shown as [(typeof scenes.shown)[0], (typeof scenes.shown)[0]]
      const before = b.stats().frames
      a.store.getState().set({ waterLevel: 0.2 })
      await scenes.settled(0)
      const untouched = b.stats().frames - before
      a.mounted.dispose()
      await new Promise((done) => setTimeout(done, 900))
      b.store.getState().set({ waterLevel: 0.2 })
      await scenes.settled(1)
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
      const kept: WebGL2RenderingContext[] = []
      for (let i = 0; i < 20; i++) {
        const n = scenes.show({ size: [200, 160] })
        kept.push(scenes.shown[n]!.canvas().getContext('webgl2')!)
        scenes.shown[n]!.mounted.dispose()
        scenes.shown[n]!.host.remove()
      }
      await new Promise((done) => setTimeout(done, 700))
      return kept.filter((gl) => !gl.isContextLost()).length
    })
    expect(alive).toBe(0)
    await close()
  })
})
