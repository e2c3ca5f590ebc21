/** Whether each pair's brace still fits on the bed as it is found, and where its clamps go. */
import type { BraceStock } from '../catalog/index.ts'
import type { Kit } from '../kit.ts'
import { atLeast, SLACK } from '../numbers.ts'
import {
  type BracedPair,
  type BraceFit,
  type BraceSite,
  type ClampAt,
  candidates,
  clampsOf,
  firstFit,
  longestOf,
} from '../parts/braces.ts'
import type { PlacedLeg } from '../parts/legs.ts'
import type { PlacedPair } from '../parts/pairs.ts'
import type { BraceAt, Mark } from './types.ts'

/** A clamp that goes this far from its planned mark is told of, m. */
const MOVED = 0.01

export interface Found {
  /** As planned, and as found. */
  readonly before: PlacedLeg
  readonly now: PlacedLeg
}

/**
 * Of a pair whose legs are both known.
 *
 * @param beside what braces across today, which a lengthwise brace keeps clear of; a brace across is added to it
 */
export function braceAt(
  braced: BracedPair,
  legs: ReadonlyMap<string, Found>,
  kit: Kit,
  deck: number,
  beside: ClampAt[],
): BraceAt | null {
  const { pair, leftOut, fit } = braced
  const [a, b] = [legs.get(pair.legs[0].id), legs.get(pair.legs[1].id)]
  if (!(a && b)) return null
  const planned = fit?.brace ?? null
  const now: PlacedPair = { ...pair, legs: [a.now, b.now], ...(pair.along && { along: beside }) }
  const longest = longestOf(now)
  const none = {
    pair: pair.id,
    code: null,
    planned: planned?.code ?? null,
    marks: [],
    moved: false,
    turnedFrom: null,
  }
  const short = longest !== null && !atLeast(longest, kit.shop.rules.braceFrom)
  if (leftOut || (!planned && (short || pair.along))) return { ...none, fits: 'not-needed' }
  const site = siteOf(kit, deck, a, b)
  const level = Math.abs(a.now.bed - b.now.bed) <= kit.shop.rules.braceLevel + SLACK
  const asPlanned = fit?.low.id === b.now.id ? b.now : a.now
  const wanted = level ? asPlanned : a.now.bed < b.now.bed ? a.now : b.now
  const own = planned ? firstFit(now, [planned], wanted, level, site) : null
  const found = own ?? firstFit(now, others(now, longest, planned, kit), wanted, level, site)
  if (!found) return { ...none, fits: 'none' }
  if (!pair.along) beside.push(...clampsOf(found, kit.shop))
  const marks = marksOf(found)
  return {
    ...none,
    fits: own ? 'fits' : 'other',
    code: found.brace.code,
    marks,
    moved: fit === null || movedFrom(marksOf(fit), marks),
    turnedFrom: fit && fit.low.id !== found.low.id ? fit.low.id : null,
  }
}

const others = (
  pair: PlacedPair,
  longest: number | null,
  planned: BraceStock | null,
  { shop }: Kit,
): BraceStock[] => candidates(pair, longest, shop).filter((brace) => brace !== planned)

/** The bed between two legs is off as it is at both, straight from one to the other. */
function siteOf({ design, shop, bed }: Kit, deck: number, a: Found, b: Found): BraceSite {
  const [offA, offB] = [a.now.bed - a.before.bed, b.now.bed - b.before.bed]
  const [dx, dy] = [b.now.x - a.now.x, b.now.y - a.now.y]
  const square = dx * dx + dy * dy
  return {
    design: { ...design, dock: { ...design.dock, deckHeight: deck } },
    shop,
    bed: {
      bedAt: (x, y) => {
        const t = ((x - a.now.x) * dx + (y - a.now.y) * dy) / square
        return bed.bedAt(x, y) + offA + t * (offB - offA)
      },
    },
  }
}

const marksOf = ({ low, high, lowZ, highZ }: BraceFit): Mark[] => [
  markOn(low, 'low', lowZ),
  markOn(high, 'high', highZ),
]

function markOn(leg: PlacedLeg, end: Mark['end'], z: number): Mark {
  const fromSole = z - leg.bed
  return {
    leg: leg.id,
    end,
    fromSole,
    fromTop: leg.stock ? leg.stock.length + leg.pad.sole - fromSole : null,
  }
}

const movedFrom = (before: readonly Mark[], now: readonly Mark[]): boolean =>
  now.some(({ leg, end, fromSole }) => {
    const same = before.find((mark) => mark.leg === leg && mark.end === end)
    return !same || Math.abs(same.fromSole - fromSole) > MOVED
  })
