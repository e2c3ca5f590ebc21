/**
 * Depths corrected by those measured on the day. How far two places of the bed are off together is known from the soundings and the bed's
 * roughness (`site/error.ts`); today's level is off alike everywhere. So every depth measured tells something of all others: the mean and
 * variance of a normal distribution given some of its values (Rasmussen and Williams 2006, equations 2.23 and 2.24).
 */
import { betweenIn, varianceIn } from '../fit/between.ts'
import type { Errors, Known } from '../site/error.ts'
import type { Bed } from '../site/index.ts'
import { type Factor, forward } from '../site/kriging.ts'
import { choleskyOf } from './cholesky.ts'

export interface Place {
  readonly x: number
  readonly y: number
}

/** How much deeper it is than was to be expected, m, and one standard deviation of what that leaves open. */
export interface Correction {
  readonly deeper: number
  readonly sd: number
}

export interface Corrected {
  /** Of each place before anything is measured, m. */
  readonly prior: readonly number[]
  /** Of each place, from all that was measured. */
  readonly all: readonly Correction[]
  /** Of each place, from all that was measured elsewhere. */
  readonly others: readonly Correction[]
}

/** One place measured: its number, and how much deeper it was, m. */
export interface Difference {
  readonly place: number
  readonly deeper: number
}

/** Errors of depths at places, all that does not hang on what was measured. */
export interface DepthErrors {
  /** Of the bed alone, m. */
  readonly bed: readonly number[]
  /** m2 */
  readonly covariance: (a: number, b: number) => number
}

export function depthErrors(places: readonly Place[], errors: Errors, bed: Pick<Bed, 'survey'>): DepthErrors {
  const known = places.map(({ x, y }) => errors.known(x, y))
  const between = betweenOf(errors, bed)
  const covariance = (a: number, b: number): number => {
    const [p, q] = [known[a], known[b]]
    // On a wall it is known as well as a sounding, and alone.
    if (!(p && q)) return a === b ? errors.sounding ** 2 : 0
    return a === b ? varianceIn(errors, p) : varianceIn(errors, between(p, q))
  }
  return { bed: places.map((_, i) => Math.sqrt(covariance(i, i))), covariance }
}

/** As `betweenIn`; where all soundings count everywhere, by products of the factor's rows: it is asked of every two legs of a long dock. */
function betweenOf(errors: Errors, { survey }: Pick<Bed, 'survey'>): ReturnType<typeof betweenIn> {
  const factor = 'area' in survey ? survey.area.factor : null
  if (!factor) return betweenIn(errors)
  const made = new Map<Known, Dense>()
  const denseOf = (place: Known): Dense => {
    const dense = made.get(place) ?? densely(place, errors, factor)
    made.set(place, dense)
    return dense
  }
  return (a, b) => {
    const [p, q] = [denseOf(a), denseOf(b)]
    const common = errors.covariance(a.x, a.y, b.x, b.y)
    const spread =
      p.own && q.own
        ? common - dot(p.told, q.told)
        : common - dot(p.taken, q.told) - dot(q.taken, p.told) + dot(p.taken, q.taken)
    return { spread, noise: dot(p.shares, q.shares) + p.rest * q.rest }
  }
}

/** With L the factor, s the shares at a place, k the soundings' covariances with it. */
interface Dense {
  readonly shares: Float64Array
  /** What is left of 1. */
  readonly rest: number
  /** L' s, and what L gives k from: the same where the shares are kriging's own. */
  readonly taken: Float64Array
  readonly told: Float64Array
  readonly own: boolean
}

function densely({ x, y, shares, told }: Known, { covariance, places }: Errors, factor: Factor): Dense {
  const dense = new Float64Array(factor.n)
  let rest = 1
  for (const [i, share] of shares) {
    dense[i] = share
    rest -= share
  }
  if (told) return { shares: dense, rest, taken: told, told, own: true }
  const k = places.x.map((at, i) => covariance(x, y, at, places.y[i]!))
  return { shares: dense, rest, taken: transposed(factor, dense), told: forward(factor, k), own: false }
}

/** L' s. */
function transposed({ n, rows }: Factor, s: Float64Array): Float64Array {
  const out = new Float64Array(n)
  for (let i = 0; i < n; i++) {
    const row = rows[i]!
    for (let j = 0; j <= i; j++) out[j] = out[j]! + row[j]! * s[i]!
  }
  return out
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!
  return sum
}

/**
 * @param levelError one standard deviation of today's level, m
 * @param readingError of one depth measured on the day, m; more than 0
 */
export function corrected(
  errors: DepthErrors,
  measured: readonly Difference[],
  levelError: number,
  readingError: number,
): Corrected {
  const level = levelError ** 2
  const prior = errors.bed.map((sd) => Math.sqrt(sd ** 2 + level))
  const free = prior.map((sd): Correction => ({ deeper: 0, sd }))
  const m = measured.length
  if (m === 0) return { prior, all: free, others: free }
  const noise = readingError ** 2
  const factor = choleskyOf(m, (i, k) => {
    const [a, b] = [measured[i]!.place, measured[k]!.place]
    return errors.covariance(a, b) + level + (i === k ? noise : 0)
  })
  const told = forward(
    factor,
    Float64Array.from(measured, ({ deeper }) => deeper),
  )
  const all = prior.map((sd, place): Correction => {
    const k = Float64Array.from(measured, (one) => errors.covariance(place, one.place) + level)
    const v = forward(factor, k)
    return { deeper: dot(v, told), sd: Math.sqrt(Math.max(0, sd ** 2 - dot(v, v))) }
  })
  const others = [...all]
  measured.forEach(({ place, deeper }, i) => {
    // One told from all others: from the inverse (equation 5.12 there).
    const e = new Float64Array(m)
    e[i] = 1
    const column = forward(factor, e)
    const own = dot(column, column)
    const sd = Math.sqrt(Math.max(0, 1 / own - noise))
    others[place] = { deeper: deeper - dot(column, told) / own, sd }
    all[place] = { deeper, sd: readingError }
  })
  return { prior, all, others }
}
