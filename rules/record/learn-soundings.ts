/**
 * How far a shop's soundings are off, from depths measured at legs against the bed that was sounded there.
 *
 * What was measured less what was expected is of variance s² A + S: s the error of one sounding, A what the soundings that the expectation
 * is made of bring in, and one more for the reading at the leg itself, which is a sounding too; S what the bed does between soundings (of
 * the roughness that the survey itself shows, `rules/site/error.ts`). Each dock has an offset of its own, for the level of the day is
 * known no better than it was read: taken out with M = 1 − 1/n. So E[r'Mr] = s² tr(MA) + tr(MS), whatever legs have in common, and
 * Var[r'Mr] = 2 tr(MVMV) for normal errors (Searle 1971, Linear Models, theorem 1 and corollary 1 of chapter 2).
 */
import type { Design } from '../design/index.ts'
import { round6 } from '../numbers.ts'
import type { Errors, Known } from '../site/error.ts'
import { errorsOf } from '../site/error-at.ts'
import { makeBed } from '../site/index.ts'

/** Depths measured at the legs of one dock. */
export interface SoundingSample {
  readonly site: Design['site']
  /** Elevation of the bottom, m. */
  readonly at: readonly { readonly x: number; readonly y: number; readonly bed: number }[]
}

export interface SoundingFit {
  /** One standard deviation of a sounding, m, and one standard error of that. */
  readonly sd: number
  readonly error: number
  /** Measured legs, and docks that they are of. */
  readonly count: number
  readonly docks: number
  /** What was measured less what was expected, the mean of all docks, m: as much as levels were off. */
  readonly offset: number
}

/** More legs of one dock add little, and cost their cube. */
const MOST = 100

export function soundingFit(samples: readonly SoundingSample[]): SoundingFit | null {
  const parts = samples.map(partOf).filter((part) => part.n >= 2)
  if (parts.length === 0) return null
  const sum = (of: (part: Part) => number): number => parts.reduce((all, part) => all + of(part), 0)
  const noise = sum(({ traceA }) => traceA)
  const variance = Math.max(0, sum(({ square, traceS }) => square - traceS) / noise)
  const spread = sum((part) => 2 * traceOfSquare(part, variance))
  const sd = Math.sqrt(variance)
  const ofVariance = Math.sqrt(spread) / noise
  return {
    sd: round6(sd),
    // Near nothing the error of the variance says it better than its slope.
    error: round6(sd > 0 ? Math.min(ofVariance / (2 * sd), Math.sqrt(ofVariance)) : Math.sqrt(ofVariance)),
    count: sum(({ n }) => n),
    docks: parts.length,
    offset: round6(sum(({ mean }) => mean) / parts.length),
  }
}

interface Part {
  readonly n: number
  readonly mean: number
  readonly square: number
  readonly traceA: number
  readonly traceS: number
  /** M A and M S, by rows. */
  readonly a: readonly Float64Array[]
  readonly s: readonly Float64Array[]
}

function partOf({ site, at }: SoundingSample): Part {
  const step = Math.ceil(at.length / MOST)
  const legs = at.filter((_, i) => i % step === 0)
  const bed = makeBed(site)
  const errors = errorsOf(bed)
  const known = legs.map(({ x, y }) => errors.known(x, y))
  const off = legs.map(({ x, y, bed: z }) => z - bed.firmAt(x, y))
  const n = legs.length
  const mean = off.reduce((sum, one) => sum + one, 0) / (n || 1)
  const rough = n > 0 ? errors.roughness() : 0
  const a = centered(n, (i, k) => (i === k ? 1 : 0) + sharedNoise(known[i]!, known[k]!))
  const s = centered(n, (i, k) => rough * sharedSpread(errors, known[i]!, known[k]!))
  const trace = (rows: readonly Float64Array[]): number => rows.reduce((sum, row, i) => sum + row[i]!, 0)
  return {
    ...{ n, mean, a, s, traceA: trace(a), traceS: trace(s) },
    square: off.reduce((sum, one) => sum + (one - mean) ** 2, 0),
  }
}

/** M times a symmetric matrix: each column less its mean. */
function centered(n: number, entry: (i: number, k: number) => number): Float64Array[] {
  const rows = Array.from({ length: n }, (_, i) => Float64Array.from({ length: n }, (_, k) => entry(i, k)))
  for (let k = 0; k < n; k++) {
    const mean = rows.reduce((sum, row) => sum + row[k]!, 0) / n
    for (const row of rows) row[k]! -= mean
  }
  return rows
}

/** What errors of the same soundings bring into two places; the water's edge, which counts for the rest, is one of them. */
function sharedNoise(a: Known | null, b: Known | null): number {
  // A wall's height is known as well as a sounding, and is one for all places on it.
  if (!a || !b) return a === b ? 1 : 0
  const other = new Map(b.shares)
  let [sum, restA, restB] = [0, 1, 1]
  for (const [i, share] of a.shares) {
    sum += share * (other.get(i) ?? 0)
    restA -= share
  }
  for (const [, share] of b.shares) restB -= share
  return sum + restA * restB
}

/** Covariance of what the bed does between soundings at two places, in units of roughness. */
function sharedSpread({ covariance, places }: Errors, a: Known | null, b: Known | null): number {
  if (!a || !b) return 0
  const { x, y } = places
  let sum = covariance(a.x, a.y, b.x, b.y)
  for (const [i, share] of a.shares) sum -= share * covariance(x[i]!, y[i]!, b.x, b.y)
  for (const [k, share] of b.shares) sum -= share * covariance(a.x, a.y, x[k]!, y[k]!)
  for (const [i, one] of a.shares)
    for (const [k, two] of b.shares) sum += one * two * covariance(x[i]!, y[i]!, x[k]!, y[k]!)
  return sum
}

/** tr(MVMV) with V = variance · A + S. */
function traceOfSquare({ n, a, s }: Part, variance: number): number {
  let sum = 0
  for (let i = 0; i < n; i++)
    for (let k = 0; k < n; k++) sum += (variance * a[i]![k]! + s[i]![k]!) * (variance * a[k]![i]! + s[k]![i]!)
  return sum
}
