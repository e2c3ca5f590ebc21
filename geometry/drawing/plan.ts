/** The dock from above: frames and decking, legs with their numbers, what lies under the deck in dashes, the lake's depths. */

import { type Bed, type Dock, formatLength } from '../../rules/index.ts'
import { type Berth, hullBox } from '../../rules/layout/berth.ts'
import { cornersOf, footprintOfAll } from '../../rules/layout/footprint.ts'
import { legNumber } from '../../rules/leg-places.ts'
import { factsOf } from '../../rules/part-kinds.ts'
import { boatName, boatWater } from '../../rules/words/boats.ts'
import { DRAWING } from '../../rules/words/drawing.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import { bedMesh } from '../bed.ts'
import { boatPlan, boatsIn } from '../boats.ts'
import { contours } from '../contours.ts'
import type { Drawn } from '../drawn.ts'
import type { Point } from '../paper/marks.ts'
import { INK } from '../paper/style.ts'
import { ABOVE } from '../projection.ts'
import { extraNotes, extrasCaption } from './extra-notes.ts'
import { areaCaption, limitsAbove, waysWanted } from './limits.ts'
import { obstaclesFrom } from './obstacles.ts'
import { outlinesFrom, placementsOf, type Shown } from './outlines.ts'
import { levelLength, planDimensions } from './plan-dimensions.ts'
import { type Bounds, boundsOf, SMALLEST, type View, type ViewNote, type ViewPath, windowOf } from './view.ts'

/** Lake shown around the dock, m. */
const AROUND = 1

/** Distances that plan and side both show, so that one stands over the other, m. */
export function shownAlong({ dock, design }: Drawn): { readonly x0: number; readonly x1: number } {
  const covered = footprintOfAll(dock.sections)
  const boats = boatsIn({ dock, design }).map(hullBox)
  return {
    x0: Math.min(0, dock.ramp?.shoreX ?? 0, covered?.x0 ?? 0) - AROUND,
    x1: Math.max(0, covered?.x1 ?? 0, ...boats.map(({ x1 }) => x1)) + AROUND,
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
  // Decking lies on its frame, also where both slope: which of two is higher somewhere does not say it.
  const seen = seenAt('top')
  const isFrame = ({ kind }: Shown): boolean => kind === 'frame'
  const top = [...seen.filter(isFrame), ...seen.filter((one) => !isFrame(one))]
  const under = seenAt('under')
  const boats = boatsIn(drawn)
  const boatPaths = boats.flatMap(boatLines)
  const own = boundsOf(
    [...[...top, ...under].map(({ path }) => path), ...boatPaths].flatMap(({ points }) => points),
  )
  const bounds: Bounds = {
    ...shownAlong(drawn),
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
  const lying = obstaclesFrom('above', drawn, bounds)
  // What lies under the deck too, in dashes.
  const below = lying.paths.map(
    ({ layer, points }): ViewPath => ({ layer, points, closed: true, hidden: true }),
  )
  const held = limitsAbove(drawn, bounds)
  const ways = windowOf({ title: '', paths: waysWanted(drawn), notes: [], dimensions: [], bounds }, bounds)
  return {
    title: t('plan'),
    captions: [t('plan-caption'), ...extrasCaption(drawn), ...areaCaption(drawn)],
    paths: [
      ...lake.paths,
      ...held.paths,
      ...ways.paths,
      ...lying.paths,
      ...top.map(({ path }) => path),
      ...edges(dock),
      ...hidden,
      ...below,
      ...lowEnds(dock),
      ...boatPaths,
    ],
    notes: [
      ...sectionNotes(drawn),
      ...boatNotes(boats, drawn),
      ...legNotes(drawn),
      ...extraNotes(drawn, [...top, ...under]),
      ...lying.notes,
      ...held.notes,
      ...lake.notes,
    ],
    dimensions: planDimensions(drawn, own),
    bounds,
  }
}

/** Both ways, for a plan in parts, on which no dimension line reaches from end to end. */
export function overall(drawn: Drawn): string[] {
  const { dock } = drawn
  const all = footprintOfAll(
    dock.sections.map((section) => ({ ...section, length: levelLength(dock, section) })),
  )
  if (!all) return []
  const meters = (value: number) => ({ value, unit: 'm' })
  return [
    wordsOf(DRAWING, drawn)('overall', { long: meters(all.x1 - all.x0), wide: meters(all.y1 - all.y0) }),
  ]
}

/** A boat where it lies, over the lake's depths. */
export function boatLines(berth: Berth): ViewPath[] {
  const { outlines, within } = boatPlan(berth)
  const path = (points: readonly Point[], closed: boolean): ViewPath => ({ layer: 'BOAT', points, closed })
  return [...outlines.map((points) => path(points, true)), ...within.map((points) => path(points, false))]
}

/** What it is called, and the water under it. */
export const boatNotes = (boats: readonly Berth[], { bed, design, ...reader }: Drawn): ViewNote[] =>
  boats.flatMap((berth): ViewNote[] => {
    const { x0, x1, y0, y1 } = hullBox(berth)
    const note = (off: number, text: string): ViewNote => ({
      at: [(x0 + x1) / 2, (y0 + y1) / 2 + off * (y1 - y0)],
      text,
      size: SMALLEST,
      prefer: 'on',
    })
    return [
      { ...note(0.16, boatName(berth.boat, reader)), bold: true },
      note(-0.16, boatWater(berth, bed, design.site.levels, reader)),
    ]
  })

/** Depth lines, and the water's edge. */
export function lakeLines(bed: Bed, bounds: Bounds, drawn: Drawn): Pick<View, 'paths' | 'notes'> {
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
      text: String(legNumber(dock, id)),
      size: SMALLEST,
      reach: 0.12,
      // Over its own section, clear of the lines at the joint.
      lean: corner.startsWith('end') ? [-Math.cos(turn), -Math.sin(turn)] : [Math.cos(turn), Math.sin(turn)],
      prefer:
        Math.abs(out) < 0.5 ? (Math.sin(turn) * side > 0 ? 'left' : 'right') : out > 0 ? 'above' : 'below',
    }
  })

/** Sections as they lie: the decking's outline is what is seen of them, over their frames. */
export const edges = (dock: Dock): ViewPath[] =>
  dock.sections.map((section) => ({
    layer: 'FRAME',
    points: cornersOf({ ...section, length: levelLength(dock, section) }),
    closed: true,
    of: [section.id],
  }))

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
