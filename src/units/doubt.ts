/** Lengths that can be meant, and seldom are: asked about where they were typed, never refused. */
import { EXACT, type Units } from '../../rules/index.ts'

export type LengthKind = 'depth' | 'distance' | 'height'

export interface Doubt {
  readonly why: 'smaller-unit' | LengthKind
  /** What may have been meant, m. */
  readonly instead?: number
}

/** Deeper, farther and higher than this is no shore for a dock on legs, m. */
const MOST: Readonly<Record<LengthKind, number>> = {
  depth: 60 * EXACT.foot,
  distance: 1000 * EXACT.foot,
  height: 30 * EXACT.foot,
}
/** From here on a plain number is more likely inches, or centimeters, than feet or meters. */
const PLAIN = { imperial: { from: 12, unit: EXACT.inch }, metric: { from: 20, unit: 0.01 } } as const

/** `meters` as it was read from `typed`. Null: nothing to ask about. */
export function doubtOf(kind: LengthKind, meters: number, typed: string, units: Units): Doubt | null {
  const plain = Number(typed.trim().replace(',', '.'))
  const { from, unit } = PLAIN[units]
  // A distance of 18 ft is an ordinary one.
  if (kind !== 'distance' && plain >= from) return { why: 'smaller-unit', instead: plain * unit }
  return Math.abs(meters) > MOST[kind] + 1e-9 ? { why: kind } : null
}
