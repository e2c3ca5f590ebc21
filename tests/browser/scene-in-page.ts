/** The scene as it is in the real page: waiting for it, its numbers, its pixels. */
import type { Page } from 'playwright-core'
import type { PNG } from 'pngjs'
import type { SceneStats } from '../../src/scene/scene.tsx'
import { shot } from './scene-pixels.ts'

export const stats = (page: Page): Promise<Omit<SceneStats, 'at'>> =>
  page.locator('canvas').evaluate((canvas) => {
    const { at: _, ...rest } = (canvas as never as { leadlineScene: SceneStats }).leadlineScene
    return rest
  })

/** Waits until the picture stands still, and nothing more is drawn for a while: in the page, so that no message comes between. */
export const settled = (page: Page): Promise<void> =>
  page.locator('canvas').evaluate(async (canvas) => {
    const told = () => (canvas as never as { leadlineScene: SceneStats }).leadlineScene
    const end = performance.now() + 60_000
    let last = -1
    let since = 0
    let quiet = 0
    while (performance.now() < end) {
      const { frames, still } = told()
      if (frames !== last || !still || frames === 0) {
        last = frames
        since = performance.now()
        quiet = 0
      } else if (++quiet > 4 && performance.now() - since > 300) return
      await new Promise((done) => requestAnimationFrame(() => setTimeout(done, 20)))
    }
    throw new Error(`not settled: ${JSON.stringify(told())}`)
  })

/** Frames drawn by themselves, for longer than anything takes that is still to come: to show that there are none. */
export async function drawnAtRest(page: Page): Promise<number> {
  const { frames } = await stats(page)
  await page.waitForTimeout(700)
  return (await stats(page)).frames - frames
}

export const shotOf = (page: Page): Promise<PNG> => shot(page.locator('canvas'))

/** Where on the canvas a place of the dock's frame is seen, px. */
const placeOf = async (page: Page, place: readonly [number, number, number]) => {
  const at = await page
    .locator('canvas')
    .evaluate(
      (canvas, [x, y, z]) => (canvas as never as { leadlineScene: SceneStats }).leadlineScene.at(x, y, z),
      place,
    )
  if (!at) throw new Error(`placeOf: ${place} is behind the eye`)
  return at
}

/** The mean color of the few pixels at a place, 0 to 255. */
export async function colorAt(page: Page, place: readonly [number, number, number]) {
  const { x, y } = await placeOf(page, place)
  const { data, width } = await shotOf(page)
  const sum = [0, 0, 0]
  for (let dy = -1; dy <= 1; dy++)
    for (let dx = -1; dx <= 1; dx++)
      for (let k = 0; k < 3; k++)
        sum[k]! += data[4 * ((Math.round(y) + dy) * width + Math.round(x) + dx) + k]! / 9
  return { red: sum[0]!, green: sum[1]!, blue: sum[2]! }
}
