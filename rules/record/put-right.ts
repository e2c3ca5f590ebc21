/**
 * A figure that was written down wrong, put right: a new entry says it once more and stands in the place of the one before, which stays. All
 * else that was said with it stays as it was said: water, deck, leg and brace of the day.
 */
import { round6 } from '../numbers.ts'
import type { Said } from './entry.ts'
import type { EntryKind, EntryOf, SeasonRecord } from './schema.ts'
import type { LegState, SeasonState } from './state.ts'

/** What is put in the place of what was written down; what is absent stays. */
export interface Righted {
  /** Sole of the foot pad to deck surface, m. */
  readonly height?: number
  /** Under the water of that day, m. */
  readonly depth?: number
}

/**
 * Entries to be added, of the same season.
 *
 * @param own the leg in that season
 */
export function putRight(
  { rise }: Pick<SeasonRecord, 'rise'>,
  own: LegState,
  { level }: Pick<SeasonState, 'level'>,
  { height, depth }: Righted,
): Said[] {
  const { leg, set, sounding, bed } = own
  const frame = height === undefined || rise === null ? {} : { frame: round6(height - rise) }
  const said: Said[] = []
  if (height !== undefined && set)
    said.push({
      ...saidOf(set),
      ...{ height, ...frame },
      // Whoever puts it right has looked.
      how: set.how === 'as-planned' ? 'measured' : set.how,
    })
  else if (height !== undefined)
    said.push({
      ...{ kind: 'set', leg: leg.id, stock: leg.planned?.stock ?? null, height, ...frame },
      ...{ level: level?.level ?? null, how: 'measured' },
    })
  if (depth !== undefined && sounding)
    // Counted from the water as it is known by now, which a later level may have put right.
    said.push({
      ...saidOf(sounding),
      depth,
      level: bed === null ? sounding.level : round6(bed + sounding.depth),
    })
  return said
}

/** Nearer than this two levels are of one water, m. */
const SAME = 0.0005

/**
 * Entries to be added, of the same season: the lake stood elsewhere than was told. A depth was read under that water and a height set over
 * it, so the bottom and the deck stood as much higher or lower as the water did: of each leg of that water both are said once more.
 * What was written under another level of that season stays as it is. None where no level was told.
 *
 * @param state the season
 * @param level the lake's surface over the survey water that day, m
 */
export function putLevelRight(state: SeasonState, level: number): Said[] {
  const { level: was, today, legs } = state
  if (!was || !today) return []
  const by = level - was.level
  const ofIt = (water: number): boolean => Math.abs(water - was.level) <= SAME
  const { keep } = was
  // As high over the water as planned it still is; any other deck is where it was told to be no more.
  const deck = was.deck === undefined && keep === 'over-water' ? {} : { deck: round6(today.deck + by) }
  return [
    // What it was read from, a mark and how far down, did not tell it.
    { kind: 'level', level, from: 'said', keep, ...deck },
    ...legs.flatMap(({ set, deck, sounding, bed }): Said[] => [
      ...(sounding && bed !== null && ofIt(bed + sounding.depth) ? [{ ...saidOf(sounding), level }] : []),
      // One that says no water hangs on the season's.
      ...(set && deck !== null && ofIt(set.level ?? was.level)
        ? [{ ...saidOf(set), level, deck: round6(deck + by) }]
        : []),
    ]),
  ]
}

/** What its writer said, without what the record adds. */
export function saidOf<K extends EntryKind>(entry: EntryOf<K>): Said<K> {
  const { id: _id, at: _at, device: _device, n: _n, season: _season, saw: _saw, ...said } = entry
  // Of a union the compiler does not see that what is left of one of its kinds is what is said of it.
  return said as unknown as Said<K>
}
