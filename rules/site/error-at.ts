/** `errorAt` of both kinds of bed. What it needs is worked out when it is first asked: a drag makes beds and asks none. */
import { type Area, KRIGED } from './area.ts'
import { type Miss, missesOfAll, roughnessOf, type Shares, standardError, varianceOf } from './error.ts'
import {
  type Covariance,
  covarianceOf,
  type Factor,
  factorOf,
  forward,
  type Places,
  solved,
} from './kriging.ts'
import { lineShares, missesOfLine, type SoundingLine } from './line.ts'
import { profileAt } from './profile.ts'
import { tableAt } from './table.ts'

type ErrorAt = (x: number, y: number) => number

const once = <T>(make: () => T): (() => T) => {
  let made: { readonly value: T } | null = null
  return () => {
    made ??= { value: make() }
    return made.value
  }
}

/** Of many soundings at most this many tell how rough the bed is. */
const ASKED = 120

export function lineErrors(line: SoundingLine, soundingError: number, wall: boolean): ErrorAt {
  const covariance = covarianceOf(!wall)
  const roughness = once(() => roughnessOf(missesOfLine(line, covariance, soundingError)))
  const { bottom, places } = line
  return (x, y) => {
    if (wall && x < 0) return soundingError
    const at = notUpTheBank(x, bottom.x[0]!, bottom.top, (px) => profileAt(bottom, px))
    const shares = lineShares(bottom, at)
    return standardError(roughness(), varianceOf(covariance, places, shares, at, y), soundingError, shares)
  }
}

export interface Shore {
  readonly error: number
  readonly wall: boolean
  readonly top: number
}

export function areaErrors(area: Area, places: Places, values: Float64Array, shore: Shore): ErrorAt {
  const { covariance, factor, surface, beds } = area
  const { error, wall, top } = shore
  const { table } = beds[0]!
  const roughness = once(() => roughnessOf(missesOf(factor, covariance, places, values, error)))
  const told = (x: number, y: number): { shares: Shares; variance: number } => {
    if (surface) {
      // The means under the triangles count too: sounding errors are taken in full, to be cautious.
      const own = surface.sharesAt(x, y).filter(([i]) => i < places.x.length)
      const all = own.reduce((sum, [, share]) => sum + share, 0)
      const shares = all > 0 ? own.map(([i, share]) => [i, share / all] as const) : []
      const variance = varianceOf(covariance, places, shares, x, y)
      return { shares: [[0, 1]], variance }
    }
    const own = krigedShares(factor!, covariance, places, x, y)
    const [first, last] = [table.xs[0]!, table.xs.at(-1)!]
    if (x >= first && x <= last) return own
    // The slope that goes on is that of the bed between two distances.
    const [edge, back] = x < first ? [first, table.xs[table.inner]!] : [last, table.xs[table.outer]!]
    const goesOn =
      edge !== back && (x < first ? !wall : tableAt(table, top, last + 1, y) < tableAt(table, top, last, y))
    const at = krigedShares(factor!, covariance, places, edge, y).shares
    const before = krigedShares(factor!, covariance, places, back, y).shares
    const t = goesOn ? (x - edge) / (edge - back) : 0
    const shares = at.map(([i, share], k) => [i, share + t * (share - before[k]![1])] as const)
    return { shares, variance: varianceOf(covariance, places, shares, x, y) }
  }
  return (x, y) => {
    if (wall && x < 0) return error
    const at = notUpTheBank(x, table.xs[0]!, top, (px) => tableAt(table, top, px, y))
    const { shares, variance } = told(at, y)
    return standardError(roughness(), variance, error, shares)
  }
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
): { shares: Shares; variance: number } {
  const k = x.map((at, i) => covariance(px, py, at, y[i]!))
  const told = forward(factor, k).reduce((sum, v) => sum + v * v, 0)
  return {
    shares: Array.from(solved(factor, k), (share, i) => [i, share] as const),
    variance: Math.max(0, covariance(px, py, px, py) - told),
  }
}

/** Landward of where a bank comes to its top the ground is known no worse than there. */
function notUpTheBank(x: number, first: number, top: number, along: (x: number) => number): number {
  if (x >= first || !Number.isFinite(top)) return x
  const [begins, next] = [along(first), along(first - 1e-3)]
  if (begins >= top) return first
  return next > begins ? Math.max(x, first - ((top - begins) * 1e-3) / (next - begins)) : x
}
