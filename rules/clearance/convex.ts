/** Convex shapes that parts and what lies on the bed are measured with. m, in the dock's frame of reference. */
import type { Quat, Vec3 } from '../dock.ts'
import { add, dot, rotate, scale } from '../vec.ts'

export interface Cylinder {
  readonly shape: 'cylinder'
  readonly middle: Vec3
  /** Unit vector. */
  readonly axis: Vec3
  readonly half: number
  readonly radius: number
}

export interface Box {
  readonly shape: 'box'
  readonly middle: Vec3
  /** Half of each edge, as vectors square to each other. */
  readonly edges: readonly [Vec3, Vec3, Vec3]
}

/** By its half axes, as vectors square to each other. */
export interface Ellipsoid {
  readonly shape: 'ellipsoid'
  readonly middle: Vec3
  readonly edges: readonly [Vec3, Vec3, Vec3]
}

/** An elliptic cylinder: two half axes of its plan, and half of its height. */
export interface Drum {
  readonly shape: 'drum'
  readonly middle: Vec3
  readonly edges: readonly [Vec3, Vec3, Vec3]
}

export interface Triangle {
  readonly shape: 'triangle'
  readonly corners: readonly [Vec3, Vec3, Vec3]
}

/** What has an inside. */
export type Body = Cylinder | Box | Ellipsoid | Drum
export type Convex = Body | Triangle

/** Least and most along each axis. */
export interface ShapeBounds {
  readonly low: Vec3
  readonly high: Vec3
}

/** The point of a shape that is farthest in a direction (of any length but 0). */
export function support(shape: Convex, d: Vec3): Vec3 {
  switch (shape.shape) {
    case 'box': {
      const { middle, edges } = shape
      let [x, y, z] = middle
      for (const e of edges) {
        const sign = dot(e, d) < 0 ? -1 : 1
        x += sign * e[0]
        y += sign * e[1]
        z += sign * e[2]
      }
      return [x, y, z]
    }
    case 'ellipsoid':
      return farthestOn(shape, d, 3)
    case 'drum': {
      const [x, y, z] = farthestOn(shape, d, 2)
      const up = shape.edges[2]
      const sign = dot(up, d) < 0 ? -1 : 1
      return [x + sign * up[0], y + sign * up[1], z + sign * up[2]]
    }
    case 'cylinder': {
      const { middle, axis, half, radius } = shape
      const along = dot(axis, d)
      const rx = d[0] - along * axis[0]
      const ry = d[1] - along * axis[1]
      const rz = d[2] - along * axis[2]
      const long = Math.hypot(rx, ry, rz)
      const k = long > 1e-12 ? radius / long : 0
      const h = along < 0 ? -half : half
      return [
        middle[0] + h * axis[0] + k * rx,
        middle[1] + h * axis[1] + k * ry,
        middle[2] + h * axis[2] + k * rz,
      ]
    }
    case 'triangle': {
      const [a, b, c] = shape.corners
      const [da, db, dc] = [dot(a, d), dot(b, d), dot(c, d)]
      return da >= db && da >= dc ? a : db >= dc ? b : c
    }
  }
}

/** The farthest point of the ellipsoid of the first so many half axes: the unit sphere's, stretched. */
function farthestOn({ middle, edges }: Ellipsoid | Drum, d: Vec3, axes: 2 | 3): Vec3 {
  const parts = edges.slice(0, axes).map((e) => dot(e, d))
  const long = Math.hypot(...parts)
  let [x, y, z] = middle
  if (long > 1e-12)
    parts.forEach((part, i) => {
      const k = part / long
      const e = edges[i]!
      x += k * e[0]
      y += k * e[1]
      z += k * e[2]
    })
  return [x, y, z]
}

/** Some point within. */
export function middleOf(shape: Convex): Vec3 {
  if (shape.shape !== 'triangle') return shape.middle
  const [a, b, c] = shape.corners
  return scale(add(a, add(b, c)), 1 / 3)
}

export function shapeBounds(shape: Convex): ShapeBounds {
  const least = (k: 0 | 1 | 2): [number, number] => {
    switch (shape.shape) {
      case 'box': {
        const reach = Math.abs(shape.edges[0][k]) + Math.abs(shape.edges[1][k]) + Math.abs(shape.edges[2][k])
        return [shape.middle[k] - reach, shape.middle[k] + reach]
      }
      case 'cylinder': {
        const reach =
          shape.half * Math.abs(shape.axis[k]) + shape.radius * Math.sqrt(Math.max(0, 1 - shape.axis[k] ** 2))
        return [shape.middle[k] - reach, shape.middle[k] + reach]
      }
      case 'ellipsoid':
      case 'drum': {
        const axis: Vec3 = [k === 0 ? 1 : 0, k === 1 ? 1 : 0, k === 2 ? 1 : 0]
        const most = support(shape, axis)[k]
        return [2 * shape.middle[k] - most, most]
      }
      case 'triangle': {
        const [a, b, c] = shape.corners
        return [Math.min(a[k], b[k], c[k]), Math.max(a[k], b[k], c[k])]
      }
    }
  }
  const [x, y, z] = [least(0), least(1), least(2)]
  return { low: [x[0], y[0], z[0]], high: [x[1], y[1], z[1]] }
}

export function joinBounds(list: readonly ShapeBounds[]): ShapeBounds {
  const all = (k: 0 | 1 | 2): [number, number] => {
    let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
    for (const b of list) {
      low = Math.min(low, b.low[k])
      high = Math.max(high, b.high[k])
    }
    return [low, high]
  }
  const [x, y, z] = [all(0), all(1), all(2)]
  return { low: [x[0], y[0], z[0]], high: [x[1], y[1], z[1]] }
}

/** Could two shapes with these bounds be within `reach` of each other? */
export const boundsNear = (a: ShapeBounds, b: ShapeBounds, reach: number): boolean =>
  a.low[0] <= b.high[0] + reach &&
  b.low[0] <= a.high[0] + reach &&
  a.low[1] <= b.high[1] + reach &&
  b.low[1] <= a.high[1] + reach &&
  a.low[2] <= b.high[2] + reach &&
  b.low[2] <= a.high[2] + reach

/** A cylinder or box of a part's own frame put where the part is. */
export function moved<T extends Cylinder | Box>(shape: T, at: Vec3, turn: Quat): T {
  const middle = add(rotate(turn, shape.middle), at)
  if (shape.shape === 'cylinder') return { ...shape, middle, axis: rotate(turn, shape.axis) }
  const [a, b, c] = shape.edges
  return { ...shape, middle, edges: [rotate(turn, a), rotate(turn, b), rotate(turn, c)] }
}

/** A shape with so much less of it all round, m. */
export function shrunk<T extends Body>(shape: T, by: number): T {
  if (shape.shape === 'cylinder')
    return { ...shape, half: Math.max(shape.half - by, 0), radius: Math.max(shape.radius - by, 0) }
  const [a, b, c] = shape.edges.map((e) => {
    const long = Math.hypot(...e)
    return scale(e, Math.max(long - by, 0) / long)
  }) as [Vec3, Vec3, Vec3]
  return { ...shape, edges: [a, b, c] }
}

/** A box along the axes by two opposite corners. */
export function boxBetween(a: Vec3, b: Vec3): Box {
  const half = (k: 0 | 1 | 2): number => Math.abs(b[k] - a[k]) / 2
  return {
    shape: 'box',
    middle: scale(add(a, b), 0.5),
    edges: [
      [half(0), 0, 0],
      [0, half(1), 0],
      [0, 0, half(2)],
    ],
  }
}
