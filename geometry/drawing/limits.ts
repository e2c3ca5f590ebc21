/** Limits that the dock is held against, on the drawings: how far out, how deep, lot lines with what is to be kept clear of them. */
import { lowLevel } from '../../rules/clearance/keel.ts'
import type { SideLine } from '../../rules/design/schema.ts'
import type { Figure } from '../../rules/index.ts'
import { berthsOf, mooredOf } from '../../rules/layout/berth.ts'
import { lanesOf } from '../../rules/layout/room.ts'
import { areaOver, limitsOf, type Measured, reachLimit } from '../../rules/limits/limits.ts'
import { DRAWING } from '../../rules/words/drawing.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import type { Drawn } from '../drawn.ts'
import type { Point } from '../paper/marks.ts'
import { type Bounds, clipLine, SMALLEST, type View, type ViewNote, type ViewPath } from './view.ts'

type Lines = Pick<View, 'paths' | 'notes'>

/** What is told is there to see, so far as the view goes. */
function line(a: Point, b: Point, bounds: Bounds, text: string | null): Lines {
  const part = clipLine(a, b, bounds)
  if (!part) return { paths: [], notes: [] }
  const path: ViewPath = { layer: 'DIM', points: part, closed: false, hidden: true }
  const note: ViewNote[] =
    text === null
      ? []
      : [{ at: part[1][0] < part[0][0] ? part[0] : part[1], text, size: SMALLEST, prefer: 'above' }]
  return { paths: [path], notes: note }
}

const together = (all: readonly Lines[]): Lines => ({
  paths: all.flatMap(({ paths }) => paths),
  notes: all.flatMap(({ notes }) => notes),
})

const meters = (value: number): Figure => ({ value, unit: 'm' })

/** From above: how far out, and each lot line with the line that is to be kept clear of. */
export function limitsAbove(drawn: Drawn, bounds: Bounds): Lines {
  const t = wordsOf(DRAWING, drawn)
  const { sides = [] } = limitsOf(drawn.design, drawn.catalog)
  const out = reachLimit(drawn.design, drawn.catalog)
  const far = 2 * Math.hypot(bounds.x1 - bounds.x0, bounds.y1 - bounds.y0) + 100
  return together([
    ...(out === null
      ? []
      : [line([out, bounds.y0], [out, bounds.y1], bounds, t('limit.reach', { most: meters(out) }))]),
    ...sides.flatMap((side, i): Lines[] => {
      const run = (off: number): readonly [Point, Point] | null => extended(side, off, far)
      const [at, kept] = [run(0), side.distance > 0 ? run(side.distance) : null]
      return [
        ...(at ? [line(...at, bounds, t('limit.side', { line: String(i + 1) }))] : []),
        ...(kept ? [line(...kept, bounds, null)] : []),
      ]
    }),
  ])
}

/** The line through its two places, so far to either side, moved toward the dock. Null of a single place. */
function extended({ from, to }: SideLine, off: number, far: number): readonly [Point, Point] | null {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const long = Math.hypot(dx, dy)
  if (long < 1e-6) return null
  const [ux, uy] = [dx / long, dy / long]
  // Left of it is where the dock's line meets the water's edge, or right.
  const own = ux * (0 - from[1]) - uy * (0 - from[0]) < 0 ? -1 : 1
  const [x, y] = [from[0] - own * uy * off, from[1] + own * ux * off]
  return [
    [x - far * ux, y - far * uy],
    [x + far * ux, y + far * uy],
  ]
}

/** From the side: how far out, and the depth not to be passed at the low level. */
export function limitsFromSide(drawn: Drawn, bounds: Bounds): Lines {
  const t = wordsOf(DRAWING, drawn)
  const { depth } = limitsOf(drawn.design, drawn.catalog)
  const out = reachLimit(drawn.design, drawn.catalog)
  const bed = depth === undefined ? null : lowLevel(drawn.design.site.levels) - depth
  return together([
    ...(out === null
      ? []
      : [line([out, bounds.y0], [out, bounds.y1], bounds, t('limit.reach', { most: meters(out) }))]),
    ...(depth === undefined || bed === null
      ? []
      : [line([bounds.x0, bed], [bounds.x1, bed], bounds, t('limit.depth', { most: meters(depth) }))]),
  ])
}

/** Sections as limits are measured on them: a ramp as if it lay level back from its hinge. */
export function measuredOn({ sections, ramp }: Drawn['dock']): readonly Measured[] {
  return mooredOf(
    sections.map((one) =>
      one.role === 'ramp' && ramp
        ? { ...one, x: one.x - one.length * (1 - 1 / Math.hypot(1, ramp.slope)) }
        : one,
    ),
  )
}

/** Deck over the lake beside what is allowed of it. */
export function areaCaption(drawn: Drawn): string[] {
  const { area } = limitsOf(drawn.design, drawn.catalog)
  if (area === undefined) return []
  const now = areaOver(measuredOn(drawn.dock))
  const figure = (value: number): Figure => ({ value, unit: 'm2' })
  return [wordsOf(DRAWING, drawn)('limit.area', { area: figure(now), most: figure(area) })]
}

/** Of a boat with no free way in the lakeward one, in which something is. */
export function waysWanted({ design, catalog, dock, bed }: Drawn): ViewPath[] {
  const placed = mooredOf(dock.sections)
  const { sides = [] } = limitsOf(design, catalog)
  return berthsOf(design.dock, placed).flatMap((berth): ViewPath[] => {
    const lanes = lanesOf(berth, { placed, site: design.site, bed, sides })
    if (lanes.some(({ by }) => by === null)) return []
    return [{ layer: 'BOAT', points: lanes[0]!.outline, closed: true, hidden: true }]
  })
}
