/** Water under a boat where it lies. */
import type { Dock, Side } from '../dock.ts'
import { stanceOf } from '../layout/footprint.ts'
import { berthOf } from '../layout/index.ts'
import type { Bed } from '../site/index.ts'

/** The bed is asked so often along the boat, and wherever it bends on its line, m. */
const STEP = 0.1

/**
 * Least water between bed and boat along the whole length of it, under the edge that it lies at: how wide it is is not known. Less than 0
 * where it would touch. Null where nothing stands. m
 *
 * @param level of the water, m
 */
export function underKeel(
  sections: Dock['sections'],
  bed: Bed,
  boat: { readonly length: number; readonly draught: number; readonly side: Side },
  level: number,
): number | null {
  const placed = sections.map((section) => ({
    ...stanceOf(section),
    role: section.role,
    frame: { length: section.length, width: section.width },
  }))
  const berth = berthOf(placed, boat)
  if (!berth) return null
  const { from, to, y } = berth
  const steps = Math.max(1, Math.ceil((to - from) / STEP))
  const xs = Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps)
  const highest = Math.max(...[...xs, ...bed.knots(from, to)].map((x) => bed.bedAt(x, y)))
  return level - highest - boat.draught
}
