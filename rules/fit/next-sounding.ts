/**
 * Where one more sounding would tell most: the place, of those under the legs and midway between two at one distance, at which it lowers the number of legs to be expected short by
 * most. Kriging's variance needs no value for that (Chilès and Delfiner 2012, section 3.4.5): with k the covariance that the soundings left,
 * the mean at p moves by w = k(p, q) / k(q, q) of what the sounding at q differs by, and the error becomes that of e(p) - w (e(q) + sounding error).
 * The legs' room is taken to stay as it is: that is the bed to be expected.
 */
import type { Errors, Known } from '../site/error.ts'
import { type Between, betweenIn, varianceIn } from './between.ts'
import { type Chance, chanceOf } from './chances.ts'

export interface NextSounding {
  readonly x: number
  readonly y: number
  /** Legs in doubt that would be so no more, by id. */
  readonly settles: readonly string[]
}

/** A leg less sure than this is in doubt. */
export const IN_DOUBT = 0.99
/** Less than this part of a leg is not worth the way. */
const WORTH = 0.01
/** Legs in doubt that are looked at, those least sure first, and places. */
const MOST = 60
/** Known as well as by a sounding there: variance in units of roughness, m. */
const SOUNDED = 1e-6

/** Null where none would tell anything worth the way. */
export function nextSounding(all: readonly Chance[], errors: Errors): NextSounding | null {
  const doubted = all
    .filter(({ chance, known }) => chance < IN_DOUBT && known)
    .sort((a, b) => a.chance - b.chance)
    .slice(0, MOST)
  let best: { readonly at: Known; readonly after: readonly number[] } | null = null
  let most = WORTH
  const between = betweenIn(errors)
  for (const place of placesUnder(doubted, errors)) {
    if (place.spread < SOUNDED) continue
    const after = doubted.map((leg) => chanceOf(leg.room, errorWith(leg.known!, place, errors, between)))
    const gain = after.reduce((sum, chance, i) => sum + chance - doubted[i]!.chance, 0)
    if (gain <= most + 1e-9) continue
    most = gain
    best = { at: place, after }
  }
  if (!best) return null
  const { at, after } = best
  return {
    x: at.x,
    y: at.y,
    settles: doubted.flatMap(({ leg }, i) => (after[i]! >= IN_DOUBT ? [leg.id] : [])),
  }
}

function placesUnder(legs: readonly Chance[], errors: Errors): Known[] {
  const middles = legs.flatMap(({ leg }, i) => {
    const other = legs.slice(i + 1).find((one) => Math.abs(one.leg.x - leg.x) < 1e-6)
    const known = other && errors.known(leg.x, (leg.y + other.leg.y) / 2)
    return known ? [known] : []
  })
  return [...middles, ...legs.map(({ known }) => known!)]
}

/** Standard error at a place once there is one more sounding, m. */
export function errorWith(at: Known, sounded: Known, errors: Errors, between: Between): number {
  const both = between(at, sounded)
  const part = both.spread / sounded.spread
  const { spread, noise } = sounded
  return Math.sqrt(
    Math.max(
      0,
      varianceIn(errors, at) -
        2 * part * varianceIn(errors, both) +
        part ** 2 * varianceIn(errors, { spread, noise: noise + 1 }),
    ),
  )
}
