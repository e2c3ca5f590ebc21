/** A view on paper at a scale: its lines as marks, its texts as labels that wait for a place. */
import type { Mark, Point } from '../paper/marks.ts'
import { textWidth } from '../paper/text.ts'
import type { Box, Label, Segment } from './labels.ts'
import { HIDDEN, PENS, type View, type ViewDimension } from './view.ts'

export interface Painted {
  readonly marks: readonly Mark[]
  readonly labels: readonly Label[]
  readonly segments: readonly Segment[]
}

const DIMENSION = { size: 2.4, gap: 0.8, over: 1.2, arrow: 2.2, arrowHalf: 0.37 } as const
const INK = '#1b2126' as const

/** Room that dimension lines need around a view, mm: the farthest one of each side and its text. */
export function roomOf(view: View): { left: number; right: number; above: number; below: number } {
  const room = { left: 3, right: 3, above: 4, below: 3 }
  for (const { side, off, line } of view.dimensions)
    if (line !== undefined) room[side] = Math.max(room[side], off + 4)
  return room
}

/** @param at where the view's lower left corner (x0, y0) comes to stand, mm; @param scale how many m of the lake are one m of paper */
export function paintView(view: View, at: Point, scale: number): Painted {
  const k = 1000 / scale
  const { x0, y0 } = view.bounds
  const on = ([x, y]: Point): Point => [at[0] + (x - x0) * k, at[1] - (y - y0) * k]
  const marks: Mark[] = []
  const segments: Segment[] = []
  const labels: Label[] = []
  for (const { layer, points, closed, hidden, fill } of view.paths) {
    const { width, ink, dash } = PENS[layer]
    const line = points.map(on)
    const dashes = hidden ? HIDDEN : dash
    marks.push({
      kind: 'path',
      points: line,
      closed,
      stroke: { width: hidden ? 0.18 : width, ink, ...(dashes && { dash: dashes }) },
      fill: fill ?? null,
    })
    if (layer === 'DECK') continue
    line.forEach((point, i) => {
      const next = line[i + 1] ?? (closed ? line[0]! : null)
      if (next) segments.push([point, next])
    })
  }
  for (const dimension of view.dimensions) {
    const painted = paintDimension(dimension, on)
    marks.push(...painted.marks)
    labels.push(...painted.labels)
    segments.push(...painted.segments)
  }
  for (const { at: place, text, size, bold, prefer, optional } of view.notes) {
    const anchor = on(place)
    const half = textWidth(text, size, bold ? 'bold' : 'regular') / 2
    const [dx, dy] = {
      on: [0, 0],
      right: [half + 2, 0],
      left: [-half - 2, 0],
      above: [0, -2.6],
      below: [0, 2.6],
    }[prefer] as [number, number]
    labels.push({
      text,
      size,
      weight: bold ? 'bold' : 'regular',
      ink: INK,
      at: anchor,
      angle: 0,
      wish: [anchor[0] + dx, anchor[1] + dy],
      optional: optional ?? false,
    })
  }
  return { marks, labels, segments }
}

/** Extension lines with a gap and an overrun, closed arrows, the figure over its line, read from below or from the right (ISO 129-1). */
function paintDimension(dimension: ViewDimension, on: (p: Point) => Point): Painted {
  const { along, side, off, line, text, optional } = dimension
  const [a, b] = [on(dimension.from), on(dimension.to)]
  const upright = along === 'y'
  const sign = side === 'below' || side === 'right' ? 1 : -1
  const base =
    line === undefined ? null : upright ? on([line, dimension.from[1]])[0] : on([dimension.from[0], line])[1]
  const place = (upright ? (base ?? Math.max(a[0], b[0])) : (base ?? Math.max(a[1], b[1]))) + sign * off
  const from: Point = upright ? [place, a[1]] : [a[0], place]
  const to: Point = upright ? [place, b[1]] : [b[0], place]
  const { ink, width } = PENS.DIM
  const stroke = { ink, width }
  const lineMark = (p: Point, q: Point): Mark => ({
    kind: 'path',
    points: [p, q],
    closed: false,
    stroke,
    fill: null,
  })
  const extension = (p: Point, q: Point): Mark | null => {
    const long = Math.hypot(q[0] - p[0], q[1] - p[1])
    if (long < DIMENSION.gap) return null
    const [ux, uy] = [(q[0] - p[0]) / long, (q[1] - p[1]) / long]
    return lineMark(
      [p[0] + ux * DIMENSION.gap, p[1] + uy * DIMENSION.gap],
      [q[0] + ux * DIMENSION.over, q[1] + uy * DIMENSION.over],
    )
  }
  const long = Math.hypot(to[0] - from[0], to[1] - from[1])
  const [ux, uy] = long > 0 ? [(to[0] - from[0]) / long, (to[1] - from[1]) / long] : [1, 0]
  // Arrows from outside where there is no room between.
  const inward = long > 3 * DIMENSION.arrow
  const arrow = (tip: Point, way: number): Mark => {
    const [dx, dy] = [ux * way * DIMENSION.arrow, uy * way * DIMENSION.arrow]
    const [nx, ny] = [-uy * DIMENSION.arrowHalf, ux * DIMENSION.arrowHalf]
    return {
      kind: 'path',
      points: [tip, [tip[0] + dx + nx, tip[1] + dy + ny], [tip[0] + dx - nx, tip[1] + dy - ny]],
      closed: true,
      stroke: null,
      fill: ink,
    }
  }
  const reach = inward ? 0 : DIMENSION.arrow * 1.6
  const main = lineMark(
    [from[0] - ux * reach, from[1] - uy * reach],
    [to[0] + ux * reach, to[1] + uy * reach],
  )
  const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]
  const lift = DIMENSION.size * 0.36 + 1.1
  return {
    marks: [
      ...[extension(a, from), extension(b, to)].filter((mark) => mark !== null),
      main,
      arrow(from, inward ? 1 : -1),
      arrow(to, inward ? -1 : 1),
    ],
    segments: [[from, to]],
    labels: [
      {
        text,
        size: DIMENSION.size,
        weight: 'regular',
        ink: INK,
        at: middle,
        angle: upright ? 90 : 0,
        wish: upright ? [middle[0] - lift, middle[1]] : [middle[0], middle[1] - lift],
        optional: optional ?? false,
      },
    ],
  }
}

/** A box in mm, y down. */
export const boxOfView = (view: View, at: Point, scale: number): Box => {
  const k = 1000 / scale
  const { x0, x1, y0, y1 } = view.bounds
  return { x0: at[0], x1: at[0] + (x1 - x0) * k, y0: at[1] - (y1 - y0) * k, y1: at[1] }
}
