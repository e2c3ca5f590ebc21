/** What a gauge's record says of a season: how low and high the lake stands, and on how many days. No trend is read out of it. */
import type { Reading } from './read.ts'

export interface Season {
  /** 1 to 12, both in it; from November to March goes over the turn of the year. */
  readonly from: number
  readonly to: number
}

export interface SeasonLevels {
  readonly count: number
  /** Years that have readings in it. */
  readonly years: readonly [first: number, last: number]
  /** m over the gauge's zero. */
  readonly mean: number
  readonly lowest: Reading
  readonly highest: Reading
  readonly low: number
  readonly high: number
  readonly median: number
  /** Days of the season; null where the record has less than a reading in two days: then only shares are told. */
  readonly days: number | null
}

/** Of the year, a year's own reading too. */
export const inSeason =
  ({ from, to }: Season) =>
  ({ month }: Reading): boolean =>
    month === null || (from <= to ? month >= from && month <= to : month >= from || month <= to)

/**
 * Quantile of ascending values, linear between them (type 7 of Hyndman and Fan, Sample quantiles in statistical packages, The American
 * Statistician 50(4), 1996).
 */
export function quantile(ascending: readonly number[], share: number): number {
  const at = (ascending.length - 1) * share
  const below = Math.floor(at)
  const low = ascending[below]!
  return low + (at - below) * ((ascending[below + 1] ?? low) - low)
}

/** Null where no reading is in it. @param share how much of the time the lake is lower than `low`, and higher than `high` */
export function seasonLevels(
  readings: readonly Reading[],
  season: Season,
  share: number,
): SeasonLevels | null {
  const own = readings.filter(inSeason(season))
  if (own.length === 0) return null
  const levels = own.map(({ level }) => level).sort((a, b) => a - b)
  const years = own.map(({ year }) => year)
  const most = (better: (a: number, b: number) => boolean): Reading =>
    own.reduce((best, one) => (better(one.level, best.level) ? one : best))
  const gaps = own
    .slice(1)
    .map(({ day }, i) => day - own[i]!.day)
    .sort((a, b) => a - b)
  const daily = own.every(({ month }) => month !== null) && gaps.length > 0 && quantile(gaps, 0.5) <= 2
  return {
    count: own.length,
    years: [Math.min(...years), Math.max(...years)],
    mean: levels.reduce((sum, level) => sum + level, 0) / levels.length,
    lowest: most((a, b) => a < b),
    highest: most((a, b) => a > b),
    low: quantile(levels, share),
    high: quantile(levels, 1 - share),
    median: quantile(levels, 0.5),
    days: daily ? daysOf(season) : null,
  }
}

/** Of a year that is no leap year. */
function daysOf({ from, to }: Season): number {
  const months = Array.from({ length: 12 }, (_, i) => i + 1).filter((month) =>
    from <= to ? month >= from && month <= to : month >= from || month <= to,
  )
  return months.reduce((sum, month) => sum + new Date(Date.UTC(2001, month, 0)).getUTCDate(), 0)
}

/** Share of the season's readings at which something holds of the level. */
export function shareOf(
  readings: readonly Reading[],
  season: Season,
  holds: (level: number) => boolean,
): number {
  const own = readings.filter(inSeason(season))
  return own.filter(({ level }) => holds(level)).length / Math.max(1, own.length)
}

/** How much of the season: a share, and so many days where the record is of days. */
export interface Spell {
  readonly share: number
  readonly days: number | null
}

/** How long the deck is awash and a boat aground; null without a boat. */
export interface Times {
  readonly awash: Spell
  readonly aground: Spell | null
}

/**
 * @param at the gauge on the day of the survey, m over its zero
 * @param dock deck over the water of that day, and the least water under its boats then, m
 */
export function timesOf(
  readings: readonly Reading[],
  season: Season,
  { days }: Pick<SeasonLevels, 'days'>,
  at: number,
  dock: { readonly deckHeight: number; readonly under: number | null },
): Times {
  const spell = (holds: (level: number) => boolean): Spell => {
    const share = shareOf(readings, season, (level) => holds(level - at))
    return { share, days: days === null ? null : Math.round(share * days) }
  }
  const { deckHeight, under } = dock
  return {
    awash: spell((level) => level > deckHeight + 1e-6),
    aground: under === null ? null : spell((level) => level + under < -1e-6),
  }
}
