import type { BottomKind } from '../catalog/index.ts'
import { type Check, meters, slope, worst } from './check.ts'
import { beyondError, type SoundingPair, soundingPairs } from './sounding-pairs.ts'
import { HAND } from './soundings-differ.ts'

/** Farther apart a bank between them may be steep, m. Judgment. */
const NEAR = 2
/**
 * Steeper a bottom does not stay under water, rise over run: angles of repose of 32 and 37 degrees for sand and gravel (memory), 45 for clay,
 * 19 for muck (judgment). Rock stands as it likes.
 */
const STANDS: Readonly<Record<BottomKind, number>> = {
  rock: Number.POSITIVE_INFINITY,
  gravel: 0.75,
  sand: 0.62,
  clay: 1,
  muck: 0.35,
}

/** Two near soundings with a slope between them that the bottom does not stand at: one is not right, or there is a ledge. */
export const soundingsCliff: Check = {
  code: 'soundings-cliff',
  severity: 'warn',
  basis: 'Angles of repose, judgment',
  find(kit) {
    const { site } = kit.design
    const over = (pair: SoundingPair): number => beyondError(pair, site.soundingError) / pair.apart
    const stands = ({ a, b }: SoundingPair): number =>
      Math.max(STANDS[a.bottom ?? site.bottom], STANDS[b.bottom ?? site.bottom])
    const pairs = soundingPairs(kit, NEAR).filter(
      (pair) => pair.apart > HAND && pair.a.depth > 0 && pair.b.depth > 0 && over(pair) > stands(pair),
    )
    if (pairs.length === 0) return []
    const pair = worst(pairs, over)
    const { a, b } = pair
    return [
      {
        parts: [],
        values: {
          x: meters(a.distance),
          y: meters(a.offset),
          x2: meters(b.distance),
          y2: meters(b.offset),
          slope: slope(Math.abs(a.depth - b.depth) / pair.apart),
          most: slope(stands(pair)),
        },
      },
    ]
  },
}
