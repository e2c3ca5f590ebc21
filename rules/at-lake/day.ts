/**
 * The day at the lake: what is to be expected at each station as the water stands today and by all that was measured so far, which leg
 * goes there and how high it is set.
 *
 *     const day = dayAt(project)      // once: the errors of the bed
 *     day(state)                      // after each entry
 */

import { deriveKit, type Kit } from '../kit.ts'
import { type LegPlace, legPlace } from '../leg-places.ts'
import { atLeast } from '../numbers.ts'
import { groupBy, sectionsInOrder } from '../papers/order.ts'
import type { ClampAt } from '../parts/braces.ts'
import { mustStay, type PlacedLeg } from '../parts/legs.ts'
import type { Project } from '../project.ts'
import { errorsOf } from '../site/error-at.ts'
import { isForbidden } from '../stops.ts'
import { assignLegs } from './assign-legs.ts'
import { braceAt, type Found } from './bracing.ts'
import { corrected, type DepthErrors, depthErrors } from './corrected-depths.ts'
import { type AtLeg, legAt } from './leg-at.ts'
import { type Asked, placesOf } from './legs-at-hand.ts'
import { errorOf, TAPE } from './level/level-today.ts'
import { orderOfDay, setBolts } from './order.ts'
import type { BraceAt, Day, DayReason, DayState, DayStep, Measured, Station } from './types.ts'

/** The lake may be this far beyond its expected levels before the plan is asked again, m. */
const BEYOND = 0.05

/** No reading is better than this, m. */
const LEAST = 0.001

export type DayAt = (state: DayState) => Day

export const dayOf = ({ project, state }: { readonly project: Project; readonly state: DayState }): Day =>
  dayAt(project)(state)

/** Legs of the dock that follow from the design: all, unless another design is in hand by now. */
interface Lake {
  readonly project: Project
  readonly kit: Kit
  readonly legs: readonly PlacedLeg[]
  readonly errors: DepthErrors
  readonly order: readonly DayStep[]
  /** Of each leg: its number, and where it stands. */
  readonly told: readonly { readonly number: number; readonly where: LegPlace }[]
}

export function dayAt(project: Project): DayAt {
  const { dock, design, catalog, bed } = project
  const kit = deriveKit(design, catalog, bed)
  const known = new Map(dock.legs.map((leg, i) => [leg.id, { leg, number: i + 1 }]))
  const legs = kit.legs.filter(({ id }) => known.has(id))
  const lake: Lake = {
    project,
    kit,
    legs,
    errors: depthErrors(legs, errorsOf(bed), bed),
    order: orderOfDay(project),
    told: legs.map(({ id }) => {
      const { leg, number } = known.get(id)!
      return { number, where: legPlace(dock, leg) }
    }),
  }
  return (state) => dayIn(lake, state)
}

function dayIn(lake: Lake, state: DayState): Day {
  const { project, legs, order } = lake
  const { level, keep } = state
  const { deckHeight } = project.design.dock
  const deck = state.deck ?? (keep === 'planned' ? deckHeight : level + deckHeight)
  const overWater = deck - level
  const levelError =
    state.from === 'leg'
      ? errorOf('leg', project.design)
      : (state.levelError ?? errorOf(state.from, project.design))
  const entries = lastOf(state.measured)
  const { found, levelFound } = depthsAt(lake, state, levelError, entries)
  const heights = found.map(({ depth }) => overWater + depth)
  const asked = askedOf(lake, level, overWater, heights)
  const { places, pieces } = placesOf(asked, state, project.shop)
  const assignment = assignLegs(places, pieces)
  const now = legs.map((leg, i): Found => {
    const code = assignment.given[i]!.code
    const stock = project.shop.legs.find((one) => one.code === code) ?? null
    return { before: leg, now: { ...leg, bed: level - found[i]!.depth, stock } }
  })
  const [braces, along] = bracesOf(lake, now, deck)
  const set = new Map(state.set.map((one) => [one.leg, one]))
  const at = legs.map((leg, i) =>
    legAt({
      ...found[i]!,
      leg,
      stock: now[i]!.now.stock,
      asked: asked[i]!,
      place: places[i]!,
      ...lake.told[i]!,
      out: leg.x - (project.design.site.stake?.x ?? 0),
      set: set.get(leg.id) ?? null,
      brace: braces.get(leg.id) ?? null,
      along: along.get(leg.id) ?? null,
      shop: project.shop,
      deckHeight,
    }),
  )
  return {
    level,
    levelError,
    deck,
    overWater,
    keep,
    levelFound,
    order,
    setBolts: setBolts(project.shop),
    stations: stationsOf(project, at),
    assignment,
    limit: limitOf(project, level, overWater),
  }
}

