/** A dock as an authority looks at it: from above on its shore, and in section through the lake. */
import { formatLength } from '../../rules/index.ts'
import { cornersOf, footprintOfAll } from '../../rules/layout/footprint.ts'
import { limitsOf } from '../../rules/limits/limits.ts'
import { DRAWING } from '../../rules/words/drawing.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import { bedMesh } from '../bed.ts'
import { boatsIn } from '../boats.ts'
import { contours } from '../contours.ts'
import type { Drawn } from '../drawn.ts'
import type { Point } from '../paper/marks.ts'
import { wrapText } from '../paper/text.ts'
import { elevationView, overWater } from './elevation.ts'
import { limitsAbove } from './limits.ts'
import { obstaclesFrom } from './obstacles.ts'
import { boatLines, boatNotes, edges, lakeLines, shownAlong } from './plan.ts'
import { levelLength } from './plan-dimensions.ts'
import {
  type Bounds,
  boundsOf,
  SMALLEST,
  type View,
  type ViewDimension,
  type ViewNote,
  type ViewPath,
} from './view.ts'

/** Lake and shore shown around the dock, m. */
const AROUND = 3
/** A lot line no farther than this from the dock is shown whole where it passes, m. */
const LOT = 15
/** Rows of dimension lines, mm on paper. */
const ROW = 7
/** Lines of captions, mm. */
const CAPTION = 115

/** The sections in their places, a ramp as it lies from above. */
export const levelSections = ({ dock }: Drawn) =>
  dock.sections.map((section) => ({ ...section, length: levelLength(dock, section) }))

interface Clear {
  /** 1 for the first one. */
  readonly line: number
  readonly from: Point
  readonly to: Point
  /** From the nearest corner of the dock square to the line, m. */
  readonly long: number
}

/** How far each lot line is from the dock's nearest corner. */
export function lotClearances(drawn: Drawn): readonly Clear[] {
  const { sides = [] } = limitsOf(drawn.design, drawn.catalog)
  const corners = levelSections(drawn).flatMap(cornersOf)
  return sides.flatMap(({ from, to }, i): Clear[] => {
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
    const square = dx * dx + dy * dy
    if (square < 1e-12) return []
    const all = corners.map(([x, y]): Clear => {
      const share = ((x - from[0]) * dx + (y - from[1]) * dy) / square
      const foot: Point = [from[0] + share * dx, from[1] + share * dy]
      return { line: i + 1, from: [x, y], to: foot, long: Math.hypot(foot[0] - x, foot[1] - y) }
    })
    return [all.reduce((best, one) => (one.long < best.long ? one : best))]
  })
}

export function sitePlan(drawn: Drawn): View {
  const { dock } = drawn
  const t = wordsOf(DRAWING, drawn)
  const boats = boatsIn(drawn)
  const boatPaths = boats.flatMap(boatLines)
  const level = levelSections(drawn)
  const clear = lotClearances(drawn)
  const own = boundsOf([...level.flatMap(cornersOf), ...boatPaths.flatMap(({ points }) => points)])
  const lots = clear.filter(({ long }) => long <= LOT).map(({ to }) => to)
  const around = boundsOf([[own.x0, own.y0], [own.x1, own.y1], [0, own.y0], ...lots])
  const { x0, x1 } = shownAlong(drawn)
  const bounds: Bounds = {
    x0: Math.min(x0, around.x0 - AROUND),
    x1: Math.max(x1, around.x1 + AROUND),
    y0: around.y0 - AROUND,
    y1: around.y1 + AROUND,
  }
  const lake = lakeLines(drawn.bed, bounds, drawn)
  const held = limitsAbove(drawn, bounds)
  const lying = obstaclesFrom('above', drawn, bounds)
  const edge = waterLines(drawn, bounds)
  const length = (value: number): string => formatLength(value, drawn)
  const all = footprintOfAll(level)!
  const dimension = (
    from: Point,
    to: Point,
    side: ViewDimension['side'],
    off: number,
    line: number,
  ): ViewDimension => {
    const along = side === 'below' ? 'x' : 'y'
    const long = along === 'x' ? Math.abs(to[0] - from[0]) : Math.abs(to[1] - from[1])
    return { from, to, along, side, off, line, text: length(long) }
  }
  return {
    title: t('site-plan'),
    captions: wrapText(t('site-plan-caption'), CAPTION, SMALLEST),
    paths: [...lake.paths, ...edge.paths, ...held.paths, ...lying.paths, ...edges(dock), ...boatPaths],
    notes: [...boatNotes(boats, drawn), ...lying.notes, ...held.notes, ...edge.notes, ...lake.notes],
    dimensions: [
      // How far out from the water's edge, and the whole dock both ways.
      ...(all.x1 > 0 ? [dimension([0, all.y0], [all.x1, all.y0], 'below', ROW, all.y0)] : []),
      dimension([all.x0, all.y0], [all.x1, all.y0], 'below', 2 * ROW, all.y0),
      dimension([all.x1, all.y0], [all.x1, all.y1], 'right', ROW, own.x1),
      ...clear
        .filter(
          ({ to: [x, y], long }) =>
            long > 1e-6 && x >= bounds.x0 && x <= bounds.x1 && y >= bounds.y0 && y <= bounds.y1,
        )
        .map(
          ({ from, to, long }): ViewDimension => ({
            from,
            to,
            along: 'slope',
            side: 'above',
            off: 0,
            text: length(long),
          }),
        ),
    ],
    bounds,
  }
}

