/** Convex outlines in plan, m: how far into each other, how large, how high the bed is under them. */
import type { Bed } from '../site/index.ts'
import type { Rectangle } from './footprint.ts'

export type Place = readonly [x: number, y: number]

/** Corners of what is convex, one after the other all round. */
export type Outline = readonly Place[]

/**
 * By how much two are on each other, the least way that takes them apart, m; 0 or less where no edge of either has them on both sides
 * (then it is less than or equal to how far they are apart, turned about).
 */
export function overlapOf(a: Outline, b: Outline): number {
  return Math.min(pastEdges(a, b), pastEdges(b, a))
}

/** The least, over the edges of the first, of how far the second reaches in. */
function pastEdges(a: Outline, b: Outline): number {
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i < a.length; i++) {
    const [px, py] = a[i]!
    const [qx, qy] = a[(i + 1) % a.length]!
    const long = Math.hypot(qx - px, qy - py)
    if (long === 0) continue
    const [nx, ny] = [(qy - py) / long, (px - qx) / long]
    // Outward is where the outline itself is not.
    const own = farthest(a, -nx, -ny) + (px * nx + py * ny)
    const sign = own > 1e-12 ? 1 : -1
    const edge = sign * (px * nx + py * ny)
    const reach = edge + farthest(b, -sign * nx, -sign * ny)
    least = Math.min(least, reach)
  }
  return least
}

/** How far an outline reaches along a direction, m. */
const farthest = (outline: Outline, dx: number, dy: number): number => {
  let most = Number.NEGATIVE_INFINITY
  for (const [x, y] of outline) most = Math.max(most, x * dx + y * dy)
  return most
}

/** What of it lies lakeward of a distance. */
export function lakewardOf(outline: Outline, from: number): Outline {
  return outline.flatMap((p, i): Place[] => {
    const q = outline[(i + 1) % outline.length]!
    const kept: Place[] = p[0] >= from ? [p] : []
    if (p[0] >= from !== q[0] >= from) {
      const t = (from - p[0]) / (q[0] - p[0])
      kept.push([from, p[1] + t * (q[1] - p[1])])
    }
    return kept
  })
}

/** From a place to what is covered, m; 0 within. */
export function distanceTo(outline: Outline, x: number, y: number): number {
  let least = Number.POSITIVE_INFINITY
  let [left, right] = [false, false]
  outline.forEach(([px, py], i) => {
    const [qx, qy] = outline[(i + 1) % outline.length]!
    const [dx, dy] = [qx - px, qy - py]
    const off = dx * (y - py) - dy * (x - px)
    if (off > 0) left = true
    if (off < 0) right = true
    const t = Math.min(1, Math.max(0, ((x - px) * dx + (y - py) * dy) / (dx * dx + dy * dy)))
    least = Math.min(least, Math.hypot(x - px - t * dx, y - py - t * dy))
  })
  return left && right ? least : 0
}

/** m2 */
export const outlineArea = (outline: Outline): number =>
  Math.abs(
    outline.reduce((sum, [x, y], i) => {
      const [p, q] = outline[(i + 1) % outline.length]!
      return sum + x * q - p * y
    }, 0),
  ) / 2

export const boundsOf = (outline: Outline): Rectangle => {
  const xs = outline.map(([x]) => x)
  const ys = outline.map(([, y]) => y)
  return { x0: Math.min(...xs), x1: Math.max(...xs), y0: Math.min(...ys), y1: Math.max(...ys) }
}

/** Strips so wide stand for what lies askew, m: the bed is looked at that far beyond its edges at the most. */
const STRIP = 0.1

/** The highest bed under it, m; what lies askew is cut into strips. */
export function highestUnder(bed: Pick<Bed, 'highest'>, outline: Outline): number {
  const { x0, x1, y0, y1 } = boundsOf(outline)
  if (outline.every(([x, y]) => (x === x0 || x === x1) && (y === y0 || y === y1)))
    return bed.highest(x0, x1, y0, y1)
  const n = Math.ceil((x1 - x0) / STRIP)
  let most = Number.NEGATIVE_INFINITY
  for (let i = 0; i < n; i++) {
    const [from, to] = [x0 + ((x1 - x0) * i) / n, x0 + ((x1 - x0) * (i + 1)) / n]
    const ys = outline.flatMap(([x, y], k): number[] => {
      const [p, q] = outline[(k + 1) % outline.length]!
      const at = (where: number): number[] =>
        where >= Math.min(x, p) && where <= Math.max(x, p) && x !== p
          ? [y + ((q - y) * (where - x)) / (p - x)]
          : []
      return [...(x >= from && x <= to ? [y] : []), ...at(from), ...at(to)]
    })
    if (ys.length > 0) most = Math.max(most, bed.highest(from, to, Math.min(...ys), Math.max(...ys)))
  }
  return most
}
