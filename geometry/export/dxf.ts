/**
 * The views of a layout drawing as DXF, model space in true units: plan where the Dock has it, x along the dock; the side view under it,
 * pairs of legs in a row under that, and joints cut through. Dimensions are the format's own, so that a reader measures what the Dock has; parts that
 * are there more than once are blocks.
 */

import { type Catalog, type PartKind, sectionProperties } from '../../rules/index.ts'
import { stopsOf } from '../../rules/stops.ts'
import { dayIn } from '../../rules/words/days.ts'
import { DRAWING } from '../../rules/words/drawing.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import type { Box } from '../drawing/cells.ts'
import { jointView } from '../drawing/details.ts'
import { paintDimension } from '../drawing/dimensions.ts'
import { elevationView } from '../drawing/elevation.ts'
import { type Label, PAPER, placeLabels } from '../drawing/labels.ts'
import { boxOfView, paintView } from '../drawing/paint.ts'
import { alikePairs, pairView } from '../drawing/pairs.ts'
import { planView } from '../drawing/plan.ts'
import { draft, finish, roomOn, SITE_SCALES } from '../drawing/sheet.ts'
import {
  type Bounds,
  boundsOf,
  EARTH,
  type Layer,
  type View,
  type ViewDimension,
  type ViewPath,
} from '../drawing/view.ts'
import type { Drawn } from '../drawn.ts'
import { codeOf } from '../paper/document.ts'
import type { Mark, Point, TextMark } from '../paper/marks.ts'
import type { PaperOf } from '../paper/paper-of.ts'
import { CAP_HEIGHT } from '../paper/text.ts'
import { type Line, type Pen, penOf, type Words } from './dxf-pen.ts'

/** Heights of letters, m of the lake. */
const TEXT = 0.11
const SMALL = 0.08
/** Of the title over a view. */
const ABOVE = 0.7
const BETWEEN = 2.6
/** Letters and dimension lines are as on a sheet of this scale; mm around a view for them. */
const SCALE = 48
const AROUND = 40
/** Of joints, which are shown as they are cut through. */
const DETAIL = 8
/** A block is called by the code of such a part where it has one. */
const MAIN: ReadonlySet<PartKind> = new Set(['frame', 'leg', 'brace'])
/** Parts whose lines differ by less are the same, m. */
const SAME = 1e-6
/** Lines across the ground that is cut through, m from line to line. */
const GROUND = { angle: 45, every: 0.12 } as const
/**
 * DXF text (version AC1021), inches for imperial units and millimeters for metric ones. The same text for the same dock, date and
 * options.
 */
export function dxfOf(drawn: PaperOf): string {
  const pen = penOf(drawn.units)
  if (drawn.dock.sections.length > 0) {
    const { x0, y1 } = putViews(pen, drawn)
    putTitle(pen, [x0, y1], drawn)
    putSheet(pen, drawn)
  }
  return pen.text()
}

/** Plan with its legs as circles, side view, pairs; what bounds the plan. */
function putViews(pen: Pen, drawn: Drawn): Bounds {
  const { dock, catalog } = drawn
  const [plan, side] = [planView(drawn), elevationView(drawn)]
  putView(pen, plan, drawn, 'PLAN', 0, 0, { but: 'LEG' })
  for (const { x, y, code } of dock.legs) pen.circle('LEG', [x, y], legWidth(catalog, code) / 2)
  let top = plan.bounds.y0 - BETWEEN
  putView(pen, side, drawn, 'SIDE', 0, top - side.bounds.y1)
  top -= side.bounds.y1 - side.bounds.y0 + BETWEEN
  let across = plan.bounds.x0
  let low = top
  for (const alike of alikePairs(dock)) {
    const view = pairView(drawn, alike)
    putView(pen, view, drawn, 'PAIR', across - view.bounds.x0, top - view.bounds.y1)
    across += view.bounds.x1 - view.bounds.x0 + BETWEEN
    low = Math.min(low, top - (view.bounds.y1 - view.bounds.y0))
  }
  top = low - BETWEEN
  across = plan.bounds.x0
  for (const kind of ['hinge', 'hook'] as const) {
    const view = jointView(drawn, kind)
    if (!view) continue
    putView(pen, view, drawn, 'JOINT', across - view.bounds.x0, top - view.bounds.y1, { scale: DETAIL })
    across += view.bounds.x1 - view.bounds.x0 + BETWEEN
  }
  return plan.bounds
}