/** The last entry of each leg. */
const lastOf = (measured: readonly Measured[]): ReadonlyMap<string, Measured> =>
  new Map(measured.map((one) => [one.leg, one]))

type DepthAt = Pick<AtLeg, 'prior' | 'expected' | 'others' | 'measured' | 'depth'>

function depthsAt(
  { legs, errors }: Lake,
  { level }: DayState,
  levelError: number,
  entries: ReadonlyMap<string, Measured>,
): { readonly found: readonly DepthAt[]; readonly levelFound: Day['levelFound'] } {
  const priors = legs.map(({ bed }) => level - bed)
  const measured = legs.flatMap(({ id }, place) => {
    const entry = entries.get(id)
    if (!entry || entry.how === 'as-planned') return []
    return [{ place, deeper: entry.depth - priors[place]!, error: Math.max(LEAST, entry.error ?? TAPE) }]
  })
  const told = corrected(errors, measured, levelError)
  const found = legs.map(({ id }, i): DepthAt => {
    const entry = entries.get(id) ?? null
    const depthOf = ({ deeper, sd }: { deeper: number; sd: number }) => ({ depth: priors[i]! + deeper, sd })
    const expected = depthOf(told.all[i]!)
    return {
      prior: depthOf({ deeper: 0, sd: told.prior[i]! }),
      expected,
      others: depthOf(told.others[i]!),
      measured: entry,
      depth: entry?.depth ?? expected.depth,
    }
  })
  return { found, levelFound: { level: level + told.level.higher, error: told.level.sd } }
}

/** What must stay is counted from today's water: the lake has so much less to rise. */
function askedOf(
  { project, kit, legs }: Lake,
  level: number,
  over: number,
  heights: readonly number[],
): Asked[] {
  const { design, shop, bed } = project
  const { low, high } = design.site.levels
  const today = {
    design: {
      ...design,
      dock: { ...design.dock, deckHeight: over },
      site: { ...design.site, levels: { low: low - level, high: high - level } },
    },
    shop,
    bed,
  }
  const across = kit.pairs.filter(({ pair }) => !pair.along)
  const braced = new Set(
    across.flatMap(({ pair, fit, leftOut }) => (fit || leftOut ? pair.legs.map(({ id }) => id) : [])),
  )
  const paired = new Set(across.flatMap(({ pair }) => pair.legs.map(({ id }) => id)))
  return legs.map(
    (leg, i): Asked => ({
      leg: leg.id,
      code: leg.stock?.code ?? null,
      setHeight: heights[i]!,
      sole: leg.pad.sole,
      stays: mustStay(leg, today),
      mayBeBraced: braced.has(leg.id) || !paired.has(leg.id),
    }),
  )
}

/** By leg: those across, and lengthwise ones, which make way for them. */
function bracesOf({ kit }: Lake, found: readonly Found[], deck: number) {
  const byId = new Map(found.map((one) => [one.now.id, one]))
  const beside: ClampAt[] = []
  return [false, true].map((lengthwise) => {
    const at = new Map<string, BraceAt>()
    for (const pair of kit.pairs) {
      if (!!pair.pair.along !== lengthwise) continue
      const one = braceAt(pair, byId, kit, deck, beside)
      if (one) for (const { id } of pair.pair.legs) at.set(id, one)
    }
    return at
  }) as [Map<string, BraceAt>, Map<string, BraceAt>]
}

function stationsOf({ dock, design }: Project, at: readonly ReturnType<typeof legAt>[]): Station[] {
  const stake = design.site.stake?.x ?? 0
  const bySection = groupBy(at, ({ section }) => section)
  return sectionsInOrder(dock).map(({ id, role, x }) => {
    const legs = bySection.get(id) ?? []
    return { section: id, role, out: x - stake, legs, done: legs.every(({ set }) => set !== null) }
  })
}

function limitOf({ dock, design, shop }: Project, level: number, over: number): Day['limit'] {
  const { levels, assumed } = design.site
  // What nobody said of the lake is not gone beyond.
  const said = (end: 'low' | 'high'): boolean =>
    !assumed?.includes('levels') && !assumed?.includes(`levels.${end}`)
  const beyond =
    (said('low') && level < Math.min(0, levels.low) - BEYOND) ||
    (said('high') && level > Math.max(0, levels.high) + BEYOND)
  const reasons: DayReason[] = [
    ...(isForbidden(dock) ? (['forbidden'] as const) : []),
    ...(beyond ? (['level-beyond'] as const) : []),
    ...(atLeast(over, shop.rules.deckOverHigh) ? [] : (['deck-low'] as const)),
  ]
  return { say: reasons.length > 0 ? 'stop-and-call' : 'go', reasons }
}
