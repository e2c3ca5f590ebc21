/**
 * Next spring: each leg up or down by how much for the level of that year, from how it was set last; what the bed did since, and what it
 * does over the years.
 *
 * A foot stands where the deck of its day less its set height was. What was measured this season counts before that; what the bed did in
 * years before is told, and added to nothing.
 */
import type { Shop } from '../catalog-index.ts'
import { atLeast, round6 } from '../numbers.ts'
import type { Project } from '../project.ts'
import { type Line, lineThrough } from './lines.ts'
import { type NextBrace, nextBraces } from './next-braces.ts'
import type { EntryOf, Keep, LegNamed, SeasonRecord } from './schema.ts'
import { deckAt, deckOf, heldOf, type LegState, type SeasonState, stateIn } from './state.ts'

/** `measured`: this season. `as-set`: where the foot stood last. `sounded`: measured in an earlier season. `planned`: by the plan. */
export type BedBasis = 'measured' | 'as-set' | 'sounded' | 'planned'

/** `as-last`: the deck where it stood last, wherever the water and the plan have it. */
export type KeepNext = Keep | 'as-last'

/** Of a leg's bed or foot over the seasons. */
export interface Trend extends Line {
  /** `bed`: depths that were measured; `foot`: where the sole stood. */
  readonly by: 'bed' | 'foot'
}

/** One leg next year: how high it is set, and what that rests on. Elevations over the survey water, m. */
export interface NextLeg {
  readonly leg: LegNamed
  /** How it stood last, and in which season; null where it was never set. */
  readonly last: { readonly season: string; readonly set: EntryOf<'set'> } | null
  /** Set this season already. */
  readonly set: EntryOf<'set'> | null
  readonly basis: BedBasis | null
  /** What the sole is to stand on, m; null where nothing is known. */
  readonly bed: number | null
  /** Sole to deck surface, and to the frame's top, m. */
  readonly height: number | null
  readonly frame: number | null
  /** Longer from sole to deck than it stood last, m; shorter negative. */
  readonly by: number | null
  /** Stock length and code of the leg that is there, or planned. */
  readonly stock: string | null
  readonly length: number | null
  /** What is left over the deck, m: from the tube's top down to the deck. Null where the leg's length or sole is not known. */
  readonly aboveDeck: number | null
  readonly enough: 'yes' | 'reserve' | 'no' | null
  /** The shortest of the shop that does, where this one is not enough and the shop is known. */
  readonly needs: { readonly code: string; readonly length: number } | null
  /** Bottom against the last season in which it was measured, m: washed out negative. */
  readonly change: { readonly since: string; readonly by: number } | null
  /** Over three seasons or more, m a year. */
  readonly trend: Trend | null
}

/** How the legs are set next year. Elevations over the survey water, m. */
export interface NextYear {
  readonly season: string
  /** The latest season before it in which something was set; null for none. */
  readonly last: string | null
  /** Over the survey water, m. */
  readonly level: number
  readonly keep: KeepNext
  readonly deck: number
  /** Against the water and the deck of last season; null where nobody told its level. */
  readonly levelBy: number | null
  readonly deckBy: number | null
  readonly legs: readonly NextLeg[]
  /** With a project at hand. */
  readonly braces: readonly NextBrace[]
}

/** What next year's heights are wanted for. */
export interface NextAsked {
  /** This year's water over the survey water, m. */
  readonly level: number
  /** Elevation of the deck, m; absent: by `keep`. */
  readonly deck?: number
  /** As last season where absent. */
  readonly keep?: KeepNext
  /** The year after the last in which legs were set, where absent. */
  readonly season?: string
  /** For longer legs of the shop, and braces. */
  readonly project?: Project
}

/** Next year's heights, leg by leg, from how they stood last and how the bottom was found. */
export function nextYear(record: SeasonRecord, { level, project, ...asked }: NextAsked): NextYear {
  const held = heldOf(record)
  const states = [...held.live.keys()].sort().map((one) => stateIn(held, one))
  const wasSet = (state: SeasonState): boolean => state.legs.some(({ set }) => set)
  const season = asked.season ?? yearAfter(states.filter(wasSet).at(-1)?.season, record)
  const before = states.filter((state) => state.season < season)
  const now = states.find((state) => state.season === season) ?? stateIn(held, season)
  const last = before.filter(wasSet).at(-1) ?? null
  const keep = asked.keep ?? (last?.level?.deck === undefined ? last?.today?.keep : 'as-last') ?? 'planned'
  const stoodAt = last && deckOf(last)
  const deck =
    asked.deck ??
    (keep === 'as-last' ? (stoodAt ?? deckAt(record, 0, 'planned')) : deckAt(record, level, keep))
  const seen = seenIn([...before, now])
  const legs = [...seen.values()].map((all) => {
    const { leg, season: latest } = all.at(-1)!
    const own = latest === season ? all.at(-1)! : null
    return nextLeg(leg, own ? all.slice(0, -1) : all, own, {
      ...{ record, deck, keep, shop: project?.shop ?? null },
    })
  })
  return {
    ...{ season, level, keep, deck: round6(deck), legs },
    last: last?.season ?? null,
    levelBy: last?.today ? round6(level - last.today.level) : null,
    deckBy: last?.today ? round6(deck - last.today.deck) : null,
    braces: project ? nextBraces(project, legs, deck) : [],
  }
}

