/**
 * Which owned leg stands where. Places and stock lengths are intervals and points on one scale, the catalog's lengths from short to long:
 * a place takes every length from the shortest that does up to the longest that it bears.
 *
 * As many owned legs are used as can be; of all ways to do so, one with the least length over what the places ask, in sum. Both at once,
 * for the sum is what the used legs have less what the places ask: going from the longest leg down, each to the place that asks the most,
 * serves the places that ask the most in sum; going from the shortest up, each to the place that bears the least, uses the shortest legs
 * in sum; and some matching joins just these places with just these legs (Mendelsohn and Dulmage 1958). Of places that ask the same
 * the first in the order of the dock is served.
 */

/** Lengths by their place in the catalog's order. */
export interface LegPlace {
  readonly least: number
  readonly most: number
}

const NONE = -1

/**
 * @param stock how many legs of each length are owned
 * @returns for each place the length that it is given, by its place in the catalog's order; -1 for a new one
 */
export function giveLegs(places: readonly LegPlace[], stock: readonly number[]): number[] {
  const served = sweep(places, stock, true).flatMap((given, i) => (given === NONE ? [] : [i]))
  const spent = stock.map(() => 0)
  for (const given of sweep(places, stock, false)) if (given !== NONE) spent[given]!++
  const among = served.map((i) => places[i]!)
  const given = places.map(() => NONE)
  sweep(among, spent, true).forEach((length, i) => {
    given[served[i]!] = length
  })
  return given
}

/** `down`: the longest first, each to the place that asks the most; else the shortest first, each to the place that bears the least. */
function sweep(places: readonly LegPlace[], stock: readonly number[], down: boolean): number[] {
  const given = places.map(() => NONE)
  const order = places
    .map((_, i) => i)
    .sort((a, b) => (down ? places[b]!.least - places[a]!.least : places[a]!.most - places[b]!.most) || a - b)
  for (let step = 0; step < stock.length; step++) {
    const length = down ? stock.length - 1 - step : step
    let left = stock[length]!
    for (const i of order) {
      if (left === 0) break
      const { least, most } = places[i]!
      if (given[i] !== NONE || length < least || length > most) continue
      given[i] = length
      left--
    }
  }
  return given
}
