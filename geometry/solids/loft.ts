/** Bent bodies: a small outline carried along a curve, closed upon itself or with its two ends closed. */
import type { Vec3 } from '../../rules/index.ts'
import type { Look } from '../types.ts'
import { add, cross, dot, length, scale, sub, unit } from '../vec.ts'
import { type Body, newBody, vertex } from './mesh.ts'

const CREASE = Math.cos((50 * Math.PI) / 180)

/**
 * `rings`: the outline at each step, counter-clockwise as one looks back along the curve, convex, all with as many points.
 * `closed`: the last joins the first; else both ends get a flat face.
 */
export function loft(rings: readonly (readonly Vec3[])[], closed: boolean, look: Look): Body {
  const body = newBody(look)
  const m = rings.length
  const n = rings[0]!.length
  const point = (r: number, i: number): Vec3 => rings[(r + m) % m]![(i + n) % n]!
  const steps = closed ? m : m - 1
  /** Direction of the curve at a point, through its neighbors. */
  const travel = (r: number, i: number): Vec3 => {
    const a = closed || r > 0 ? point(r - 1, i) : point(r, i)
    const b = closed || r < m - 1 ? point(r + 1, i) : point(r, i)
    return sub(b, a)
  }
  const edgeNormal = (r: number, i: number): Vec3 => {
    const edge = sub(point(r, i + 1), point(r, i))
    return unit(cross(edge, add(unit(travel(r, i)), unit(travel(r, i + 1)))))
  }
  const corners = rings.map((ring, r) =>
    ring.map((p, i): [number, number] => {
      const a = edgeNormal(r, i - 1)
      const b = edgeNormal(r, i)
      if (dot(a, b) < CREASE) return [vertex(body, p, a), vertex(body, p, b)]
      const one = vertex(body, p, unit(add(a, b)))
      return [one, one]
    }),
  )
  for (let r = 0; r < steps; r++)
    for (let i = 0; i < n; i++) {
      const [p0, p1] = [corners[r]![i]![1], corners[(r + 1) % m]![i]![1]]
      const [q0, q1] = [corners[r]![(i + 1) % n]![0], corners[(r + 1) % m]![(i + 1) % n]![0]]
      body.indices.push(p0, q0, q1, p0, q1, p1)
    }
  if (!closed)
    for (const [r, sign] of [
      [0, -1],
      [m - 1, 1],
    ] as const) {
      const ring = rings[r]!
      let normal = cross(sub(ring[1]!, ring[0]!), sub(ring[2]!, ring[0]!))
      normal = scale(normal, sign / length(normal))
      const ends = ring.map((p) => vertex(body, p, normal))
      for (let i = 1; i + 1 < n; i++)
        if (sign > 0) body.indices.push(ends[0]!, ends[i]!, ends[i + 1]!)
        else body.indices.push(ends[0]!, ends[i + 1]!, ends[i]!)
    }
  return body
}
