/** What holds in a season: of each leg, of the water, of the work; and what two phones said otherwise. */
import { round6 } from '../numbers.ts'
import { byOrder, headsOf, liveEntries, subjectOf } from './order.ts'
import type { Entry, EntryKind, EntryOf, Keep, LegNamed, SeasonRecord } from './schema.ts'

/** Entries about one thing by phones that did not know of each other, and that do not agree. */
export interface Conflict {
  /** `level`, `set`, `sounding`, `step`, `out` */
  readonly kind: EntryKind
  /** Leg, section or step that it is about; null: the whole dock. */
  readonly of: string | null
  /** In their order; the last is taken until a later one says which of them holds. */
  readonly entries: readonly Entry[]
}

/** How a leg stands, or stood last. */
export interface LegState {
  readonly leg: LegNamed
  readonly set: EntryOf<'set'> | null
  /** Of the deck when the leg was set, m; null where no level was known that it hangs on. */
  readonly deck: number | null
  /** Elevation of the sole by that, m: what it stands on. */
  readonly foot: number | null
  /** Latest sounding here that somebody measured: never one taken as planned. */
  readonly sounding: EntryOf<'sounding'> | null
  /** Elevation of the bottom by it and by the water that it was read under, as that is known now, m; null without one, or where no level was known. */
  readonly bed: number | null
  /** The depth was taken as planned, and nobody measured it. */
  readonly asPlanned: boolean
  /** Taken out: by itself, with its section, or with all of it. */
  readonly out: EntryOf<'out'> | null
}

/** What holds of one season, all of its entries taken together. Elevations over the survey water, m. */
export interface SeasonState {
  readonly season: string
  readonly level: EntryOf<'level'> | null
  /** The lake's surface and the deck over the survey water, m; null while no level is told. */
  readonly today: { readonly level: number; readonly keep: Keep; readonly deck: number } | null
  /** In the order of their numbers; legs that entries alone name come last. */
  readonly legs: readonly LegState[]
  /** Keys of the steps that are done. */
  readonly done: readonly string[]
  readonly checks: readonly EntryOf<'check'>[]
  readonly wear: readonly EntryOf<'wear'>[]
  readonly notes: readonly EntryOf<'note'>[]
  readonly out: readonly EntryOf<'out'>[]
  readonly conflicts: readonly Conflict[]
}

/** Seasons that entries are of, the earliest first. */
export const seasonsOf = (record: SeasonRecord): string[] => [...heldOf(record).live.keys()].sort()

/** Entries by season, and those of them that hold: worked out once for who asks of several seasons. */
export interface Held {
  readonly record: SeasonRecord
  readonly all: ReadonlyMap<string, readonly Entry[]>
  readonly live: ReadonlyMap<string, readonly Entry[]>
}

export function heldOf(record: SeasonRecord): Held {
  const bySeason = (entries: readonly Entry[]): Map<string, Entry[]> => {
    const seasons = new Map<string, Entry[]>()
    for (const entry of entries) {
      const own = seasons.get(entry.season)
      if (own) own.push(entry)
      else seasons.set(entry.season, [entry])
    }
    return seasons
  }
  return { record, all: bySeason(record.entries), live: bySeason(liveEntries(record.entries)) }
}

/** The latest season with an entry of which `holds` is so; else the record's latest, or the year in which it was begun. */
export function latestSeason(record: SeasonRecord, holds: (entry: Entry) => boolean = () => true): string {
  const seasons = (entries: readonly Entry[]): string[] => entries.map(({ season }) => season).sort()
  const live = liveEntries(record.entries)
  return seasons(live.filter(holds)).at(-1) ?? seasons(live).at(-1) ?? record.made.at.slice(0, 4)
}

/** What holds of a season: of each leg its latest setting, what is done, what is noted, what two devices say otherwise. @param season the record's latest where absent */
export function seasonState(record: SeasonRecord, season?: string): SeasonState {
  return stateIn(heldOf(record), season ?? latestSeason(record))
}

/** Elevation of the deck, m. Of a dock whose deck height nobody told, over where its deck would stand on the survey water. */
export const deckAt = ({ deckHeight }: Pick<SeasonRecord, 'deckHeight'>, level: number, keep: Keep): number =>
  (keep === 'planned' ? 0 : level) + (deckHeight ?? 0)

