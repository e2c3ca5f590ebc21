/**
 * What the plate of an auger holds up and down. Such a plate lies shallow: the soil over it comes up with it, so the formula of a deep
 * plate, A (c Nc + q Nq), would overstate it.
 *
 * - Sand, up: the soil over the plate within a cone that opens by the angle of dilation, with friction on the cone (White, Cheuk and
 *   Bolton 2008, Géotechnique 58, for strips; round plates Giampa, Bradshaw and Schneider 2016, Int. J. Geomech., doi
 *   10.1061/(ASCE)GM.1943-5622.0000725: calculated over measured 1.15 on 22 anchors, coefficient of variation 0.14; abstract read,
 *   the integral over the cone made here). A loose bed does not dilate: angle 0, a cylinder.
 * - Clay, up: breakout factor 3.5 H/D, at most 9, and the weight of the soil; no suction. Under each of Vesić's values for round plates
 *   (1971; memory): 1.76, 3.80, 6.12 at H/D 0.5, 1, 1.5; deep plates 9 (Das) to 12.6 (Merifield 2011).
 * - Down: as a foot at that depth, Vesić's and Skempton's factors (`bearing.ts`).
 *
 * Friction on the tube is not counted. Without a safety factor. N, m, Pa.
 */
import { vesicFactors } from './bearing.ts'
import type { Soil } from './soil.ts'

const rad = (degrees: number): number => (degrees * Math.PI) / 180

/** Pull that lifts a plate of a diameter out of sand, N. `deep`: plate under the bed; `dilation`: degrees, none in a loose bed. */
export function upliftInSand(
  { friction, weight }: { readonly friction: number; readonly weight: number },
  diameter: number,
  deep: number,
  dilation = 0,
): number {
  if (deep <= 0) return 0
  const open = Math.tan(rad(dilation))
  const rest = 1 - Math.sin(rad(friction))
  const low = diameter / 2
  const top = low + deep * open
  const soil = ((Math.PI * deep) / 3) * (low * low + low * top + top * top) * weight
  // Stress across the cone: between what lies on it and what presses sideways at rest.
  const across = (1 + rest) / 2 - ((1 - rest) / 2) * Math.cos(2 * rad(dilation))
  const rub = (Math.tan(rad(friction)) - open) * across
  return soil + 2 * Math.PI * weight * rub * ((low * deep ** 2) / 2 + (open * deep ** 3) / 6)
}

/** Breakout factor of a round plate in clay, `deep` under the bed. */
export const breakout = (deep: number, diameter: number): number =>
  Math.min(9, (3.5 * Math.max(0, deep)) / diameter)

const area = (diameter: number): number => (Math.PI / 4) * diameter ** 2

/** Pull that lifts a plate out, N. */
export function pullOut(soil: Soil, diameter: number, deep: number): number {
  if (deep <= 0) return 0
  // Pressure at rest times friction, (1 - sin φ) tan φ, falls again over 38°: denser sand holds no less.
  if (soil.kind === 'granular')
    return upliftInSand({ ...soil, friction: Math.min(soil.friction, 38) }, diameter, deep)
  return area(diameter) * (soil.cohesion * breakout(deep, diameter) + soil.weight * deep)
}

/** Push that drives a plate (or the closed end of a tube) farther down, N. */
export function pushIn(soil: Soil, diameter: number, deep: number): number {
  if (deep < 0) return 0
  if (soil.kind === 'cohesive')
    return area(diameter) * soil.cohesion * 6 * (1 + 0.2 * Math.min(deep / diameter, 2.5))
  const { Nq, Ngamma } = vesicFactors(soil.friction)
  const shape = 1 + Math.tan(rad(soil.friction))
  return area(diameter) * soil.weight * (deep * Nq * shape + 0.5 * diameter * Ngamma * 0.6)
}
