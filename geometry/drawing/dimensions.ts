/**
 * Dimension lines on paper, by the habits of ISO 129-1: narrow lines, extension lines with a gap and an overrun, closed arrows, the
 * figure over its line and read from below or from the right; where it is too short for its figure, the figure stands outside. mm.
 */
import type { Mark, Point } from '../paper/marks.ts'
import { INK } from '../paper/style.ts'
import { textWidth } from '../paper/text.ts'
import type { Label, Segment } from './labels.ts'
import { PENS, SMALLEST, type ViewDimension } from './view.ts'

const LINE = { gap: 0.8, over: 1.2, arrow: 2.2, arrowHalf: 0.37 } as const
const SIZE = SMALLEST
/** From a line to the middle of the figure over it. */
const LIFT = SIZE * 0.36 + 1.1
/** Arrows stand outside of a line that is shorter than this. */
const ROOMY = 3 * LINE.arrow
const REACH = LINE.arrow * 1.6

const isShort = (long: number, text: string): boolean => long < textWidth(text, SIZE) + 1.2

/** Beyond a dimension's line, outward: its figure over it, or beside it where it is short. */
export function textRoom({ from, to, along, text }: ViewDimension, scale: number): number {
  const long = (Math.abs(along === 'y' ? to[1] - from[1] : to[0] - from[0]) * 1000) / scale
  return along === 'y' && isShort(long, text) ? textWidth(text, SIZE) + 3 : 4
}

interface DimensionLine {
  readonly from: Point
  readonly to: Point
}

/** Where its line stands. */
function lineOf({ from, to, along, side, off, line }: ViewDimension, on: (p: Point) => Point): DimensionLine {
  const [a, b] = [on(from), on(to)]
  const sign = side === 'below' || side === 'right' ? 1 : -1
  if (along === 'slope') {
    const long = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1
    // Square to it, upward on paper where it stands above.
    const flip = (b[0] - a[0] >= 0 ? 1 : -1) * sign * off
    const [nx, ny] = [(-(b[1] - a[1]) / long) * flip, ((b[0] - a[0]) / long) * flip]
    return { from: [a[0] + nx, a[1] + ny], to: [b[0] + nx, b[1] + ny] }
  }
  if (along === 'y') {
    const x = (line === undefined ? Math.max(a[0], b[0]) : on([line, from[1]])[0]) + sign * off
    return { from: [x, a[1]], to: [x, b[1]] }
  }
  const y = (line === undefined ? Math.max(a[1], b[1]) : on([from[0], line])[1]) + sign * off
  return { from: [a[0], y], to: [b[0], y] }
}

export function paintDimension(
  dimension: ViewDimension,
  on: (p: Point) => Point,
): {
  readonly marks: readonly Mark[]
  readonly labels: readonly Label[]
  readonly segments: readonly Segment[]
} {
  const { text, optional } = dimension
  const [a, b] = [on(dimension.from), on(dimension.to)]
  const { from, to } = lineOf(dimension, on)
  const { ink, width } = PENS.DIM
  const line = (p: Point, q: Point): Mark => ({
    kind: 'path',
    points: [p, q],
    closed: false,
    stroke: { ink, width },
    fill: null,
  })
  const across: Segment[] = []
  const extension = (p: Point, q: Point): Mark[] => {
    const long = Math.hypot(q[0] - p[0], q[1] - p[1])
    if (long < LINE.gap) return []
    const [ux, uy] = [(q[0] - p[0]) / long, (q[1] - p[1]) / long]
    across.push([p, q])
    return [
      line([p[0] + ux * LINE.gap, p[1] + uy * LINE.gap], [q[0] + ux * LINE.over, q[1] + uy * LINE.over]),
    ]
  }
  const long = Math.hypot(to[0] - from[0], to[1] - from[1])
  const [ux, uy] = long > 0 ? [(to[0] - from[0]) / long, (to[1] - from[1]) / long] : [1, 0]
  const inward = long > ROOMY
  const arrow = (tip: Point, way: number): Mark => {
    const [dx, dy] = [ux * way * LINE.arrow, uy * way * LINE.arrow]
    const [nx, ny] = [-uy * LINE.arrowHalf, ux * LINE.arrowHalf]
    return {
      kind: 'path',
      points: [tip, [tip[0] + dx + nx, tip[1] + dy + ny], [tip[0] + dx - nx, tip[1] + dy - ny]],
      closed: true,
      stroke: null,
      fill: ink,
    }
  }
  const reach = inward ? 0 : REACH
  return {
    marks: [
      ...extension(a, from),
      ...extension(b, to),
      line([from[0] - ux * reach, from[1] - uy * reach], [to[0] + ux * reach, to[1] + uy * reach]),
      arrow(from, inward ? 1 : -1),
      arrow(to, inward ? -1 : 1),
    ],
    // The dimension line first.
    segments: [[from, to], ...across],
    labels: [
      {
        text,
        size: SIZE,
        weight: 'regular',
        ink: INK,
        at: [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2],
        optional: optional ?? false,
        ...figure(dimension, { from, to }, long),
      },
    ],
  }
}

/** Where the figure stands, and how it is turned. */
function figure(
  { along, side, text, over }: ViewDimension,
  { from, to }: DimensionLine,
  long: number,
): Pick<Label, 'wish' | 'angle' | 'firm'> {
  const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]
  const half = textWidth(text, SIZE) / 2
  if (along === 'slope') {
    // Along its line, never upside down.
    const [left, right] = from[0] <= to[0] ? [from, to] : [to, from]
    const reach = long || 1
    const [ux, uy] = [(right[0] - left[0]) / reach, (right[1] - left[1]) / reach]
    return {
      wish: [middle[0] + uy * LIFT, middle[1] - ux * LIFT],
      angle: (Math.atan2(-uy, ux) * 180) / Math.PI,
      firm: true,
    }
  }
  const short = isShort(long, text)
  if (along === 'y')
    return short && over
      ? {
          wish: [
            middle[0] + (side === 'left' ? -1 : 1) * (half - 0.4),
            Math.min(from[1], to[1]) - (long > ROOMY ? 1.2 : REACH) - SIZE * 0.6,
          ],
          angle: 0,
        }
      : short
        ? { wish: [middle[0] + (side === 'left' ? -1 : 1) * (half + 1.6), middle[1]], angle: 0 }
        : { wish: [middle[0] - LIFT, middle[1]], angle: 90 }
  if (!short) return { wish: [middle[0], middle[1] - LIFT], angle: 0 }
  // Beyond its right end.
  return { wish: [Math.max(from[0], to[0]) + (long > ROOMY ? 1 : REACH) + half + 0.6, middle[1]], angle: 0 }
}
