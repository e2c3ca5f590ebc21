/**
 * What is taken as known of a lake bed before it is sounded, and what soundings make of it: simple kriging, that is, the mean of a
 * Gaussian process given the soundings (Chilès and Delfiner, Geostatistics, 2nd ed. 2012, chapter 3; Rasmussen and Williams 2006,
 * equation 2.19, without noise: a sounding is reproduced as it is).
 *
 * Covariance of the bed at two places, in units of its roughness (variance gained a meter along the dock, m2/m):
 *
 *     EDGE + min e(y) / ASLANT + { min|x| (1 + min s(y) / SHORE) + SLOPE x x' }   the braces only on the same side of the water's edge,
 *
 * with e and s nearly |y| (`aside`), and their least 0 on different sides of the dock's line. In words: the bed wanders off the water's
 * edge lakeward as a random walk does, and, slower, along the shore, as the edge itself does; bank and lake each fall at a slope of
 * their own. Before a wall, or where soundings deny it, the edge is not known: LEVEL is in place of EDGE.
 *
 * - Walks are Markov: between soundings on a line the bed is straight, beside it the same, and a grid of soundings is interpolated
 *   bilinearly. The mean is bilinear between the soundings' own distances and offsets (and 0), so that a table holds all of it.
 * - It does not depend on what is sounded: one more sounding s, z changes the mean at q by k(q, s) / k(s, s) (z - mean at s), with k the
 *   covariance that the others left. A sounding that agrees changes nothing. A library's fitted variogram would lose that, as any
 *   triangulation does (a new corner turns edges round it); 60 lines of Cholesky need no library.
 *
 * All figures: judgment. 1 m along the dock differs as 30 m along the shore do, 1 m out (as 3 m do, 10 m out).
 */

/** Along the shore, m. */
const SHORE = 30
/** The water's edge is known as well as a bed this far from a sounding, m. */
const EDGE = 0.01
/** How far along the shore the bed at x = 0 differs as it does a meter along the dock, m. */
const ASLANT = 3
/** So near the dock's line the shore counts for less, m: what differs there is roughness, and would tilt what is level. */
export const STRIDE = 0.1
const [SHORE_NEAR, EDGE_NEAR] = [0.3, 0.01]
/** Variance of the mean slope, 1/m: a standard deviation of 0.17. */
const SLOPE = 15
/** Where the edge is not known: variance of the level there; it varies along the shore as the bed does so far out, m. */
const LEVEL = 500
const FOOT = 1
/** Least part of a pivot that is not rounding. */
const TINY = 1e-12

export type Covariance = (ax: number, ay: number, bx: number, by: number) => number

/** Of the smaller of two ways from 0, none where they go different ways. */
const shared = (a: number, b: number): number =>
  a > 0 ? (b > 0 ? Math.min(a, b) : 0) : b < 0 ? -Math.max(a, b) : 0
/** Of an offset: less within a stride, and so much less beyond it. */
const aside = (y: number, near: number): number =>
  Math.abs(y) < STRIDE ? near * y : y - Math.sign(y) * (1 - near) * STRIDE
const along = (a: number, b: number): number => 1 + shared(aside(a, SHORE_NEAR), aside(b, SHORE_NEAR)) / SHORE
/** Of the bed at the water's edge. */
const atEdge = (known: boolean, ay: number, by: number): number =>
  known ? EDGE + shared(aside(ay, EDGE_NEAR), aside(by, EDGE_NEAR)) / ASLANT : LEVEL + FOOT * along(ay, by)

/** `known`: the water's edge, at a depth of 0. */
export const covarianceOf =
  (known: boolean): Covariance =>
  (ax, ay, bx, by) =>
    atEdge(known, ay, by) + (ax * bx > 0 ? shared(ax, bx) * along(ay, by) + SLOPE * ax * bx : 0)

export interface Places {
  readonly x: Float64Array
  readonly y: Float64Array
}

