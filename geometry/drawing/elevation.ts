/** The dock from its right side, on its bed: levels, deck over water, each leg's length and set height. */

import { type Bed, type Dock, formatLength } from '../../rules/index.ts'
import { factsOf } from '../../rules/part-kinds.ts'
import { DRAWING } from '../../rules/words/drawing.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import { boatSide, boatsIn } from '../boats.ts'
import type { Drawn } from '../drawn.ts'
import type { Point } from '../paper/marks.ts'
import { SIDE } from '../projection.ts'
import { limitsFromSide } from './limits.ts'
import { obstaclesFrom } from './obstacles.ts'
import { outlinesFrom, placementsOf, type Shown } from './outlines.ts'
import { shownAlong } from './plan.ts'
import { levelLength } from './plan-dimensions.ts'
import {
  type Bounds,
  boundsOf,
  clipPolygon,
  EARTH,
  SMALLEST,
  type View,
  type ViewDimension,
  type ViewNote,
  type ViewPath,
} from './view.ts'

/** Ground shown under the dock, m. */
const GROUND = 0.35
/** Stations nearer than this on the bed share one set height, m. */
const SAME = 0.02

/** Outlines of a whole dock: many pictures are made of one, with more and more of it standing. */
const sideOutlines = ({ dock, catalog }: Drawn): readonly Shown[] =>
  outlinesFrom(
    placementsOf(dock, (kind) => factsOf(kind).side !== null),
    catalog,
    SIDE,
    (kind) => factsOf(kind).side === 'outline',
  )

/** What stands in the ground is hidden from there down. */
function overAndUnder({ path, into }: Shown, bed: Bed): ViewPath[] {
  if (!into) return [path]
  const ground = bed.bedAt(into[0], into[1])
  const { x0, x1, y0, y1 } = boundsOf(path.points)
  if (y0 >= ground) return [path]
  const { fill: _, ...bare } = path
  const under: ViewPath = {
    ...bare,
    points: clipPolygon(path.points, { x0, x1, y0, y1: Math.min(y1, ground) }),
    hidden: true,
  }
  return y1 <= ground
    ? [under]
    : [{ ...path, points: clipPolygon(path.points, { x0, x1, y0: ground, y1 }) }, under]
}

/** What belongs to some of a dock's sections. */
function partOf(dock: Dock, has: ReadonlySet<string>): Dock {
  return {
    ...dock,
    sections: dock.sections.filter(({ id }) => has.has(id)),
    legs: dock.legs.filter(({ section }) => has.has(section)),
  }
}

/**
 * @param only the sections that stand; where absent all of them. What is shown of the lake is the same.
 * @param along from where to where the lake is shown, m
 */
export function elevationView(drawn: Drawn, only?: readonly string[], along = shownAlong(drawn)): View {
  const { design, bed } = drawn
  const has = only && new Set(only)
  const dock = has ? partOf(drawn.dock, has) : drawn.dock
  const t = wordsOf(DRAWING, drawn)
  const all = drawn.once(sideOutlines)
  const shown = has ? all.filter(({ section }) => has.has(section)) : all
  const own = boundsOf(shown.flatMap(({ path }) => path.points))
  const { x0, x1 } = along
  const ground = bed.knots(x0, x1).map((x): Point => [x, bed.bedAt(x, bed.lineY)])
  const { low, high } = design.site.levels
  const depths = ground.map(([, z]) => z)
  const bounds: Bounds = {
    x0,
    x1,
    y0: Math.min(own.y0, ...depths, low) - GROUND,
    y1: Math.max(own.y1, ...depths, high) + 0.15,
  }
  const earth: ViewPath = {
    layer: 'BED',
    points: [[x0, bounds.y0], ...ground, [x1, bounds.y0]],
    closed: true,
    fill: EARTH,
    bare: true,
  }
  const floor: ViewPath = { layer: 'BED', points: ground, closed: false, earth: true }
  const lines: ViewPath[] = []
  const notes: ViewNote[] = []
  // Each level from where it meets the ground, lakeward.
  const level = (z: number, layer: 'WATER' | 'LEVEL' | 'WAVE', text: string): void => {
    const shore = shoreOf(ground, z)
    if (shore === null) return
    lines.push({
      layer,
      points: [
        [shore, z],
        [x1, z],
      ],
      closed: false,
    })
    notes.push({ at: [x1, z], text, size: SMALLEST, prefer: 'right' })
  }
  level(0, 'WATER', t('water-today'))
  if (low < 0) level(low, 'LEVEL', t('water-low', { level: { value: -low, unit: 'm' } }))
  if (high > 0) level(high, 'LEVEL', t('water-high', { level: { value: high, unit: 'm' } }))
  if (dock.waves && dock.waves.crest > 0)
    level(dock.waves.crest, 'WAVE', t('crest', { level: { value: dock.waves.crest, unit: 'm' } }))
  const lying = obstaclesFrom('side', drawn, bounds)
  const held = limitsFromSide(drawn, bounds)
  return {
    title: t('side'),
    captions: [t('side-caption')],
    paths: [
      earth,
      ...lines,
      ...lying.paths,
      ...held.paths,
      floor,
      ...(has ? [] : boatLines(drawn)),
      ...missing({ ...drawn, dock }),
      ...shown.flatMap((one) => overAndUnder(one, bed)),
    ],
    notes: [
      ...legNotes({ ...drawn, dock }),
      ...lying.notes,
      ...held.notes,
      ...notes,
      ...sectionNotes({ ...drawn, dock }),
    ],
    dimensions: [overWater(drawn, own), ...rampLength(dock, drawn), ...stations(dock, bounds.y0, drawn)],
    bounds,
  }
}

