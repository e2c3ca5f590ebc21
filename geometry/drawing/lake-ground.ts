/** Shore and water round a dock, as an eye on the shore sees them: the water as deep in color as the lake is there. */
import type { Vec3 } from '../../rules/index.ts'
import { bedColumns, bedRows } from '../bed.ts'
import type { Drawn } from '../drawn.ts'
import { extentOf } from '../extent.ts'
import type { Ink, Mark, Point } from '../paper/marks.ts'
import type { Extent } from '../types.ts'
import type { Box } from './cells.ts'
import { mixed } from './mixed.ts'
import { cutAtHeight, type Perspective } from './perspective.ts'

const SKY: readonly Ink[] = ['#d3e4ef', '#dfebf3', '#eaf2f6', '#f3f7f9']
/** By depth, m: what is known of color in a picture that a copier prints too is that deep is darker. */
const WATERS: readonly (readonly [depth: number, ink: Ink])[] = [
  [0, '#d9e6e0'],
  [0.5, '#b5d3d6'],
  [1.2, '#8fbcc8'],
  [2.5, '#6ea4b8'],
  [5, '#5690a9'],
]
/** By height over the water, m. */
const LANDS: readonly (readonly [height: number, ink: Ink])[] = [
  [0, '#e6dcc4'],
  [0.35, '#ded6b4'],
  [0.9, '#c9cf9f'],
  [2, '#b9c692'],
]
/** Colors change in steps of this, m: strips of one color are one shape. */
const STEP = 0.1
/** Ground is known by what is measured near the dock; farther off it goes on as it ends there, m. */
const FAR = 3000
/** Columns beyond. */
const BEYOND = [4, 10, 22, 45, 90, 180, 400, 2400] as const
const FADES = BEYOND.length
/** Cells along each side at the most. */
const CELLS = 36

/** Of water so deep. */
export const waterInk = (depth: number): Ink => inkAt(WATERS, depth)

function inkAt(inks: readonly (readonly [at: number, ink: Ink])[], value: number): Ink {
  const at = Math.max(0, Math.round(value / STEP) * STEP)
  const next = inks.findIndex(([edge]) => edge > at)
  if (next < 0) return inks.at(-1)![1]
  const [[a, from], [b, to]] = [inks[next - 1]!, inks[next]!]
  return mixed(from, to, (at - a) / (b - a))
}

/** @param level of the water, m */
export function lakeGround(drawn: Drawn, seen: Perspective, box: Box, level: number): Mark[] {
  const extent = extentOf(drawn.dock, drawn.design)
  const { xs, ys, at } = groundOf(drawn, extent)
  const marks: Mark[] = skyMarks(seen, box)
  const fill = (points: readonly Vec3[], ink: Ink): void => {
    const shape = seen.polygon(points)
    // Its own color round it: where shapes meet, paper would shine through.
    if (shape.length > 2)
      marks.push({ kind: 'path', points: shape, closed: true, stroke: { width: 0.1, ink }, fill: ink })
  }
  const farthest = (list: readonly number[], eye: number): number[] =>
    list
      .slice(0, -1)
      .map((_, i) => i)
      .sort((a, b) => Math.abs(middle(list, b) - eye) - Math.abs(middle(list, a) - eye))
  const edges: Point[][] = []
  for (const i of farthest(xs, seen.eye[0]))
    for (const j of farthest(ys, seen.eye[1])) {
      const corners = [
        [xs[i]!, ys[j]!],
        [xs[i + 1]!, ys[j]!],
        [xs[i + 1]!, ys[j + 1]!],
        [xs[i]!, ys[j + 1]!],
      ].map(([x, y]): Vec3 => [x!, y!, at(x!, y!)])
      const mean = corners.reduce((sum, [, , z]) => sum + z, 0) / 4
      const wet = cutAtHeight(corners, level, -1)
      const dry = cutAtHeight(corners, level, 1)
      if (wet.length > 2)
        fill(
          wet.map(([x, y]): Vec3 => [x, y, level]),
          mixed(waterInk(level - Math.min(level, wetMean(wet))), SKY.at(-2)!, fades(i, xs.length)),
        )
      if (dry.length > 2) fill(dry, inkAt(LANDS, Math.max(0, mean - level)))
      if (wet.length > 2 && dry.length > 2) {
        const shared = wet.filter(([, , z]) => Math.abs(z - level) < 1e-9)
        if (shared.length === 2) edges.push(seen.polygon(shared) as Point[])
      }
    }
  return [
    ...marks,
    ...edges
      .filter((points) => points.length > 1)
      .map(
        (points): Mark => ({
          kind: 'path',
          points,
          closed: false,
          stroke: { width: 0.3, ink: '#ffffff' },
          fill: null,
        }),
      ),
  ]
}

/** Far water takes on the color of the sky: of the columns beyond what is drawn closely. */
const fades = (column: number, of: number): number => Math.max(0, (column - (of - 1 - FADES)) / FADES) * 0.85
const wetMean = (wet: readonly Vec3[]): number => wet.reduce((sum, [, , z]) => sum + z, 0) / wet.length
const middle = (list: readonly number[], i: number): number => (list[i]! + list[i + 1]!) / 2

function skyMarks({ horizon }: Perspective, { x0, x1, y0, y1 }: Box): Mark[] {
  const low = Math.min(y1, Math.max(y0, horizon))
  return SKY.map((ink, i): Mark => {
    const top = y0 + ((low - y0) * i) / SKY.length
    return {
      kind: 'path',
      points: [
        [x0, top],
        [x1, top],
        [x1, low],
        [x0, low],
      ],
      closed: true,
      stroke: null,
      fill: ink,
    }
  })
}

/** Columns and rows of what is drawn, reaching far off, and the ground there. */
function groundOf({ bed }: Drawn, { x0, x1, y0, y1 }: Extent) {
  const inner = bedColumns(bed, x0, x1, Math.max(0.3, (x1 - x0) / CELLS))
  const rows = bedRows(bed, y0, y1, Math.max(0.5, (y1 - y0) / CELLS))
  const xs = [x0 - FAR / 10, ...inner, ...BEYOND.map((far) => x1 + far)]
  const ys = [y0 - FAR, ...rows, y1 + FAR]
  const within = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value))
  return { xs, ys, at: (x: number, y: number): number => bed.bedAt(within(x, x0, x1), within(y, y0, y1)) }
}
