/**
 * Waves that a steady wind raises over a fetch: three published laws. Heights are significant, periods those of the peak; SI.
 *
 * None of them is made for a lake: they hold for open water, a straight shore and a wind that lasts long enough. For a fetch of a few
 * hundred meters they are used outside of what they were measured on.
 */

/** m/s² as the laws print it: their coefficients and worked examples are made with it. */
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
  // So little a breath that its square is nothing.
  if (U ** 2 === 0) return CALM
  const F = (g * fetch) / U ** 2
  const a = depth === null ? 1 : Math.tanh(0.53 * ((g * depth) / U ** 2) ** 0.75)
  const b = depth === null ? 1 : Math.tanh(0.833 * ((g * depth) / U ** 2) ** 0.375)
  return {
    height: (U ** 2 / g) * 0.283 * a * Math.tanh((0.00565 * Math.sqrt(F)) / a),
    period: (U / g) * 7.54 * b * Math.tanh((0.0379 * Math.cbrt(F)) / b),
  }
}

/** gt/UA of the fully grown sea, eq. 3-38. */
const FULLY_GROWN = 71_500

/**
 * How long a wind must blow until its waves are grown over the fetch, s. Shore Protection Manual 1984: in deep water eq. 3-35,
 * gt/UA = 68.8 (gF/UA²)^(2/3), up to the fully grown sea of eq. 3-38; where the waves feel the bottom eq. 3-41, gt/UA = 537 (gT/UA)^(7/3),
 * with the period that the depth lets grow.
 *
 * The two laws do not meet, so (ours): waves grow by 3-35 over the fetch on which they do not feel the bottom yet (a depth over half of
 * their length), from there on by 3-41 as soon as that says more, and never take longer than over deep water. So a longer fetch never takes less.
 */
export function growthTime(blowing: Blowing): number {
  const { speed, fetch, depth } = blowing
  const { period } = spm1984(blowing)
  if (period === 0) return 0
  const U = windStress(speed)
  const overDeep = (F: number): number => Math.min(68.8 * F ** (2 / 3), FULLY_GROWN)
  const deep = overDeep((g * fetch) / U ** 2)
  if (depth === null) return (U / g) * deep
  // d = gT²/4π, and the fetch that raises T, by eq. 3-34.
  const felt = Math.sqrt((4 * Math.PI * depth) / g)
  const free = overDeep(((g * felt) / U / 0.2857) ** 3)
  const shallow = Math.min(537 * ((g * period) / U) ** (7 / 3), FULLY_GROWN)
  return (U / g) * Math.min(deep, Math.max(free, shallow))
}

/**
 * gF/U² under which a fetch is shorter, for its wind, than what the laws were measured on: JONSWAP's field data begin at about 100,
 * those of Lake George (Young and Verhagen 1996) at about 50 (both from memory).
 */
export const shortFetch = ({ speed, fetch }: Blowing): boolean => g * fetch < 50 * speed ** 2

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
