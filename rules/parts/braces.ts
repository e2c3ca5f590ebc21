/**
 * Braces: the diagonal of a leg pair, hole to hole, with its exact fit.
 *
 * Hole to hole B over s between the clamp holes rises r = sqrt(B^2 - s^2), on unequal ground as on level. The brace's middle stands
 * midway between the frame and the higher bed; the low end goes on the deeper leg. On level ground (beds within the catalog's
 * tolerance) the first has its low end left, or as the Design says, and braced level pairs alternate, unless only the other way
 * fits. A brace that does not keep its clearances is never placed (common practice).
 */
import type { BraceStock } from '../catalog/index.ts'
import type { Design } from '../design/index.ts'
import type { Side } from '../dock.ts'
import { atLeast, SLACK } from '../numbers.ts'
import type { Shop } from '../shop.ts'
import type { Bed } from '../site/index.ts'
import { padHeight } from './bodies.ts'
import type { PlacedLeg } from './legs.ts'
import type { PlacedPair } from './pairs.ts'

/** One brace tried on a pair one way round. */
export interface BraceFit {
  readonly brace: BraceStock
  readonly low: PlacedLeg
  readonly high: PlacedLeg
  readonly rise: number
  /** Elevations of the holes, m. */
  readonly lowZ: number
  readonly highZ: number
  /** Of the low end to the bed at its leg, of the whole brace to the bed under it, of the low end to the pad, m. */
  readonly toBedAtLeg: number
  readonly toBed: number
  readonly toPad: number
  /** Of the high end to frame or sleeve, m. */
  readonly toFrame: number
  readonly fits: boolean
}

export interface BracedPair {
  readonly pair: PlacedPair
  readonly longest: number | null
  readonly needsBrace: boolean
  /** Left out by the Design. */
  readonly leftOut: boolean
  readonly level: boolean
  readonly fit: BraceFit | null
  /** What was tried and did not fit, best first, where none did. */
  readonly tried: readonly BraceFit[]
}

const NONE: readonly BraceFit[] = []

/** Bed under a brace is looked at every so many m. */
const LOOK = 0.1

export function braceAll(pairs: readonly PlacedPair[], design: Design, shop: Shop, bed: Bed): BracedPair[] {
  const { braceFrom, braceLevel } = shop.rules
  const none = new Set(design.dock.bracing?.none ?? [])
  let next: Side = design.dock.bracing?.first ?? 'left'
  const candidatesFor = rememberedCandidates(shop)
  return pairs.map((pair) => {
    const [a, b] = pair.legs
    // A pair one of whose legs has no length cannot be judged by length: it needs a longer leg, and a brace, before anything else.
    const longest = a.stock && b.stock ? Math.max(a.stock.length, b.stock.length) : null
    const needsBrace = longest === null || atLeast(longest, braceFrom)
    const leftOut = none.has(pair.id)
    const level = Math.abs(a.bed - b.bed) <= braceLevel + SLACK
    const idle = { pair, longest, needsBrace, leftOut, level, fit: null, tried: NONE }
    if (!needsBrace || leftOut) return idle
    const wanted = pair.across && level ? (next === 'left' ? a : b) : level ? a : a.bed < b.bed ? a : b
    const other = wanted === a ? b : a
    const tried: BraceFit[] = []
    for (const brace of candidatesFor(pair, longest)) {
      for (let way = 0; way < (level ? 2 : 1); way++) {
        const [low, high] = way === 0 ? [wanted, other] : [other, wanted]
        const fit = tryBrace(pair, brace, low, high, design, shop, bed)
        if (!fit) continue
        if (!fit.fits) {
          tried.push(fit)
          continue
        }
        if (pair.across && level) next = low === a ? 'right' : 'left'
        return { ...idle, fit }
      }
    }
    return { ...idle, tried }
  })
}

