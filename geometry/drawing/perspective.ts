/** Places of a dock as an eye sees them: in perspective, framed in a box. m in, mm out. */
import type { Vec3 } from '../../rules/index.ts'
import type { Point } from '../paper/marks.ts'
import { add, cross, dot, length, scale, sub } from '../vec.ts'
import type { Box } from './cells.ts'

export interface Perspective {
  readonly eye: Vec3
  /** mm, y down. Of what lies before the eye: `polygon` cuts the rest off. */
  readonly place: (at: Vec3) => Point
  /** What of a polygon is seen within the box; empty where nothing is. */
  readonly polygon: (points: readonly Vec3[]) => readonly Point[]
  /** What of an outline on the picture is within the box. */
  readonly within: (points: readonly Point[]) => readonly Point[]
  /** Across the look, level, of length 1. */
  readonly right: Vec3
  /** Where water meets sky, mm. */
  readonly horizon: number
}

export interface Look {
  /** Degrees from lakeward, counter-clockwise from above, and down from level. */
  readonly toward: number
  readonly down: number
  /** The eye's distance, in lengths of what is framed. */
  readonly away: number
}

/** Nothing nearer to the eye is drawn, m. */
const NEAR = 0.2

/**
 * The picture is moved on its plane rather than turned, so that what stands upright stays upright.
 *
 * @param framed places that fill `frame` as far as its proportions allow
 * @param box what is cut off at
 */
export function perspective(framed: readonly Vec3[], look: Look, frame: Box, box: Box): Perspective {
  const [turn, fall] = [(look.toward * Math.PI) / 180, (look.down * Math.PI) / 180]
  const level: Vec3 = [Math.cos(turn), Math.sin(turn), 0]
  const forward: Vec3 = add(scale(level, Math.cos(fall)), [0, 0, -Math.sin(fall)])
  const right = cross(level, [0, 0, 1])
  const up = cross(right, forward)
  const low = framed.reduce(
    (a, b): Vec3 => [Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.min(a[2], b[2])],
  )
  const high = framed.reduce(
    (a, b): Vec3 => [Math.max(a[0], b[0]), Math.max(a[1], b[1]), Math.max(a[2], b[2])],
  )
  const size = Math.max(1, length(sub(high, low)))
  const eye = sub(scale(add(low, high), 0.5), scale(forward, size * look.away))
  const ahead = (at: Vec3): number => dot(sub(at, eye), forward)
  // Of a plane at 1 m before the eye.
  const seen = (at: Vec3): Point => {
    const from = sub(at, eye)
    const near = Math.max(NEAR, dot(from, forward))
    return [dot(from, right) / near, -dot(from, up) / near]
  }
  const all = framed.map(seen)
  const [xs, ys] = [all.map(([x]) => x), all.map(([, y]) => y)]
  const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
  const k = Math.min(
    (frame.x1 - frame.x0) / Math.max(1e-6, x1 - x0),
    (frame.y1 - frame.y0) / Math.max(1e-6, y1 - y0),
  )
  const [dx, dy] = [
    (frame.x0 + frame.x1) / 2 - (k * (x0 + x1)) / 2,
    (frame.y0 + frame.y1) / 2 - (k * (y0 + y1)) / 2,
  ]
  const place = (at: Vec3): Point => {
    const [x, y] = seen(at)
    return [dx + k * x, dy + k * y]
  }
  return {
    eye,
    place,
    right,
    within: (points) => boxed(points, box),
    horizon: dy - k * Math.tan(fall),
    polygon: (points) => boxed(cut(points, (at) => ahead(at) - NEAR, between3).map(place), box),
  }
}

const between3 = (a: Vec3, b: Vec3, t: number): Vec3 => add(a, scale(sub(b, a), t))
const between2 = (a: Point, b: Point, t: number): Point => [
  a[0] + t * (b[0] - a[0]),
  a[1] + t * (b[1] - a[1]),
]

/** The part of a polygon on which `side` is not below nothing (Sutherland and Hodgman, 1974; memory). */
function cut<P>(points: readonly P[], side: (at: P) => number, between: (a: P, b: P, t: number) => P): P[] {
  return points.flatMap((a, i): P[] => {
    const b = points[(i + 1) % points.length]!
    const [sa, sb] = [side(a), side(b)]
    const kept = sa >= 0 ? [a] : []
    return sa >= 0 === sb >= 0 ? kept : [...kept, between(a, b, sa / (sa - sb))]
  })
}

/** The part of a polygon in space at a height or over it (`sign` 1), or at it or under it (-1). */
export const cutAtHeight = (points: readonly Vec3[], z: number, sign: 1 | -1): Vec3[] =>
  cut(points, (at) => sign * (at[2] - z), between3)

const boxed = (points: readonly Point[], { x0, x1, y0, y1 }: Box): readonly Point[] =>
  [(p: Point) => p[0] - x0, (p: Point) => x1 - p[0], (p: Point) => p[1] - y0, (p: Point) => y1 - p[1]].reduce<
    readonly Point[]
  >((kept, side) => cut(kept, side, between2), points)