/** Moved by `dx` and `dy`, m; without the lines of layer `but`; letters as on a sheet of that scale. */
function putView(
  pen: Pen,
  view: View,
  { dock }: Drawn,
  name: string,
  dx: number,
  dy: number,
  { scale = SCALE, but }: { readonly scale?: number; readonly but?: Layer } = {},
): void {
  const moved = ([x, y]: Point): Point => [x + dx, y + dy]
  for (const { points, fill, bare } of view.paths)
    if (bare && fill === EARTH) pen.hatch('BED', [points.map(moved)], GROUND)
  for (const { layer, points, hatch, hollow } of view.paths) {
    if (!hatch) continue
    const loops = (hollow ? [points, hollow] : [points]).map((loop) => loop.map(moved))
    pen.hatch(layer, loops, { angle: hatch.angle, every: (hatch.every * scale) / 1000 })
    for (const inner of loops.slice(1)) pen.line({ layer, points: inner, closed: true })
  }
  const paths = view.paths.filter(({ layer, bare }) => !bare && layer !== but)
  for (const path of paths) if (!path.of) pen.line(lineOf(path, moved))
  for (const part of partsOf(paths)) {
    const lines = part.paths.map((path) => lineOf(path, (point) => point))
    const own = dock.placements.filter(({ of }) => of === part.id)
    const code = (own.find(({ kind }) => MAIN.has(kind)) ?? own[0])?.code ?? part.paths[0]!.layer
    if (part.again) pen.block(`${name}_${code}`, part.shape, lines, part.at, moved(part.at))
    else for (const path of part.paths) pen.line(lineOf(path, moved))
  }
  const { x0, y0, y1 } = view.bounds
  const size = scale / SCALE
  const head = view.captions?.length ?? 0
  // From paper back to the lake.
  const back = ([x, y]: Point): Point => moved([x0 + (x * scale) / 1000, y0 - (y * scale) / 1000])
  const wordsOn = (mark: TextMark): Words => ({
    at: back(mark.at),
    height: (mark.size * CAP_HEIGHT * scale) / 1000,
    words: mark.text,
    angle: mark.angle,
  })
  const linesOn = (marks: readonly Mark[]): Line[] =>
    marks.flatMap((mark) =>
      mark.kind === 'path' && mark.fill !== PAPER
        ? [{ layer: 'DIM', points: mark.points.map(back), closed: mark.closed }]
        : [],
    )
  const textsOn = (marks: readonly Mark[]): Words[] =>
    marks.flatMap((mark) => (mark.kind === 'text' ? [wordsOn(mark)] : []))
  const { dimensions, notes } = annotations(view, scale)
  for (const { of, line, marks } of dimensions)
    pen.dimension({
      from: moved(of.from),
      to: moved(of.to),
      along: of.along,
      size,
      line: back(line),
      lines: linesOn(marks),
      words: textsOn(marks),
    })
  for (const line of linesOn(notes)) pen.line(line)
  for (const words of textsOn(notes)) pen.say('TEXT', words)
  pen.say('TEXT', {
    at: moved([x0, y1 + ABOVE * size + head * SMALL * size * 1.8]),
    height: TEXT * size * 1.4,
    words: view.title,
  })
  view.captions?.forEach((words, i) => {
    pen.say('TEXT', {
      at: moved([x0, y1 + ABOVE * size - 0.05 * size + (head - 1 - i) * SMALL * size * 1.8]),
      height: SMALL * size,
      words,
    })
  })
}

const lineOf = ({ layer, points, closed, hidden }: ViewPath, moved: (point: Point) => Point): Line => {
  const lineType = hidden ? 'HIDDEN' : layer === 'LEVEL' ? 'LEVELS' : undefined
  return { layer, points: points.map(moved), closed, ...(lineType && { lineType }) }
}

interface Part {
  readonly id: string
  readonly paths: readonly ViewPath[]
  /** Its lower left corner. */
  readonly at: Point
  /** The same for all that look the same, wherever they are. */
  readonly shape: string
  /** Others look the same. */
  readonly again: boolean
}