/** Where the water's edge is at the low and at the high level. */
function waterLines(drawn: Drawn, extent: Bounds): { paths: ViewPath[]; notes: ViewNote[] } {
  const { bed, design } = drawn
  const t = wordsOf(DRAWING, drawn)
  const { low, high } = design.site.levels
  const paths: ViewPath[] = []
  const notes: ViewNote[] = []
  const mesh = bedMesh(bed, extent, 0.5)
  for (const [at, key] of [
    [low, 'edge-low'],
    [high, 'edge-high'],
  ] as const) {
    if (at === 0) continue
    for (const { points } of contours(mesh, [-at])) {
      const line: Point[] = []
      for (let i = 0; i < points.length; i += 3) line.push([points[i]!, points[i + 1]!])
      paths.push({ layer: 'LEVEL', points: line, closed: false })
      const end = line.reduce((least, p) => (p[1] < least[1] ? p : least))
      notes.push({ at: end, text: t(key), size: SMALLEST, prefer: 'below', optional: false })
    }
  }
  return { paths, notes }
}

/**
 * The side view with what an authority asks for: levels, depth of water, deck over it, how long.
 * @param along from where to where the lake is shown, m
 */
export function lakeSection(drawn: Drawn, along: Pick<Bounds, 'x0' | 'x1'>): View {
  const t = wordsOf(DRAWING, drawn)
  const side = elevationView(drawn, undefined, along)
  const { bounds } = side
  const all = footprintOfAll(levelSections(drawn))!
  const bed = drawn.bed.bedAt(all.x1, drawn.bed.lineY)
  const row = (from: number, to: number, off: number): ViewDimension => ({
    from: [from, bounds.y0],
    to: [to, bounds.y0],
    along: 'x',
    side: 'below',
    off,
    line: bounds.y0,
    text: formatLength(to - from, drawn),
  })
  return {
    ...side,
    title: t('section'),
    captions: wrapText(t('section-caption'), CAPTION, SMALLEST),
    // Levels and limits: what stands at the view's own edges.
    notes: side.notes.filter(({ at: [x, y] }) => x === bounds.x1 || y === bounds.y1 || x === bounds.x0),
    dimensions: [
      overWater(drawn, { ...bounds, x1: all.x1 }),
      ...(bed < 0
        ? [
            {
              from: [all.x1, bed],
              to: [all.x1, 0],
              along: 'y',
              side: 'right',
              off: 5,
              line: all.x1,
              text: formatLength(-bed, drawn),
            } as const,
          ]
        : []),
      ...(all.x1 > 0 ? [row(0, all.x1, ROW)] : []),
      row(all.x0, all.x1, 2 * ROW),
    ],
  }
}