/** Boats afloat on the survey day, behind the dock's own lines. */
const boatLines = (drawn: Drawn): ViewPath[] =>
  boatsIn(drawn).flatMap((berth) =>
    boatSide(berth, 0).outlines.map((points): ViewPath => ({ layer: 'BOAT', points, closed: true })),
  )

/** Sections that are seen one behind the other are told together. */
function sectionNotes({ dock, design }: Drawn): ViewNote[] {
  const places = new Map<number, { at: Point; ids: string[] }>()
  for (const { id, x, z, length, heading, role } of dock.sections) {
    const middle = x + (Math.cos((heading * Math.PI) / 180) * length) / 2
    const key = Math.round(middle / 0.3)
    const place = places.get(key)
    if (place) place.ids.push(id)
    else
      places.set(key, {
        at: [middle, role === 'ramp' && dock.ramp ? (z + design.dock.deckHeight) / 2 : z],
        ids: [id],
      })
  }
  return [...places.values()].map(({ at, ids }) => ({
    at,
    text: ids.length > 4 ? `${ids[0]} … ${ids.at(-1)}` : ids.join(', '),
    size: 2.8,
    bold: true,
    prefer: 'above',
    optional: true,
  }))
}

/** Where a level meets the ground, from the lake; null where the ground lies over it all along. */
function shoreOf(ground: readonly Point[], z: number): number | null {
  for (let i = ground.length - 1; i > 0; i--) {
    const [a, b] = [ground[i - 1]!, ground[i]!]
    if (b[1] > z) return null
    if (a[1] > z) return b[0] + ((z - b[1]) / (a[1] - b[1])) * (a[0] - b[0])
  }
  return ground[0]![0]
}

/** Deck over the water of the survey day, at the lake end. */
export const overWater = (drawn: Drawn, own: Bounds): ViewDimension => ({
  from: [own.x1, 0],
  to: [own.x1, drawn.design.dock.deckHeight],
  along: 'y',
  side: 'right',
  off: 5,
  over: true,
  line: own.x1,
  text: formatLength(drawn.design.dock.deckHeight, drawn),
})

/** Length over each leg and set height under it; of two that are seen at one place, the nearer one's. */
function legNotes(drawn: Drawn): ViewNote[] {
  const { dock, design } = drawn
  const near = [...dock.legs].sort((a, b) => a.y - b.y)
  const seen: number[] = []
  return near.flatMap((leg): ViewNote[] => {
    if (seen.some((x) => Math.abs(x - leg.x) < 0.3)) return []
    seen.push(leg.x)
    const top = design.dock.deckHeight + (leg.aboveDeck ?? 0)
    return [
      {
        at: [leg.x, leg.bed],
        text: formatLength(leg.setHeight, drawn),
        size: 2.7,
        bold: true,
        reach: 0.06,
        prefer: 'below',
      },
      ...(leg.stock === null
        ? []
        : [
            {
              at: [leg.x, top] as const,
              text: formatLength(leg.stock, drawn),
              size: SMALLEST,
              prefer: 'above' as const,
              optional: true,
            },
          ]),
    ]
  })
}

/** Where no stock length will do: dashes from the bed to the deck. */
const missing = ({ dock, design }: Drawn): ViewPath[] =>
  dock.legs
    .filter(({ stock }) => stock === null)
    .map(({ x, bed }) => ({
      layer: 'LEG',
      points: [
        [x, bed],
        [x, design.dock.deckHeight],
      ],
      closed: false,
      hidden: true,
    }))

/** From the water's edge to the first station of legs, and on to each. */
function stations(dock: Dock, bottom: number, drawn: Drawn): ViewDimension[] {
  // The nearest of those that stand within the reading of one line.
  const places = dock.legs
    .map(({ x }) => x)
    .sort((a, b) => a - b)
    .filter((x, i, all) => i === 0 || x - all[i - 1]! > SAME)
  const all = places[0] !== undefined && places[0] > SAME ? [0, ...places] : places
  return all.slice(1).map(
    (here, i): ViewDimension => ({
      from: [all[i]!, bottom],
      to: [here, bottom],
      along: 'x',
      side: 'below',
      off: 6,
      line: bottom,
      text: formatLength(here - all[i]!, drawn),
    }),
  )
}

/** The ramp as it is long, along its deck. */
function rampLength({ sections, ramp }: Dock, drawn: Drawn): ViewDimension[] {
  const own = sections.find(({ role }) => role === 'ramp')
  if (!own || !ramp) return []
  const level = levelLength({ ramp }, own)
  return [
    {
      from: [own.x, own.z],
      to: [own.x + level, own.z + ramp.slope * level],
      along: 'slope',
      side: 'above',
      off: 4,
      text: formatLength(own.length, drawn),
    },
  ]
}
