/**
 * What a brace may carry along its axis: its tube as a strut pinned at both holes, its bolts, the walls that the bolts bear on, and the
 * grip of its clamps on the legs.
 *
 * - Tube: the law of its material, length hole to hole, k = 1; pulled, less the bolt's hole through both walls.
 * - Bolt: one plane of shear with threads in it, AISC 360-16 J3.6 and table J3.2, 0.45 Fu of the nominal area, safety factor 2.00
 *   (memory).
 * - Wall: Aluminum Design Manual 2020 J.3.6, e·t·Ftu of each wall and at most 2·d·t·Ftu, safety factor 1.95, e from the hole's middle to
 *   the tube's end (memory); for steel AISC 360-16 J3.10, 1.2·(e − d/2)·t·Fu at most 2.4·d·t·Fu, 2.00 (memory).
 * - Clamp: stated slip over 1.5, as for slip-critical bolts in standard holes (AISC 360-16 J3.8, memory; used by analogy).
 */
import type { BraceStock, Catalog } from '../../catalog/index.ts'
import { boredThrough } from '../../catalog/section-properties.ts'
import { strengthsOfStock } from './member.ts'
import type { Limit } from './strengths.ts'

/** On stated slip of a clamp or of a sleeve's set bolts. */
export const SLIP_SAFETY = 1.5
const BOLT_SAFETY = 2

export type BracePart = 'tube' | 'bolt' | 'hole' | 'clamp'

/** Allowable, N along the brace; the clamp's along the leg. Null: the shop states nothing to judge it by. */
export interface BraceStrength {
  readonly pressed: Limit
  readonly pulled: Limit
  readonly bolt: number | null
  readonly hole: number
  readonly clamp: number | null
}

/** Null where the brace's material states no strength. */
export function braceStrength(catalog: Catalog, brace: BraceStock): BraceStrength | null {
  const stock = catalog.stock[brace.stock]
  const bolt = catalog.hardware.find((item) => item.kind === 'brace-bolt')
  if (!stock || !bolt) return null
  const through = boredThrough(stock)
  const strengths = strengthsOfStock(catalog, brace.stock, {
    length: brace.holes,
    holes: through * bolt.diameter,
  })
  const material = catalog.materials[stock.material]?.strength
  if (!strengths || !material) return null
  const d = bolt.diameter
  const hole =
    material.family === 'steel'
      ? (Math.min(1.2 * Math.max(brace.end - d / 2, 0), 2.4 * d) * through * material.ultimate) / BOLT_SAFETY
      : (Math.min(brace.end, 2 * d) * through * material.ultimate) / 1.95
  return {
    pressed: strengths.compression,
    pulled: strengths.tension,
    bolt: bolt.ultimate === undefined ? null : (0.45 * bolt.ultimate * (Math.PI / 4) * d ** 2) / BOLT_SAFETY,
    hole,
    clamp: catalog.clamp.slip === undefined ? null : catalog.clamp.slip / SLIP_SAFETY,
  }
}

/** `axial` in N, positive in tension; `rise` over length of the brace, 0 to 1: what of it pulls along the leg. */
export function braceUse(
  strength: BraceStrength,
  axial: number,
  rise: number,
): {
  readonly use: number
  readonly part: BracePart
  readonly by: Limit['by'] | 'slip' | 'shear' | 'bearing'
} {
  const force = Math.abs(axial)
  const tube = axial > 0 ? strength.pulled : strength.pressed
  let worst: ReturnType<typeof braceUse> = { use: force / tube.value, part: 'tube', by: tube.by }
  const against = (
    allowable: number | null,
    acting: number,
    part: BracePart,
    by: 'slip' | 'shear' | 'bearing',
  ) => {
    if (allowable === null) return
    const use = acting === 0 ? 0 : acting / allowable
    if (use > worst.use) worst = { use, part, by }
  }
  against(strength.bolt, force, 'bolt', 'shear')
  against(strength.hole, force, 'hole', 'bearing')
  against(strength.clamp, force * rise, 'clamp', 'slip')
  return worst
}

/** Share of a stated slip (N; of a sleeve's set bolts, of a clamp) that a push along the leg takes; null where none is stated. */
export const slipUse = (stated: number | undefined, force: number): number | null =>
  stated === undefined ? null : force === 0 ? 0 : (SLIP_SAFETY * Math.abs(force)) / stated
