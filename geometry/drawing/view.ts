/**
 * A view of a dock as it is drawn: lines, labels and dimensions in the view's own plane, true size. m, x to the right, y up.
 * What is on paper, and at which scale, is the sheet's business.
 */
import type { Ink, Point } from '../paper/marks.ts'
import { INK } from '../paper/style.ts'

export const LAYERS = [
  'FRAME',
  'DECK',
  'LEG',
  'PAD',
  'BRACE',
  'JOINT',
  'EXTRA',
  'BOAT',
  'BED',
  'WATER',
  'LEVEL',
  'WAVE',
  'CONTOUR',
  'MATCH',
  'DIM',
  'TEXT',
] as const

export type Layer = (typeof LAYERS)[number]

/** Width of its lines on paper, mm (ISO 128-2: 0.13, 0.18, 0.25, 0.35, 0.5), ink, dashes. Visible edges are wide, all else is narrow. */
export const PENS: Readonly<Record<Layer, { width: number; ink: Ink; dash?: readonly number[] }>> = {
  FRAME: { width: 0.35, ink: INK },
  DECK: { width: 0.13, ink: '#8a9299' },
  LEG: { width: 0.35, ink: INK },
  PAD: { width: 0.25, ink: INK },
  BRACE: { width: 0.35, ink: INK },
  JOINT: { width: 0.25, ink: INK },
  EXTRA: { width: 0.25, ink: '#5a646c' },
  BOAT: { width: 0.25, ink: '#7c5a2e' },
  BED: { width: 0.5, ink: '#6b5630' },
  WATER: { width: 0.25, ink: '#2f7196' },
  LEVEL: { width: 0.18, ink: '#2f7196', dash: [3, 1.2] },
  WAVE: { width: 0.18, ink: '#2f7196', dash: [0.5, 0.9] },
  CONTOUR: { width: 0.13, ink: '#7ba3b8' },
  MATCH: { width: 0.5, ink: INK, dash: [6, 1.2, 0.8, 1.2] },
  DIM: { width: 0.18, ink: '#39434a' },
  TEXT: { width: 0.18, ink: INK },
}

/** Smallest em on paper, mm: capitals of 1.8 mm, which a copy of a copy still shows (ISO 3098-1 asks for 1.8 at least; memory). */
export const SMALLEST = 2.55

/** Coarser than this a sheet takes the next thinner group of lines (ISO 128-2), so that tubes do not close up. */
const COARSE = 40
const THINNER: Readonly<Record<number, number>> = { 0.5: 0.35, 0.35: 0.18, 0.25: 0.13, 0.18: 0.13 }
/** Width of a layer's lines at a scale, mm. */
export const widthOf = (layer: Layer, scale: number): number =>
  scale > COARSE ? (THINNER[PENS[layer].width] ?? PENS[layer].width) : PENS[layer].width

/** Dashes of what lies behind or under something. */
export const HIDDEN: readonly number[] = [1.6, 0.9]

/** Ground, cut through. */
export const EARTH: Ink = '#f3ede1'

export interface ViewPath {
  readonly layer: Layer
  readonly points: readonly Point[]
  readonly closed: boolean
  readonly hidden?: boolean
  readonly fill?: Ink
  /** Ids that it belongs to: its section, and its leg, pair, joint or extra. */
  readonly of?: readonly string[]
  /** Only its fill is seen. */
  readonly bare?: boolean
  /** Cut through: lines across it, as neighbors of another part have them otherwise. Without what is hollow in it. */
  readonly hatch?: Hatch
  readonly hollow?: readonly Point[]
  /** The surface of the ground that is cut through, which lies under it: short strokes along it. */
  readonly earth?: boolean
}

/** Degrees counter-clockwise from across the sheet; from line to line, mm on paper. */
export interface Hatch {
  readonly angle: 45 | 135
  readonly every: number
}

/** Text about a place; its own position is chosen on the sheet. */
export interface ViewNote {
  readonly at: Point
  readonly text: string
  /** Of the em, mm on paper. */
  readonly size: number
  readonly bold?: boolean
  /** Where it stands if it can: on the place itself, or beside it. */
  readonly prefer: 'on' | 'right' | 'left' | 'above' | 'below'
  /** Radius around the place that the text keeps clear of, m. */
  readonly reach?: number
  /** Stands off to that side of where it would stand: a unit vector. */
  readonly lean?: Point
  /** Where it stands instead, m: in a row of labels beside a detail. */
  readonly stand?: Point
  /** May be omitted if there is no room: a table has it too. */
  readonly optional?: boolean
}

