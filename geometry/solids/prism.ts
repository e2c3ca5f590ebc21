/** Straight bodies: an outline, hollow or not, pushed along a line. */
import type { Vec3 } from '../../rules/index.ts'
import type { Look } from '../types.ts'
import { add, cross, length, scale, sub, unit } from '../vec.ts'
import { type Body, newBody, vertex } from './mesh.ts'
import { type Point, type Ring, rectangle } from './rings.ts'

/** Edges that bend less than this are drawn round. */
const CREASE = Math.cos((50 * Math.PI) / 180)

export interface Prism {
  readonly outer: Ring
  /** A hole with as many points as the outline, in the same order. */
  readonly inner?: Ring
  /** Triangles over the points of an outline that is not convex; without it the end faces are a fan. */
  readonly faces?: readonly number[]
  readonly from: Vec3
  readonly to: Vec3
  /** Direction of the outline's y; its x is this crossed with the direction of extrusion. */
  readonly up: Vec3
  readonly look: Look
  /** Of ends not cut square: how much farther on each reaches for a meter of the outline's x. */
  readonly miter?: readonly [from: number, to: number] | undefined
}

export function prism({ outer, inner, faces, from, to, up, look, miter }: Prism): Body {
  const body = newBody(look)
  const along = unit(sub(to, from))
  const high = unit(up)
  const wide = cross(high, along)
  const cut = (base: Vec3): number => (miter ? miter[base === to ? 1 : 0] : 0)
  const at = ([x, y]: Point, base: Vec3): Vec3 =>
    add(base, add(scale(wide, x), add(scale(high, y), scale(along, cut(base) * x))))
  const turned = ([x, y]: Point, sign: number): Vec3 => scale(add(scale(wide, x), scale(high, y)), sign)

  const sides = (ring: Ring, sign: 1 | -1): void => {
    const n = ring.length
    const normals = edgeNormals(ring)
    // Two vertices at a hard corner, one at a round one; [before, after] the corner.
    const corners = ring.map((point, i) => {
      const a = normals[(i + n - 1) % n]!
      const b = normals[i]!
      const hard = a[0] * b[0] + a[1] * b[1] < CREASE
      const both: Point = [a[0] + b[0], a[1] + b[1]]
      const long = Math.hypot(both[0], both[1])
      const corner = (base: Vec3): readonly [number, number] => {
        const place = at(point, base)
        if (hard) return [vertex(body, place, turned(a, sign)), vertex(body, place, turned(b, sign))]
        const one = vertex(body, place, turned([both[0] / long, both[1] / long], sign))
        return [one, one]
      }
      return { low: corner(from), high: corner(to) }
    })
    for (let i = 0; i < n; i++) {
      const [here, next] = [corners[i]!, corners[(i + 1) % n]!]
      quad(body, sign, here.low[1], next.low[0], next.high[0], here.high[1])
    }
  }
  sides(outer, 1)
  if (inner) sides(inner, -1)

  for (const [base, sign] of [
    [to, 1],
    [from, -1],
  ] as const) {
    const normal = scale(miter ? unit(sub(along, scale(wide, cut(base)))) : along, sign)
    const ends = outer.map((p) => vertex(body, at(p, base), normal))
    if (inner) {
      const holes = inner.map((p) => vertex(body, at(p, base), normal))
      const n = ends.length
      for (let i = 0; i < n; i++) {
        const k = (i + 1) % n
        quad(body, sign, ends[i]!, ends[k]!, holes[k]!, holes[i]!)
      }
    } else {
      const list = faces ?? fan(ends.length)
      for (let i = 0; i < list.length; i += 3)
        triangle(body, sign, ends[list[i]!]!, ends[list[i + 1]!]!, ends[list[i + 2]!]!)
    }
  }
  return body
}

/** A box by its two opposite corners. */
export function box(a: Vec3, b: Vec3, look: Look): Body {
  const middle = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] as const
  return prism({
    outer: rectangle(Math.abs(b[1] - a[1]), Math.abs(b[0] - a[0])),
    from: [middle[0], middle[1], Math.min(a[2], b[2])],
    to: [middle[0], middle[1], Math.max(a[2], b[2])],
    up: [1, 0, 0],
    look,
  })
}

/** A plate bent along a path: `thickness` to the left of the path, pushed along a line. The path turns by less than 180 degrees at each bend. */
export function bentPlate(
  path: readonly Point[],
  thickness: number,
  where: Pick<Prism, 'from' | 'to' | 'up' | 'look'>,
): Body {
  const n = path.length
  const left = (i: number): Point => {
    const d: Point = [path[i + 1]![0] - path[i]![0], path[i + 1]![1] - path[i]![1]]
    const long = Math.hypot(d[0], d[1])
    return [-d[1] / long, d[0] / long]
  }
  const inside = path.map((p, i): Point => {
    const a = left(Math.max(i - 1, 0))
    const b = left(Math.min(i, n - 2))
    const k = thickness / (1 + a[0] * b[0] + a[1] * b[1])
    return [p[0] + k * (a[0] + b[0]), p[1] + k * (a[1] + b[1])]
  })
  const outer = [...path, ...inside.reverse()]
  const faces: number[] = []
  for (let i = 0; i + 1 < n; i++) {
    const [p, q] = [2 * n - 1 - i, 2 * n - 2 - i]
    faces.push(i, i + 1, q, i, q, p)
  }
  return prism({ ...where, outer, faces })
}

/** Unit outward normals of a ring's edges; edge i runs from point i to the next. */
function edgeNormals(ring: Ring): Point[] {
  return ring.map((p, i) => {
    const q = ring[(i + 1) % ring.length]!
    const [dx, dy] = [q[0] - p[0], q[1] - p[1]]
    const long = Math.hypot(dx, dy)
    return [dy / long, -dx / long]
  })
}

function fan(n: number): number[] {
  const list: number[] = []
  for (let i = 1; i + 1 < n; i++) list.push(0, i, i + 1)
  return list
}

function triangle(body: Body, sign: number, a: number, b: number, c: number): void {
  if (sign > 0) body.indices.push(a, b, c)
  else body.indices.push(a, c, b)
}

function quad(body: Body, sign: number, a: number, b: number, c: number, d: number): void {
  triangle(body, sign, a, b, c)
  triangle(body, sign, a, c, d)
}

/** A bar of round or other outline between two points, with any direction square to it as its up. */
export function bar(outer: Ring, from: Vec3, to: Vec3, look: Look): Body {
  const along = unit(sub(to, from))
  const helper: Vec3 = Math.abs(along[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0]
  const side = cross(helper, along)
  return prism({ outer, from, to, up: length(side) > 0 ? cross(along, side) : helper, look })
}
