/** How the bed's errors at two places hang together. */
import type { Errors, Known } from '../site/error.ts'

/** Of the bed in units of roughness, and of the soundings in units of that of one. */
export interface Variance {
  readonly spread: number
  readonly noise: number
}

export type Between = (a: Known, b: Known) => Variance

/** Covariance of the bed here and at a sounding, and of the mean here and the bed there, each worked out once. */
interface Sums {
  readonly withBed: (sounding: number) => number
  readonly ofMean: (sounding: number) => number
}

/** Worked out for the places that are asked for, and kept as long as the function is. */
export function betweenIn({ covariance, places: { x, y } }: Errors): Between {
  const known = new Map<Known, Sums>()
  const once = (of: (i: number) => number): ((i: number) => number) => {
    const values = new Map<number, number>()
    return (i) => {
      const value = values.get(i) ?? of(i)
      values.set(i, value)
      return value
    }
  }
  const sumsOf = (place: Known): Sums => {
    const sums = known.get(place) ?? {
      withBed: once((i) => covariance(place.x, place.y, x[i]!, y[i]!)),
      ofMean: once((i) =>
        place.shares.reduce((sum, [k, share]) => sum + share * covariance(x[k]!, y[k]!, x[i]!, y[i]!), 0),
      ),
    }
    known.set(place, sums)
    return sums
  }
  return (a, b) => {
    const [ofA, ofB] = [sumsOf(a), sumsOf(b)]
    let spread = covariance(a.x, a.y, b.x, b.y)
    let [noise, restA, restB] = [0, 1, 1]
    const shares = new Map(b.shares)
    for (const [i, share] of a.shares) {
      spread += share * (ofB.ofMean(i) - ofB.withBed(i))
      noise += share * (shares.get(i) ?? 0)
      restA -= share
    }
    for (const [k, share] of b.shares) {
      spread -= share * ofA.withBed(k)
      restB -= share
    }
    return { spread, noise: noise + restA * restB }
  }
}

/** m2 */
export const varianceIn = ({ roughness, sounding }: Errors, { spread, noise }: Variance): number =>
  roughness() * spread + sounding ** 2 * noise
