/**
 * How far shapes that overlap are in each other: the least shift that takes them apart.
 *
 * That is how near the origin is to the border of the shapes' difference, of which only farthest points are known. A hull of such points
 * is let grow where its border is nearest to the origin, until it does not grow there any more: the expanding polytope of van den Bergen
 * (Collision Detection in Interactive 3D Environments, 2003, section 4.3.8).
 */
import type { Vec3 } from '../dock.ts'
import { cross, dot, scale, sub, unit } from '../vec.ts'
import { type Convex, middleOf, support, type Triangle } from './convex.ts'
import { distance } from './distance.ts'

/** An overlap is known within this, m; a lift within a tenth of it. */
const EXACT = 1e-4
/** Nearer than this to the plane of a face, a point is on it, m. */
const FLAT = 1e-9
/** Tubes need some tens of steps. */
const STEPS = 400

interface Face {
  readonly corners: readonly [Vec3, Vec3, Vec3]
  /** Outward unit vector. */
  readonly normal: Vec3
  /** Of its plane from the origin, m; below 0 where the origin is outside of it. */
  readonly far: number
}

/** m; 0 where they do not overlap. */
export function overlapOf(p: Convex, q: Convex): number {
  const farthest = (d: Vec3): Vec3 => sub(support(p, d), support(q, scale(d, -1)))
  let faces = firstHull(farthest)
  for (let step = 0; step < STEPS; step++) {
    const nearest = faces.reduce((a, b) => (b.far < a.far ? b : a))
    const point = farthest(nearest.normal)
    const most = dot(point, nearest.normal)
    // No place of the difference lies farther that way, so the two shapes have parted by there.
    if (most <= 0) return 0
    if (most - nearest.far < EXACT) return most
    faces = grown(faces, point)
  }
  return Math.max(0, Math.min(...faces.map((f) => f.far)))
}

/** Four farthest points that span a space. */
function firstHull(farthest: (d: Vec3) => Vec3): Face[] {
  const a = farthest([1, 0, 0])
  const b = farthest([-1, 0, 0])
  const beside = [unit(cross(sub(b, a), [0, 0, 1])), unit(cross(sub(b, a), [0, 1, 0]))]
  const off = ([u]: readonly Vec3[], d: Vec3): number => Math.abs(dot(d, u!))
  const c = beside
    .flatMap((d) => [farthest(d), farthest(scale(d, -1))])
    .map((point) => ({ point, off: Math.hypot(...cross(sub(point, a), unit(sub(b, a)))) }))
    .reduce((x, y) => (y.off > x.off ? y : x)).point
  const normal = unit(cross(sub(b, a), sub(c, a)))
  const d = [farthest(normal), farthest(scale(normal, -1))].reduce((x, y) =>
    off([normal], sub(y, a)) > off([normal], sub(x, a)) ? y : x,
  )
  const middle = scale(
    [a[0] + b[0] + c[0] + d[0], a[1] + b[1] + c[1] + d[1], a[2] + b[2] + c[2] + d[2]],
    0.25,
  )
  return [
    [a, b, c],
    [a, b, d],
    [a, c, d],
    [b, c, d],
  ].map((corners) => {
    const face = faceOf(corners as unknown as Face['corners'])
    if (dot(face.normal, middle) <= face.far) return face
    return faceOf([corners[1]!, corners[0]!, corners[2]!])
  })
}

function faceOf(corners: Face['corners']): Face {
  const [a, b, c] = corners
  const normal = unit(cross(sub(b, a), sub(c, a)))
  return { corners, normal, far: dot(normal, a) }
}

/** The hull of a hull and a point outside it: what the point sees gives way to faces from the rim of that to the point. */
function grown(faces: readonly Face[], point: Vec3): Face[] {
  const kept: Face[] = []
  const rim = new Map<Vec3, Vec3>()
  const seen: Face[] = []
  for (const face of faces) (dot(face.normal, point) > face.far + FLAT ? seen : kept).push(face)
  for (const { corners } of seen)
    for (let k = 0; k < 3; k++) {
      const [from, to] = [corners[k]!, corners[(k + 1) % 3]!]
      const inner = seen.some(({ corners: other }) =>
        other.some((corner, i) => corner === to && other[(i + 1) % 3] === from),
      )
      if (!inner) rim.set(from, to)
    }
  for (const [from, to] of rim) {
    const face = faceOf([from, to, point])
    // One as thin as a line has no outside.
    if (Number.isFinite(face.far)) kept.push(face)
  }
  return kept
}

/** How far a shape must be lifted to be clear of ground that is given by its faces, m. */
export function liftOf(p: Convex, faces: readonly Triangle[]): number {
  const low = support(p, [0, 0, -1])[2]
  const top = faces.reduce((z, { corners }) => Math.max(z, ...corners.map((c) => c[2])), low)
  const lifted = (by: number): boolean => faces.every((face) => distance(p, lowered(face, by), 0).gap > 0)
  // Lifted by this it is clear whatever its shape.
  let [under, clear] = [0, top - low]
  while (clear - under > EXACT / 10) {
    const by = (under + clear) / 2
    // Where it lies under a face without meeting it, it is not clear of it.
    if (lifted(by) && !anyOver(p, faces, by)) clear = by
    else under = by
  }
  return clear
}

/** Is the middle of a shape, lifted, still under one of the faces? */
function anyOver(p: Convex, faces: readonly Triangle[], by: number): boolean {
  const [x, y, z] = middleOf(p)
  return faces.some(({ corners: [a, b, c] }) => {
    const area = (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1])
    if (Math.abs(area) < 1e-12) return false
    const s = ((x - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (y - a[1])) / area
    const t = ((b[0] - a[0]) * (y - a[1]) - (x - a[0]) * (b[1] - a[1])) / area
    return s >= 0 && t >= 0 && s + t <= 1 && a[2] + s * (b[2] - a[2]) + t * (c[2] - a[2]) > z + by
  })
}

const lowered = ({ corners }: Triangle, by: number): Triangle => ({
  shape: 'triangle',
  corners: corners.map(([x, y, z]): Vec3 => [x, y, z - by]) as unknown as Triangle['corners'],
})
