/**
 * Where labels stand: none on another, none off the sheet, and clear of lines where there is room; a leader where one must go far.
 * Greedy: wishes first, then in the order given over rings of places around each anchor; the same for the same input. mm.
 */
import type { Ink, Mark, Point, Stroke, TextMark, Weight } from '../paper/marks.ts'
import { CAP_HEIGHT, DESCENT, textWidth } from '../paper/text.ts'
import { type Box, type Cells, makeCells, overlap, within } from './cells.ts'
import { clipLine } from './view.ts'

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
/** Cost factor on the distance of a label that needs a leader, because the leader itself crosses lines. */
const LED = 1.8
/** One crossed line weighs as much as so many mm. */
const CROSSED = 4

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

export interface PlacedLabels {
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
): PlacedLabels {
  const sheet = writtenOn(bounds, taken, segments)
  const marks: Mark[] = []
  const left: Label[] = []
  const fresh: Box[] = []
  const put = (label: Label, shape: Shape, { box, ring }: Choice): void => {
    const clear = leads(sheet, label, box)
    sheet.boxes.add(box, box)
    fresh.push(box)
    // A label in a column is close enough to go without its leader where that would cross another one.
    if (ring > LEADER || (label.led && clear)) {
      const leader = leaderOf(label.at, box)
      marks.push({ kind: 'path', points: leader, closed: false, stroke: LEADER_STROKE, fill: null })
      sheet.leaders.add(extentOf(leader), leader)
    }
    if (crossed(sheet, box) > 0) marks.push(gapUnder(shape, middleOf(box)))
    marks.push(textOf(label, shape, middleOf(box)))
  }
  // First all that can stand where they wish with nothing in the way, then the others around them.
  const later: Label[] = []
  for (const label of labels) {
    const shape = shapeOf(label)
    const wish = atWish(sheet, label, shape)
    if (wish?.cost === 0) put(label, shape, wish)
    else later.push(label)
  }
  for (const label of later) {
    const shape = shapeOf(label)
    const choice = choose(sheet, label, shape)
    if (choice) put(label, shape, choice)
    else left.push(label)
  }
  return { marks, boxes: fresh, left }
}

/** What stands on a sheet while it is written on. */
interface Written {
  readonly bounds: Box
  readonly boxes: Cells<Box>
  readonly leaders: Cells<Segment>
  readonly lines: Cells<Segment>
}

function writtenOn(bounds: Box, taken: readonly Box[], segments: readonly Segment[]): Written {
  const sheet: Written = { bounds, boxes: makeCells(), leaders: makeCells(), lines: makeCells() }
  for (const box of taken) sheet.boxes.add(box, box)
  for (const segment of segments) sheet.lines.add(extentOf(segment), segment)
  return sheet
}

const extentOf = ([[ax, ay], [bx, by]]: Segment): Box => ({
  x0: Math.min(ax, bx),
  y0: Math.min(ay, by),
  x1: Math.max(ax, bx),
  y1: Math.max(ay, by),
})

const crosses =
  (box: Box) =>
  ([from, to]: Segment): boolean =>
    clipLine(from, to, box) !== null

const crossed = ({ lines }: Written, box: Box): number => lines.count(box, crosses(box))

const isFree = ({ bounds, boxes, leaders }: Written, box: Box): boolean =>
  within(box, bounds) && !boxes.some(box, (other) => overlap(box, other)) && !leaders.some(box, crosses(box))

/** Neither a leader over a label nor a label over a leader. */
function leads({ boxes }: Written, { at }: Label, box: Box): boolean {
  const leader = leaderOf(at, box)
  return !boxes.some(extentOf(leader), (other) => crosses(other)(leader))
}

/** Of a label with the air around it: along its line and across, and of the box around that; mm. */
interface Shape {
  readonly along: number
  readonly across: number
  readonly width: number
  readonly height: number
  readonly cos: number
  readonly sin: number
}

function shapeOf({ text, size, weight, angle }: Label): Shape {
  const along = textWidth(text, size, weight) + 2 * GAP
  const across = (CAP_HEIGHT + DESCENT_UP) * size + 2 * GAP
  const [cos, sin] = turnOf(angle)
  const width = along * Math.abs(cos) + across * Math.abs(sin)
  const height = along * Math.abs(sin) + across * Math.abs(cos)
  return { along, across, width, height, cos, sin }
}