/** Elevation at which the deck stood in a season, m; null where nobody told. */
export const deckOf = ({ today, legs }: SeasonState): number | null =>
  today?.deck ?? legs.findLast(({ deck }) => deck !== null)?.deck ?? null

export function stateIn({ record, all, live: held }: Held, season: string): SeasonState {
  const live = held.get(season) ?? []
  const told = agreed(all.get(season) ?? [], new Set(live))
  const level = told.heads('level').at(-1) ?? null
  const today = level
    ? {
        level: level.level,
        keep: level.keep,
        deck: level.deck ?? deckAt(record, level.level, level.keep),
      }
    : null
  const of = <K extends EntryKind>(kind: K): EntryOf<K>[] =>
    live.filter((entry): entry is EntryOf<K> => entry.kind === kind)
  const out = told.heads('out')
  const sets = byLeg(told.heads('set'))
  const soundings = byLeg(told.heads('sounding'))
  const outs = outsOf(out)
  const levels = of('level')
  return {
    season,
    level,
    today,
    legs: legsOf(record, [...sets.keys(), ...soundings.keys()]).map((leg) => {
      const own = { set: sets.get(leg.id)?.at(-1) ?? null, soundings: soundings.get(leg.id) ?? [] }
      return legState(record, leg, own, { today, told: level?.deck, levels, out: outs(leg) })
    }),
    done: told.heads('step').flatMap(({ key, done }) => (done ? [key] : [])),
    checks: of('check'),
    wear: of('wear'),
    notes: of('note'),
    out,
    conflicts: told.conflicts,
  }
}

interface Agreed {
  /** The last that holds of each subject of a kind, where nobody disagrees the only one; of soundings all. */
  heads<K extends EntryKind>(kind: K): EntryOf<K>[]
  readonly conflicts: readonly Conflict[]
}

/** @param entries of one season */
function agreed(entries: readonly Entry[], live: ReadonlySet<Entry>): Agreed {
  const subjects = new Map<string, Entry[]>()
  for (const entry of entries) {
    const subject = subjectOf(entry)
    if (subject === null) continue
    const same = subjects.get(subject)
    if (same) same.push(entry)
    else subjects.set(subject, [entry])
  }
  const held: Entry[] = []
  const conflicts: Conflict[] = []
  for (const same of subjects.values()) {
    const heads = headsOf(same, (entry) => live.has(entry))
    const last = heads.at(-1)
    if (!last) continue
    // Of depths all go on, so that one taken as planned does not hide what somebody measured.
    if (last.kind === 'sounding') held.push(...heads)
    else held.push(last)
    const claims = heads.filter((entry) => entry.kind !== 'sounding' || entry.how !== 'as-planned')
    if (claims.some((entry) => !sameClaim(entry, claims[0]!)))
      conflicts.push({ kind: last.kind, of: aboutOf(last), entries: claims })
  }
  return {
    heads: <K extends EntryKind>(kind: K): EntryOf<K>[] =>
      held.filter((entry): entry is EntryOf<K> => entry.kind === kind),
    conflicts,
  }
}

function aboutOf(entry: Entry): string | null {
  if (entry.kind === 'step') return entry.key
  if (entry.kind === 'out') return entry.leg ?? entry.section ?? null
  return entry.kind === 'set' || entry.kind === 'sounding' ? (entry.leg ?? null) : null
}

/** Nearer than this two say the same, m: heights to what a tape reads, water and bottom to what can be read in the lake. */
const SAME = { height: 0.001, level: 0.01, depth: 0.01 } as const

const near = (a: number, b: number, within: number): boolean => Math.abs(a - b) <= within + 1e-9

/** Two phones may well set one leg the same. */
function sameClaim(a: Entry, b: Entry): boolean {
  if (a.kind === 'level' && b.kind === 'level')
    return (
      near(a.level, b.level, SAME.level) &&
      a.keep === b.keep &&
      (a.deck === undefined) === (b.deck === undefined) &&
      near(a.deck ?? 0, b.deck ?? 0, SAME.level)
    )
  if (a.kind === 'set' && b.kind === 'set')
    return near(a.height, b.height, SAME.height) && a.stock === b.stock
  if (a.kind === 'sounding' && b.kind === 'sounding')
    return a.level === null || b.level === null
      ? a.level === b.level && near(a.depth, b.depth, SAME.depth)
      : near(a.level - a.depth, b.level - b.depth, SAME.depth)
  if (a.kind === 'step' && b.kind === 'step') return a.done === b.done
  // Out is out, wherever it lies.
  return a.kind === 'out' && b.kind === 'out'
}

