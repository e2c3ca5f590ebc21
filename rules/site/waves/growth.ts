/**
 * Waves that a steady wind raises over a fetch: three published laws. Heights are significant, periods those of the peak; SI.
 *
 * None of them is made for a lake: they hold for open water, a straight shore and a wind that lasts long enough. For a fetch of a few
 * hundred meters they are used outside of what they were measured on.
 */

/** m/s² as the laws print it. */
const g = 9.81

export interface Grown {
  /** Significant, m. */
  readonly height: number
  /** Of the peak, s. */
  readonly period: number
}

export interface Blowing {
  /** Wind at 10 m, m/s. */
  readonly speed: number
  /** m */
  readonly fetch: number
  /** Mean along the fetch, m; null where it does not hold the waves down. */
  readonly depth: number | null
}

const CALM: Grown = { height: 0, period: 0 }

/** Shore Protection Manual 1984, eq. 3-28a: wind-stress factor of a wind, m/s. */
export const windStress = (speed: number): number => 0.71 * speed ** 1.23

/**
 * Shore Protection Manual 1984, eqs. 3-39 and 3-40, with the wind-stress factor; in deep water 3-33 to 3-38 as their limit. The
 * cautious one of the three: at short fetches a fifth to a quarter more than the Coastal Engineering Manual.
 *
 * Made for one even depth along the fetch and a wind that blows long enough (`growthTime`); a wind over land must be brought to 10 m
 * over water first.
 */
export function spm1984({ speed, fetch, depth }: Blowing): Grown {
  if (speed <= 0 || fetch <= 0 || depth === 0) return CALM
  const U = windStress(speed)
  const F = (g * fetch) / U ** 2
  const a = depth === null ? 1 : Math.tanh(0.53 * ((g * depth) / U ** 2) ** 0.75)
  const b = depth === null ? 1 : Math.tanh(0.833 * ((g * depth) / U ** 2) ** 0.375)
  return {
    height: (U ** 2 / g) * 0.283 * a * Math.tanh((0.00565 * Math.sqrt(F)) / a),
    period: (U / g) * 7.54 * b * Math.tanh((0.0379 * Math.cbrt(F)) / b),
  }
}

/** Shore Protection Manual 1984, eq. 3-41: how long a wind must blow until waves of this period are grown over the fetch, s. */
export const growthTime = (speed: number, period: number): number => {
  const U = windStress(speed)
  return speed > 0 ? (U / g) * 537 * ((g * period) / U) ** (7 / 3) : 0
}

/**
 * gF/U² under which a fetch is shorter, for its wind, than what the laws were measured on: JONSWAP's field data begin at about 100,
 * those of Lake George (Young and Verhagen 1996) at about 50 (both from memory).
 */
export const shortFetch = ({ speed, fetch }: Blowing): boolean => (g * fetch) / speed ** 2 < 50

/**
 * Coastal Engineering Manual EM 1110-2-1100 part II-2 (2002), eqs. II-2-36 to 39, up to the fully grown sea. Shallow water holds nothing
 * down there but the period, at 9.78 √(d/g); the height at 0.6 of the depth is a limit of ours.
 */
export function cem2002({ speed, fetch, depth }: Blowing): Grown {
  if (speed <= 0 || fetch <= 0 || depth === 0) return CALM
  const u = speed * Math.sqrt(0.001 * (1.1 + 0.035 * speed))
  const F = (g * fetch) / u ** 2
  const height = (u ** 2 / g) * Math.min(0.0413 * Math.sqrt(F), 211.5)
  const period = (u / g) * Math.min(0.651 * Math.cbrt(F), 239.8)
  return depth === null
    ? { height, period }
    : { height: Math.min(height, 0.6 * depth), period: Math.min(period, 9.78 * Math.sqrt(depth / g)) }
}

/**
 * Young and Verhagen 1996, Coastal Engineering 29:47-78 (coefficients from memory; they close on the paper's own limits). Measured on
 * Lake George: some 2 m deep, fetches of 1 to 16 km (memory). By the wind itself, not its stress.
 */
export function youngVerhagen1996({ speed, fetch, depth }: Blowing): Grown {
  if (speed <= 0 || fetch <= 0 || depth === 0) return CALM
  const F = (g * fetch) / speed ** 2
  const d = depth === null ? Number.POSITIVE_INFINITY : (g * depth) / speed ** 2
  const A1 = Math.tanh(0.493 * d ** 0.75)
  const A2 = Math.tanh(0.331 * d ** 1.01)
  const energy = 3.64e-3 * (A1 * Math.tanh((3.13e-3 * F ** 0.57) / A1)) ** 1.74
  const frequency = 0.133 * (A2 * Math.tanh((5.215e-4 * F ** 0.73) / A2)) ** -0.37
  return {
    height: (4 * Math.sqrt(energy) * speed ** 2) / g,
    period: speed / (frequency * g),
  }
}
