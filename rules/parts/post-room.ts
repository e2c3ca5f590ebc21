/** Where along an edge an anchor post has no room: it would pass through a foot pad or another section's frame. */
import type { Extra } from '../catalog/index.ts'
import { sectionProperties } from '../catalog/section-properties.ts'
import type { Shop } from '../catalog-index.ts'
import type { Edge } from '../dock.ts'
import { edgeLength, edgeOf, type Layout, type PlacedSection } from '../layout/index.ts'
import type { Outline } from '../layout/outline.ts'
import { outline } from '../layout/place.ts'
import type { Interval } from './free-edges.ts'
import { plateOf } from './leg-plate.ts'
import type { PlacedLeg } from './legs.ts'

/** Between a post's tube and what it stands beside, m. Judgment, no published source: a driven post leans a little. */
const BESIDE = 0.01

/**
 * By section and edge, the stretches in which the axis of a post must not stand. In plan: a post reaches from the bottom to over the
 * deck, so it meets whatever lies under or over it.
 */
export function blockedFor(
  { posts, standoff }: Extract<Extra, { place: 'post' }>,
  { placed }: Layout,
  legs: readonly PlacedLeg[],
  { catalog }: Shop,
): (p: PlacedSection, edge: Edge) => Interval[] {
  const tube = Math.max(
    ...posts.map((post) => {
      const { width, height } = sectionProperties(catalog.stock[post.stock]!)
      return Math.max(width, height) / 2
    }),
  )
  // What is far away is not looked at: cells as wide as anything reaches.
  const plate = legs.reduce((most, { pad }) => Math.max(most, pad.plate.length + pad.plate.width), 0)
  const frames = placed.reduce((most, { frame }) => Math.max(most, frame.length + frame.width), 0)
  const wide = frames / 2 + standoff + tube + BESIDE + Math.max(plate, frames)
  const legsNear = nearby(legs, wide)
  const framesNear = nearby(placed, wide)
  const known = new Map<PlacedSection, Map<Edge, Interval[]>>()
  return (p, edge) => {
    const before = known.get(p)?.get(edge)
    if (before) return before
    const { x, y, dx, dy, nx, ny } = edgeOf(p, edge)
    const long = edgeLength(p, edge)
    // What lies askew counts with all that it takes along the edge and off it.
    const block = (cover: Outline): Interval | null => {
      const along = cover.map(([px, py]) => (px - x) * dx + (py - y) * dy)
      const off = cover.map(([px, py]) => (px - x) * nx + (py - y) * ny - standoff)
      const room = tube + BESIDE
      const [from, to] = [Math.min(...along) - room, Math.max(...along) + room]
      if (to < 0 || from > long) return null
      return Math.min(...off) < room && Math.max(...off) > -room ? [from, to] : null
    }
    const byLeg = (i: number): Interval | null => block(plateOf(legs[i]!))
    const byFrame = (i: number): Interval | null => (placed[i] === p ? null : block(outline(placed[i]!)))
    const [mx, my] = [x + (dx * long) / 2, y + (dy * long) / 2]
    let blocked: Interval[] | null = null
    // Where one frame takes all of the edge nothing else need be asked: in a heap of sections there are thousands.
    for (const i of framesNear(mx, my)) {
      const taken = byFrame(i)
      if (taken && taken[0] < -BESIDE && taken[1] > long + BESIDE) {
        blocked = [taken]
        break
      }
    }
    const ascending = (list: Iterable<number>): number[] => [...list].sort((a, b) => a - b)
    blocked ??= [
      ...ascending(legsNear(mx, my)).flatMap((i) => {
        const taken = byLeg(i)
        return taken ? [taken] : []
      }),
      ...ascending(framesNear(mx, my)).flatMap((i) => {
        const taken = byFrame(i)
        return taken ? [taken] : []
      }),
    ]
    known.set(p, (known.get(p) ?? new Map<Edge, Interval[]>()).set(edge, blocked))
    return blocked
  }
}

/** Numbers of the things in a place's cell and the eight about it: all within `wide` of it, and some more. */
function nearby(
  things: readonly { readonly x: number; readonly y: number }[],
  wide: number,
): (x: number, y: number) => Iterable<number> {
  const cells = new Map<number, number[]>()
  const cell = (cx: number, cy: number): number => cx * 2 ** 26 + cy
  const number = (v: number): number => Math.floor(v / wide)
  things.forEach(({ x, y }, i) => {
    const at = cell(number(x), number(y))
    const there = cells.get(at)
    if (there) there.push(i)
    else cells.set(at, [i])
  })
  return function* (x, y) {
    for (let cx = number(x) - 1; cx <= number(x) + 1; cx++)
      for (let cy = number(y) - 1; cy <= number(y) + 1; cy++) yield* cells.get(cell(cx, cy)) ?? []
  }
}