/** What belongs together: a section, a leg, a joint with all that is on it. In the order in which they begin. */
function partsOf(paths: readonly ViewPath[]): readonly Part[] {
  const groups = new Map<string, ViewPath[]>()
  for (const path of paths) {
    const id = path.of?.[0]
    if (id === undefined) continue
    const group = groups.get(id)
    if (group) group.push(path)
    else groups.set(id, [path])
  }
  const seen = new Map<string, number>()
  const parts = [...groups].map(([id, own]) => {
    const { x0, y0 } = boundsOf(own.flatMap(({ points }) => points))
    const shape = JSON.stringify(
      own.map(({ layer, closed, hidden, points }) => [
        layer,
        closed,
        hidden ?? false,
        points.map(([x, y]) => [Math.round((x - x0) / SAME), Math.round((y - y0) / SAME)]),
      ]),
    )
    seen.set(shape, (seen.get(shape) ?? 0) + 1)
    return { id, paths: own, at: [x0, y0] as const, shape }
  })
  return parts.map((part) => ({ ...part, again: seen.get(part.shape)! > 1 }))
}

/** Above the upper left corner of the plan: the dock's name, shop, check code, date, author, and the caution. */
function putTitle(pen: Pen, [x, y]: Point, drawn: PaperOf): void {
  const { dock, catalog, options } = drawn
  const t = wordsOf(DRAWING, drawn)
  pen.say('TEXT', { at: [x, y + 1.9], height: TEXT * 1.6, words: dock.name })
  pen.say('TEXT', {
    at: [x, y + 1.7],
    height: SMALL,
    words: [
      catalog.name,
      `${t('check-code')} ${codeOf(dock)}`,
      dayIn(options.date, options.language),
      options.by,
    ]
      .filter(Boolean)
      .join(' · '),
  })
  pen.say('TEXT', { at: [x, y + 1.55], height: SMALL, words: t('screening') })
  const stops = stopsOf(dock).length
  if (stops > 0)
    pen.say('FORBIDDEN', { at: [x, y + 2.3], height: TEXT * 3, words: t('stop', { count: stops }) })
}

/** All of the model on one sheet with the layout drawing's title block, at the finest scale that has room for it. */
function putSheet(pen: Pen, drawn: PaperOf): void {
  const t = wordsOf(DRAWING, drawn)
  const room = roomOn(drawn.options)
  const { x0, x1, y0, y1 } = pen.bounds()
  const needed = Math.max((x1 - x0) / (room.x1 - room.x0), (y1 - y0) / (room.y1 - room.y0)) * 1000
  const scales = SITE_SCALES[drawn.units]
  const scale = scales.find((one) => one >= needed) ?? scales.at(-1)!
  const empty = draft(t('drawing'))
  empty.scales.add(scale)
  const { sheet } = finish(empty, 1, 1, { ...drawn, name: t('drawing'), t })
  pen.sheet({ ...sheet, name: t('drawing'), room, scale })
}

interface PaintedDimension {
  readonly of: ViewDimension
  /** A place of its line. */
  readonly line: Point
  readonly marks: readonly Mark[]
}

/** Dimensions and names of a view where they would stand on a sheet of that scale, mm from its lower left corner. */
function annotations(
  view: View,
  scale: number,
): {
  readonly dimensions: readonly PaintedDimension[]
  readonly notes: readonly Mark[]
} {
  const { labels, segments } = paintView(view, [0, 0], scale)
  const { x0, x1, y0, y1 } = boxOfView(view, [0, 0], scale)
  const bounds = { x0: x0 - AROUND, x1: x1 + AROUND, y0: y0 - AROUND, y1: y1 + AROUND }
  const on = ([x, y]: Point): Point => [
    ((x - view.bounds.x0) * 1000) / scale,
    (-(y - view.bounds.y0) * 1000) / scale,
  ]
  const taken: Box[] = []
  const place = (some: readonly Label[]): readonly Mark[] => {
    const placed = placeLabels(some, { bounds, taken, segments })
    taken.push(...placed.boxes)
    return placed.marks
  }
  const dimensions = view.dimensions.map((of): PaintedDimension => {
    const { marks, labels: figures, segments: lines } = paintDimension(of, on)
    return {
      of,
      line: lines[0]![1],
      marks: [...marks, ...place(figures.map((one) => ({ ...one, optional: false })))],
    }
  })
  return { dimensions, notes: place(labels.slice(view.dimensions.length)) }
}

const legWidth = (catalog: Catalog, code: string | null): number =>
  sectionProperties(catalog.stock[(catalog.legs.find((one) => one.code === code) ?? catalog.legs[0]!).stock]!)
    .width
