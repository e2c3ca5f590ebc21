/** The dock from above: frames and decking, legs with their numbers, what lies under the deck in dashes, the lake's depths. */

import { type Bed, type Dock, formatLength } from '../../rules/index.ts'
import { cornersOf, footprintOf, footprintOfAll } from '../../rules/layout/footprint.ts'
import { factsOf } from '../../rules/part-kinds.ts'
import { DRAWING } from '../../rules/words/drawing.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import { bedMesh } from '../bed.ts'
import { contours } from '../contours.ts'
import type { Drawn } from '../drawn.ts'
import type { Point } from '../paper/marks.ts'
import { INK } from '../paper/style.ts'
import { ABOVE } from '../projection.ts'
import { outlinesFrom, placementsOf } from './outlines.ts'
import {
  type Bounds,
  boundsOf,
  SMALLEST,
  type View,
  type ViewDimension,
  type ViewNote,
  type ViewPath,
} from './view.ts'

/** Legs by number, as on every sheet: in the Dock's own order, from 1. */
export const numberOf = (dock: Dock, leg: string): number => dock.legs.findIndex(({ id }) => id === leg) + 1

/** Lake shown around the dock, m. */
const AROUND = 1

/** Distances that plan and side both show, so that one stands over the other, m. */
export function shownAlong(dock: Dock): { readonly x0: number; readonly x1: number } {
  const covered = footprintOfAll(dock.sections)
  return {
    x0: Math.min(0, dock.ramp?.shoreX ?? 0, covered?.x0 ?? 0) - AROUND,
    x1: Math.max(0, covered?.x1 ?? 0) + AROUND,
  }
}

export function planView(drawn: Drawn): View {
  const { dock, catalog } = drawn
  const t = wordsOf(DRAWING, drawn)
  const seenAt = (level: 'top' | 'under') =>
    outlinesFrom(
      placementsOf(dock, (kind) => factsOf(kind).plan?.[0] === level),
      catalog,
      ABOVE,
      (kind) => factsOf(kind).plan?.[1] === 'outline',
    )
  const top = seenAt('top')
  const under = seenAt('under')
  const own = boundsOf([...top, ...under].flatMap(({ path }) => path.points))
  const bounds: Bounds = {
    ...shownAlong(dock),
    y0: own.y0 - AROUND,
    y1: own.y1 + AROUND,
  }
  const hidden = under.map(
    ({ path: { layer, points, of } }): ViewPath => ({
      layer,
      points,
      closed: true,
      hidden: true,
      ...(of && { of }),
    }),
  )
  const lake = lakeLines(drawn.bed, bounds, drawn)
  return {
    title: t('plan'),
    captions: [t('plan-caption')],
    paths: [...lake.paths, ...top.map(({ path }) => path), ...edges(dock), ...hidden, ...lowEnds(dock)],
    notes: [...sectionNotes(drawn), ...legNotes(drawn), ...lake.notes],
    dimensions: planDimensions(drawn, own),
    bounds,
  }
}

/** Depth lines, and the water's edge. */
function lakeLines(bed: Bed, bounds: Bounds, drawn: Drawn): Pick<View, 'paths' | 'notes'> {
  const t = wordsOf(DRAWING, drawn)
  const step = drawn.units === 'imperial' ? 0.3048 : 0.25
  const mesh = bedMesh(bed, bounds, 0.5)
  const most = Math.max(...mesh.depths)
  const depths = Array.from({ length: Math.max(0, Math.floor(most / step)) }, (_, i) => (i + 1) * step)
  const paths: ViewPath[] = []
  const notes: ViewNote[] = []
  for (const { depth, points } of contours(mesh, [0, ...depths])) {
    const line: Point[] = []
    for (let i = 0; i < points.length; i += 3) line.push([points[i]!, points[i + 1]!])
    paths.push({ layer: depth === 0 ? 'WATER' : 'CONTOUR', points: line, closed: false })
    const end = line.reduce((most, p) => (p[1] > most[1] ? p : most))
    if (depth > 0)
      notes.push({
        at: [end[0], bounds.y1],
        text: formatLength(depth, drawn),
        size: SMALLEST,
        prefer: 'above',
        optional: true,
      })
  }
  notes.push({
    at: [(bounds.x0 + Math.min(0, bounds.x1)) / 2, bounds.y1],
    text: t('shore'),
    size: 2.8,
    prefer: 'below',
    optional: true,
  })
  return { paths, notes }
}

const sectionNotes = ({ dock }: Drawn): ViewNote[] =>
  dock.sections.map(({ id, x, y, heading, length }) => {
    const turn = (heading * Math.PI) / 180
    return {
      // Beside the line that panels meet on, in the middle of most sections.
      at: [x + Math.cos(turn) * length * 0.3, y + Math.sin(turn) * length * 0.3],
      text: id,
      size: 3.2,
      bold: true,
      prefer: 'on',
    }
  })

