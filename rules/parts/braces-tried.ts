/** What was tried on a pair where no brace fits: for what is told of it, after the first picture. */
import {
  type BracedPair,
  type BraceFit,
  type BraceSite,
  besideClamps,
  candidates,
  hang,
  longestOf,
} from './braces.ts'
import type { PlacedPair } from './pairs.ts'

const NONE: readonly BraceFit[] = []

/** Midway on the pair, best first, whether they keep their clearances or not; none where one fits or none is wanted. */
export function triedOn(
  { pair, needsBrace, leftOut, level, fit, wanted }: BracedPair,
  site: BraceSite,
): readonly BraceFit[] {
  if (fit || leftOut || !needsBrace) return NONE
  return candidates(pair, longestOf(pair), site.shop).flatMap((brace) =>
    (level ? [0, 1] : [0]).flatMap((way) => hang(pair, brace, wanted, way, site) ?? []),
  )
}

/** Of a lengthwise brace's ends to the clamps that are on its legs already, upright, the least, m; null where there are none. */
export function clampsBeside(fit: BraceFit, pair: PlacedPair, site: BraceSite): number | null {
  const beside = besideClamps(fit, pair, site)
  const clear = beside.map(({ over, least }) => Math.abs(over) - least + site.shop.rules.braceToPad)
  return clear.length > 0 ? Math.min(...clear) : null
}