const boxAround = ([x, y]: Point, { width, height }: Shape): Box => ({
  x0: x - width / 2,
  x1: x + width / 2,
  y0: y - height / 2,
  y1: y + height / 2,
})

const middleOf = ({ x0, y0, x1, y1 }: Box): Point => [(x0 + x1) / 2, (y0 + y1) / 2]

interface Choice {
  readonly box: Box
  readonly cost: number
  /** How far it is from what it is about, mm. */
  readonly ring: number
}

function atWish(sheet: Written, label: Label, shape: Shape): Choice | null {
  const box = boxAround(label.wish, shape)
  if (!isFree(sheet, box)) return null
  return { box, cost: label.firm ? 0 : crossed(sheet, box) * CROSSED, ring: 0 }
}

function choose(sheet: Written, label: Label, shape: Shape): Choice | null {
  const best = around(sheet, label, shape, atWish(sheet, label, shape))
  // Better untold than over many lines: it is told elsewhere too.
  if (label.optional) return best && best.cost > NEAR ? null : best
  return (
    best ??
    anywhere(sheet, label, shape, (box) => isFree(sheet, box) && leads(sheet, label, box)) ??
    anywhere(sheet, label, shape, (box) => isFree(sheet, box))
  )
}

/** The cheapest place on the rings, where one costs less than the wish. */
function around(sheet: Written, label: Label, shape: Shape, wish: Choice | null): Choice | null {
  let best = wish
  for (const ring of RINGS) {
    if (label.optional && ring > NEAR) break
    if (best && best.cost <= ring) break
    const steps = ring < 6 ? 8 : 16
    for (let i = 0; i < steps; i++) {
      const turn = (2 * Math.PI * i) / steps
      const x = label.at[0] + Math.cos(turn) * (ring + shape.width / 2)
      const y = label.at[1] - Math.sin(turn) * (ring + shape.height / 2)
      const box = boxAround([x, y], shape)
      const far = ring * (ring > LEADER ? LED : 1)
      if (best && far >= best.cost) continue
      if (!isFree(sheet, box) || (ring > LEADER && !leads(sheet, label, box))) continue
      const cost = far + crossed(sheet, box) * CROSSED
      if (!best || cost < best.cost) best = { box, cost, ring }
    }
  }
  return best
}

/** The nearest free place on a grid over the whole sheet. */
function anywhere(
  { bounds }: Written,
  { at: [x, y] }: Label,
  shape: Shape,
  free: (box: Box) => boolean,
): Choice | null {
  const { width, height } = shape
  let best: Choice | null = null
  for (let cx = bounds.x0 + width / 2; cx <= bounds.x1 - width / 2; cx += 3)
    for (let cy = bounds.y0 + height / 2; cy <= bounds.y1 - height / 2; cy += 3) {
      const cost = Math.hypot(cx - x, cy - y)
      if (best && cost >= best.cost) continue
      const box = boxAround([cx, cy], shape)
      if (free(box)) best = { box, cost, ring: cost }
    }
  return best
}

/** Lines are left out under the letters, as a draftsman breaks them. */
function gapUnder({ along, across, cos, sin }: Shape, [x, y]: Point): Mark {
  const [half, high] = [along / 2 - GAP / 2, across / 2 - GAP / 2]
  const corner = (i: number, j: number): Point => [
    x + i * half * cos + j * high * sin,
    y - i * half * sin + j * high * cos,
  ]
  const points = [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)]
  return { kind: 'path', points, closed: true, stroke: null, fill: PAPER }
}

function textOf({ text, size, weight, ink, angle }: Label, { cos, sin }: Shape, [x, y]: Point): Mark {
  const shift = ((CAP_HEIGHT - DESCENT_UP) / 2) * size
  return {
    kind: 'text',
    text,
    size,
    weight,
    ink,
    anchor: 'middle',
    angle,
    at: [x + sin * shift, y + cos * shift],
  }
}

/** From what a label is about to the nearest point of its box. */
const leaderOf = (at: Point, box: Box): Segment => [
  at,
  [Math.min(Math.max(at[0], box.x0), box.x1), Math.min(Math.max(at[1], box.y0), box.y1)],
]
