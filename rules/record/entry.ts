/** A new entry for a record: what the writer says, with device, time, season, and where it stands among the others. */
import { headsOf, liveEntries, subjectOf } from './order.ts'
import { type Entry, type EntryKind, type EntryOf, RECORD_LIMITS, type SeasonRecord } from './schema.ts'

/** What the record adds by itself. */
type Added = 'id' | 'at' | 'device' | 'n' | 'season' | 'saw'
/** What a writer says of one. */
export type Said<K extends EntryKind = EntryKind> = K extends EntryKind
  ? { readonly [P in keyof EntryOf<K> as P extends Added ? never : P]: EntryOf<K>[P] }
  : never

/** Of a new entry. */
export interface Written {
  /** New, at random. */
  readonly id: string
  readonly device: string
  /** By the device's clock: `new Date().toISOString()`. */
  readonly at: string
  /** As the user says; where absent `seasonFor` proposes it. */
  readonly season?: string
}

/**
 * The season that an entry of now belongs to, for the user to say otherwise: the year of the clock, or the latest of the record where the
 * clock is before that.
 *
 * @param now ISO date and time
 */
export function seasonFor(record: SeasonRecord, now: string): string {
  const years = liveEntries(record.entries).map(({ season }) => Number(season))
  const latest = years.reduce((most, year) => Math.max(most, year), Number(/^\d{4}/.exec(now)?.[0] ?? 0))
  return String(latest).padStart(4, '0')
}

/** An entry to be added. Its `saw` are the entries in whose place it comes: which this device has, from whichever phone. */
export function entryFor(record: SeasonRecord, said: Said, written: Written): Entry {
  const { id, device, at, season = seasonFor(record, at) } = written
  const n = Math.min(record.entries.reduce((most, entry) => Math.max(most, entry.n), 0) + 1, RECORD_LIMITS.n)
  // Of a union the compiler does not see that what is said and what is added make up one of its kinds.
  const entry = { ...said, id, at, device, n, season } as Entry
  const subject = subjectOf(entry)
  if (subject === null) return entry
  const same = record.entries.filter((one) => subjectOf(one) === subject)
  const live = new Set(liveEntries(record.entries))
  // What was taken back is seen as well: should it hold again, this one still comes after it.
  const heads = new Set([...headsOf(same, (one) => live.has(one)), ...headsOf(same, () => true)])
  const saw = [...heads].map((one) => one.id).slice(-RECORD_LIMITS.saw)
  return saw.length > 0 ? { ...entry, saw } : entry
}
