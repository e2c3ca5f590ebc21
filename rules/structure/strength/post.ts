/**
 * What the ground gives a post sideways: Broms's rigid free-head pile, and the tube as the other limit.
 *
 * Broms 1964a, b (J. Soil Mech. Found. Div. ASCE 90, SM2 and SM3).
 * - Clay: the ground resists with 9 c D below 1.5 D and with nothing above. f = H / (9 c D), M = H (e + 1.5 D + f/2) = 2.25 c D g²,
 *   L = 1.5 D + f + g (read in Fundamentals of Foundation Engineering, 6.24.1, eqs 6.104 and 6.105).
 * - Sand: 3 Kp γ' z D, turned about the tip: H = γ' D L³ Kp / 2 / (e + L); where the shear is none, f = √(H / (1.5 γ' D Kp)), the tube
 *   bends with M = H (e + 2 f/3) (memory; FHWA-HI-97-013, 9.7.3.2). Turning about the tip gives more than equilibrium about a point
 *   above it would (a third more or so under a load high up); 3 Kp gives less than what tests resist with. The two go together.
 * - Ground at work, a stiff post on springs: moved at the bed line by 4 H (1 + 1.5 e/L) / (k L) in clay, by
 *   18 H (1 + 1.33 e/L) / (n L²) in sand (memory). The springs of `groundSprings` give just these.
 *
 * The helix is not counted sideways, nor the weight on the post. All pure; N, m, Pa, N·m. Values without a safety factor, unless said.
 */
import type { Cohesive, Granular, Soil } from './soil.ts'

/** On the soil's strength: FHWA-HI-97-013, 9.7.3.2, takes 2.5 off Broms's load (memory); 2 to 3 is usual. */
export const SOIL_SAFETY = 2.5

export interface Post {
  /** Outside diameter, m. */
  readonly diameter: number
  /** In the ground, m. */
  readonly embed: number
  /** Of the tube, N·m: what it may bend with (an allowable value where an allowable one is asked for). */
  readonly moment: number
  /** Of the tube, N·m2. */
  readonly EI: number
}

/** Rankine's coefficient of passive earth pressure at an angle in degrees. */
export const passive = (degrees: number): number => {
  const s = Math.sin((degrees * Math.PI) / 180)
  return (1 + s) / (1 - s)
}

/** Sideways load at `height` over the bed under which the ground gives way all along the post, N. */
export function groundGives(soil: Soil, { diameter, embed }: Post, height: number): number {
  if (soil.kind === 'granular')
    return (0.5 * soil.weight * diameter * embed ** 3 * passive(soil.friction)) / (height + embed)
  const free = embed - 1.5 * diameter
  if (free <= 0) return 0
  // With H = 9 c D f and g = free - f: 9 f (arm + f/2) = 2.25 (free - f)², a square equation in f.
  const arm = height + 1.5 * diameter
  const b = 2 * (2 * arm + free)
  const f = (-b + Math.sqrt(b * b + 4 * free * free)) / 2
  return 9 * soil.cohesion * diameter * f
}

/** Sideways load at `height` under which the tube bends as far as it may in ground that has given way above, N. */
export function tubeBends(soil: Soil, { diameter, moment }: Post, height: number): number {
  if (soil.kind === 'cohesive') {
    const arm = height + 1.5 * diameter
    const per = 9 * soil.cohesion * diameter
    if (per <= 0) return 0
    // H²/(2 per) + H arm = M, without the difference of large numbers.
    return (2 * moment) / (arm + Math.sqrt(arm * arm + (2 * moment) / per))
  }
  const per = 1.5 * soil.weight * diameter * passive(soil.friction)
  if (per <= 0) return 0
  // per f² (height + 2 f/3) = M grows with f: halved until nothing is left to halve.
  let low = 0
  let high = Math.cbrt((1.5 * moment) / per)
  for (let i = 0; i < 60; i++) {
    const f = (low + high) / 2
    if (per * f * f * (height + (2 / 3) * f) > moment) high = f
    else low = f
  }
  return per * low * low
}

/** The soil with its strength divided by a factor. Granular ground is weakened by its weight: its passive pressure is in proportion. */
const weakened = (soil: Soil, by: number): Soil =>
  soil.kind === 'cohesive'
    ? ({ ...soil, cohesion: soil.cohesion / by } satisfies Cohesive)
    : ({ ...soil, weight: soil.weight / by } satisfies Granular)

/** What a post may be pushed with sideways at `height` over the bed, N: the soil by its safety factor, the tube by its own. */
export function lateralHold(soil: Soil, post: Post, height: number, safety = SOIL_SAFETY): number {
  const trusted = weakened(soil, safety)
  return Math.min(groundGives(trusted, post, height), tubeBends(trusted, post, height))
}

export interface GroundSprings {
  /** Where they stand, under the bed line, m. The tube goes on down to there. */
  readonly depth: number
  /** Sideways, either way, N/m. */
  readonly lateral: number
  /** Against turning about a level axis, N·m/rad. */
  readonly turn: number
}

/**
 * The ground as two springs that know nothing of each other, which they do at one depth only: half of the embedment in clay, whose
 * modulus is the same all down (k L and k L³/12), two thirds in sand, where it grows with depth (n L²/2 and n L⁴/36). At the bed line
 * they would be coupled. What lies deeper than a stiff post reaches counts for nothing: 1.5/β in clay, β⁴ = k/4EI; 2/η in sand,
 * η⁵ = n/EI (Broms's limits of a short pile; memory).
 */
export function groundSprings(soil: Soil, { embed, EI }: Post): GroundSprings {
  const k = soil.stiffness
  if (k <= 0 || embed <= 0) return { depth: Math.max(0, embed) / 2, lateral: 0, turn: 0 }
  if (soil.kind === 'cohesive') {
    const L = Math.min(embed, 1.5 / (k / (4 * EI)) ** 0.25)
    return { depth: L / 2, lateral: k * L, turn: (k * L ** 3) / 12 }
  }
  const L = Math.min(embed, 2 / (k / EI) ** 0.2)
  return { depth: (2 / 3) * L, lateral: (k * L * L) / 2, turn: (k * L ** 4) / 36 }
}

/** How far a stiff post moves sideways at `at` over the bed line for each newton at `height`, m/N. */
export const groundGivesWay = (
  { depth, lateral, turn }: GroundSprings,
  height: number,
  at = height,
): number => 1 / lateral + ((height + depth) * (at + depth)) / turn
