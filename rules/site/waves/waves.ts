/**
 * The waves of a dock's site, and how high the deck must be to stay over them.
 *
 * Wind, fetch and the depth along the fetch raise them (Shore Protection Manual 1984); the depth at the dock lets at most 0.78 of itself
 * stand. Significant height is told; one wave in ten (1.27 times that) counts for comfort and clearance; 1.8 times it, or what the depth
 * lets stand, for strength. The crest stands 0.7 of the height over still water (ASCE 7-16 5.4.4 and earlier, memory). A boat's wake counts
 * where it is higher.
 */
import type { Waves } from '../../dock.ts'
import type { Kit } from '../../kit.ts'
import { round6 } from '../../numbers.ts'
import { dispersion } from './dispersion.ts'
import { cem2002, spm1984, youngVerhagen1996 } from './growth.ts'

/** Most of its depth that a wave's height can be, ASCE 7-16 5.4.4 (memory). */
export const BREAKING = 0.78
/** Crest over still water as part of the height. */
export const CREST = 0.7
/** Mean of the highest tenth over the significant height (Longuet-Higgins 1952, J. Marine Research 11; Rayleigh's law). */
export const TENTH = 1.27
/** Highest wave over the significant one. */
export const HIGHEST = 1.8

/** Null where the Design tells of no wind and no wakes, or there is nothing on legs. */
export function wavesOf({ design, shop, legs, layout }: Kit): Waves | null {
  const { wind, wake = 0, levels } = design.site
  const blowing = { speed: wind?.speed ?? 0, fetch: wind?.fetch ?? 0, depth: wind?.depth ?? null }
  const raised = spm1984(blowing)
  if (raised.height === 0 && wake === 0) return null
  if (!layout.standing || legs.length === 0) return null
  // Bed under the outermost of the legs in the deepest water.
  const bed = legs.reduce((low, leg) => Math.min(low, leg.bed), Number.POSITIVE_INFINITY)
  const at = (level: number): number => Math.max(level - bed, 0)
  const depth = at(0)
  const limit = BREAKING * depth
  const height = Math.min(raised.height, limit)
  const { length, speed } =
    raised.period > 0 && depth > 0 ? dispersion(raised.period, depth) : { length: 0, speed: 0 }
  /** Crest over still water for comfort and clearance, at a level. */
  const crestAt = (level: number): number =>
    CREST * Math.min(Math.max(TENTH * raised.height, wake), BREAKING * at(level))
  const frame = shop.shape(layout.standing.frame).depth
  const { waveClearance } = shop.rules
  const high = Math.max(0, levels.high)
  return {
    height: round6(height),
    period: round6(raised.period),
    length: round6(length),
    speed: round6(speed),
    depth: round6(depth),
    tenth: round6(Math.min(TENTH * raised.height, limit)),
    highest: round6(Math.min(HIGHEST * raised.height, limit)),
    crest: round6(crestAt(0)),
    wake: round6(wake),
    breaks: raised.height > limit,
    open: round6(raised.height),
    laws: {
      spm1984: rounded(raised),
      cem2002: rounded(cem2002(blowing)),
      youngVerhagen1996: rounded(youngVerhagen1996(blowing)),
    },
    recommendedDeckHeight: round6(crestAt(0) + waveClearance + frame),
    recommendedAllSeason: round6(high + crestAt(high) + waveClearance + frame),
  }
}

const rounded = ({ height, period }: { height: number; period: number }) => ({
  height: round6(height),
  period: round6(period),
})
