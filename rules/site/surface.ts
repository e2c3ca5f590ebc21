/** A triangulated elevation over the plane: soundings off one line. Linear within each Delaunay triangle. */
import Delaunator from 'delaunator'

/** Corners, and triangles as `delaunator` has them: three numbers of corners each. */
export interface Triangulation {
  readonly x: readonly number[]
  readonly y: readonly number[]
  readonly triangles: Uint32Array
  /** By edge, the edge of the neighbor that runs back along it; -1 at the hull. */
  readonly halfedges: Int32Array
  /** Corners of the hull in order. */
  readonly hull: Uint32Array
}

export interface Surface {
  readonly triangulation: Triangulation
  at(x: number, y: number): number
  /** True on or within the soundings' hull. */
  inside(x: number, y: number): boolean
  /** Most lakeward corner of any triangle that gets as high as `z`; -Infinity if none does. */
  reachOf(z: number): number
}

/**
 * `top`: height of the bank where it is given, else Infinity. `wall`: level landward of the soundings.
 *
 * Outside the hull the elevation is that of the nearest place on it, going on landward with the mean slope at the most landward
 * sounding and lakeward with the mean slope at the most lakeward one if that falls. One slope for each keeps it continuous.
 * Returns null where the points span no area.
 */
export function makeSurface(
  xs: readonly number[],
  ys: readonly number[],
  zs: readonly number[],
  top: number,
  wall: boolean,
): Surface | null {
  const coords = new Float64Array(xs.length * 2)
  for (let i = 0; i < xs.length; i++) {
    coords[2 * i] = xs[i]!
    coords[2 * i + 1] = ys[i]!
  }
  const { triangles, halfedges, hull } = new Delaunator(coords)
  if (triangles.length === 0) return null
  const x = (i: number): number => coords[2 * i]!
  const y = (i: number): number => coords[2 * i + 1]!
  const z = (i: number): number => zs[i]!

  // Triangles are wound clockwise or counter-clockwise alike; the sign of the first tells which.
  const cross = (a: number, b: number, px: number, py: number): number =>
    (x(b) - x(a)) * (py - y(a)) - (y(b) - y(a)) * (px - x(a))
  const t0 = triangles[0]!
  const winding = Math.sign(cross(t0, triangles[1]!, x(triangles[2]!), y(triangles[2]!)))

  /** Mean slope along x of the triangles at a point, by area. */
  const slopeAt = (point: number): number => {
    let sum = 0
    let area = 0
    for (let t = 0; t < triangles.length; t += 3) {
      const [a, b, c] = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!]
      if (a !== point && b !== point && c !== point) continue
      const twice = cross(a, b, x(c), y(c))
      sum += Math.sign(twice) * ((z(b) - z(a)) * (y(c) - y(a)) - (z(c) - z(a)) * (y(b) - y(a)))
      area += Math.abs(twice)
    }
    return area > 0 ? sum / area : 0
  }
  let first = 0
  let last = 0
  for (let i = 1; i < xs.length; i++) {
    if (x(i) < x(first)) first = i
    if (x(i) > x(last)) last = i
  }
  const slopeLand = wall ? 0 : slopeAt(first)
  const slopeLake = Math.min(0, slopeAt(last))

  let hint = 0
  /** Walks from the last triangle found toward the point; -1 where it leaves the hull. */
  const find = (px: number, py: number): number => {
    let t = hint
    for (let guard = triangles.length; guard > 0; guard--) {
      let next = -2
      for (let k = 0; k < 3; k++) {
        const a = triangles[t + k]!
        const b = triangles[t + ((k + 1) % 3)]!
        if (cross(a, b, px, py) * winding < 0) {
          next = halfedges[t + k]!
          break
        }
      }
      if (next === -2) {
        hint = t
        return t
      }
      if (next === -1) return -1
      t = next - (next % 3)
    }
    return -1
  }
  const within = (t: number, px: number, py: number): number => {
    const [a, b, c] = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!]
    const all = cross(a, b, x(c), y(c))
    const wc = cross(a, b, px, py) / all
    const wb = cross(c, a, px, py) / all
    return z(a) * (1 - wb - wc) + z(b) * wb + z(c) * wc
  }
  const outside = (px: number, py: number): number => {
    let best = Number.POSITIVE_INFINITY
    let bx = 0
    let bz = 0
    for (let i = 0; i < hull.length; i++) {
      const a = hull[i]!
      const b = hull[(i + 1) % hull.length]!
      const dx = x(b) - x(a)
      const dy = y(b) - y(a)
      const t = Math.min(1, Math.max(0, ((px - x(a)) * dx + (py - y(a)) * dy) / (dx * dx + dy * dy)))
      const qx = x(a) + t * dx
      const d = (px - qx) ** 2 + (py - y(a) - t * dy) ** 2
      if (d < best) {
        best = d
        bx = qx
        bz = z(a) + t * (z(b) - z(a))
      }
    }
    const dx = px - bx
    return dx < 0 ? Math.min(Math.max(top, bz), bz + slopeLand * dx) : bz + slopeLake * dx
  }
  return {
    triangulation: { x: xs, y: ys, triangles, halfedges, hull },
    at(px, py) {
      const t = find(px, py)
      return t < 0 ? outside(px, py) : within(t, px, py)
    },
    inside: (px, py) => find(px, py) >= 0,
    reachOf(least) {
      let reach = Number.NEGATIVE_INFINITY
      for (let t = 0; t < triangles.length; t += 3) {
        const corners = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!]
        if (corners.some((i) => z(i) >= least)) reach = Math.max(reach, ...corners.map(x))
      }
      return reach
    },
  }
}
