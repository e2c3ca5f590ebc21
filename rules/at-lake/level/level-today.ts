/**
 * The lake's level today over the survey day's, m, from what can be measured on the shore.
 *
 * Errors (one standard deviation): a tape down to the water 10 mm (judgment), waves by what two readings tell (`stillWater`), the bed's own.
 */
import type { Project } from '../../project.ts'
import { errorsOf } from '../../site/error-at.ts'
import type { Down, LevelFrom, LevelToday, TenSeconds } from '../types.ts'

/** A tape or rod read at the water, m. Judgment. */
export const TAPE = 0.01
/** What somebody says without having measured, m. Judgment. */
const SAID = 0.05
/** With no way to know: the half of the lake's range is taken as two standard deviations, and no less than this, m. */
const UNKNOWN = 0.05

/**
 * The middle of a crest and a trough is off still water by this part of what lies between them, one standard deviation: 0.05 to 0.06 for ten
 * seconds of waves of 1.5 to 3 s (drawn, `tests/rules/at-lake/level-today.test.ts`), and a little for crests that stand higher than troughs lie low.
 */
const MIDDLE = 0.07

/** Still water between a crest and a trough, and its standard error, m. @param reading error of one reading */
export function stillWater(
  { high, low }: TenSeconds,
  reading = TAPE,
): { readonly at: number; readonly error: number } {
  return { at: (high + low) / 2, error: Math.hypot(reading, MIDDLE * Math.abs(high - low)) }
}

export const readingOf = (down: Down, reading = TAPE): { readonly at: number; readonly error: number } =>
  typeof down === 'number' ? { at: down, error: reading } : stillWater(down, reading)

export type LevelKnown =
  /** A mark or stake at a known height over the survey day's water; absent: the design's fixed mark. */
  | { readonly by: 'mark' | 'stake'; readonly above?: number; readonly down: Down }
  /** The first leg measured, where the bed is known. */
  | { readonly by: 'leg'; readonly leg: string; readonly depth: number }
  | { readonly by: 'said'; readonly level: number }
  /** Nobody knows. */
  | { readonly by: 'survey' }

/** Null where what it goes by is not known: no such leg, no fixed mark. */
export function levelToday(
  known: LevelKnown,
  { dock, design, bed }: Pick<Project, 'dock' | 'design' | 'bed'>,
): LevelToday | null {
  switch (known.by) {
    case 'mark':
    case 'stake': {
      const above = known.above ?? design.site.benchmark?.above
      if (above === undefined) return null
      const { at, error } = readingOf(known.down)
      return { level: above - at, error, from: known.by }
    }
    case 'leg': {
      const leg = dock.legs.find(({ id }) => id === known.leg)
      if (!leg) return null
      const error = Math.hypot(errorsOf(bed).at(leg.x, leg.y), TAPE)
      return { level: leg.bed + known.depth, error, from: 'leg' }
    }
    case 'said':
      return { level: known.level, error: SAID, from: 'said' }
    case 'survey':
      return { level: 0, error: errorOf('survey', design), from: 'survey' }
  }
}

/** Where nothing says how far off the level may be, m. */
export function errorOf(from: LevelFrom | undefined, { site }: Project['design']): number {
  switch (from) {
    case 'said':
      return SAID
    case 'survey':
      return Math.max(UNKNOWN, (site.levels.high - site.levels.low) / 4)
    // What was found from a leg agrees with that leg whatever the level is: it says nothing by itself.
    case 'leg':
      return LOOSE
    default:
      return TAPE
  }
}

/** As good as unknown, m. */
const LOOSE = 1
