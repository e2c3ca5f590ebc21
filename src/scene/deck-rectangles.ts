/** The deck in plan as few rectangles: sections in a row are merged. Enough for light and reflections. */
import type { Section } from '../../rules/index.ts'
import { footprintOf, type Rectangle } from '../../rules/layout/footprint.ts'

export type Slab = Rectangle

/** Sections this near to each other count as one surface, m. */
const NEAR = 0.12

/** At most `most`, the largest. */
export function slabsOf(sections: readonly Section[], most: number): Slab[] {
  const same = (a: number, b: number): boolean => Math.abs(a - b) < 0.01
  const done: Slab[] = []
  for (const section of sections) {
    let slab = footprintOf(section)
    for (let i = 0; i < done.length; i++) {
      const other = done[i]!
      const row =
        same(other.y0, slab.y0) &&
        same(other.y1, slab.y1) &&
        slab.x0 - other.x1 < NEAR &&
        other.x0 - slab.x1 < NEAR
      const file =
        same(other.x0, slab.x0) &&
        same(other.x1, slab.x1) &&
        slab.y0 - other.y1 < NEAR &&
        other.y0 - slab.y1 < NEAR
      if (!row && !file) continue
      slab = {
        x0: Math.min(slab.x0, other.x0),
        x1: Math.max(slab.x1, other.x1),
        y0: Math.min(slab.y0, other.y0),
        y1: Math.max(slab.y1, other.y1),
      }
      done.splice(i--, 1)
    }
    done.push(slab)
  }
  const area = (s: Slab): number => (s.x1 - s.x0) * (s.y1 - s.y0)
  return done.sort((a, b) => area(b) - area(a)).slice(0, most)
}
