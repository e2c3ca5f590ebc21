/**
 * The ground as triangles, made only where a part is near it. The ground has creases in plan: breaks of the profile, the lines of a
 * kriged bed's grid, edges of triangulated soundings and what spreads from their hull. A rectangle is cut along those that cross it, and
 * each cell's corners take their height from `bedAt`, so that the triangles *are* the ground. Where it still bends within a cell (it is
 * bilinear, or comes to the top of a bank) the cell is halved until it does not.
 */
import type { Vec3 } from '../dock.ts'
import type { Bed } from '../site/index.ts'
import type { Triangle } from './convex.ts'

export interface Ground {
  heightAt(x: number, y: number): number
  /** Highest ground within a rectangle, right within `slack`, m. */
  highest(x0: number, x1: number, y0: number, y1: number): number
  readonly slack: number
  /** Triangles over at least the rectangle, m. */
  under(x0: number, x1: number, y0: number, y1: number): Triangle[]
}

type Point = readonly [x: number, y: number]
/** A stretch of a line: `from` to `to` times its direction, from a point. */
interface Cut {
  readonly at: Point
  readonly along: Point
  readonly from: number
  readonly to: number
}

/** Creases that pass through a rectangle. */
type CutsNear = (x0: number, x1: number, y0: number, y1: number) => Cut[]

/** The whole line across the dock at a distance. */
const across = (x: number): Cut => ({
  at: [x, 0],
  along: [0, 1],
  from: Number.NEGATIVE_INFINITY,
  to: Number.POSITIVE_INFINITY,
})

/** Bent less than this counts as flat, m. Bilinear ground has the most at the middle of an edge. */
const FLAT = 1e-4
/** Halvings of a cell at the most: 2^-9 of a part's length. */
const HALVINGS = 9
/** Cells of the lookup of cuts, m. */
const CELL = 2

export function makeGround(bed: Bed): Ground {
  const wall = Math.abs(bed.bedAt(-1e-7, bed.lineY) - bed.bedAt(0, bed.lineY)) > 1e-6
  const cutsNear = bed.grid ? areaCuts(bed, bed.grid, wall) : profileCuts(bed)
  return {
    heightAt: bed.bedAt,
    highest: bed.highest,
    // Triangulated ground is looked at every 0.25 m: right within half of that on a slope of 2.
    slack: bed.triangulation ? 0.25 : 0,
    under(x0, x1, y0, y1) {
      let cells: Point[][] = [
        [
          [x0, y0],
          [x1, y0],
          [x1, y1],
          [x0, y1],
        ],
      ]
      for (const cut of cutsNear(x0, x1, y0, y1)) cells = cells.flatMap((cell) => split(cell, cut))
      const out: Triangle[] = []
      for (const cell of cells) {
        for (let i = 2; i < cell.length; i++) cover(bed, [cell[0]!, cell[i - 1]!, cell[i]!], 0, out)
        if (wall) wallFace(bed, cell, out)
      }
      return out
    },
  }
}

/** Across the dock at each break of the profile; the two faces of a wall, a hair apart, as one. */
function profileCuts(bed: Bed): CutsNear {
  return (x0, x1) =>
    bed
      .knots(x0, x1)
      .filter((x) => x > x0 && x < x1 && !(x < 0 && x > -1e-6))
      .map(across)
}

/** Along the shore and along the dock. */
const lengthwise = (y: number): Cut => ({ ...across(0), at: [0, y], along: [1, 0] })

/** Lines of the grid, edges of what is triangulated on top, and the wall. */
function areaCuts({ triangulation }: Bed, { xs, ys }: NonNullable<Bed['grid']>, wall: boolean): CutsNear {
  const edges = triangulation ? surfaceCuts(triangulation) : null
  const cuts = [...Array.from(xs, across), ...Array.from(ys, lengthwise), ...(wall ? [across(0)] : [])]
  return (x0, x1, y0, y1) => [
    ...cuts.filter((cut) => crosses(cut, x0, x1, y0, y1)),
    ...(edges?.(x0, x1, y0, y1) ?? []),
  ]
}

/** Edges of the triangulation, and from each corner of its hull the two borders of where that corner is the nearest place. */
function surfaceCuts({ x, y, triangles, halfedges, hull }: NonNullable<Bed['triangulation']>): CutsNear {
  const point = (i: number): Point => [x[i]!, y[i]!]
  const inner = new Map<string, Cut[]>()
  const long: Cut[] = []
  const cellOf = (v: number): number => Math.floor(v / CELL)
  const add = (a: Point, b: Point): void => {
    const cut: Cut = { at: a, along: [b[0] - a[0], b[1] - a[1]], from: 0, to: 1 }
    const [ax, bx] = [Math.min(a[0], b[0]), Math.max(a[0], b[0])]
    const [ay, by] = [Math.min(a[1], b[1]), Math.max(a[1], b[1])]
    // An edge much longer than the cells would fill thousands of them: such ones are kept apart and looked at always.
    if (bx - ax > 20 * CELL || by - ay > 20 * CELL) long.push(cut)
    else
      for (let i = cellOf(ax); i <= cellOf(bx); i++)
        for (let k = cellOf(ay); k <= cellOf(by); k++) {
          const list = inner.get(`${i},${k}`)
          if (list) list.push(cut)
          else inner.set(`${i},${k}`, [cut])
        }
  }
  for (let e = 0; e < triangles.length; e++) {
    const next = e % 3 === 2 ? e - 2 : e + 1
    if (halfedges[e]! < e) add(point(triangles[e]!), point(triangles[next]!))
  }
  for (let i = 0; i < hull.length; i++) {
    const a = point(hull[i]!)
    const b = point(hull[(i + 1) % hull.length]!)
    const c = point(hull[(i + 2) % hull.length]!)
    // Outward of an edge: away from the hull's other corners.
    const square: Point = [b[1] - a[1], a[0] - b[0]]
    const sign = square[0] * (c[0] - a[0]) + square[1] * (c[1] - a[1]) > 0 ? -1 : 1
    for (const at of [a, b])
      long.push({ at, along: [sign * square[0], sign * square[1]], from: 0, to: Number.POSITIVE_INFINITY })
  }
  return (x0, x1, y0, y1) => {
    const near = new Set<Cut>(long)
    for (let i = cellOf(x0); i <= cellOf(x1); i++)
      for (let k = cellOf(y0); k <= cellOf(y1); k++)
        for (const cut of inner.get(`${i},${k}`) ?? []) near.add(cut)
    return [...near].filter((cut) => crosses(cut, x0, x1, y0, y1))
  }
}

