/**
 * Revised NIOSH Lifting Equation (Waters, Putz-Anderson, Garg: Applications Manual, DHHS (NIOSH) Publication 94-110, 1994, revised
 * 9/2021; public domain), metric form, multipliers at full precision.
 *
 * A screen for lifting with two hands on dry, level, firm ground. The manual says that it does not hold for carrying, for one hand, for
 * unsteady footing or loads, or where shoes slip (p. 6): not in the water, not on a wet bank. It does not speak of lifting together.
 */

export type Coupling = 'good' | 'fair' | 'poor'

export interface Lift {
  /** Ankles to hands, m, out from the body. */
  readonly horizontal: number
  /** Floor to hands at the start, m. */
  readonly vertical: number
  /** How far up or down, m. */
  readonly travel: number
  /** Turn of the trunk, degrees. */
  readonly asymmetry: number
  /** Lifts a minute, over `hours` a day with the rests that the manual asks for. */
  readonly perMinute: number
  readonly hours: number
  readonly coupling: Coupling
}

export interface LiftingLimit {
  /** Recommended weight limit of one person, kg; 0 where no such lift is recommended at all. */
  readonly limit: number
  readonly multipliers: {
    readonly horizontal: number
    readonly vertical: number
    readonly distance: number
    readonly asymmetric: number
    readonly frequency: number
    readonly coupling: number
  }
}

const LOAD_CONSTANT = 23

/** Table 5: frequency, then for up to 1, 2 and 8 h the multiplier under and from 75 cm of height. Over 15 a minute: 0. */
const FREQUENCY: readonly (readonly [number, number, number, number, number, number, number])[] = [
  [0.2, 1, 1, 0.95, 0.95, 0.85, 0.85],
  [0.5, 0.97, 0.97, 0.92, 0.92, 0.81, 0.81],
  [1, 0.94, 0.94, 0.88, 0.88, 0.75, 0.75],
  [2, 0.91, 0.91, 0.84, 0.84, 0.65, 0.65],
  [3, 0.88, 0.88, 0.79, 0.79, 0.55, 0.55],
  [4, 0.84, 0.84, 0.72, 0.72, 0.45, 0.45],
  [5, 0.8, 0.8, 0.6, 0.6, 0.35, 0.35],
  [6, 0.75, 0.75, 0.5, 0.5, 0.27, 0.27],
  [7, 0.7, 0.7, 0.42, 0.42, 0.22, 0.22],
  [8, 0.6, 0.6, 0.35, 0.35, 0.18, 0.18],
  [9, 0.52, 0.52, 0.3, 0.3, 0, 0.15],
  [10, 0.45, 0.45, 0.26, 0.26, 0, 0.13],
  [11, 0.41, 0.41, 0, 0.23, 0, 0],
  [12, 0.37, 0.37, 0, 0.21, 0, 0],
  [13, 0, 0.34, 0, 0, 0, 0],
  [14, 0, 0.31, 0, 0, 0, 0],
  [15, 0, 0.28, 0, 0, 0, 0],
]

/** Table 7: under and from 75 cm of height. */
const COUPLING: Readonly<Record<Coupling, readonly [number, number]>> = {
  good: [1, 1],
  fair: [0.95, 1],
  poor: [0.9, 0.9],
}

/** By the manual's table 5; the higher frequency's value between two rows. */
export function frequencyMultiplier(perMinute: number, hours: number, vertical: number): number {
  if (hours > 8) return 0
  const column = (hours <= 1 ? 1 : hours <= 2 ? 3 : 5) + (vertical < 0.75 ? 0 : 1)
  const row = FREQUENCY.find(([most]) => perMinute <= most)
  return row ? row[column]! : 0
}

export function liftingLimit(lift: Lift): LiftingLimit {
  const { horizontal: h, vertical: v, travel, asymmetry, perMinute, hours } = lift
  const multipliers = {
    horizontal: h > 0.63 ? 0 : 0.25 / Math.max(h, 0.25),
    vertical: v < 0 || v > 1.75 ? 0 : 1 - 0.3 * Math.abs(v - 0.75),
    distance: travel > 1.75 ? 0 : 0.82 + 0.045 / Math.max(travel, 0.25),
    asymmetric: asymmetry > 135 ? 0 : 1 - 0.0032 * Math.abs(asymmetry),
    frequency: frequencyMultiplier(perMinute, hours, v),
    coupling: COUPLING[lift.coupling][v < 0.75 ? 0 : 1],
  }
  const limit = Object.values(multipliers).reduce((product, factor) => product * factor, LOAD_CONSTANT)
  return { limit, multipliers }
}

/** Lifting index: what one person has in hand (kg) over the limit. 1 or less is the manual's aim; over 3 is for hardly anyone (p. 20). */
export const liftingIndex = (mass: number, limit: number): number =>
  limit > 0 ? mass / limit : Number.POSITIVE_INFINITY

/**
 * What counts for each of several people who lift a thing together, kg. Two can lift about two thirds, three and more about half of what
 * they could one by one (HSE, Manual handling: guidance L23, team handling; memory): the NIOSH manual does not speak of it.
 */
export function shareOf(mass: number, people: number): number {
  const together = people <= 1 ? 1 : people === 2 ? 2 / 3 : 1 / 2
  return mass / (Math.max(1, people) * together)
}

/** How a section or frame is lifted off dry ground by its rails (judgment): close, from shin height to the hip, now and then. */
export const FRAME_LIFT: Lift = {
  horizontal: 0.35,
  vertical: 0.35,
  travel: 0.45,
  asymmetry: 0,
  perMinute: 0.2,
  hours: 1,
  coupling: 'fair',
}
