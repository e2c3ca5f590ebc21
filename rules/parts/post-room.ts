/** Where along an edge an anchor post has no room: it would pass through a foot pad or another section's frame. */
import type { Extra } from '../catalog/index.ts'
import type { Edge } from '../dock.ts'
import { edgeLength, edgeOf, type Layout, type Placed } from '../layout/index.ts'
import type { Shop } from '../shop.ts'
import type { Interval } from './free-edges.ts'
import type { PlacedLeg } from './legs.ts'
import { sectionProperties } from './section-properties.ts'

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
): (p: Placed, edge: Edge) => Interval[] {
  const tube = Math.max(
    ...posts.map((post) => {
      const { width, height } = sectionProperties(catalog.stock[post.stock]!)
      return Math.max(width, height) / 2
    }),
  )
  return (p, edge) => {
    const { x, y, dx, dy, nx, ny } = edgeOf(p, edge)
    const long = edgeLength(p, edge)
    const blocked: Interval[] = []
    // All lies square to all else: along an edge and off it a rectangle stays one. `cx`, `cy` its middle, `hx`, `hy` half its sides.
    const block = (cx: number, cy: number, hx: number, hy: number): void => {
      const off = (cx - x) * nx + (cy - y) * ny - standoff
      const along = (cx - x) * dx + (cy - y) * dy
      const half = (dx === 0 ? hy : hx) + tube + BESIDE
      if (along < -half || along > long + half) return
      if (Math.abs(off) < (nx === 0 ? hy : hx) + tube + BESIDE) blocked.push([along - half, along + half])
    }
    // Most of a long dock is far away: no more than a glance at that.
    const [mx, my] = [x + (dx * long) / 2, y + (dy * long) / 2]
    const reach = long / 2 + standoff + tube + BESIDE
    for (let i = 0; i < legs.length; i++) {
      const { pad, section, x: cx, y: cy } = legs[i]!
      const { length, width } = pad.plate
      if (Math.abs(cx - mx) + Math.abs(cy - my) > 2 * (reach + length + width)) continue
      if (section.c === 0) block(cx, cy, width / 2, length / 2)
      else block(cx, cy, length / 2, width / 2)
    }
    for (let i = 0; i < placed.length; i++) {
      const other = placed[i]!
      const { x: ox, y: oy, c, s, frame } = other
      const far = Math.abs(ox - mx) + Math.abs(oy - my) > 2 * (reach + frame.length + frame.width)
      if (other === p || far) continue
      const [cx, cy] = [ox + (c * frame.length) / 2, oy + (s * frame.length) / 2]
      if (c === 0) block(cx, cy, frame.width / 2, frame.length / 2)
      else block(cx, cy, frame.length / 2, frame.width / 2)
    }
    return blocked
  }
}
