/** The deck in plan as few rectangles: sections in a row are merged. Enough for light and reflections. */
import type { Section } from '../../rules/index.ts'
import { areaOf, cornersOf, cosOf, type Rectangle, sinOf } from '../../rules/layout/footprint.ts'
import { boundsOf } from '../../rules/layout/outline.ts'

export type Slab = Rectangle

/** A rectangle in a plan turned back by so much: square to the dock's own where `c` is 1. */
export interface TurnedSlab extends Slab {
  readonly c: number
  readonly s: number
}

/** Sections this near to each other count as one surface, m. */
const NEAR = 0.12

/** At most `most`, the largest. */
export function slabsOf(sections: readonly Section[], most: number): TurnedSlab[] {
  const same = (a: number, b: number): boolean => Math.abs(a - b) < 0.01
  const done: TurnedSlab[] = []
  for (const section of sections) {
    let slab = slabOf(section)
    for (let i = 0; i < done.length; i++) {
      const other = done[i]!
      if (!same(other.c, slab.c) || !same(other.s, slab.s)) continue
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
        ...slab,
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

/** Of a corner piece the rectangle along its sides that is as large. */
function slabOf(section: Section): TurnedSlab {
  const turned = (section.heading + (section.turn ?? 0) / 2) % 90
  const [c, s] = [cosOf(turned), sinOf(turned)]
  const box = boundsOf(cornersOf(section).map(([x, y]) => [c * x + s * y, c * y - s * x] as const))
  if (section.turn === undefined) return { ...box, c, s }
  // Its sides are parallel, along the one or the other way of the turned plan.
  const along = (section.heading + section.turn / 2) % 180 < 90
  const across = along ? box.y1 - box.y0 : box.x1 - box.x0
  const half = areaOf(section) / across / 2
  const middle = along ? (box.x0 + box.x1) / 2 : (box.y0 + box.y1) / 2
  return along
    ? { ...box, x0: middle - half, x1: middle + half, c, s }
    : { ...box, y0: middle - half, y1: middle + half, c, s }
}

/** What it covers in the dock's own plan, by the rectangle around it. */
export const around = ({ x0, x1, y0, y1, c, s }: TurnedSlab): Slab =>
  c === 1
    ? { x0, x1, y0, y1 }
    : boundsOf(
        [
          [x0, y0],
          [x0, y1],
          [x1, y1],
          [x1, y0],
        ].map(([x, y]) => [c * x! - s * y!, s * x! + c * y!] as const),
      )
