/**
 * Braces: the diagonal of a leg pair, hole to hole, with its exact fit.
 *
 * Hole to hole B over s between the clamp holes rises r = sqrt(B^2 - s^2), on unequal ground as on level. The brace's middle stands
 * midway between the frame and the higher bed; the low end goes on the deeper leg. On level ground (beds within the catalog's
 * tolerance) the first has its low end left, or as the Design says, and braced level pairs alternate, unless only the other way
 * fits. A brace that does not keep its clearances is never placed (common practice). A lengthwise one (`along.ts`) hangs as near the middle as
 * its clearances and the clamps that are on its legs already let it, on level ground with its low end on the farther leg: it comes with that section.
 */
import type { BraceStock } from '../catalog/index.ts'
import type { Shop } from '../catalog-index.ts'
import type { Design } from '../design/index.ts'
import type { Side } from '../dock.ts'
import { atLeast, SLACK } from '../numbers.ts'
import type { Bed } from '../site/index.ts'
import { padHeight } from './bodies.ts'
import type { PlacedLeg } from './legs.ts'
import type { PlacedPair } from './pairs.ts'

/** One brace on a pair one way round. */
export interface BraceFit {
  readonly brace: BraceStock
  readonly low: PlacedLeg
  readonly high: PlacedLeg
  /** Elevations of the holes, m. */
  readonly lowZ: number
  readonly highZ: number
}

export interface BracedPair {
  readonly pair: PlacedPair
  readonly needsBrace: boolean
  /** Left out by the Design. */
  readonly leftOut: boolean
  readonly level: boolean
  readonly fit: BraceFit | null
  /** The leg that its low end goes on where that way round fits. */
  readonly wanted: PlacedLeg
}

/** What a brace's clearances are measured in: a kit has it. */
export interface BraceSite {
  readonly design: Design
  readonly shop: Shop
  readonly bed: Pick<Bed, 'bedAt'>
}

/** Bed under a brace is looked at every so many m. */
const LOOK = 0.1

/** The longer leg of a pair, m; null if no stock leg is long enough for one of them: such a pair counts as needing a brace. */
export const longestOf = ({ legs: [a, b] }: PlacedPair): number | null =>
  a.stock && b.stock ? Math.max(a.stock.length, b.stock.length) : null

export function braceAll(pairs: readonly PlacedPair[], site: BraceSite): BracedPair[] {
  const { design, shop } = site
  const { braceFrom, braceLevel } = shop.rules
  const none = new Set(design.dock.bracing?.none ?? [])
  let next: Side = design.dock.bracing?.first ?? 'left'
  const candidatesFor = rememberedCandidates(shop)
  return pairs.map((pair) => {
    const [a, b] = pair.legs
    const longest = longestOf(pair)
    const needsBrace = longest === null || !!pair.along || atLeast(longest, braceFrom)
    const leftOut = none.has(pair.id)
    const level = Math.abs(a.bed - b.bed) <= braceLevel + SLACK
    const far = pair.across ? next === 'right' : pair.along
    const wanted = (level ? far : b.bed <= a.bed) ? b : a
    const fit =
      needsBrace && !leftOut ? firstFit(pair, candidatesFor(pair, longest), wanted, level, site) : null
    if (fit && pair.across && level) next = fit.low === a ? 'right' : 'left'
    return { pair, needsBrace, leftOut, level, fit, wanted }
  })
}

/** Each brace as wanted, then on level ground the other way round; the first that keeps its clearances, or null. */
export function firstFit(
  pair: PlacedPair,
  braces: readonly BraceStock[],
  wanted: PlacedLeg,
  level: boolean,
  site: BraceSite,
): BraceFit | null {
  for (const brace of braces)
    for (let way = 0; way < (level ? 2 : 1); way++) {
      const fit = hang(pair, brace, wanted, way, site)
      for (const up of fit ? shiftsOf(fit, pair, site) : []) {
        const moved = { ...fit!, lowZ: fit!.lowZ + up, highZ: fit!.highZ + up }
        if (keepsClear(moved, site)) return moved
      }
    }
  return null
}

/** A clamp on a leg, m. */
export interface ClampAt {
  readonly leg: string
  readonly z: number
  /** Half the height of what is there, clamp or tube. */
  readonly half: number
}

export const clampsOf = ({ brace, low, high, lowZ, highZ }: BraceFit, shop: Shop): ClampAt[] => {
  const half = halfEnd(brace, shop)
  return [
    { leg: low.id, z: lowZ, half },
    { leg: high.id, z: highZ, half },
  ]
}

/** How far a brace's ends are over other clamps on the same leg, and how far they must be from them at least, m. */
export const besideClamps = (
  fit: BraceFit,
  { along = [] }: PlacedPair,
  { shop }: BraceSite,
): { readonly over: number; readonly least: number }[] =>
  clampsOf(fit, shop).flatMap((own) =>
    along
      .filter(({ leg }) => leg === own.leg)
      .map(({ z, half }) => ({ over: own.z - z, least: own.half + half + shop.rules.braceToPad })),
  )

