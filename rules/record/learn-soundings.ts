/**
 * How far a shop's soundings are off, from depths measured at legs against the bed that was sounded there.
 *
 * What was measured less what was expected is of variance s² A + g S: s the error of one sounding, A what the soundings that the
 * expectation is made of bring in, and one more for the reading at the leg itself, which is a sounding too; g how rough the beds are
 * between soundings, S what that does (`rules/site/error.ts`). Each dock has an offset of its own, for the level of the day is known no
 * better than it was read. Both s² and g are found together, by restricted maximum likelihood: the equations of MINQUE (Rao 1971;
 * Searle, Casella and McCulloch, Variance Components, 1992, section 11.3), asked again from what they gave until nothing changes. Their
 * covariance is 2 / tr(P K P K).
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

/** How far soundings were off, from legs that were measured. */
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
const MOST = 60
/** To begin with: ordinary figures, m2 and m2/m; the answer does not hang on them. */
const BEGIN = [0.03 ** 2, 0.002] as const
const ROUNDS = 50
/** Least of both: under half a millimeter, and next to no roughness. */
const LEAST = [0.0005 ** 2, 1e-7] as const

export function soundingFit(samples: readonly SoundingSample[]): SoundingFit | null {
  const parts = samples.filter(({ at }) => at.length >= 2).map(partOf)
  if (parts.length === 0) return null
  let at: readonly [number, number] = BEGIN
  let spread = 0
  for (let round = 0; round < ROUNDS; round++) {
    const next = asked(parts, at)
    if (!next) return null
    spread = next.spread
    const still = Math.abs(next.at[0] - at[0]) < 1e-6 * at[0] && Math.abs(next.at[1] - at[1]) < 1e-4 * at[1]
    at = next.at
    if (still) break
  }
  const sd = Math.sqrt(at[0])
  // Near nothing the error of the variance says it better than its slope.
  const error = Math.min(Math.sqrt(spread) / (2 * sd), Math.sqrt(Math.sqrt(spread)))
  return {
    ...{ sd: round6(sd), error: round6(error) },
    count: parts.reduce((sum, { n }) => sum + n, 0),
    docks: parts.length,
    offset: round6(parts.reduce((sum, { mean }) => sum + mean, 0) / parts.length),
  }
}

interface Part {
  readonly n: number
  readonly mean: number
  readonly off: Float64Array
  readonly kinds: readonly [Matrix, Matrix]
}

/** By rows. */
type Matrix = readonly Float64Array[]

function partOf({ site, at }: SoundingSample): Part {
  const step = Math.ceil(at.length / MOST)
  const legs = at.filter((_, i) => i % step === 0)
  const bed = makeBed(site)
  const errors = errorsOf(bed)
  const known = legs.map(({ x, y }) => errors.known(x, y))
  const off = Float64Array.from(legs, ({ x, y, bed: z }) => z - bed.firmAt(x, y))
  const n = legs.length
  const matrix = (entry: (i: number, k: number) => number): Matrix =>
    Array.from({ length: n }, (_, i) => Float64Array.from({ length: n }, (_, k) => entry(i, k)))
  return {
    ...{ n, off, mean: off.reduce((sum, one) => sum + one, 0) / n },
    kinds: [
      matrix((i, k) => (i === k ? 1 : 0) + sharedNoise(known[i]!, known[k]!)),
      matrix((i, k) => sharedSpread(errors, known[i]!, known[k]!)),
    ],
  }
}

/** One round: both variances from those before, and the variance of the first. Null where nothing tells them. */
function asked(
  parts: readonly Part[],
  [s, g]: readonly [number, number],
): { readonly at: readonly [number, number]; readonly spread: number } | null {
  let [f00, f01, f11, q0, q1] = [0, 0, 0, 0, 0]
  for (const { n, off, kinds } of parts) {
    const [a, b] = kinds
    const p = projected(a.map((row, i) => row.map((one, k) => s * one + g * b[i]![k]!)))
    const [pa, pb] = [product(p, a), product(p, b)]
    const pr = times(p, off)
    q0 += dot(pr, times(a, pr))
    q1 += dot(pr, times(b, pr))
    for (let i = 0; i < n; i++)
      for (let k = 0; k < n; k++) {
        f00 += pa[i]![k]! * pa[k]![i]!
        f01 += pa[i]![k]! * pb[k]![i]!
        f11 += pb[i]![k]! * pb[k]![i]!
      }
  }
  const det = f00 * f11 - f01 * f01
  if (!(f00 > 0)) return null
  const alone = (): readonly [number, number] => [Math.max(LEAST[0], (q0 - f01 * LEAST[1]) / f00), LEAST[1]]
  // Legs at soundings alone tell nothing of what is between.
  if (!(det > 1e-12 * f00 * f11)) return { at: alone(), spread: 2 / f00 }
  const both = [(f11 * q0 - f01 * q1) / det, (f00 * q1 - f01 * q0) / det] as const
  if (both[1] < LEAST[1]) return { at: alone(), spread: (2 * f11) / det }
  return { at: [Math.max(LEAST[0], both[0]), both[1]], spread: (2 * f11) / det }
}

/** V⁻¹ less what is alike for all legs of a dock: V⁻¹ − V⁻¹1 1'V⁻¹ / 1'V⁻¹1. */
function projected(v: Matrix): Matrix {
  const inverse = inverseOf(v)
  const sums = inverse.map((row) => row.reduce((sum, one) => sum + one, 0))
  const all = sums.reduce((sum, one) => sum + one, 0)
  return inverse.map((row, i) => row.map((one, k) => one - (sums[i]! * sums[k]!) / all))
}

/** Of a symmetric positive definite matrix, by Gauss and Jordan without pivots. */
function inverseOf(given: Matrix): Matrix {
  const n = given.length
  const rows = given.map((row, i) => {
    const wide = new Float64Array(2 * n)
    wide.set(row)
    wide[n + i] = 1
    return wide
  })
  for (let c = 0; c < n; c++) {
    const pivot = rows[c]!
    const by = 1 / pivot[c]!
    for (let k = 0; k < 2 * n; k++) pivot[k]! *= by
    for (let i = 0; i < n; i++) {
      const row = rows[i]!
      const share = row[c]!
      if (i === c || share === 0) continue
      for (let k = 0; k < 2 * n; k++) row[k]! -= share * pivot[k]!
    }
  }
  return rows.map((row) => row.slice(n))
}

const dot = (a: Float64Array, b: Float64Array): number => a.reduce((sum, one, i) => sum + one * b[i]!, 0)
const times = (a: Matrix, by: Float64Array): Float64Array => Float64Array.from(a, (row) => dot(row, by))
const product = (a: Matrix, b: Matrix): Matrix =>
  a.map((row) => Float64Array.from(row, (_, k) => row.reduce((sum, one, i) => sum + one * b[i]![k]!, 0)))

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