/** Pairs alike in spacing and legs try the same braces: a long dock has few kinds of pairs. */
function rememberedCandidates(shop: Shop): (pair: PlacedPair, longest: number | null) => BraceStock[] {
  const known: { spacing: number; longest: number | null; braces: BraceStock[] }[] = []
  return (pair, longest) => {
    for (const k of known)
      if (k.longest === longest && Math.abs(k.spacing - pair.spacing) < 1e-9) return k.braces
    const braces = candidates(pair, longest, shop)
    if (known.length < 32) known.push({ spacing: pair.spacing, longest, braces })
    return braces
  }
}

/** Braces meant for legs this long first, then the others; only those meant for this spacing. */
function candidates(pair: PlacedPair, longest: number | null, shop: Shop): BraceStock[] {
  const spaced = shop.braces.filter(
    ({ spacing }) => atLeast(pair.spacing, spacing.from) && atLeast(spacing.to, pair.spacing),
  )
  const meant = ({ legs }: BraceStock): boolean =>
    longest === null ? false : atLeast(longest, legs.from) && atLeast(legs.to, longest)
  const apart = ({ legs }: BraceStock): number =>
    longest === null ? -legs.to : Math.max(legs.from - longest, longest - legs.to, 0)
  return spaced.sort(
    (p, q) => Number(meant(q)) - Number(meant(p)) || apart(p) - apart(q) || q.holes - p.holes,
  )
}

/** Null where the brace cannot span the holes at all. */
function tryBrace(
  pair: PlacedPair,
  brace: BraceStock,
  low: PlacedLeg,
  high: PlacedLeg,
  design: Design,
  shop: Shop,
  bed: Bed,
): BraceFit | null {
  const { reach, height } = shop.catalog.clamp
  const span = pair.spacing - 2 * reach
  if (span <= 0 || brace.holes <= span) return null
  const rise = Math.sqrt(brace.holes * brace.holes - span * span)
  const under =
    design.dock.deckHeight -
    Math.max(shop.shape(low.section.frame).lowest, shop.shape(high.section.frame).lowest)
  // Soft bottom over a firm one is where the brace would drag, so the bed here is what the water ends at.
  const lowGround = bed.bedAt(low.x, low.y)
  const middle = (under + Math.max(lowGround, bed.bedAt(high.x, high.y))) / 2
  const lowZ = middle - rise / 2
  const highZ = middle + rise / 2
  const tube = shop.tubeHalf(brace)
  const half = Math.max(height / 2, tube)
  const toBedAtLeg = lowZ - half - lowGround
  const toPad = lowZ - half - (low.bed + padHeight(low.pad))
  const toFrame = under - (highZ + half)
  const toBed = Math.min(toBedAtLeg, nearestBed(low, high, lowZ, highZ, tube, bed))
  const { braceToBed, braceToPad, braceToFrame } = shop.rules
  const fits = atLeast(toBed, braceToBed) && atLeast(toPad, braceToPad) && atLeast(toFrame, braceToFrame)
  return { brace, low, high, rise, lowZ, highZ, toBedAtLeg, toBed, toPad, toFrame, fits }
}

/** Least height of the tube's underside over the bed between the two legs, m. */
function nearestBed(
  low: PlacedLeg,
  high: PlacedLeg,
  lowZ: number,
  highZ: number,
  tube: number,
  bed: Bed,
): number {
  const n = Math.ceil(Math.sqrt((high.x - low.x) ** 2 + (high.y - low.y) ** 2) / LOOK)
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i <= n; i++) {
    const t = i / n
    const ground = bed.bedAt(low.x + t * (high.x - low.x), low.y + t * (high.y - low.y))
    least = Math.min(least, lowZ + t * (highZ - lowZ) - tube - ground)
  }
  return least
}

/** Of the low end as told: to bed or pad, the nearer. */
export const lowClearance = (fit: BraceFit): number => Math.min(fit.toBedAtLeg, fit.toPad)
