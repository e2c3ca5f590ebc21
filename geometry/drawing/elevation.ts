/** The dock from its right side, on its bed: levels, deck over water, each leg's length and set height. */

import { type Dock, formatLength } from '../../rules/index.ts'
import { factsOf } from '../../rules/part-kinds.ts'
import { DRAWING } from '../../rules/words/drawing.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import type { Drawn } from '../drawn.ts'
import type { Point } from '../paper/marks.ts'
import { SIDE } from '../projection.ts'
import { outlinesFrom, placementsOf, type Shown } from './outlines.ts'
import { shownAlong } from './plan.ts'
import {
  type Bounds,
  boundsOf,
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

/** What belongs to some of a dock's sections. */
function partOf(dock: Dock, has: ReadonlySet<string>): Dock {
  return {
    ...dock,
    sections: dock.sections.filter(({ id }) => has.has(id)),
    legs: dock.legs.filter(({ section }) => has.has(section)),
  }
}

/** @param only the sections that stand; where absent all of them. What is shown of the lake is the same. */
export function elevationView(drawn: Drawn, only?: readonly string[]): View {
  const { design, bed } = drawn
  const has = only && new Set(only)
  const dock = has ? partOf(drawn.dock, has) : drawn.dock
  const t = wordsOf(DRAWING, drawn)
  const all = drawn.once(sideOutlines)
  const shown = has ? all.filter(({ section }) => has.has(section)) : all
  const own = boundsOf(shown.flatMap(({ path }) => path.points))
  const { x0, x1 } = shownAlong(drawn.dock)
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
  const floor: ViewPath = { layer: 'BED', points: ground, closed: false }
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
  return {
    title: t('side'),
    captions: [t('side-caption')],
    paths: [earth, ...lines, floor, ...missing({ ...drawn, dock }), ...shown.map(({ path }) => path)],
    notes: [...legNotes({ ...drawn, dock }), ...notes, ...sectionNotes({ ...drawn, dock })],
    dimensions: [overWater(drawn, own), ...stations(dock, bounds.y0, drawn)],
    bounds,
  }
}

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
const overWater = (drawn: Drawn, own: Bounds): ViewDimension => ({
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

/** From the water's edge to each station of legs. */
function stations(dock: Dock, bottom: number, drawn: Drawn): ViewDimension[] {
  const places = [...new Set(dock.legs.map(({ x }) => Math.round(x / SAME) * SAME))].sort((a, b) => a - b)
  const from = dock.legs.map(({ x }) => x)
  return places.slice(1).flatMap((place, i): ViewDimension[] => {
    const before = from.find((x) => Math.abs(x - places[i]!) <= SAME)!
    const here = from.find((x) => Math.abs(x - place) <= SAME)!
    return here - before < 0.3
      ? []
      : [
          {
            from: [before, bottom],
            to: [here, bottom],
            along: 'x',
            side: 'below',
            off: 6,
            line: bottom,
            text: formatLength(here - before, drawn),
          },
        ]
  })
}