/** By how much it may hang off the middle so that it keeps its clearances and no two clamps are in each other's way, the least first, m. */
function shiftsOf(fit: BraceFit, pair: PlacedPair, site: BraceSite): number[] {
  if (!pair.along) return [0]
  const { braceToPad, braceToBed, braceToFrame } = site.shop.rules
  const beside = besideClamps(fit, pair, site)
  return (
    [
      0,
      braceToPad - toPad(fit, site),
      braceToBed - toBed(fit, site),
      toFrame(fit, site) - braceToFrame,
      ...beside.flatMap(({ over, least }) => [-over - least, least - over]),
    ]
      .filter((up) => beside.every(({ over, least }) => atLeast(Math.abs(over + up), least)))
      // Up, where it is as far up as down.
      .sort((a, b) => Math.abs(a - SLACK) - Math.abs(b - SLACK))
  )
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
export function candidates(pair: PlacedPair, longest: number | null, shop: Shop): BraceStock[] {
  const spaced = shop.braces.filter(
    ({ spacing, along = false }) =>
      along === !!pair.along && atLeast(pair.spacing, spacing.from) && atLeast(spacing.to, pair.spacing),
  )
  const meant = ({ legs }: BraceStock): boolean =>
    longest === null ? false : atLeast(longest, legs.from) && atLeast(legs.to, longest)
  const apart = ({ legs }: BraceStock): number =>
    longest === null ? -legs.to : Math.max(legs.from - longest, longest - legs.to, 0)
  return spaced.sort(
    (p, q) => Number(meant(q)) - Number(meant(p)) || apart(p) - apart(q) || q.holes - p.holes,
  )
}

/** Midway, with its low end on the leg `wanted` (`way` 0) or on the other (1); null where the brace cannot span the holes at all. */
export function hang(
  pair: PlacedPair,
  brace: BraceStock,
  wanted: PlacedLeg,
  way: number,
  { design, shop, bed }: BraceSite,
): BraceFit | null {
  const [a, b] = pair.legs
  const low = (wanted === a) === (way === 0) ? a : b
  const high = low === a ? b : a
  const span = pair.spacing - 2 * shop.catalog.clamp.reach
  if (span <= 0 || brace.holes <= span) return null
  const rise = Math.sqrt(brace.holes * brace.holes - span * span)
  const under = undersideOver(low, high, design, shop)
  // Soft bottom over a firm one is where the brace would drag, so the bed here is what the water ends at.
  const middle = (under + Math.max(bed.bedAt(low.x, low.y), bed.bedAt(high.x, high.y))) / 2
  return { brace, low, high, lowZ: middle - rise / 2, highZ: middle + rise / 2 }
}

/** The lower of the undersides of two legs' frames with their sleeves, m. */
const undersideOver = (a: PlacedLeg, b: PlacedLeg, design: Design, shop: Shop): number =>
  design.dock.deckHeight - Math.max(shop.shape(a.section.frame).lowest, shop.shape(b.section.frame).lowest)

/** Half the height of what is at a brace's end, clamp or tube, m. */
const halfEnd = (brace: BraceStock, shop: Shop): number =>
  Math.max(shop.catalog.clamp.height / 2, shop.tubeHalf(brace))

/** Hole to hole, m. */
export function riseOf({ brace }: BraceFit, { spacing }: PlacedPair, shop: Shop): number {
  const span = spacing - 2 * shop.catalog.clamp.reach
  return Math.sqrt(brace.holes * brace.holes - span * span)
}

/** Of the low end to the bed at its leg, m. */
export const toBedAtLeg = ({ brace, low, lowZ }: BraceFit, { shop, bed }: BraceSite): number =>
  lowZ - halfEnd(brace, shop) - bed.bedAt(low.x, low.y)

/** Of the low end to the pad, m. */
export const toPad = ({ brace, low, lowZ }: BraceFit, { shop }: BraceSite): number =>
  lowZ - halfEnd(brace, shop) - (low.bed + padHeight(low.pad))

/** Of the high end to frame or sleeve, m. */
export const toFrame = ({ brace, low, high, highZ }: BraceFit, { design, shop }: BraceSite): number =>
  undersideOver(low, high, design, shop) - (highZ + halfEnd(brace, shop))

/** Of the whole brace to the bed under it, m. */
export function toBed(fit: BraceFit, site: BraceSite): number {
  const { brace, low, high, lowZ, highZ } = fit
  const { shop, bed } = site
  const tube = shop.tubeHalf(brace)
  let least = toBedAtLeg(fit, site)
  const n = Math.ceil(Math.sqrt((high.x - low.x) ** 2 + (high.y - low.y) ** 2) / LOOK)
  for (let i = 0; i <= n; i++) {
    const t = i / n
    const ground = bed.bedAt(low.x + t * (high.x - low.x), low.y + t * (high.y - low.y))
    least = Math.min(least, lowZ + t * (highZ - lowZ) - tube - ground)
  }
  return least
}

const keepsClear = (fit: BraceFit, site: BraceSite): boolean =>
  atLeast(toFrame(fit, site), site.shop.rules.braceToFrame) &&
  atLeast(toPad(fit, site), site.shop.rules.braceToPad) &&
  atLeast(toBed(fit, site), site.shop.rules.braceToBed)

/** Of the low end as told: to bed or pad, the nearer, m. */
export const lowClearance = (fit: BraceFit, site: BraceSite): number =>
  Math.min(toBedAtLeg(fit, site), toPad(fit, site))
