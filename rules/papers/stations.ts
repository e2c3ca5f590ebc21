/**
 * The station table: for each edge that stands on legs how far out it is, how deep it should be there, and how high its legs are set.
 * Told for the water of the survey day. What is measured on the day goes into the empty columns of the sheet.
 */
import type { Edge, Leg } from '../dock.ts'
import { round6 } from '../numbers.ts'
import type { Project } from '../project.ts'
import { groupBy, sectionsInOrder } from './order.ts'

export interface StationLeg {
  readonly leg: string
  /** Water over the bottom, m; negative on the bank. */
  readonly depth: number
  /** Water over what the pad stands on, m: more than `depth` where the bottom is soft over firm. */
  readonly firmDepth: number
  /** Sole of the foot pad to the deck surface, and to the frame's top (read while the panels are off), m. */
  readonly setHeight: number
  readonly setHeightFrame: number
  readonly code: string | null
  /** Length, m; null where none is long enough. */
  readonly stock: number | null
  readonly aboveDeck: number | null
  readonly pad: string
  /** Pair, code of its brace and which end of it is on this leg; null without a brace. */
  readonly brace: { readonly pair: string; readonly code: string; readonly end: 'low' | 'high' } | null
}

export interface Station {
  /** From 1, in the order of work. */
  readonly number: number
  readonly section: string
  /** The section's edge that the legs stand at. */
  readonly edge: Extract<Edge, 'start' | 'end'>
  /** Of the middle between its legs (of one leg: of that), lakeward from the start of the dock and from the water's edge, m. */
  readonly fromStart: number
  readonly fromWater: number
  /** Off the center line, left positive, m. */
  readonly offset: number
  readonly left: StationLeg | null
  readonly right: StationLeg | null
}

export interface Stations {
  /** Start edge of the first standing section, from the water's edge, m; null for an empty dock. */
  readonly start: number | null
  /** Lake's levels over the survey day, m. */
  readonly levels: { readonly low: number; readonly high: number }
  readonly deckHeight: number
  /** Fixed mark that the water's height is read against, and its height over the survey water. */
  readonly benchmark: { readonly name: string; readonly above: number } | null
  readonly surveyed: string
  /** Where the ramp comes down, and the step onto it; null without one. */
  readonly ramp: {
    readonly section: string
    readonly shoreX: number
    readonly shoreZ: number
    readonly step: number
    readonly slope: number
  } | null
  readonly stations: readonly Station[]
}

export function stations({ dock, design, bed }: Pick<Project, 'dock' | 'design' | 'bed'>): Stations {
  const braces = new Map(
    dock.pairs.flatMap(({ id, legs, brace }) =>
      brace
        ? legs.map((leg) => [
            leg,
            { pair: id, code: brace.code, end: leg === brace.low ? ('low' as const) : ('high' as const) },
          ])
        : [],
    ) as [string, NonNullable<StationLeg['brace']>][],
  )
  const row = (leg: Leg): StationLeg => ({
    leg: leg.id,
    depth: round6(-bed.bedAt(leg.x, leg.y)),
    firmDepth: round6(-leg.bed),
    setHeight: leg.setHeight,
    setHeightFrame: leg.setHeightFrame,
    code: leg.code,
    stock: leg.stock,
    aboveDeck: leg.aboveDeck,
    pad: leg.pad,
    brace: braces.get(leg.id) ?? null,
  })
  const legs = groupBy(dock.legs, (leg) => leg.section)
  const start = dock.start
  const rows = sectionsInOrder(dock).flatMap(({ id }) =>
    (['start', 'end'] as const).flatMap((edge) => {
      const here = (legs.get(id) ?? []).filter(({ corner }) => corner.startsWith(edge))
      if (here.length === 0) return []
      const mean = (of: 'x' | 'y'): number => here.reduce((sum, leg) => sum + leg[of], 0) / here.length
      const at = (side: string): StationLeg | null => {
        const leg = here.find(({ corner }) => corner.endsWith(side))
        return leg ? row(leg) : null
      }
      return [
        {
          section: id,
          edge,
          fromStart: round6(mean('x') - (start ?? 0)),
          fromWater: round6(mean('x')),
          offset: round6(mean('y')),
          left: at('left'),
          right: at('right'),
        },
      ]
    }),
  )
  const ramp = dock.sections.find(({ role }) => role === 'ramp')
  const { low, high } = design.site.levels
  return {
    start,
    levels: { low, high },
    deckHeight: design.dock.deckHeight,
    benchmark: design.site.benchmark
      ? { name: design.site.benchmark.name, above: design.site.benchmark.above }
      : null,
    surveyed: design.job?.surveyed ?? '',
    ramp:
      ramp && dock.ramp
        ? {
            section: ramp.id,
            shoreX: dock.ramp.shoreX,
            shoreZ: dock.ramp.shoreZ,
            step: dock.ramp.step,
            slope: dock.ramp.slope,
          }
        : null,
    stations: rows.map((station, i) => ({ number: i + 1, ...station })),
  }
}
