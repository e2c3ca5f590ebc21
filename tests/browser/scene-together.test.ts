/** The scene in the real page: what is dragged in the strip moves in it, and what is picked in it is picked everywhere. */
import { expect, test } from 'vitest'
import type { SceneStats } from '../../src/scene/scene.tsx'
import { settled, shotOf, stats } from './scene-in-page.ts'
import { differing } from './scene-pixels.ts'
import { open, read, withBrowser } from './support/open.ts'

withBrowser()

test('a sounding dragged in the strip moves bed and leg in the scene, by its numbers and by its pixels', async () => {
  const { page, close } = await open({ webgl: true, viewport: { width: 700, height: 900 } })
  await settled(page)
  await page.getByRole('button', { name: 'End', exact: true }).click()
  await settled(page)
  const before = await shotOf(page)
  const count = (await stats(page)).instances
  expect(count).toBe(await read(page, (e) => e.dock.placements.length))
  const leg = await read(page, (e) => e.dock.legs.at(-1)!.stock)
  const box = (await page.locator('.handle.sounding').nth(4).locator('.lead').boundingBox())!
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x, y + 40, { steps: 4 })
  await page.mouse.up()
  await page.mouse.move(5, 5)
  await settled(page)
  expect(await read(page, (e) => e.dock.legs.at(-1)!.stock)).toBeGreaterThan(leg!)
  expect(differing(before, await shotOf(page))).toBeGreaterThan(2000)
  expect((await stats(page)).instances).toBe(await read(page, (e) => e.dock.placements.length))
  await close()
})

test('a leg picked in the scene is lit in the strip, and measured in both', async () => {
  const { page, close } = await open({ webgl: true, viewport: { width: 420, height: 600 } })
  await settled(page)
  await page.getByRole('button', { name: 'Lake', exact: true }).click()
  await settled(page)
  const place = await page.locator('leadline-dock').evaluate((element) => {
    const { dock } = element as never as {
      dock: { legs: { id: string; x: number; y: number; bed: number }[] }
    }
    const canvas = element.shadowRoot!.querySelector('canvas')!
    const leg = dock.legs.find((l) => l.id === 's4.end.right')!
    const at = (canvas as never as { leadlineScene: SceneStats }).leadlineScene.at(
      leg.x,
      leg.y,
      leg.bed + 0.3,
    )!
    const box = canvas.getBoundingClientRect()
    return { x: box.x + at.x, y: box.y + at.y }
  })
  await page.mouse.click(place.x, place.y)
  await page.locator('.leg.lit').first().waitFor({ state: 'attached' })
  await settled(page)
  const set = await read(page, (e) => e.dock.legs.find((l) => l.id === 's4.end.right')!.setHeight)
  const feet = Math.floor(set / 0.3048)
  expect((await page.locator('.scene-label.picked').allTextContents()).join(' | ')).toContain(`${feet} ft`)
  expect(await page.locator('.measures text').first().textContent()).toContain(`${feet} ft`)
  await close()
})
