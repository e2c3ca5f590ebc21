/**
 * The waves of a dock's site, and how high the deck must be to stay over them.
 *
 * Wind, fetch and the depth along the fetch raise them (Shore Protection Manual 1984); they break where they are higher than 0.78 of
 * the depth, so the height at the dock is capped there. Published is the significant height; the mean of the highest tenth (1.27 times that) counts
 * for comfort and clearance; 1.8 times it, or the cap, for strength. The crest is 0.7 of the height above still water (ASCE 7-16 5.4.4 and earlier
 * editions; cited from memory, not checked against the text). A boat's wake counts where it is higher. Shoaling, bending about points of land, and what comes back from a wall are left out.
 */
import type { WaveNote, Waves } from '../../dock.ts'
import type { Kit } from '../../kit.ts'
import { round6, SLACK } from '../../numbers.ts'
import { aboveDeck } from '../../parts/legs.ts'
import { dispersion, type Length } from './dispersion.ts'
import { BREAKING, CREST, HIGHEST, STEEPEST, TENTH } from './limits.ts'
import {
  type Blowing,
  cem2002,
  type Grown,
  growthTime,
  shortFetch,
  spm1984,
  youngVerhagen1996,
} from './wave-height-laws.ts'

/** H·L²/d³ over which a wave is too long and high for its depth to be told by sines (Ursell 1953; the bound is common usage, memory). */
const URSELL = 26

/** Null where the Design tells of no wind and no wakes, or there is nothing on legs. */
export function wavesOf(kit: Kit): Waves | null {
  const { design, shop, legs, layout } = kit
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
  const highest = Math.min(HIGHEST * raised.height, limit)
  const long = raised.period > 0 && depth > 0 ? dispersion(raised.period, depth) : FLAT
  /** Crest over still water for comfort and clearance, at a level. */
  const crestAt = (level: number): number =>
    CREST * Math.min(Math.max(TENTH * raised.height, wake), BREAKING * at(level))
  const high = Math.max(0, levels.high)
  const frame = layout.placed.reduce(
    (most, p) => (p.role === 'ramp' ? most : Math.max(most, shop.shape(p.frame).depth)),
    0,
  )
  const underside = design.dock.deckHeight - frame
  const crest = crestAt(0)
  const crestHigh = crestAt(high)
  const over = shop.rules.waveClearance + frame
  const canRise = riseOf(kit)
  return {
    height: round6(height),
    period: round6(raised.period),
    length: round6(long.length),
    speed: round6(long.speed),
    depth: round6(depth),
    tenth: round6(Math.min(TENTH * raised.height, limit)),
    highest: round6(highest),
    crest: round6(crest),
    crestHigh: round6(crestHigh),
    underside: round6(underside),
    clear: round6(underside - crest),
    clearHigh: round6(underside - high - crestHigh),
    wake: round6(wake),
    breaks: raised.height > limit,
    open: round6(raised.height),
    law: 'spm1984',
    laws: {
      spm1984: rounded(raised),
      cem2002: rounded(cem2002(blowing)),
      youngVerhagen1996: rounded(youngVerhagen1996(blowing)),
    },
    recommendedDeckHeight: round6(crest + over),
    recommendedAllSeason: round6(high + crestHigh + over),
    canRise: canRise === null ? null : round6(canRise),
    duration: round6(growthTime(blowing)),
    notes: notesOf({
      blowing,
      raised,
      limit,
      height,
      highest,
      long,
      depth,
      short: canRise !== null && canRise < high - SLACK,
    }),
  }
}

const FLAT: Length = { k: 0, length: 0, speed: 0 }

/** What the leg with the least over the deck has there, over the decking, m. */
function riseOf(kit: Kit): number | null {
  let least = Number.POSITIVE_INFINITY
  for (const leg of kit.legs) {
    const above = aboveDeck(leg, kit)
    if (above === null) return null
    least = Math.min(least, above + kit.shop.catalog.decking.rise)
  }
  return Math.max(0, least)
}

interface Told {
  readonly blowing: Blowing
  readonly raised: Grown
  readonly limit: number
  readonly height: number
  readonly highest: number
  readonly long: Length
  readonly depth: number
  /** Legs do not reach to the high level. */
  readonly short: boolean
}

function notesOf({ blowing, raised, limit, height, highest, long, depth, short }: Told): WaveNote[] {
  const windy = raised.height > 0
  const { k, length } = long
  const told: readonly (readonly [WaveNote, boolean])[] = [
    ['assumed-deep', windy && blowing.depth === null],
    ['short-fetch', windy && shortFetch(blowing)],
    ['depth-breaks', raised.height > limit],
    ['highest-break', windy && raised.height <= limit && HIGHEST * raised.height > limit],
    ['steep', length > 0 && highest > STEEPEST * length * Math.tanh(k * depth)],
    ['legs-end', short],
    ['shallow-long', length > 0 && height * length ** 2 > URSELL * depth ** 3],
  ]
  return told.filter(([, holds]) => holds).map(([note]) => note)
}

const rounded = ({ height, period }: Grown): Grown => ({
  height: round6(height),
  period: round6(period),
})
