/**
 * Stresses, Pa, at which the walls of a section give way by themselves (local buckling), nominal: no safety factor yet.
 *
 * Source: Aluminum Design Manual 2020, Part I, B.5.4.2, B.5.4.5, B.5.5.1, B.5.5.4, B.5.6, G.2, G.4 (formulas read in a public
 * reprint; buckling constants see `buckling-constants.ts`). Corners are square, so a wall's width is its clear width.
 */
import { type BucklingConstants, type Metal, roundElastic } from './buckling-constants.ts'

const elastic = (E: number, slenderness: number): number => (Math.PI * Math.sqrt(E)) ** 2 / slenderness ** 2

/** B.5.4.2: a flat wall held along both edges, evenly compressed. `ratio` is b/t. */
export function flatCompression(metal: Metal, { flat, k1, k2 }: BucklingConstants, ratio: number): number {
  const slenderness = 1.6 * ratio
  if (slenderness >= (k1 * flat.B) / flat.D) return (k2 * Math.sqrt(flat.B * metal.E)) / slenderness
  return Math.min(metal.Fcy, flat.B - flat.D * slenderness)
}

/** B.5.6, table B.5.1: the same wall's elastic buckling. */
export const flatElastic = (metal: Metal, ratio: number): number => elastic(metal.E, 1.6 * ratio)

/** B.5.5.1: a flat wall held along both edges, bent in its own plane about its middle (m = 0.65). */
export function flatBending(metal: Metal, { flatBending: line }: BucklingConstants, ratio: number): number {
  const slenderness = 0.65 * ratio
  if (slenderness >= (0.5 * line.B) / line.D) return (2.04 * Math.sqrt(line.B * metal.E)) / slenderness
  return Math.min(1.5 * metal.Fcy, line.B - line.D * slenderness)
}

/** B.5.4.5: a round tube evenly compressed. `ratio` is Rb/t, the middle radius over the wall. */
export function roundCompression(metal: Metal, { round }: BucklingConstants, ratio: number): number {
  const slenderness = Math.sqrt(ratio)
  if (slenderness >= round.C) return Math.min(metal.Fcy, roundElastic(metal.E, slenderness))
  return Math.min(metal.Fcy, round.B - round.D * slenderness)
}

/** B.5.5.4: a round tube bent. */
export function roundBending(
  metal: Metal,
  { round, roundBending: upper }: BucklingConstants,
  ratio: number,
): number {
  const slenderness = Math.sqrt(ratio)
  if (slenderness <= upper.C) return upper.B - upper.D * slenderness
  if (slenderness < round.C) return round.B - round.D * slenderness
  return roundElastic(metal.E, slenderness)
}

/** G.2: a flat web held along both edges, sheared. */
export function flatShear(metal: Metal, { shear }: BucklingConstants, ratio: number): number {
  const slenderness = 1.25 * ratio
  if (slenderness >= shear.C) return elastic(metal.E, slenderness)
  return Math.min(metal.Fsy, shear.B - shear.D * slenderness)
}

/** Slenderness of a round tube in shear or torsion, G.4-4 and H.2-6; `over` is the length over which it is sheared, by Rb. */
export const roundShearSlenderness = (ratio: number, over: number): number =>
  2.9 * ratio ** (5 / 8) * over ** (1 / 4)

/** G.4: a round tube sheared across. */
export function roundShear(metal: Metal, { shear }: BucklingConstants, slenderness: number): number {
  if (1.25 * slenderness >= shear.C) return Math.min(metal.Fsy, 1.3 * elastic(metal.E, 1.25 * slenderness))
  return Math.min(metal.Fsy, 1.3 * shear.B - 1.63 * shear.D * slenderness)
}

/** H.2.1: a round tube twisted. */
export const roundTorsion = (metal: Metal, constants: BucklingConstants, slenderness: number): number =>
  flatShear(metal, constants, slenderness)
