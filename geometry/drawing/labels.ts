/**
 * Where labels stand: none on another, none off the sheet, and clear of lines where there is room; a leader where one must go far.
 * Greedy: wishes first, then in the order given over rings of places around each anchor; the same for the same input. mm.
 */
import type { Ink, Mark, Point, Stroke, TextMark, Weight } from '../paper/marks.ts'
import { CAP_HEIGHT, DESCENT, textWidth } from '../paper/text.ts'
import { clipLine } from './view.ts'

export interface Box {
  readonly x0: number
  readonly y0: number
  readonly x1: number
  readonly y1: number
}

export interface Label {
  readonly text: string
  readonly size: number
  readonly weight: Weight
  readonly ink: TextMark['ink']
  /** What it is about. */
  readonly at: Point
  /** Degrees counter-clockwise: 0, 90 where it is read from the right, or along a sloping line. */
  readonly angle: number
  /** Middle of its box if that is free. */
  readonly wish: Point
  readonly optional: boolean
  /** Takes its place even over lines. */
  readonly firm?: boolean
  /** A leader leads to it wherever it stands. */
  readonly led?: boolean
}

export type Segment = readonly [Point, Point]

const GAP = 0.5
const RINGS = [2.2, 3.5, 5, 7, 9.5, 12.5, 16, 20, 25, 31, 38, 46, 55, 65]
/** An optional label goes no farther than this. */
const NEAR = 12.5
/** Farther than this a leader says what it is about. */
const LEADER = 4.5
export const LEADER_STROKE: Stroke = { width: 0.13, ink: '#39434a' }
/** What lines are left out with under a label. */
export const PAPER: Ink = '#ffffff'
/** So much heavier a mm weighs where it takes a leader, which crosses lines itself. */
const LED = 1.8
/** One crossed line weighs as much as so many mm. */
const CROSSED = 4
const CELL = 8

export const overlap = (a: Box, b: Box): boolean => a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1

/** The box of a text mark, mm; highest accents to lowest tails. */
export function boxOf({ at, text, size, weight, anchor, angle }: TextMark): Box {
  const width = textWidth(text, size, weight)
  const back = anchor === 'start' ? 0 : anchor === 'end' ? width : width / 2
  const [cos, sin] = turnOf(angle)
  // Along the line, and up from it.
  const corners = [-back, width - back].flatMap((u) =>
    [CAP_HEIGHT * size, -DESCENT_UP * size].map(
      (v): Point => [at[0] + u * cos - v * sin, at[1] - u * sin - v * cos],
    ),
  )
  const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)]
  return { x0: Math.min(...xs), x1: Math.max(...xs), y0: Math.min(...ys), y1: Math.max(...ys) }
}

/** Cosine and sine of an angle in degrees, without a trace of rounding for level and upright. */
function turnOf(angle: number): readonly [number, number] {
  if (angle === 0) return [1, 0]
  if (angle === 90) return [0, 1]
  return [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)]
}

const DESCENT_UP = Math.abs(DESCENT)

/** Lines in cells, so that only near ones are asked. */
function near(segments: readonly Segment[]): (box: Box) => number {
  const cells = new Map<string, Segment[]>()
  for (const segment of segments) {
    const [[ax, ay], [bx, by]] = segment
    for (let i = Math.floor(Math.min(ax, bx) / CELL); i <= Math.floor(Math.max(ax, bx) / CELL); i++)
      for (let j = Math.floor(Math.min(ay, by) / CELL); j <= Math.floor(Math.max(ay, by) / CELL); j++) {
        const key = `${i} ${j}`
        const list = cells.get(key)
        if (list) list.push(segment)
        else cells.set(key, [segment])
      }
  }
  return (box) => {
    const found = new Set<Segment>()
    for (let i = Math.floor(box.x0 / CELL); i <= Math.floor(box.x1 / CELL); i++)
      for (let j = Math.floor(box.y0 / CELL); j <= Math.floor(box.y1 / CELL); j++)
        for (const segment of cells.get(`${i} ${j}`) ?? [])
          if (!found.has(segment) && clipLine(segment[0], segment[1], box)) found.add(segment)
    return found.size
  }
}

export interface Placed {
  readonly marks: readonly Mark[]
  readonly boxes: readonly Box[]
  /** Those for which there was no room; only optional ones, unless the sheet is full. */
  readonly left: readonly Label[]
}

/**
 * @param taken boxes that are written on already
 * @param segments lines that are better not written on
 */