/** A length between two places, written as the Dock has it. */
export interface ViewDimension {
  readonly from: Point
  readonly to: Point
  /** Direction that is measured along: across the sheet, or up it. */
  readonly along: 'x' | 'y' | 'slope'
  /** Dimension line off the view's edge on that side (`below`, `left` …), or off the places themselves, mm on paper. */
  readonly side: 'above' | 'below' | 'left' | 'right'
  readonly off: number
  /** Dimension lines of one row stand on one line: this place of the view, m, instead of the places' own. */
  readonly line?: number
  readonly text: string
  readonly optional?: boolean
  /** Upright: where it is too short, its figure stands over its upper end instead of beside it. */
  readonly over?: boolean
}

export interface View {
  readonly title: string
  /** Said under the title. */
  readonly captions?: readonly string[]
  readonly paths: readonly ViewPath[]
  readonly notes: readonly ViewNote[]
  readonly dimensions: readonly ViewDimension[]
  readonly bounds: Bounds
}

export interface Bounds {
  readonly x0: number
  readonly x1: number
  readonly y0: number
  readonly y1: number
}

export function boundsOf(points: Iterable<Point>): Bounds {
  let [x0, x1, y0, y1] = [Infinity, -Infinity, Infinity, -Infinity]
  for (const [x, y] of points) {
    x0 = Math.min(x0, x)
    x1 = Math.max(x1, x)
    y0 = Math.min(y0, y)
    y1 = Math.max(y1, y)
  }
  return Number.isFinite(x0) ? { x0, x1, y0, y1 } : { x0: 0, x1: 1, y0: 0, y1: 1 }
}

/** The part of a line within a rectangle, or null (Liang and Barsky, 1984; memory). */
export function clipLine(a: Point, b: Point, { x0, x1, y0, y1 }: Bounds): readonly [Point, Point] | null {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  let [from, to] = [0, 1]
  for (const [p, q] of [
    [-dx, a[0] - x0],
    [dx, x1 - a[0]],
    [-dy, a[1] - y0],
    [dy, y1 - a[1]],
  ] as const) {
    if (p === 0) {
      if (q < 0) return null
      continue
    }
    const t = q / p
    if (p < 0) from = Math.max(from, t)
    else to = Math.min(to, t)
    if (from > to) return null
  }
  return [
    [a[0] + from * dx, a[1] + from * dy],
    [a[0] + to * dx, a[1] + to * dy],
  ]
}

/** A polygon within a rectangle, one side after the other (Sutherland and Hodgman, 1974; memory). */
export function clipPolygon(points: readonly Point[], { x0, x1, y0, y1 }: Bounds): readonly Point[] {
  let out = points
  for (const [axis, limit, sign] of [
    [0, x0, 1],
    [0, x1, -1],
    [1, y0, 1],
    [1, y1, -1],
  ] as const) {
    const inside = (p: Point): boolean => sign * (p[axis] - limit) >= 0
    const next: Point[] = []
    out.forEach((p, i) => {
      const before = out[(i + out.length - 1) % out.length]!
      if (inside(p) !== inside(before)) {
        const t = (limit - before[axis]) / (p[axis] - before[axis])
        next.push([before[0] + t * (p[0] - before[0]), before[1] + t * (p[1] - before[1])])
      }
      if (inside(p)) next.push(p)
    })
    out = next
  }
  return out
}

/** All of a view that lies within a rectangle. */
export function windowOf(view: View, bounds: Bounds): View {
  const within = ([x, y]: Point): boolean =>
    x >= bounds.x0 - 1e-9 && x <= bounds.x1 + 1e-9 && y >= bounds.y0 - 1e-9 && y <= bounds.y1 + 1e-9
  const paths = view.paths.flatMap((path): ViewPath[] => {
    if (path.points.every(within)) return [path]
    if (path.closed) {
      const points = clipPolygon(path.points, bounds)
      const hollow = path.hollow && clipPolygon(path.hollow, bounds)
      return points.length > 2 ? [{ ...path, points, ...(hollow && { hollow }) }] : []
    }
    return path.points.slice(1).flatMap((b, i) => {
      const part = clipLine(path.points[i]!, b, bounds)
      return part ? [{ ...path, points: part }] : []
    })
  })
  return {
    ...view,
    paths,
    notes: view.notes.filter(({ at }) => within(at)),
    dimensions: view.dimensions.filter(({ from, to }) => within(from) && within(to)),
    bounds,
  }
}
