/**
 * Depths corrected by those measured on the day. How far two places of the bed are off together is known from the soundings and the bed's
 * roughness (`site/error.ts`); today's level is off alike everywhere. So every depth measured tells something of all others: the mean and
 * variance of a normal distribution given some of its values (Rasmussen and Williams 2006, equations 2.23 and 2.24).
 */
import { betweenIn, type Variance, varianceIn } from '../fit/between.ts'
import { type Errors, type Known, toldBy, transposed } from '../site/error.ts'
import type { Bed } from '../site/index.ts'
import { backward, choleskyOf, type Factor, forward } from '../site/kriging.ts'

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
  /** How much higher the lake stands than was taken, and one standard deviation of that, m. */
  readonly level: { readonly higher: number; readonly sd: number }
}

/** One place measured: its number, how much deeper it was, and one standard deviation of that reading (more than 0), m. */
export interface Difference {
  readonly place: number
  readonly deeper: number
  readonly error: number
}

/** Errors of depths at places, all that does not hang on what was measured. */
export interface DepthErrors {
  /** Of the bed alone, m. */
  readonly bed: readonly number[]
  /** Covariance of every place's with that of one, m2; worked out once, for a day asks again after each depth measured. */
  readonly covariances: (place: number) => Float64Array
}

export function depthErrors(places: readonly Place[], errors: Errors, bed: Pick<Bed, 'survey'>): DepthErrors {
  const { survey } = bed
  const variance =
    'area' in survey && survey.area.factor
      ? denseVariance(places, errors, survey, survey.area.factor)
      : sparseVariance(places, errors)
  const covariance = (a: number, b: number): number => {
    const known = variance(a, b)
    // On a wall it is known as well as a sounding, and alone.
    return known ? varianceIn(errors, known) : a === b ? errors.sounding ** 2 : 0
  }
  const made = new Map<number, Float64Array>()
  const covariances = (place: number): Float64Array => {
    const column = made.get(place) ?? new Float64Array(places.map((_, i) => covariance(i, place)))
    made.set(place, column)
    return column
  }
  return { bed: places.map((_, i) => Math.sqrt(covariance(i, i))), covariances }
}

/** Null where one of two places is on a wall. */
type VarianceOf = (a: number, b: number) => Variance | null

/** Few soundings count at each place. */
function sparseVariance(places: readonly Place[], errors: Errors): VarianceOf {
  const known = places.map(({ x, y }) => errors.known(x, y))
  const between = betweenIn(errors)
  return (a, b) => {
    const [p, q] = [known[a], known[b]]
    return p && q ? (a === b ? p : between(p, q)) : null
  }
}

/** All soundings count everywhere: by products of the factor's rows, for it is asked of every two legs of a long dock. */
function denseVariance(
  places: readonly Place[],
  errors: Errors,
  survey: Extract<Bed['survey'], { area: unknown }>,
  factor: Factor,
): VarianceOf {
  const { xs } = survey.area.beds[0]!.table
  const made = places.map(({ x, y }): Dense | null => {
    const inside = x >= xs[0]! && x <= xs.at(-1)! && !(survey.wall && x < 0)
    if (inside) return krigedAt(x, y, errors, factor)
    const known = errors.known(x, y)
    return known && densely(known, errors, factor)
  })
  return (a, b) => {
    const [p, q] = [made[a], made[b]]
    if (!(p && q)) return null
    const common = errors.covariance(p.x, p.y, q.x, q.y)
    const spread =
      p.own && q.own
        ? common - dot(p.told, q.told)
        : common - dot(p.taken, q.told) - dot(q.taken, p.told) + dot(p.taken, q.taken)
    return { spread, noise: dot(p.shares, q.shares) + p.rest * q.rest }
  }
}

/** With L the factor, s the shares at a place, k the soundings' covariances with it. */
interface Dense extends Place {
  readonly shares: Float64Array
  /** What is left of 1. */
  readonly rest: number
  /** L' s, and what L gives k from: the same where the shares are kriging's own. */
  readonly taken: Float64Array
  readonly told: Float64Array
  readonly own: boolean
}

function krigedAt(x: number, y: number, { covariance, places }: Errors, factor: Factor): Dense {
  const told = toldBy(factor, covariance, places, x, y)
  const shares = backward(factor, told)
  return { x, y, shares, rest: restOf(shares), taken: told, told, own: true }
}

function densely({ x, y, shares: list }: Known, { covariance, places }: Errors, factor: Factor): Dense {
  const shares = new Float64Array(factor.n)
  for (const [i, share] of list) shares[i] = share
  const told = toldBy(factor, covariance, places, x, y)
  return { x, y, shares, rest: restOf(shares), taken: transposed(factor, shares), told, own: false }
}

const restOf = (shares: Float64Array): number => shares.reduce((rest, share) => rest - share, 1)

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!
  return sum
}