/** Does a segment pass through the inside of a rectangle? (Liang and Barsky's clipping.) */
function crosses(cut: Cut, x0: number, x1: number, y0: number, y1: number): boolean {
  const { at, along } = cut
  let [from, until] = [cut.from, cut.to]
  for (const [p, d, low, high] of [
    [at[0], along[0], x0, x1],
    [at[1], along[1], y0, y1],
  ] as const) {
    if (d === 0) {
      if (p <= low || p >= high) return false
      continue
    }
    const [a, b] = [(low - p) / d, (high - p) / d]
    from = Math.max(from, Math.min(a, b))
    until = Math.min(until, Math.max(a, b))
  }
  return from < until
}

/** The two parts of a convex cell on either side of a cut's whole line; the cell itself where it lies on one side. */
function split(cell: Point[], { at, along }: Cut): Point[][] {
  const side = cell.map(([x, y]) => {
    const s = (along[0] * (y - at[1]) - along[1] * (x - at[0])) / Math.hypot(...along)
    return Math.abs(s) < 1e-9 ? 0 : s
  })
  if (side.every((s) => s >= 0) || side.every((s) => s <= 0)) return [cell]
  const left: Point[] = []
  const right: Point[] = []
  cell.forEach((p, i) => {
    const k = (i + 1) % cell.length
    const [s, t] = [side[i]!, side[k]!]
    if (s >= 0) left.push(p)
    if (s <= 0) right.push(p)
    if (s * t < 0) {
      const q = cell[k]!
      const m: Point = [p[0] + (s / (s - t)) * (q[0] - p[0]), p[1] + (s / (s - t)) * (q[1] - p[1])]
      left.push(m)
      right.push(m)
    }
  })
  return [left, right]
}

/** Height at a cell's corner as seen from within the cell: at a wall's edge the two sides differ. */
function heightIn(bed: Bed, p: Point, middle: Point): number {
  const k = 1e-6
  return bed.bedAt(p[0] + k * (middle[0] - p[0]), p[1] + k * (middle[1] - p[1]))
}

const mean = (list: readonly Point[]): Point => {
  let [x, y] = [0, 0]
  for (const p of list) {
    x += p[0] / list.length
    y += p[1] / list.length
  }
  return [x, y]
}

function cover(bed: Bed, cell: readonly [Point, Point, Point], halved: number, out: Triangle[]): void {
  const middle = mean(cell)
  const [a, b, c] = cell
  const z = cell.map((p) => heightIn(bed, p, middle)) as [number, number, number]
  const sides = [mean([a, b]), mean([b, c]), mean([c, a])] as const
  const bent =
    Math.abs(bed.bedAt(...middle) - (z[0] + z[1] + z[2]) / 3) > FLAT ||
    sides.some((p, i) => Math.abs(heightIn(bed, p, middle) - (z[i]! + z[(i + 1) % 3]!) / 2) > FLAT)
  if (bent && halved < HALVINGS) {
    const [ab, bc, ca] = sides
    for (const part of [
      [a, ab, ca],
      [ab, b, bc],
      [ca, bc, c],
      [ab, bc, ca],
    ] as const)
      cover(bed, part, halved + 1, out)
    return
  }
  const at = (p: Point, i: number): Vec3 => [p[0], p[1], z[i]!]
  out.push({ shape: 'triangle', corners: [at(a, 0), at(b, 1), at(c, 2)] })
}

/** The upright face of a wall along the edge of a cell that lies on the water's edge, landward of it. */
function wallFace(bed: Bed, cell: readonly Point[], out: Triangle[]): void {
  if (mean(cell)[0] > 0) return
  cell.forEach((p, i) => {
    const q = cell[(i + 1) % cell.length]!
    if (Math.abs(p[0]) > 1e-9 || Math.abs(q[0]) > 1e-9) return
    const corner = ([, y]: Point, x: number): Vec3 => [0, y, bed.bedAt(x, y)]
    const [a, b, c, d] = [corner(p, -1e-7), corner(q, -1e-7), corner(q, 0), corner(p, 0)]
    out.push({ shape: 'triangle', corners: [a, b, c] }, { shape: 'triangle', corners: [a, c, d] })
  })
}