export function placeLabels(
  labels: readonly Label[],
  {
    bounds,
    taken,
    segments,
  }: { readonly bounds: Box; readonly taken: readonly Box[]; readonly segments: readonly Segment[] },
): Placed {
  const crossed = near(segments)
  const boxes: Box[] = [...taken]
  const marks: Mark[] = []
  const left: Label[] = []
  const fresh: Box[] = []
  const leaders: Segment[] = []
  // First all that can stand where they wish with nothing in the way, then the others around them.
  const later: Label[] = []
  const place = (label: Label, wishOnly: boolean): void => {
    const along = textWidth(label.text, label.size, label.weight) + 2 * GAP
    const across = (CAP_HEIGHT + DESCENT_UP) * label.size + 2 * GAP
    const [cos, sin] = turnOf(label.angle)
    const [width, height] = [
      along * Math.abs(cos) + across * Math.abs(sin),
      along * Math.abs(sin) + across * Math.abs(cos),
    ]
    const boxAt = ([x, y]: Point): Box => ({
      x0: x - width / 2,
      x1: x + width / 2,
      y0: y - height / 2,
      y1: y + height / 2,
    })
    const free = (box: Box): boolean =>
      box.x0 >= bounds.x0 &&
      box.x1 <= bounds.x1 &&
      box.y0 >= bounds.y0 &&
      box.y1 <= bounds.y1 &&
      !boxes.some((other) => overlap(box, other)) &&
      !leaders.some(([from, to]) => clipLine(from, to, box))
    // Neither a leader over a label nor a label over a leader.
    const leads = (box: Box): boolean => {
      const [from, to] = leaderOf(label.at, box)
      return boxes.every((other) => !clipLine(from, to, other))
    }
    let best: { box: Box; cost: number; ring: number } | null = null
    const wish = boxAt(label.wish)
    if (free(wish)) best = { box: wish, cost: label.firm ? 0 : crossed(wish) * CROSSED, ring: 0 }
    if (wishOnly && (!best || best.cost > 0)) {
      later.push(label)
      return
    }
    if (!best || best.cost > 0)
      for (const ring of RINGS) {
        if (label.optional && ring > NEAR) break
        if (best && best.cost <= ring) break
        const steps = ring < 6 ? 8 : 16
        for (let i = 0; i < steps; i++) {
          const turn = (2 * Math.PI * i) / steps
          const box = boxAt([
            label.at[0] + Math.cos(turn) * (ring + width / 2),
            label.at[1] - Math.sin(turn) * (ring + height / 2),
          ])
          if (!free(box) || (ring > LEADER && !leads(box))) continue
          const cost = ring * (ring > LEADER ? LED : 1) + crossed(box) * CROSSED
          if (!best || cost < best.cost) best = { box, cost, ring }
        }
      }
    // Better untold than over many lines: it is told elsewhere too.
    if (label.optional && best && best.cost > NEAR) best = null
    if (!best && !label.optional)
      best =
        anywhere(label.at, width, height, bounds, (box) => free(box) && leads(box)) ??
        anywhere(label.at, width, height, bounds, free)
    if (!best) {
      left.push(label)
      return
    }
    const { box, ring } = best
    const clear = leads(box)
    boxes.push(box)
    fresh.push(box)
    const middle: Point = [(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2]
    // One in a column stands near enough to do without where its leader would cross another.
    if (ring > LEADER || (label.led && clear)) {
      marks.push(leader(label.at, box))
      leaders.push(leaderOf(label.at, box))
    }
    // Lines are left out under the letters, as a draftsman breaks them.
    if (crossed(box) > 0) {
      const [half, high] = [along / 2 - GAP / 2, across / 2 - GAP / 2]
      const corner = (i: number, j: number): Point => [
        middle[0] + i * half * cos + j * high * sin,
        middle[1] - i * half * sin + j * high * cos,
      ]
      const points = [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)]
      marks.push({ kind: 'path', points, closed: true, stroke: null, fill: PAPER })
    }
    const shift = ((CAP_HEIGHT - DESCENT_UP) / 2) * label.size
    marks.push({
      kind: 'text',
      text: label.text,
      size: label.size,
      weight: label.weight,
      ink: label.ink,
      anchor: 'middle',
      angle: label.angle,
      at: [middle[0] + sin * shift, middle[1] + cos * shift],
    })
  }
  for (const label of labels) place(label, true)
  for (const label of later) place(label, false)
  return { marks, boxes: fresh, left }
}

/** The nearest free place on a grid over the whole sheet. */
function anywhere(
  [x, y]: Point,
  width: number,
  height: number,
  bounds: Box,
  free: (box: Box) => boolean,
): { box: Box; cost: number; ring: number } | null {
  let best: { box: Box; cost: number; ring: number } | null = null
  for (let cx = bounds.x0 + width / 2; cx <= bounds.x1 - width / 2; cx += 3)
    for (let cy = bounds.y0 + height / 2; cy <= bounds.y1 - height / 2; cy += 3) {
      const cost = Math.hypot(cx - x, cy - y)
      if (best && cost >= best.cost) continue
      const box = { x0: cx - width / 2, x1: cx + width / 2, y0: cy - height / 2, y1: cy + height / 2 }
      if (free(box)) best = { box, cost, ring: cost }
    }
  return best
}

/** From what a label is about to the nearest point of its box. */
const leaderOf = (at: Point, box: Box): Segment => [
  at,
  [Math.min(Math.max(at[0], box.x0), box.x1), Math.min(Math.max(at[1], box.y0), box.y1)],
]

const leader = (at: Point, box: Box): Mark => ({
  kind: 'path',
  points: leaderOf(at, box),
  closed: false,
  stroke: LEADER_STROKE,
  fill: null,
})
