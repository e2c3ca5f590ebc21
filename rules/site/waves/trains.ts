/**
 * The waves that are reckoned with: those of the wind, and boats' wakes. What is asked of them is asked of each, and the worse
 * counts; they are not added.
 *
 * Of the wind's, the highest for what a moment may break; the mean of the highest tenth for what takes more than one of them: the dock as a
 * whole that slides, rocks or floats, which stands where it stood after a wave that was over before it moved (Shore Protection Manual
 * 1984 section 7-II tells rigid structures from such as give, by H1, H1/10 and Hs; memory).
 */
import type { Waves } from '../../dock.ts'
import { dispersion, type Wave } from './dispersion.ts'
import { BREAKING, HIGHEST, TENTH } from './limits.ts'
import { G } from './water.ts'

/**
 * Period of a boat's wake, s. A wake's transverse waves run with the boat, c = gT/2π: 2 to 3 s for the 3 to 5 m/s at which small boats
 * raise their highest (memory; Sorensen 1973, J. Waterways, Harbors and Coastal Engineering 99, has such periods for small craft, memory).
 * A site states its wakes' height only.
 */
const WAKE_PERIOD = 2.5

/** A wake that would be steeper than this (height over length on deep water) is taken as long as this makes it (judgment). */
const WAKE_STEEPEST = 0.1

/** Waves lower than this are none, m. */
const NOTHING = 1e-6

/** Of one height out where the depth does not hold it down. */
export interface Train {
  /** m */
  readonly height: number
  /** s */
  readonly period: number
  /** Part of a long dock that a crest reaches at once is looked at (`short-crested.ts`): not of a wake, nor of what one leg must hold. */
  readonly shortCrested: boolean
}

const wakePeriod = (wake: number): number =>
  Math.max(WAKE_PERIOD, Math.sqrt((2 * Math.PI * wake) / (WAKE_STEEPEST * G)))

export type Height = 'highest' | 'tenth'
const OVER_SIGNIFICANT: Readonly<Record<Height, number>> = { highest: HIGHEST, tenth: TENTH }

/** None, one or two: the wind's, and the wake. */
export const trainsOf = ({ open, period, wake }: Waves, height: Height): readonly Train[] =>
  [
    { height: OVER_SIGNIFICANT[height] * open, period, shortCrested: height === 'tenth' },
    { height: wake, period: wakePeriod(wake), shortCrested: false },
  ].filter((train) => train.height > NOTHING && train.period > 0)

/** A train where the water is so deep, as high as that lets it stand; null without water. */
export function inDepth({ height, period }: Pick<Train, 'height' | 'period'>, depth: number): Wave | null {
  if (!(depth > NOTHING)) return null
  return { height: Math.min(height, BREAKING * depth), period, depth, k: dispersion(period, depth).k }
}
