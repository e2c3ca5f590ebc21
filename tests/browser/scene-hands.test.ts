/** Drag, wheel, keys and fingers on the scene: none of them traps the page. */
import { describe, expect, it } from 'vitest'
import { openScenes, withScenes } from './scene-support.ts'

withScenes()

/** Of a picture whose size does not matter: each frame is drawn by the processor. */
const SMALL = [320, 200] as const

describe('hands', () => {
  it('a drag turns the view, also where it leaves the picture, and a still click does not', async () => {
    const { page, close } = await openScenes([{ size: SMALL }], { width: 640, height: 400 })
    const corner = () => page.evaluate(() => scenes.shown[0]!.stats().at(1.05, 0.6, 0.45))
    const before = await corner()
    await page.mouse.move(150, 100)
    await page.mouse.down()
    await page.mouse.up()
    await page.evaluate(() => scenes.settled().then(() => {}))
    expect(await corner()).toEqual(before)
    await page.mouse.move(150, 100)
    await page.mouse.down()
    await page.mouse.move(230, 100, { steps: 4 })
    await page.mouse.move(630, 395, { steps: 4 })
    await page.mouse.up()
    await page.mouse.move(100, 100)
    const after = (await corner())!
    expect(Math.hypot(after.x - before!.x, after.y - before!.y)).toBeGreaterThan(30)
    await page.mouse.move(200, 150)
    expect(await corner()).toEqual(after)
    await close()
  })

  it('the wheel scrolls the page and tells how to zoom; with Ctrl, or after a click, it zooms', async () => {
    const { page, close } = await openScenes([{ size: SMALL }], { height: 150 })
    const scrolled = () => page.evaluate(() => window.scrollY)
    const spread = () =>
      page.evaluate(() => {
        const { at } = scenes.shown[0]!.stats()
        const [a, b] = [at(1.05, 0, 0.45)!, at(8.4, 0, 0.45)!]
        return Math.hypot(a.x - b.x, a.y - b.y)
      })
    const before = await spread()
    await page.mouse.move(160, 60)
    await page.mouse.wheel(0, 30)
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
    await page.mouse.click(160, 60)
    await page.mouse.wheel(0, -120)
    await page.evaluate(() => scenes.settled().then(() => {}))
    expect(await spread()).toBeGreaterThan(nearer * 1.05)
    expect(await scrolled()).toBe(here)
    await close()
  })

  it('keys turn it only while it has the focus, and say from where it is seen', async () => {
    const { page, close } = await openScenes([{ size: SMALL }])
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
    const { page, close } = await openScenes([{ size: SMALL }], { touch: true, height: 150 })
    expect(await page.locator('canvas').evaluate((e) => getComputedStyle(e).touchAction)).toBe('pan-y')
    await page.touchscreen.tap(160, 100)
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