const yearAfter = (season: string | undefined, record: SeasonRecord): string =>
  season === undefined ? record.made.at.slice(0, 4) : String(Number(season) + 1).padStart(4, '0')

type Seen = LegState & { readonly season: string }

/** Each leg in its seasons, in the order of the latest that has it. */
function seenIn(states: readonly SeasonState[]): Map<string, Seen[]> {
  const seen = new Map<string, Seen[]>()
  for (const { season, legs } of states)
    for (const state of legs) {
      const own = seen.get(state.leg.id)
      if (own) own.push({ ...state, season })
      else seen.set(state.leg.id, [{ ...state, season }])
    }
  return seen
}

interface Next {
  readonly record: SeasonRecord
  readonly deck: number
  readonly keep: KeepNext
  readonly shop: Shop | null
}

function nextLeg(leg: LegNamed, before: readonly Seen[], now: Seen | null, next: Next): NextLeg {
  const { record, deck, shop } = next
  const last = before.filter(({ set }) => set).at(-1) ?? null
  const stood = last && footOf(last, next)
  const measured = before.filter(({ bed }) => bed !== null).at(-1) ?? null
  const change =
    now?.bed != null && measured?.bed != null
      ? { since: measured.season, by: round6(now.bed - measured.bed) }
      : null
  const [basis, bed] = bedOf(leg, { now, stood, measured, change, related: record.deckHeight !== null })
  const height = bed === null ? null : round6(deck - bed)
  const stock = last?.set?.stock ?? leg.planned?.stock ?? null
  const length = lengthOf(leg, stock, last?.set ?? null, shop)
  const sole = leg.planned?.sole ?? null
  const aboveDeck =
    length === null || sole === null || height === null ? null : round6(length + sole - height)
  const stay = leg.planned?.stay ?? 0
  const enough =
    aboveDeck === null ? null : atLeast(aboveDeck, stay) ? 'yes' : atLeast(aboveDeck, 0) ? 'reserve' : 'no'
  const longer =
    shop && height !== null && sole !== null && enough !== null && enough !== 'yes'
      ? shop.legs.find((one) => atLeast(one.length, height + stay - sole))
      : undefined
  return {
    ...{ leg, basis, bed, height, stock, length, aboveDeck, enough, change },
    last: last?.set ? { season: last.season, set: last.set } : null,
    set: now?.set ?? null,
    frame: height === null || record.rise === null ? null : round6(height - record.rise),
    by: height === null || !last?.set || stood === null ? null : round6(height - last.set.height),
    needs: longer ? { code: longer.code, length: longer.length } : null,
    trend: trendOf(now ? [...before, now] : before),
  }
}

/** Where nobody told a level, the deck of a dock that keeps its height is the same each year. */
const footOf = ({ foot, set }: LegState, { record, keep }: Next): number | null =>
  foot ??
  (set && keep !== 'over-water' && set.keep !== 'over-water'
    ? round6(deckAt(record, 0, 'planned') - set.height)
    : null)

function bedOf(
  { planned }: LegNamed,
  known: {
    readonly now: Seen | null
    readonly stood: number | null
    readonly measured: Seen | null
    readonly change: NextLeg['change']
    /** The deck's height over the water is known: depths and set heights can be put together. */
    readonly related: boolean
  },
): readonly [BedBasis | null, number | null] {
  const { now, stood, measured, change, related } = known
  if (related && now?.bed != null) return ['measured', now.bed]
  if (!related && change && stood !== null) return ['measured', round6(stood + change.by)]
  if (stood !== null) return ['as-set', stood]
  if (related && measured?.bed != null) return ['sounded', measured.bed]
  return planned ? ['planned', planned.bed] : [null, null]
}

function lengthOf(
  { planned }: LegNamed,
  stock: string | null,
  set: EntryOf<'set'> | null,
  shop: Shop | null,
): number | null {
  if (set?.length != null) return set.length
  const own = stock === null ? undefined : shop?.legs.find((one) => one.code === stock)
  if (own) return own.length
  return planned && planned.stock === stock ? planned.length : null
}

/** Fewer seasons lie on a line whatever they are. */
const SEASONS = 3

function trendOf(seen: readonly Seen[]): Trend | null {
  const points = (value: (leg: Seen) => number | null): (readonly [number, number])[] =>
    seen.flatMap((leg) => {
      const z = value(leg)
      return z === null ? [] : [[Number(leg.season), z] as const]
    })
  const beds = points(({ bed }) => bed)
  const feet = points(({ foot, set }) => (set?.how === 'as-planned' ? null : foot))
  const [by, most] = feet.length > beds.length ? (['foot', feet] as const) : (['bed', beds] as const)
  const line = most.length >= SEASONS ? lineThrough(most) : null
  return line && { ...line, slope: round6(line.slope), sd: line.sd === null ? null : round6(line.sd), by }
}