function byLeg<E extends { readonly leg?: string | undefined }>(entries: readonly E[]): Map<string, E[]> {
  const legs = new Map<string, E[]>()
  for (const entry of entries) {
    if (entry.leg === undefined) continue
    const own = legs.get(entry.leg)
    if (own) own.push(entry)
    else legs.set(entry.leg, [entry])
  }
  return legs
}

/** Legs of the record, then those that it does not name: of another phone's dock, or a section added on the day. */
function legsOf({ legs, others }: SeasonRecord, told: readonly string[]): LegNamed[] {
  const known = new Map(legs.map((leg) => [leg.id, leg]))
  const all = [...legs].sort((a, b) => a.number - b.number)
  let number = all.at(-1)?.number ?? 0
  for (const id of told) {
    if (known.has(id)) continue
    const other = others.flatMap((header) => header.legs).find((leg) => leg.id === id)
    const leg: LegNamed = {
      ...(other ?? {
        ...{ id, section: null, x: null, y: null, side: 'left', aside: null, bottom: null, planned: null },
      }),
      number: ++number,
    }
    known.set(id, leg)
    all.push(leg)
  }
  return all
}

function outsOf(out: readonly EntryOf<'out'>[]): (leg: LegNamed) => EntryOf<'out'> | null {
  const last = new Map(out.map((entry) => [entry.leg ?? entry.section ?? '', entry]))
  return ({ id, section }) =>
    last.get(id) ?? (section === null ? null : last.get(section)) ?? last.get('') ?? null
}

interface OfSeason {
  readonly today: SeasonState['today']
  /** The deck, where the level's entry says it itself. */
  readonly told: number | undefined
}

interface OfLeg {
  readonly levels: readonly EntryOf<'level'>[]
  readonly out: EntryOf<'out'> | null
}

function legState(
  record: SeasonRecord,
  leg: LegNamed,
  told: { readonly set: EntryOf<'set'> | null; readonly soundings: readonly EntryOf<'sounding'>[] },
  { today, told: deckTold, levels, out }: OfSeason & OfLeg,
): LegState {
  const { set, soundings } = told
  const sounding = soundings.filter(({ how }) => how !== 'as-planned').at(-1) ?? null
  const deck = set && deckOfSet(record, set, { today, told: deckTold })
  const water = sounding && waterOf(sounding, levels)
  return {
    leg,
    set,
    deck,
    foot: set && deck !== null ? round6(deck - set.height) : null,
    sounding,
    bed: sounding && water !== null ? round6(water - sounding.depth) : null,
    asPlanned: !sounding && soundings.length > 0,
    out,
  }
}

/** A level that is told so soon after a depth was read is of the same water, ms: what was taken before was not it. */
const SAME_WATER = 12 * 60 * 60 * 1000

/** Level of the water that a depth was read under. The reading itself stays as it was taken; what it is counted from may be put right. */
function waterOf(sounding: EntryOf<'sounding'>, levels: readonly EntryOf<'level'>[]): number | null {
  const at = Date.parse(sounding.at)
  const after = levels.filter(
    (level) => byOrder(level, sounding) > 0 && Math.abs(Date.parse(level.at) - at) <= SAME_WATER,
  )
  return after.sort(byOrder).at(-1)?.level ?? sounding.level
}

/** By what the entry itself says of water and deck, else by the season's. */
function deckOfSet(
  record: SeasonRecord,
  set: EntryOf<'set'>,
  { today, told }: Pick<OfSeason, 'today' | 'told'>,
): number | null {
  if (set.deck !== undefined) return set.deck
  // It says nothing of the deck: then it is the season's.
  if (set.keep === undefined && told !== undefined) return told
  const keep = set.keep ?? today?.keep
  if (keep === undefined) return null
  const level = set.level ?? today?.level
  if (keep === 'planned') return deckAt(record, 0, keep)
  return level === undefined ? null : deckAt(record, level, keep)
}
