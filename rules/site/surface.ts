/**
 * Something known at places, over the plane: linear within each Delaunay triangle. Four corners far off, where it is 0, close it: a hull of
 * the places themselves has slivers along it, across which it would jump.
 */
import Delaunator from 'delaunator'
import type { Places } from './kriging.ts'

/** Corners (the places, and four far off), and triangles as `delaunator` has them: three numbers of corners each. */
export interface Triangulation extends Places {
  readonly triangles: Uint32Array
  /** By edge, the edge of the neighbor that runs back along it; -1 at the hull. */
  readonly halfedges: Int32Array
  /** Corners of the hull in order. */
  readonly hull: Uint32Array
}

export interface Surface {
  readonly triangulation: Triangulation
  /** Up to three corners, and what each counts for at a place: together 1. */
  sharesAt(x: number, y: number): readonly (readonly [corner: number, share: number])[]
  at(values: Float64Array, x: number, y: number): number
}

/** Far off: at least this, and as far as the places reach, m. */
const OFF = 20

export function makeSurface(places: Places): Surface {
  const n = places.x.length
  const { x, y } = closed(places)
  const coords = new Float64Array(x.length * 2)
  for (let i = 0; i < x.length; i++) {
    coords[2 * i] = x[i]!
    coords[2 * i + 1] = y[i]!
  }
  const { triangles, halfedges, hull } = new Delaunator(coords)
  const triangulation: Triangulation = { x, y, triangles, halfedges, hull }
  const find = finder(triangulation)
  const sharesAt: Surface['sharesAt'] = (px, py) => {
    const t = find(px, py)
    if (t < 0) return nearestOnHull(triangulation, px, py)
    const [a, b, c] = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!]
    const all = cross(triangulation, a, b, x[c]!, y[c]!)
    const [wc, wb] = [cross(triangulation, a, b, px, py) / all, cross(triangulation, c, a, px, py) / all]
    return [
      [a, 1 - wb - wc],
      [b, wb],
      [c, wc],
    ]
  }
  return {
    triangulation,
    sharesAt,
    at: (values, px, py) => {
      let sum = 0
      for (const [i, share] of sharesAt(px, py)) if (i < n) sum += share * values[i]!
      return sum
    },
  }
}

/** Twice the area of corner a, corner b and a place: its sign tells on which side of a to b that is. */
const cross = ({ x, y }: Places, a: number, b: number, px: number, py: number): number =>
  (x[b]! - x[a]!) * (py - y[a]!) - (y[b]! - y[a]!) * (px - x[a]!)

/** The triangle that a place lies in; -1 where it lies outside the hull. Walks there from the last one found: places come in rows. */
function finder(triangulation: Triangulation): (px: number, py: number) => number {
  const { x, y, triangles, halfedges } = triangulation
  // Triangles are wound clockwise or counter-clockwise alike; the sign of the first tells which.
  const [c0, c1, c2] = [triangles[0]!, triangles[1]!, triangles[2]!]
  const winding = Math.sign(cross(triangulation, c0, c1, x[c2]!, y[c2]!))
  let hint = 0
  return (px, py) => {
    let t = hint
    let entered = -1
    for (let guard = triangles.length; guard > 0; guard--) {
      let next = -2
      for (let k = 0; k < 3; k++) {
        // Not back over the edge that it came in by: of a place on an edge rounding may say on both sides that it is on the other.
        if (t + k === entered) continue
        const a = triangles[t + k]!
        const b = triangles[t + ((k + 1) % 3)]!
        if (cross(triangulation, a, b, px, py) * winding < 0) {
          next = halfedges[t + k]!
          break
        }
      }
      if (next === -2) {
        hint = t
        return t
      }
      if (next === -1) return -1
      entered = next
      t = next - (next % 3)
    }
    return -1
  }
}

function nearestOnHull({ x, y, hull }: Triangulation, px: number, py: number): [number, number][] {
  let best = Number.POSITIVE_INFINITY
  let shares: [number, number][] = []
  for (let i = 0; i < hull.length; i++) {
    const a = hull[i]!
    const b = hull[(i + 1) % hull.length]!
    const dx = x[b]! - x[a]!
    const dy = y[b]! - y[a]!
    const t = Math.min(1, Math.max(0, ((px - x[a]!) * dx + (py - y[a]!) * dy) / (dx * dx + dy * dy)))
    const d = (px - x[a]! - t * dx) ** 2 + (py - y[a]! - t * dy) ** 2
    if (d < best) {
      best = d
      shares = [
        [a, 1 - t],
        [b, t],
      ]
    }
  }
  return shares
}

/** Where a row crosses the triangles' edges, ascending, m. */
export function crossingsOf({ x, y, triangles, halfedges }: Triangulation, row: number): Float64Array {
  const found: number[] = []
  for (let e = 0; e < triangles.length; e++) {
    // Each edge once.
    if (halfedges[e]! > e) continue
    const a = triangles[e]!
    const b = triangles[e % 3 === 2 ? e - 2 : e + 1]!
    const [from, to] = [y[a]! - row, y[b]! - row]
    if (from === 0) found.push(x[a]!)
    if (to === 0) found.push(x[b]!)
    if (from * to < 0) found.push(x[a]! + (x[b]! - x[a]!) * (from / (from - to)))
  }
  return Float64Array.from(found).sort()
}

/** With the four corners, alike on both sides of the dock's line. */
function closed({ x, y }: Places): Places {
  const n = x.length
  const wide = y.reduce((most, v) => Math.max(most, Math.abs(v)), 0)
  const [low, high] = [x[0]!, x[n - 1]!]
  const off = OFF + Math.max(high - low, wide)
  const all = { x: new Float64Array(n + 4), y: new Float64Array(n + 4) }
  all.x.set(x)
  all.y.set(y)
  all.x.set([low - off, low - off, high + off, high + off], n)
  all.y.set([-wide - off, wide + off, -wide - off, wide + off], n)
  return all
}
