/** How far off a bed may be, of both kinds. Apart from the bed, and not in the first load: a drag makes beds and asks none of this. */
import { KRIGED } from './area.ts'
import type { Bed, Survey } from './bed.ts'
import {
  type Errors,
  type Known,
  type Miss,
  missesOfAll,
  noiseOf,
  roughnessOf,
  type Shares,
  toldBy,
  transposed,
  varianceOf,
  withAt,
} from './error.ts'
import { lineShares, missesOfLine } from './error-line.ts'
import { backward, type Covariance, covarianceOf, type Factor, factorOf, type Places } from './kriging.ts'
import { profileAt } from './profile.ts'
import { tableAt } from './table.ts'

const once = <T>(make: () => T): (() => T) => {
  let made: { readonly value: T } | null = null
  return () => {
    made ??= { value: make() }
    return made.value
  }
}

/** Of many soundings at most this many tell how rough the bed is. */
const ASKED = 120

/** What it needs is worked out when it is first asked: keep it for all places of a bed. */
export const errorsOf = ({ survey }: Pick<Bed, 'survey'>): Errors =>
  'line' in survey ? lineErrors(survey) : areaErrors(survey)

function lineErrors({ line, error, wall }: Extract<Survey, { line: unknown }>): Errors {
  const covariance = covarianceOf(!wall)
  const roughness = once(() => roughnessOf(missesOfLine(line, covariance, error)))
  const { bottom, places } = line
  const known = (px: number, y: number): Known | null => {
    if (wall && px < 0) return null
    const x = notUpTheBank(px, bottom.x[0]!, bottom.top, (at) => profileAt(bottom, at))
    const shares = lineShares(bottom, x)
    return { x, y, shares, spread: varianceOf(covariance, places, shares, x, y), noise: noiseOf(shares) }
  }
  return withAt({ known, roughness, sounding: error, covariance, places })
}

function areaErrors(survey: Extract<Survey, { area: unknown }>): Errors {
  const { area, places, values, error, wall, top } = survey
  const { covariance, factor, surface, beds } = area
  const { table } = beds[0]!
  const roughness = once(() => roughnessOf(missesOf(factor, covariance, places, values, error)))
  // Legs of a dock that goes on beyond its soundings stand in few rows.
  const ends = new Map<string, Shares>()
  const atEnd = (x: number, y: number): Shares => {
    const place = `${x} ${y}`
    const shares = ends.get(place) ?? krigedShares(factor!, covariance, places, x, y).shares
    ends.set(place, shares)
    return shares
  }
  const told = (x: number, y: number): { shares: Shares; spread: number; noise?: number } => {
    if (surface) {
      // The means under the triangles count too: sounding errors are taken in full, to be cautious.
      const own = surface.sharesAt(x, y).filter(([i]) => i < places.x.length)
      const all = own.reduce((sum, [, share]) => sum + share, 0)
      const shares = all > 0 ? own.map(([i, share]) => [i, share / all] as const) : []
      return { shares, spread: varianceOf(covariance, places, shares, x, y), noise: 1 }
    }
    const [first, last] = [table.xs[0]!, table.xs.at(-1)!]
    if (x >= first && x <= last) return krigedShares(factor!, covariance, places, x, y)
    // The slope that goes on is that of the bed between two distances.
    const [edge, back] = x < first ? [first, table.xs[table.inner]!] : [last, table.xs[table.outer]!]
    const goesOn =
      edge !== back && (x < first ? !wall : tableAt(table, top, last + 1, y) < tableAt(table, top, last, y))
    const at = atEnd(edge, y)
    const before = atEnd(back, y)
    const t = goesOn ? (x - edge) / (edge - back) : 0
    const shares = at.map(([i, share], k) => [i, share + t * (share - before[k]![1])] as const)
    return { shares, spread: varianceBy(factor!, covariance, places, shares, x, y) }
  }
  const known = (px: number, y: number): Known | null => {
    if (wall && px < 0) return null
    const x = notUpTheBank(px, table.xs[0]!, top, (at) => tableAt(table, top, at, y))
    const { shares, spread, noise = noiseOf(shares) } = told(x, y)
    return { x, y, shares, spread, noise }
  }
  return withAt({ known, roughness, sounding: error, covariance, places })
}

function missesOf(
  factor: Factor | null,
  covariance: Covariance,
  { x, y }: Places,
  values: Float64Array,
  error: number,
): Miss[] {
  if (factor) return missesOfAll(factor, values, error)
  const step = Math.ceil(x.length / Math.min(ASKED, KRIGED))
  const some = (list: Float64Array): Float64Array => list.filter((_, i) => i % step === 0)
  return missesOfAll(factorOf({ x: some(x), y: some(y) }, covariance), some(values), error)
}

/** What each sounding counts for in the mean at a place, and the variance that is left (Rasmussen and Williams 2006, 2.25 and 2.26). */
function krigedShares(
  factor: Factor,
  covariance: Covariance,
  { x, y }: Places,
  px: number,
  py: number,
): { shares: Shares; spread: number } {
  const told = toldBy(factor, covariance, { x, y }, px, py)
  const squares = told.reduce((sum, v) => sum + v * v, 0)
  return {
    shares: Array.from(backward(factor, told), (share, i) => [i, share] as const),
    spread: Math.max(0, covariance(px, py, px, py) - squares),
  }
}

/** As `varianceOf` of shares of all places, at the cost of their number squared in plain sums. */
function varianceBy(
  factor: Factor,
  covariance: Covariance,
  places: Places,
  shares: Shares,
  px: number,
  py: number,
): number {
  const dense = new Float64Array(factor.n)
  for (const [i, share] of shares) dense[i] = share
  const told = toldBy(factor, covariance, places, px, py)
  const taken = transposed(factor, dense)
  let sum = covariance(px, py, px, py)
  for (let i = 0; i < factor.n; i++) sum += taken[i]! * (taken[i]! - 2 * told[i]!)
  return Math.max(0, sum)
}

/** Landward of where a bank comes to its top the ground is known no worse than there. */
function notUpTheBank(x: number, first: number, top: number, along: (x: number) => number): number {
  if (x >= first || !Number.isFinite(top)) return x
  const [begins, next] = [along(first), along(first - 1e-3)]
  if (begins >= top) return first
  return next > begins ? Math.max(x, first - ((top - begins) * 1e-3) / (next - begins)) : x
}