const legNotes = ({ dock }: Drawn): ViewNote[] =>
  dock.legs.map(({ id, x, y, corner, section: of }) => {
    const section = dock.sections.find((s) => s.id === of)!
    const turn = (section.heading * Math.PI) / 180
    // Outward from its section's middle line.
    const side = -Math.sin(turn) * (x - section.x) + Math.cos(turn) * (y - section.y)
    const out = Math.cos(turn) * Math.sign(side)
    return {
      at: [x, y],
      text: String(numberOf(dock, id)),
      size: SMALLEST,
      reach: 0.12,
      // Over its own section, clear of the lines at the joint.
      lean: corner.startsWith('end') ? [-Math.cos(turn), -Math.sin(turn)] : [Math.cos(turn), Math.sin(turn)],
      prefer:
        Math.abs(out) < 0.5 ? (Math.sin(turn) * side > 0 ? 'left' : 'right') : out > 0 ? 'above' : 'below',
    }
  })

/** Nearest row of dimension lines off the dock, and from row to row, mm on paper. */
const ROW = 7
/** Beside a section this much must be free for its own dimension line, m. */
const BESIDE = 1.2

/** Length of each section along the run, and of each that turns away; width; the whole dock both ways. */
function planDimensions(drawn: Drawn, own: Bounds): ViewDimension[] {
  const { dock } = drawn
  const standing = dock.sections.find(({ role }) => role === 'standing')
  if (!standing) return []
  const list: ViewDimension[] = []
  const length = (value: number): string => formatLength(value, drawn)
  const add = (from: Point, to: Point, side: ViewDimension['side'], off: number, line: number): void => {
    const along = side === 'below' || side === 'above' ? 'x' : 'y'
    const long = along === 'x' ? Math.abs(to[0] - from[0]) : Math.abs(to[1] - from[1])
    list.push({ from, to, along, side, off, line, text: length(long) })
  }
  const footprints = dock.sections.map(footprintOf)
  const covered = (box: Bounds): boolean =>
    footprints.some(
      (f) => f.x0 < box.x1 - 1e-6 && box.x0 + 1e-6 < f.x1 && f.y0 < box.y1 - 1e-6 && box.y0 + 1e-6 < f.y1,
    )
  const squares = dock.sections.filter(({ role }) => role !== 'ramp')
  const runs = squares.filter(({ heading, y }) => heading === 0 && Math.abs(y - standing.y) < 1e-6)
  for (const { x, y, length: long, width } of runs) {
    const edge = y - width / 2
    const free = !covered({ x0: x, x1: x + long, y0: edge - BESIDE, y1: edge })
    add([x, edge], [x + long, edge], 'below', ROW, free ? edge : own.y0)
  }
  const last = runs.at(-1)
  if (last && runs.length > 1) {
    const edge = standing.y - standing.width / 2
    const [from, to] = [standing.x, last.x + last.length]
    const free = !covered({ x0: from, x1: to, y0: edge - 2 * BESIDE, y1: edge })
    add([from, edge], [to, edge], 'below', 2 * ROW, free ? edge : own.y0)
  }
  const ends = standing.x
  add(
    [ends, standing.y - standing.width / 2],
    [ends, standing.y + standing.width / 2],
    'left',
    ROW,
    Math.min(...footprints.filter((f) => f.y1 > standing.y - 1 && f.y0 < standing.y + 1).map((f) => f.x0)),
  )
  // Those that turn away, off their lakeward edge: one dimension line for each row of them.
  const turned = squares.filter(({ heading }) => heading === 90 || heading === 270)
  for (const { x, y, heading, length: long, width } of turned) {
    const far = y + (heading === 90 ? long : -long)
    const edge = x + width / 2
    const box = { x0: edge, x1: edge + BESIDE, y0: Math.min(y, far), y1: Math.max(y, far) }
    if (!covered(box)) add([edge, box.y0], [edge, box.y1], 'right', ROW, edge)
  }
  if (turned.length > 0) {
    const all = footprintOfAll(squares)!
    if (all.y1 - all.y0 > standing.width * 1.5)
      add([all.x1, all.y0], [all.x1, all.y1], 'right', 2 * ROW, all.x1)
  }
  return list
}

/** Sections as they lie: the decking's outline is what is seen of them, over their frames. */
const edges = (dock: Dock): ViewPath[] =>
  dock.sections.map((section) => {
    const flat = section.role === 'ramp' && dock.ramp ? 1 / Math.hypot(1, dock.ramp.slope) : 1
    return {
      layer: 'FRAME',
      points: cornersOf({ ...section, length: section.length * flat }),
      closed: true,
      of: [section.id],
    }
  })

/** In the middle of each brace an arrow toward its low end. Its size is that of a hand, m. */
const ARROW = { long: 0.26, half: 0.075 } as const
function lowEnds(dock: Dock): ViewPath[] {
  const legs = new Map(dock.legs.map((leg) => [leg.id, leg]))
  return dock.pairs.flatMap(({ legs: ids, brace }): ViewPath[] => {
    if (!brace) return []
    const low = legs.get(brace.low)!
    const high = legs.get(ids[0] === brace.low ? ids[1] : ids[0])!
    const long = Math.hypot(low.x - high.x, low.y - high.y)
    if (long < 2 * ARROW.long) return []
    const [ux, uy] = [(low.x - high.x) / long, (low.y - high.y) / long]
    const at = (along: number, aside: number): Point => [
      (low.x + high.x) / 2 + ux * along - uy * aside,
      (low.y + high.y) / 2 + uy * along + ux * aside,
    ]
    return [
      {
        layer: 'BRACE',
        points: [at(ARROW.long / 2, 0), at(-ARROW.long / 2, ARROW.half), at(-ARROW.long / 2, -ARROW.half)],
        closed: true,
        fill: INK,
      },
    ]
  })
}
