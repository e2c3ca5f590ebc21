/** Whether each brace still fits where the bed and the deck are now, and where its holes go. */
import { deriveKit } from '../kit.ts'
import { round6 } from '../numbers.ts'
import { type BracedPair, braceAll, type ClampAt, clampsOf } from '../parts/braces.ts'
import type { PlacedLeg } from '../parts/legs.ts'
import type { PlacedPair } from '../parts/pairs.ts'
import type { Project } from '../project.ts'
import type { Bed } from '../site/index.ts'
import type { NextLeg } from './next-year.ts'

/** Which brace goes between two legs next year. */
export interface NextBrace {
  /** Id of the pair, its legs, the one with the low end first. */
  readonly pair: string
  readonly legs: readonly [string, string]
  /** The brace that the plan has; null for none. */
  readonly planned: string | null
  /** The one that fits now: the same, another of the shop, or none. */
  readonly code: string | null
  /** Its holes over the soles of the two legs, m; null without one. */
  readonly up: readonly [low: number, high: number] | null
}

/** Pairs that need a brace or have one. Its low end stays on the leg that it is on, where the ground lets it. */
export function nextBraces(project: Project, next: readonly NextLeg[], deck: number): NextBrace[] {
  const { design, catalog, bed } = project
  const { pairs, shop } = deriveKit(design, catalog, bed)
  const beds = new Map(next.map(({ leg, bed: at }) => [leg.id, at]))
  const now = (leg: PlacedLeg): PlacedLeg => ({ ...leg, bed: beds.get(leg.id) ?? leg.bed })
  const clamps: ClampAt[] = []
  return pairs.flatMap((before) => {
    const [a, b] = before.pair.legs
    const { along } = before.pair
    const pair: PlacedPair = { ...before.pair, legs: [now(a), now(b)], ...(along && { along: clamps }) }
    const first = before.fit?.low === b ? 'right' : 'left'
    const dock = { ...design.dock, deckHeight: deck, bracing: { ...design.dock.bracing, first } as const }
    const [after] = braceAll([pair], {
      ...{ shop, bed: movedBed(bed, pair) },
      design: { ...design, dock },
    })
    if (after?.fit && !along) clamps.push(...clampsOf(after.fit, shop))
    return after ? told(before, after) : []
  })
}

function told(before: BracedPair, after: BracedPair): NextBrace[] {
  if (!before.fit && !after.needsBrace) return []
  const [a, b] = after.pair.legs
  const { fit } = after
  const low = fit?.low ?? (a.bed <= b.bed ? a : b)
  const high = low === a ? b : a
  return [
    {
      pair: after.pair.id,
      legs: [low.id, high.id],
      planned: before.fit?.brace.code ?? null,
      code: fit?.brace.code ?? null,
      up: fit ? [round6(fit.lowZ - low.bed), round6(fit.highZ - high.bed)] : null,
    },
  ]
}

/** Between its two legs the bottom moved as they say, in a straight line. */
function movedBed(bed: Bed, { legs: [a, b] }: PlacedPair): Bed {
  const by = (leg: PlacedLeg): number => leg.bed - bed.firmAt(leg.x, leg.y)
  const [low, high] = [by(a), by(b)]
  const [dx, dy] = [b.x - a.x, b.y - a.y]
  const shift = (x: number, y: number): number => {
    const t = ((x - a.x) * dx + (y - a.y) * dy) / (dx * dx + dy * dy || 1)
    return low + Math.max(0, Math.min(1, t)) * (high - low)
  }
  return {
    ...bed,
    bedAt: (x, y) => bed.bedAt(x, y) + shift(x, y),
    firmAt: (x, y) => bed.firmAt(x, y) + shift(x, y),
  }
}
