/**
 * Soil of a loose bare lake bed, by what is felt there: what posts are worked out with.
 *
 * Not the values of a building site: the top of a lake bed is loose and was just turned up by the auger. All figures are judgment, with
 * the range in which a real bed lies; a shop states its own as `soils` in the catalog.
 *
 * - Angle of friction: loose sand 30° (28 to 34), gravel 34° (32 to 38). Lower than what a foot sinks by (`bearing.ts`), for there the
 *   bed is pressed and here it is loosened.
 * - Weight under water: 9 kN/m³ (8 to 10.5) of sand and gravel, 6 (5 to 8) of soft clay, 1 (0 to 3) of muck.
 * - Undrained cohesion: soft clay 10 kPa (5 to 25), muck 1 kPa (0.2 to 3): next to nothing.
 * - Stiffness of sand, growth of the modulus of horizontal subgrade reaction with depth: Terzaghi 1955, under water 4, 20 and 40 lb/in³
 *   loose, medium and dense (read in a worked sheet of Broms's method that prints his table): 1.09, 5.43 and 10.9 MN/m³. Loose for sand,
 *   2.5 MN/m³ between loose and medium for gravel.
 * - Stiffness of clay: 67 times the cohesion, Pa, over the depth (Davisson 1970; memory). Matlock's curve for soft clay gives 90 times
 *   at half of its resistance: 0.5 · 9 c D over y50 = 2.5 · 0.02 · D.
 */
import type { BottomKind, Catalog } from '../../catalog/index.ts'

export interface Granular {
  readonly kind: 'granular'
  /** Angle of friction, degrees. */
  readonly friction: number
  /** Weight under water, N/m3. */
  readonly weight: number
  /** Growth of the subgrade modulus with depth, N/m3. */
  readonly stiffness: number
}

export interface Cohesive {
  readonly kind: 'cohesive'
  /** Undrained cohesion, Pa. */
  readonly cohesion: number
  /** Weight under water, N/m3. */
  readonly weight: number
  /** Subgrade modulus: force on a meter of post by a meter that it is moved, Pa. */
  readonly stiffness: number
}

export type Soil = Granular | Cohesive

/** Pa for 1 Pa of cohesion. */
const STIFFNESS_OF_CLAY = 67

const LB_PER_IN3 = 4.4482216 / 0.0254 ** 3
/** Terzaghi 1955, sand under water, N/m3. */
export const TERZAGHI_SUBMERGED = { loose: 4 * LB_PER_IN3, medium: 20 * LB_PER_IN3, dense: 40 * LB_PER_IN3 }

const cohesive = (cohesion: number, weight: number): Cohesive => ({
  kind: 'cohesive',
  cohesion,
  weight,
  stiffness: STIFFNESS_OF_CLAY * cohesion,
})

export const SOILS = {
  gravel: { kind: 'granular', friction: 34, weight: 9000, stiffness: 2.5e6 },
  sand: { kind: 'granular', friction: 30, weight: 9000, stiffness: TERZAGHI_SUBMERGED.loose },
  clay: cohesive(10_000, 6000),
  muck: cohesive(1000, 1000),
} as const satisfies Record<Exclude<BottomKind, 'rock'>, Soil>

/** The shop's soil where it states one, else the one above; null for rock, which no post is driven into. */
export function soilOf(catalog: Catalog, bottom: BottomKind): Soil | null {
  if (bottom === 'rock') return null
  const stated = catalog.soils?.[bottom]
  if (!stated) return SOILS[bottom]
  const usual: Soil = SOILS[bottom]
  const weight = stated.weight ?? usual.weight
  if (usual.kind === 'granular') {
    const { friction, stiffness } = stated as { friction?: number; stiffness?: number }
    return {
      kind: 'granular',
      friction: friction ?? usual.friction,
      weight,
      stiffness: stiffness ?? usual.stiffness,
    }
  }
  const { cohesion = usual.cohesion, stiffness } = stated as { cohesion?: number; stiffness?: number }
  return { kind: 'cohesive', cohesion, weight, stiffness: stiffness ?? STIFFNESS_OF_CLAY * cohesion }
}