/** A covariance matrix's lower factor, row by row. */
export interface Factor {
  readonly n: number
  readonly rows: readonly Float64Array[]
}

export const factorOf = ({ x, y }: Places, covariance: Covariance): Factor =>
  choleskyOf(x.length, (i, k) => covariance(x[i]!, y[i]!, x[k]!, y[k]!))

/** @param at of row i and column k, not beyond the diagonal */
export function choleskyOf(n: number, at: (i: number, k: number) => number): Factor {
  const rows: Float64Array[] = []
  for (let i = 0; i < n; i++) {
    const row = new Float64Array(i + 1)
    for (let k = 0; k <= i; k++) {
      const other = k === i ? row : rows[k]!
      let sum = at(i, k)
      const own = sum
      for (let j = 0; j < k; j++) sum -= row[j]! * other[j]!
      // Two soundings a hair apart: the second tells nothing new, and is put in its place by the table.
      row[k] = k === i ? Math.sqrt(Math.max(sum, own * TINY)) : sum / other[k]!
    }
    rows.push(row)
  }
  return { n, rows }
}

/** L v = b. */
export function forward({ n, rows }: Factor, b: Float64Array): Float64Array {
  const v = new Float64Array(n)
  for (let i = 0; i < n; i++) {
    const row = rows[i]!
    let sum = b[i]!
    for (let j = 0; j < i; j++) sum -= row[j]! * v[j]!
    v[i] = sum / row[i]!
  }
  return v
}

/** K v = b. */
export const solved = (factor: Factor, b: Float64Array): Float64Array => backward(factor, forward(factor, b))

/** L' v = b. */
export function backward(factor: Factor, b: Float64Array): Float64Array {
  const v = b.slice()
  for (let i = factor.n - 1; i >= 0; i--) {
    const row = factor.rows[i]!
    const at = v[i]! / row[i]!
    v[i] = at
    for (let j = 0; j < i; j++) v[j] = v[j]! - row[j]! * at
  }
  return v
}

/**
 * The mean along the shore's row `y` at ascending distances `xs`, from the weights `solved` of the places (in ascending order of x).
 * Linear between: in one pass over places and distances, for the slope at x is what the places beyond it weigh.
 */
export function meanAlong(
  { x, y }: Places,
  weights: Float64Array,
  known: boolean,
  xs: Float64Array,
  row: number,
  out: Float64Array,
): void {
  const n = x.length
  let start = 0
  let [lake, land] = [0, 0]
  let [lakeSlope, landSlope] = [0, 0]
  for (let i = 0; i < n; i++) {
    const w = weights[i]! * along(row, y[i]!)
    start += weights[i]! * atEdge(known, row, y[i]!)
    if (x[i]! > 0) {
      lake += w
      lakeSlope += SLOPE * weights[i]! * x[i]!
    } else if (x[i]! < 0) {
      land += w
      landSlope += SLOPE * weights[i]! * x[i]!
    }
  }
  // Lakeward from the edge: `left` weigh farther out than here.
  let i = 0
  while (i < n && x[i]! <= 0) i++
  let [at, z, left] = [0, 0, lake]
  for (let k = 0; k < xs.length; k++) {
    const here = xs[k]!
    if (here < 0) continue
    while (i < n && x[i]! <= here) {
      z += left * (x[i]! - at)
      at = x[i]!
      left -= weights[i]! * along(row, y[i]!)
      i++
    }
    z += left * (here - at)
    at = here
    out[k] = start + z + lakeSlope * here
  }
  i = n - 1
  while (i >= 0 && x[i]! >= 0) i--
  at = 0
  z = 0
  left = land
  for (let k = xs.length - 1; k >= 0; k--) {
    const here = xs[k]!
    if (here >= 0) continue
    while (i >= 0 && x[i]! >= here) {
      z += left * (at - x[i]!)
      at = x[i]!
      left -= weights[i]! * along(row, y[i]!)
      i--
    }
    z += left * (at - here)
    at = here
    out[k] = start + z + landSlope * here
  }
}
