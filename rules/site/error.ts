/**
 * How far off the bed may be, one standard deviation: the error of any weighted mean of soundings under the covariance of `kriging.ts`
 * (Chilès and Delfiner 2012, equation 3.2), and of the soundings themselves.
 *
 * The roughness is what the soundings are off when each is told from the others, with the usual one counting as much as PRIOR of them:
 * few soundings say little about it. It is the mean of what it may be (a scaled inverse chi-squared, Gelman et al., Bayesian Data
 * Analysis, 3rd ed. 2013, section 2.6), which is more than the likeliest where little is known.
 */
import type { Covariance, Factor, Places } from './kriging.ts'
import { forward } from './kriging.ts'

/** Usual roughness of a lake bed, m2/m: 45 mm after a meter, 90 mm after four. Judgment. */
const ROUGHNESS = 0.002
/** So many soundings' worth. Judgment. */
const PRIOR = 4

/** By place, what it counts for. */
export type Shares = readonly (readonly [place: number, share: number])[]

/** Of one sounding told from others: squared miss, variance of it in units of roughness, and what sounding errors add. */
export interface Miss {
  readonly square: number
  readonly unit: number
  readonly noise: number
}

/** L v = k, with k the covariances of a place with all others: what two places share of these is the product of theirs. */
export function toldBy(
  factor: Factor,
  covariance: Covariance,
  { x, y }: Places,
  px: number,
  py: number,
): Float64Array {
  const k = new Float64Array(factor.n)
  for (let i = 0; i < factor.n; i++) k[i] = covariance(px, py, x[i]!, y[i]!)
  return forward(factor, k)
}

/** L' s. */
export function transposed({ n, rows }: Factor, s: Float64Array): Float64Array {
  const out = new Float64Array(n)
  for (let i = 0; i < n; i++) {
    const row = rows[i]!
    const share = s[i]!
    for (let j = 0; j <= i; j++) out[j] = out[j]! + row[j]! * share
  }
  return out
}

/** Weighted by how much of a miss is roughness, not sounding error. */
export function roughnessOf(misses: readonly Miss[]): number {
  let sum = PRIOR * ROUGHNESS
  let all = PRIOR
  for (const { square, unit, noise } of misses) {
    const part = (unit * ROUGHNESS) / (unit * ROUGHNESS + noise)
    const weight = part * part
    sum += (weight * (square - noise)) / unit
    all += weight
  }
  return Math.max(sum / (all - 2), ROUGHNESS / 50)
}

/** Every sounding told from all others: from the inverse of the covariance (Rasmussen and Williams 2006, equation 5.12). */
export function missesOfAll(factor: Factor, values: Float64Array, soundingError: number): Miss[] {
  const { n, rows } = factor
  // Columns of the inverse factor, so that the inverse is their products.
  const columns = Array.from({ length: n }, (_, i) => {
    const e = new Float64Array(n)
    e[i] = 1
    return forward(factor, e)
  })
  const told = forward(factor, values)
  // Columns are 0 before their own number.
  const dot = (a: Float64Array, b: Float64Array, from: number): number => {
    let sum = 0
    for (let i = from; i < n; i++) sum += a[i]! * b[i]!
    return sum
  }
  return rows.map((_, i) => {
    const own = dot(columns[i]!, columns[i]!, i)
    let squares = 0
    for (let k = 0; k < n; k++) squares += (dot(columns[i]!, columns[k]!, Math.max(i, k)) / own) ** 2
    return {
      square: (dot(columns[i]!, told, i) / own) ** 2,
      unit: 1 / own,
      noise: soundingError ** 2 * squares,
    }
  })
}

/**
 * What is known of the bed at a place: what each sounding counts for there, and the error that is left. Landward of where a bank comes to
 * its top, the place is that.
 */
export interface Known {
  readonly x: number
  readonly y: number
  readonly shares: Shares
  /** Variance of the bed less that mean, in units of roughness. */
  readonly spread: number
  /** Variance that sounding errors bring into it, in units of that of one sounding. */
  readonly noise: number
}

export interface Errors {
  /** One standard deviation, m. */
  at(x: number, y: number): number
  /** Null where the ground is a wall's, known as well as a sounding. */
  known(x: number, y: number): Known | null
  /** m2/m */
  roughness(): number
  /** Of one sounding, m. */
  readonly sounding: number
  readonly covariance: Covariance
  /** Of the soundings. */
  readonly places: Places
}

/** Variance of the bed at a place less the mean of soundings with these shares, in units of roughness. */
export function varianceOf(
  covariance: Covariance,
  { x, y }: Places,
  shares: Shares,
  px: number,
  py: number,
): number {
  let sum = covariance(px, py, px, py)
  for (const [i, a] of shares) {
    sum -= 2 * a * covariance(px, py, x[i]!, y[i]!)
    for (const [k, b] of shares) sum += a * b * covariance(x[i]!, y[i]!, x[k]!, y[k]!)
  }
  return Math.max(0, sum)
}

/** Where soundings count for less than all, the water's edge does for the rest, and that is known as well as a sounding. */
export function noiseOf(shares: Shares): number {
  let [squares, rest] = [0, 1]
  for (const [, share] of shares) {
    squares += share * share
    rest -= share
  }
  return squares + rest * rest
}

export const withAt = (of: Omit<Errors, 'at'>): Errors => ({
  ...of,
  at(x, y) {
    const { known, roughness, sounding } = of
    const told = known(x, y)
    return told ? Math.sqrt(roughness() * told.spread + sounding ** 2 * told.noise) : sounding
  },
})
