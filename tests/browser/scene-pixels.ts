/** Pictures of scenes, and what can be counted in them. */
import type { Locator, Page } from 'playwright-core'
import { PNG } from 'pngjs'

export const shot = async (of: Page | Locator): Promise<PNG> => PNG.sync.read(await of.screenshot())

/** How many different colors a picture has, counted coarsely: a flat one has one or two. */
export function colors({ data }: PNG): number {
  const found = new Set<number>()
  for (let i = 0; i < data.length; i += 4)
    found.add(((data[i]! >> 4) << 8) | ((data[i + 1]! >> 4) << 4) | (data[i + 2]! >> 4))
  return found.size
}

/** Pixels that differ by more than noise. */
export function differing(a: PNG, b: PNG): number {
  let n = 0
  for (let i = 0; i < a.data.length; i += 4)
    if (Math.abs(a.data[i]! - b.data[i]!) + Math.abs(a.data[i + 1]! - b.data[i + 1]!) > 12) n++
  return n
}

/** Mean of all channels, 0 to 255. */
export const brightness = ({ data }: PNG): number =>
  data.reduce((sum, value, i) => (i % 4 < 3 ? sum + value : sum), 0) / ((data.length * 3) / 4)
