/**
 * Distance of two convex shapes: the method of Gilbert, Johnson and Keerthi (IEEE Journal of Robotics and Automation 4(2), 1988,
 * pp. 193-203). It works on the shapes' difference through their farthest points alone, so that tubes stay true cylinders.
 *
 * Of a simplex the nearest place to the origin is found by trying each of its faces that holds the newest corner and taking the
 * nearest that is valid: a few multiplications more than the usual case tree, and nothing to go wrong in it.
 */
import type { Vec3 } from '../dock.ts'
import { cross, dot, sub } from '../vec.ts'
import { type Convex, middleOf, support } from './convex.ts'

export interface Nearest {
  /** m; 0 where they touch or overlap. Beyond `enough` only a lower bound. */
  readonly gap: number
  /** The nearest point of each; a point in both where they overlap. */
  readonly from: Vec3
  readonly to: Vec3
}

/** The distance is right within this, m. */
const EXACT = 1e-7
/** Curved shapes need tens of steps at the most. */
const STEPS = 100

interface Corner {
  /** A point of the difference, and the points of both shapes that it comes from. */
  readonly w: Vec3
  readonly a: Vec3
  readonly b: Vec3
}

/** `enough`: a gap beyond this need not be known exactly, m. */
export function distance(p: Convex, q: Convex, enough = Number.POSITIVE_INFINITY): Nearest {
  let v = sub(middleOf(p), middleOf(q))
  let long = Math.hypot(v[0], v[1], v[2])
  if (long < 1e-12) {
    v = [1, 0, 0]
    long = 1
  }
  let simplex: readonly Corner[] = []
  let parts: readonly number[] = []
  for (let step = 0; step < STEPS; step++) {
    const a = support(p, [-v[0], -v[1], -v[2]])
    const b = support(q, v)
    const w = sub(a, b)
    const least = dot(v, w) / long
    if (least > enough) return { gap: least, from: a, to: b }
    if (simplex.length > 0 && long - least < EXACT) break
    if (simplex.some((c) => c.w[0] === w[0] && c.w[1] === w[1] && c.w[2] === w[2])) break
    const best = nearestOn([...simplex, { w, a, b }])
    simplex = best.corners
    parts = best.parts
    v = best.point
    long = Math.hypot(v[0], v[1], v[2])
    if (simplex.length === 4 || long < 1e-9) return { gap: 0, ...witness(simplex, parts) }
  }
  return { gap: long, ...witness(simplex, parts) }
}

interface Face {
  readonly corners: readonly Corner[]
  readonly parts: readonly number[]
  readonly point: Vec3
}

/** Faces of a simplex that hold its last corner, by the numbers of the others. */
const OTHERS: readonly (readonly (readonly number[])[])[] = [
  [[]],
  [[], [0]],
  [[], [0], [1], [0, 1]],
  [[], [0], [1], [2], [0, 1], [0, 2], [1, 2], [0, 1, 2]],
]

/** The face of a simplex that is nearest the origin, its nearest point there and what each corner has in it. */
function nearestOn(corners: readonly Corner[]): Face {
  const last = corners.at(-1)!
  let best: Face = { corners: [last], parts: [1], point: last.w }
  let least = dot(last.w, last.w)
  for (const others of OTHERS[corners.length - 1]!) {
    if (others.length === 0) continue
    const face = [...others.map((i) => corners[i]!), last]
    const parts = partsOf(face)
    if (!parts) continue
    const point = combine(face, parts, 'w')
    const far = dot(point, point)
    if (far < least || face.length === 4) {
      least = far
      best = { corners: face, parts, point }
    }
  }
  return best
}

/** Shares of the corners in the point of their plane that is nearest the origin; null where that is not within them. */
function partsOf(face: readonly Corner[]): number[] | null {
  const o = face.at(-1)!.w
  const p = sub(face[0]!.w, o)
  if (face.length === 2) {
    const t = -dot(o, p) / dot(p, p)
    return t >= 0 && t <= 1 ? [t, 1 - t] : null
  }
  const q = sub(face[1]!.w, o)
  const n = cross(p, q)
  if (face.length === 3) {
    const nn = dot(n, n)
    // A triangle as thin as a line adds nothing to its edges.
    if (nn < 1e-24) return null
    const s = -dot(cross(o, q), n) / nn
    const t = -dot(cross(p, o), n) / nn
    return s >= 0 && t >= 0 && s + t <= 1 ? [s, t, 1 - s - t] : null
  }
  const r = sub(face[2]!.w, o)
  const volume = dot(n, r)
  if (Math.abs(volume) < 1e-24) return null
  const s = -dot(cross(q, r), o) / volume
  const t = -dot(cross(r, p), o) / volume
  const u = -dot(n, o) / volume
  return s >= 0 && t >= 0 && u >= 0 && s + t + u <= 1 ? [s, t, u, 1 - s - t - u] : null
}

function combine(corners: readonly Corner[], parts: readonly number[], key: 'w' | 'a' | 'b'): Vec3 {
  let [x, y, z] = [0, 0, 0]
  for (let i = 0; i < corners.length; i++) {
    const c = corners[i]![key]
    x += parts[i]! * c[0]
    y += parts[i]! * c[1]
    z += parts[i]! * c[2]
  }
  return [x, y, z]
}

const witness = (corners: readonly Corner[], parts: readonly number[]): { from: Vec3; to: Vec3 } => ({
  from: combine(corners, parts, 'a'),
  to: combine(corners, parts, 'b'),
})
