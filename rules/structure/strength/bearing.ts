/**
 * What a lake bed bears under a foot, by what is felt there.
 *
 * Presumptive bearing and sliding: International Building Code 2018, table 1806.2, whose values stand unchanged since 2012 (read in a
 * reproduction of the 2012 edition). They are for soil that is dug into and confined. For a foot on a bare bed half of the bearing is
 * taken (judgment); muck has no presumptive value there and none here, only a little cohesion against sliding. Rock is taken as the
 * table's weaker rock, since nobody looks closely under water. Sliding is guidance: weed and slime lower it.
 */
import type { BottomKind } from '../../catalog/index.ts'

const PSF = 47.880259

/** IBC 2018 table 1806.2: vertical foundation pressure (psf), coefficient of friction, cohesion (psf). */
const IBC: Readonly<
  Record<BottomKind, { readonly psf: number; readonly friction: number; readonly cohesion: number }>
> = {
  // Class 2, sedimentary and foliated rock.
  rock: { psf: 4000, friction: 0.35, cohesion: 0 },
  // Class 3, sandy gravel and gravel.
  gravel: { psf: 3000, friction: 0.35, cohesion: 0 },
  // Class 4, sand, silty sand and so on.
  sand: { psf: 2000, friction: 0.25, cohesion: 0 },
  // Class 5, clay and silt.
  clay: { psf: 1500, friction: 0, cohesion: 130 },
  muck: { psf: 0, friction: 0, cohesion: 0 },
}

/** Part of the presumptive value that a bare bed is trusted with (judgment). */
export const BARE_BED = 0.5

/** IBC 2018 table 1806.2, Pa; null for muck. */
export const presumptiveBearing = (bottom: BottomKind): number | null =>
  bottom === 'muck' ? null : IBC[bottom].psf * PSF

/** Allowable pressure under a foot on a bare bed, Pa; null for muck: no value, only the catalog's sinkage. */
export const allowableBearing = (bottom: BottomKind): number | null =>
  bottom === 'muck' ? null : BARE_BED * IBC[bottom].psf * PSF

/**
 * Undrained cohesion of muck on a plate, Pa: judgment, 200 to 2000. Half of what `soil.ts` gives muck, for it is smooth metal on slime.
 */
const MUCK_COHESION = 500
/** Times the cohesion that muck resists a tube with near the surface (Matlock 1970 for soft clay: 3 there, 9 deep). */
const AROUND = 3

/**
 * Force across that a foot resists before it slides, N: on the side of less. `vertical` is what presses it down (N), `area` its plate's
 * (m2), `sunk` the tube's own in muck: its width times how deep it stands in it (m2).
 */
export function slidingResistance(bottom: BottomKind, vertical: number, area: number, sunk = 0): number {
  if (vertical <= 0) return 0
  if (bottom === 'muck') return Math.min(MUCK_COHESION * (area + AROUND * sunk), vertical / 2)
  const { friction, cohesion } = IBC[bottom]
  // Clay holds by cohesion, and by no more than half of what presses (1806.3.2).
  return friction > 0 ? friction * vertical : Math.min(cohesion * PSF * area, vertical / 2)
}

/**
 * The most that a foot may hold across, N: for what is worse where feet do not slide, as tipping is. Judgment: a lipped plate that has
 * dug in meets soil on soil, tan 39° in rock's cracks and gravel, tan 36° in sand; clay of 25 kPa and muck of 3 kPa, the upper ends of
 * their ranges in `soil.ts`, whatever presses.
 */
export function grip(bottom: BottomKind, vertical: number, area: number, sunk = 0): number {
  if (vertical <= 0) return 0
  const { friction, cohesion } = GRIP[bottom]
  return friction * vertical + cohesion * (area + AROUND * sunk)
}

const GRIP: Readonly<Record<BottomKind, { readonly friction: number; readonly cohesion: number }>> = {
  rock: { friction: 0.8, cohesion: 0 },
  gravel: { friction: 0.8, cohesion: 0 },
  sand: { friction: 0.73, cohesion: 0 },
  clay: { friction: 0, cohesion: 25_000 },
  muck: { friction: 0, cohesion: 3000 },
}

/** Coefficient of friction of IBC 2018 table 1806.2; 0 where the table has none: clay (cohesion instead), muck. */
export const frictionOf = (bottom: BottomKind): number => IBC[bottom].friction

/**
 * How deep a foot works in under a steady pressure, m: the depth at which the bed's bearing capacity has grown to the pressure.
 *
 * Sand and gravel: Vesić's factors, N_q = e^(π tan φ) tan²(45° + φ/2), N_γ = 2 (N_q + 1) tan φ, square shape factors 1 + tan φ and 0.6
 * (Vesić 1973, J. Soil Mech. Found. Div. ASCE 99; memory), buoyant weight 9 kN/m³, φ of a loose bed 32° and 36° (judgment). Clay:
 * Skempton's N_c = 6 (1 + 0.2 D/B) up to D/B 2.5 for a square (Skempton 1951; memory) with the cohesion of IBC table 1806.2.
 * Rock: none. Muck: null, unknown. Infinity: clay that gives way and stops nowhere soon.
 *
 * An estimate for a remark, not a settlement analysis: no safety factor, nothing of time, waves or scour.
 */
export function sinkageUnder(bottom: BottomKind, pressure: number, width: number): number | null {
  switch (bottom) {
    case 'rock':
      return 0
    case 'muck':
      return null
    case 'clay': {
      const cohesion = IBC.clay.cohesion * PSF
      const deep = (pressure / (6 * cohesion) - 1) / 0.2
      return deep <= 0 ? 0 : deep <= 2.5 ? deep * width : Number.POSITIVE_INFINITY
    }
    default: {
      const { atSurface, perDepth } = granular(bottom === 'gravel' ? 36 : 32, width)
      return Math.max(0, (pressure - atSurface) / perDepth)
    }
  }
}

const BUOYANT = 9000

/** Vesić's factors at an angle of friction in degrees. */
export function vesicFactors(degrees: number): { readonly Nq: number; readonly Ngamma: number } {
  const phi = (degrees * Math.PI) / 180
  const Nq = Math.exp(Math.PI * Math.tan(phi)) * Math.tan(Math.PI / 4 + phi / 2) ** 2
  return { Nq, Ngamma: 2 * (Nq + 1) * Math.tan(phi) }
}

function granular(degrees: number, width: number): { atSurface: number; perDepth: number } {
  const { Nq, Ngamma } = vesicFactors(degrees)
  const shape = 1 + Math.tan((degrees * Math.PI) / 180)
  return { atSurface: 0.5 * BUOYANT * width * Ngamma * 0.6, perDepth: BUOYANT * Nq * shape }
}