/** A reading is off by more than so many standard deviations of what all others say, and by more than that, m: it is of its own place alone. Judgment. */
const ALONE = { deviations: 3.5, least: 0.05 } as const
/** Of two that contradict each other it must be the worse by so much: else nobody knows which of them it is. */
const CLEARLY = 1.05
/** No more than this part of all is local: what most legs say is the bed. */
const MOST = 1 / 3

/**
 * A foot may come to stand on a stone or in a hole: that tells nothing of its neighbors. Such a reading has a variance of its own, and
 * depths at legs to come are no surer than what was found so far: by how far the readings are off the model together, and by the
 * stones among them.
 *
 * @param levelError one standard deviation of today's level, m
 */
export function corrected(
  errors: DepthErrors,
  measured: readonly Difference[],
  levelError: number,
): Corrected {
  const level = levelError ** 2
  const prior = errors.bed.map((sd) => Math.sqrt(sd ** 2 + level))
  const m = measured.length
  if (m === 0) {
    const all = prior.map((sd): Correction => ({ deeper: 0, sd }))
    return { prior, all, others: all, level: { higher: 0, sd: levelError } }
  }
  const columns = measured.map(({ place }) => errors.covariances(place))
  const { own, fit } = withoutStones(measured, columns, level)
  const stones = measured.reduce((sum, _, i) => sum + own[i]!, 0) / m
  const rougher = rougherBy(fit.misfit, m)
  const k = new Float64Array(m)
  const all = prior.map((sd, place): Correction => {
    for (let i = 0; i < m; i++) k[i] = columns[i]![place]! + level
    const { mean, less } = fit.given(k)
    return { deeper: mean, sd: Math.sqrt(Math.max(0, sd ** 2 - less) * rougher + stones) }
  })
  const lake = fit.given(new Float64Array(m).fill(level))
  const others = [...all]
  measured.forEach(({ place, deeper, error }, i) => {
    const { off, variance } = fit.alone[i]!
    const rest = Math.max(0, variance - error ** 2 - own[i]!)
    // Without its own share of the misfit, which is what it is off by.
    const sd = Math.sqrt(rest * rougherBy(fit.misfit - off ** 2 / variance, m - 1))
    others[place] = { deeper: deeper - off, sd }
    all[place] = { deeper, sd: error }
  })
  return { prior, all, others, level: { higher: lake.mean, sd: Math.sqrt(Math.max(0, level - lake.less)) } }
}

interface Fit {
  /** Of what has these covariances with all that was measured: its mean, and by how much its variance is less. */
  readonly given: (k: Float64Array) => { readonly mean: number; readonly less: number }
  /** Each reading against what all others say: how far off, and the variance of that (equation 5.12 there). */
  readonly alone: readonly { readonly off: number; readonly variance: number }[]
  /** Of all readings together: as much as there are of them is to be expected. */
  readonly misfit: number
}

/** @param own variance that is each reading's alone, besides its error */
function fitOf(
  measured: readonly Difference[],
  columns: readonly Float64Array[],
  level: number,
  own: Float64Array,
): Fit {
  const m = measured.length
  const factor = choleskyOf(m, (i, k) => {
    const { place, error } = measured[i]!
    return columns[k]![place]! + level + (i === k ? error ** 2 + own[i]! : 0)
  })
  const told = forward(factor, new Float64Array(measured.map(({ deeper }) => deeper)))
  const given: Fit['given'] = (k) => {
    const v = forward(factor, k)
    return { mean: dot(v, told), less: dot(v, v) }
  }
  const e = new Float64Array(m)
  const alone = measured.map((_, i) => {
    e.fill(0)
    e[i] = 1
    const { mean, less } = given(e)
    return { off: mean / less, variance: 1 / less }
  })
  return { given, alone, misfit: dot(told, told) }
}

/** One after the other, the worst first: what a stone does to its neighbors is gone once it counts alone. */
function withoutStones(measured: readonly Difference[], columns: readonly Float64Array[], level: number) {
  const own = new Float64Array(measured.length)
  let fit = fitOf(measured, columns, level, own)
  for (let left = Math.floor(measured.length * MOST); left > 0; left--) {
    const beyond = fit.alone
      .map(({ off, variance }, i) => ({ i, off, by: own[i]! > 0 ? 0 : Math.abs(off) / Math.sqrt(variance) }))
      .sort((a, b) => b.by - a.by)
    const [worst, next] = beyond
    if (!worst || worst.by < ALONE.deviations || Math.abs(worst.off) < ALONE.least) break
    if (next && worst.by < CLEARLY * next.by) break
    own[worst.i] = worst.off ** 2
    fit = fitOf(measured, columns, level, own)
  }
  return { own, fit }
}

/** By how much variances are more than was taken: more than chance makes of so many readings (two standard deviations of their misfit). */
const rougherBy = (misfit: number, count: number): number =>
  count > 0 && misfit > count + 2 * Math.sqrt(2 * count) ? misfit / count : 1
