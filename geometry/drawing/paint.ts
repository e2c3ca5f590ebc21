/** A view on paper at a scale: its lines as marks, its texts as labels that wait for a place. */
import type { Ink, Mark, Point } from '../paper/marks.ts'
import { INK } from '../paper/style.ts'
import { textWidth } from '../paper/text.ts'
import type { Box } from './cells.ts'
import { paintDimension, textRoom } from './dimensions.ts'
import { earthStrokes, hatchLines } from './hatch.ts'
import type { Label, Segment } from './labels.ts'
import { HIDDEN, PENS, type View, widthOf } from './view.ts'

export interface Painted {
  readonly marks: readonly Mark[]
  readonly labels: readonly Label[]
  readonly segments: readonly Segment[]
}

/** From what a label is about to the middle of its line, above and below, and to its end, mm. */
const AWAY = { up: 2.5, aside: 1.6 } as const
/** Room for labels around a view, mm. */
const ROOM = { left: 3, right: 3, above: 6, below: 4 } as const

/** Room that dimension lines and labels need around a view at a scale, mm. */
export function roomOf(
  view: View,
  scale: number,
): { left: number; right: number; above: number; below: number } {
  const room: { left: number; right: number; above: number; below: number } = { ...ROOM }
  const k = 1000 / scale
  for (const dimension of view.dimensions) {
    const { side, off, line, along } = dimension
    if (line === undefined || along === 'slope') continue
    const edge = {
      left: line - view.bounds.x0,
      right: view.bounds.x1 - line,
      above: view.bounds.y1 - line,
      below: line - view.bounds.y0,
    }[side]
    const out = off + textRoom(dimension, scale) - edge * k
    room[side] = Math.max(room[side], out)
  }
  for (const { at, stand, text, size, bold, prefer } of view.notes)
    if (prefer === 'right')
      room.right = Math.max(
        room.right,
        2 +
          AWAY.aside +
          textWidth(text, size, bold ? 'bold' : 'regular') -
          (view.bounds.x1 - (stand ?? at)[0]) * k,
      )
  return room
}

/** Lines of hatching, mm. */
const HATCH = 0.13
const stroke = (points: Segment, { width, ink }: { width: number; ink: Ink }): Mark => ({
  kind: 'path',
  points,
  closed: false,
  stroke: { width, ink },
  fill: null,
})

/** @param at where the view's lower left corner (x0, y0) comes to stand, mm; @param scale how many m of the lake are one m of paper */
export function paintView(view: View, at: Point, scale: number): Painted {
  const k = 1000 / scale
  const { x0, y0 } = view.bounds
  const on = ([x, y]: Point): Point => [at[0] + (x - x0) * k, at[1] - (y - y0) * k]
  const marks: Mark[] = []
  const segments: Segment[] = []
  const labels: Label[] = []
  for (const { layer, points, closed, hidden, fill, bare, hatch, hollow, earth } of view.paths) {
    const { ink, dash } = PENS[layer]
    const width = widthOf(layer, scale)
    const line = points.map(on)
    const dashes = hidden ? HIDDEN : dash
    marks.push({
      kind: 'path',
      points: line,
      closed,
      stroke: bare
        ? null
        : { width: hidden ? Math.min(width, 0.18) : width, ink, ...(dashes && { dash: dashes }) },
      fill: fill ?? null,
    })
    if (hatch) {
      const inner = hollow?.map(on)
      const thin = { width: Math.min(width, HATCH), ink }
      if (inner) marks.push({ kind: 'path', points: inner, closed: true, stroke: { width, ink }, fill: null })
      marks.push(...hatchLines(inner ? [line, inner] : [line], hatch).map((ends) => stroke(ends, thin)))
    }
    if (earth) marks.push(...earthStrokes(line).map((ends) => stroke(ends, { width: HATCH, ink })))
    if (layer === 'DECK' || bare) continue
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
  for (const { at: place, text, size, bold, prefer, optional, reach, stand, lean } of view.notes) {
    const anchor = on(place)
    const weight = bold ? 'bold' : 'regular'
    const clear = (reach ?? 0) * k
    const aside = textWidth(text, size, weight) / 2 + clear + AWAY.aside
    const offsets: Readonly<Record<typeof prefer, Point>> = {
      on: [0, 0],
      right: [aside, 0],
      left: [-aside, 0],
      above: [0, -clear - AWAY.up],
      below: [0, clear + AWAY.up],
    }
    const [dx, dy] = offsets[prefer]
    const half = textWidth(text, size, weight) / 2
    const [leanX, leanY] = lean ?? [0, 0]
    const stands = stand && on(stand)
    labels.push({
      text,
      size,
      weight,
      ink: INK,
      at: anchor,
      angle: 0,
      wish: stands
        ? [stands[0] + (prefer === 'left' ? -half : half), stands[1]]
        : [anchor[0] + dx + leanX * (half + 0.4), anchor[1] + dy - leanY * 1.6],
      optional: optional ?? false,
      firm: prefer === 'on' || stands !== undefined,
      led: stands !== undefined,
    })
  }
  return { marks, labels: inColumns(labels, view), segments }
}

/** Line to line of labels in a column, mm. */
const LEADING = 3.7
/** Labels to the right of one upright line that would stand on each other are spread, in their order. */
function inColumns(labels: readonly Label[], { notes }: View): readonly Label[] {
  const first = labels.length - notes.length
  const columns = new Map<number, number[]>()
  notes.forEach(({ at, prefer, stand }, i) => {
    if (prefer === 'right' && !stand) columns.set(at[0], [...(columns.get(at[0]) ?? []), first + i])
  })
  const out = [...labels]
  for (const column of columns.values()) {
    if (column.length < 2) continue
    column.sort((a, b) => labels[a]!.wish[1] - labels[b]!.wish[1])
    const ys = spread(column.map((i) => labels[i]!.wish[1]))
    const moved = column.some((i, n) => Math.abs(ys[n]! - labels[i]!.wish[1]) > 0.6)
    column.forEach((i, n) => {
      const label = labels[i]!
      out[i] = {
        ...label,
        wish: [label.wish[0] + (moved ? 2 : 0), ys[n]!],
        firm: true,
        led: moved,
      }
    })
  }
  return out
}

/** Rising places moved as little as may be, each `LEADING` or more from the last: too near ones share their middle. */
function spread(wanted: readonly number[]): readonly number[] {
  const groups: { middle: number; count: number }[] = []
  const top = ({ middle, count }: { middle: number; count: number }): number =>
    middle - ((count - 1) / 2) * LEADING
  for (const y of wanted) {
    let group = { middle: y, count: 1 }
    for (;;) {
      const before = groups.at(-1)
      if (!before || top(group) - (top(before) + (before.count - 1) * LEADING) >= LEADING) break
      groups.pop()
      const count = before.count + group.count
      group = { middle: (before.middle * before.count + group.middle * group.count) / count, count }
    }
    groups.push(group)
  }
  return groups.flatMap((group) => Array.from({ length: group.count }, (_, i) => top(group) + i * LEADING))
}

/** A box in mm, y down. */
export const boxOfView = (view: View, at: Point, scale: number): Box => {
  const k = 1000 / scale
  const { x0, x1, y0, y1 } = view.bounds
  return { x0: at[0], x1: at[0] + (x1 - x0) * k, y0: at[1] - (y1 - y0) * k, y1: at[1] }
}
