/** A clock that is set wrong spoils no order, but dates are read by people: where it contradicts the record that is told. */
import type { SeasonRecord } from '../../rules/record/index.ts'
import type { ClockDoubt } from './kept.ts'

/** Clocks of two phones that are right differ by less, ms. */
const SLACK = 10 * 60_000

/** Of dates in ISO 8601, whatever their zones. */
export const latest = (first: string, rest: readonly string[]): string =>
  rest.reduce((a, b) => (Date.parse(b) > Date.parse(a) ? b : a), first)

/** `now` in ms since 1970. null where nothing in the record is later. */
export function clockDoubt(record: SeasonRecord, now: number): ClockDoubt | null {
  const newest = latest(
    record.made.at,
    record.entries.map(({ at }) => at),
  )
  return Date.parse(newest) > now + SLACK ? { newest, now: new Date(now).toISOString() } : null
}
