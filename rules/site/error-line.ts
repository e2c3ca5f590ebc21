/** What soundings on one line count for, and what each is off when it is told from those beside it. */
import { type Miss, type Shares, varianceOf } from './error.ts'
import type { Covariance } from './kriging.ts'
import type { SoundingLine } from './line.ts'
import type { Profile } from './profile.ts'

/** What the soundings count for at a distance. */
export function lineShares({ x, slopeLand, slopeLake }: Profile, at: number): Shares {
  const n = x.length
  if (at <= x[0]! && (n === 1 || slopeLand === 0)) return [[0, 1]]
  if (at >= x[n - 1]! && (n === 1 || slopeLake === 0)) return [[n - 1, 1]]
  let k = 0
  let high = n - 1
  while (high - k > 1) {
    const middle = (k + high) >> 1
    if (x[middle]! <= at) k = middle
    else high = middle
  }
  const t = (at - x[k]!) / (x[k + 1]! - x[k]!)
  return [
    [k, 1 - t],
    [k + 1, t],
  ]
}

/** Every sounding but the first and last, told from the two beside it. */
export function missesOfLine(
  { places, bottom }: SoundingLine,
  covariance: Covariance,
  soundingError: number,
): Miss[] {
  const { x, z } = bottom
  return x.slice(2).map((after, k) => {
    const t = (x[k + 1]! - x[k]!) / (after - x[k]!)
    const shares = [
      [k, 1 - t],
      [k + 2, t],
    ] as const
    return {
      square: (z[k + 1]! - (1 - t) * z[k]! - t * z[k + 2]!) ** 2,
      unit: varianceOf(covariance, places, shares, places.x[k + 1]!, places.y[k + 1]!),
      noise: soundingError ** 2 * (1 + (1 - t) ** 2 + t * t),
    }
  })
}
