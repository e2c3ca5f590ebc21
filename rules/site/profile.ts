/** A piecewise linear elevation over distance: soundings on one line. */

export interface Profile {
  /** Ascending distances, m. */
  readonly x: readonly number[]
  /** Elevations there, m. */
  readonly z: readonly number[]
  /** Rise over run landward of the first and lakeward of the last; lakeward never rising. */
  readonly slopeLand: number
  readonly slopeLake: number
  /** Landward ground never gets beyond this, m. */
  readonly top: number
}

/**
 * `x` ascending and distinct. `top`: height of the bank where it is given, else Infinity. `wall`: before a wall the bed is level
 * landward of the first sounding, for there is no bank that its slope could belong to.
 */
export function makeProfile(x: readonly number[], z: readonly number[], top: number, wall: boolean): Profile {
  const n = x.length
  const slope = (i: number, k: number): number => (z[k]! - z[i]!) / (x[k]! - x[i]!)
  return {
    x,
    z,
    slopeLand: n > 1 && !wall ? slope(0, 1) : 0,
    slopeLake: n > 1 ? Math.min(0, slope(n - 2, n - 1)) : 0,
    top: Math.max(top, z[0]!),
  }
}

/** Elevation at a distance. Before the first point the last slope goes on (up to the bank's top), after the last one if it falls. */
export function profileAt(p: Profile, x: number): number {
  const n = p.x.length
  const x0 = p.x[0]!
  if (x <= x0) return Math.min(p.top, p.z[0]! + p.slopeLand * (x - x0))
  const xn = p.x[n - 1]!
  if (x >= xn) return p.z[n - 1]! + p.slopeLake * (x - xn)
  let low = 0
  let high = n - 1
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (p.x[middle]! <= x) low = middle
    else high = middle
  }
  const t = (x - p.x[low]!) / (p.x[high]! - p.x[low]!)
  return p.z[low]! + t * (p.z[high]! - p.z[low]!)
}
