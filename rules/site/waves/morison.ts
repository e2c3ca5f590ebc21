/**
 * What a wave does to a slender upright: drag with the water's speed, inertia with its acceleration, a quarter wave apart.
 *
 * f = ½·ρ·CD·D·u|u| + CM·ρ·A·a for each meter (Morison; Shore Protection Manual 1984, 7-III). Round: CD 1.2 and CM 2.0, as for a Reynolds
 * number under 1e5 (memory; a lake leg stays under 6e4). Square, face on: CD 2.0, CM 2.5 (memory).
 *
 * Airy's wave tells far too little of one about to break: of its drag the rule for breaking waves on piles takes over more and more
 * (`breaking.ts`), F = ½·γ·CD·D·H² at the still water line, CD 1.75 round, 2.25 square (ASCE 7-16 eq. 5.4-4, memory), alone from
 * the breaking height on. Never less than Morison says.
 */
import { blend, towardBreaking } from './breaking.ts'
import { orbit, type Wave } from './dispersion.ts'
import { BREAKING } from './limits.ts'
import { GAMMA, WATER } from './water.ts'

export interface Upright {
  /** Across the wave, m. */
  readonly width: number
  readonly shape: 'round' | 'square'
}

/** Largest forces, N, and where they act over the bed, m. */
export interface OnUpright {
  readonly drag: number
  readonly dragAt: number
  readonly inertia: number
  readonly inertiaAt: number
}

/** Drag and inertia by Morison, drag of a breaking wave, and the section's area over its width squared. */
export const COEFFICIENTS = {
  round: { drag: 1.2, inertia: 2, pile: 1.75, area: Math.PI / 4 },
  square: { drag: 2, inertia: 2.5, pile: 2.25, area: 1 },
} as const

/** Five points of Gauss on 0 to 1 (any table of it). */
const POINTS = [0.046910077030668, 0.2307653449471584, 0.5, 0.7692346550528415, 0.9530899229693319]
const WEIGHTS = [
  0.1184634425280946, 0.2393143352496832, 0.2844444444444444, 0.2393143352496832, 0.1184634425280946,
]

/**
 * @param wave at the upright, its height at most what the depth lets stand
 * @param crest over still water, as part of the height
 * @param breaking false: as if it were far from breaking, by Morison alone
 */
export function onUpright(wave: Wave, { width, shape }: Upright, crest: number, breaking = true): OnUpright {
  const { drag: CD, inertia: CM, pile, area } = COEFFICIENTS[shape]
  const top = crest * wave.height
  let drag = 0
  let dragMoment = 0
  let inertia = 0
  let inertiaMoment = 0
  // Two stretches, the upper one with all but a four-hundredth of what a short wave moves.
  const split = Math.max(0.5, 1 - 3 / (wave.k * wave.depth))
  for (let part = 0; part < 2; part++)
    for (let i = 0; i < 5; i++) {
      const stretch = part === 0 ? split : 1 - split
      const t = part * split + stretch * POINTS[i]!
      const weight = stretch * WEIGHTS[i]!
      const high = t * (wave.depth + top)
      const f = 0.5 * WATER * CD * width * orbit(wave, top, high).u ** 2 * weight * (wave.depth + top)
      drag += f
      dragMoment += f * high
      const low = t * wave.depth
      const m = CM * WATER * area * width ** 2 * orbit(wave, 0, low).a * weight * wave.depth
      inertia += m
      inertiaMoment += m * low
    }
  const share = breaking ? towardBreaking(wave.height / (BREAKING * wave.depth)) : 0
  const whole = blend(drag, 0.5 * GAMMA * pile * width * wave.height ** 2, share)
  const height = at(dragMoment, drag)
  return {
    drag: whole,
    // That of a breaking wave acts at still water.
    dragAt: height + share * (Math.max(wave.depth, height) - height),
    inertia,
    inertiaAt: at(inertiaMoment, inertia),
  }
}

const at = (moment: number, force: number): number => (force > 0 ? moment / force : 0)

/** Force at a phase (rad; 0 with the crest at the upright): N. */
export const atPhase = ({ drag, inertia }: OnUpright, phase: number): number => {
  const c = Math.cos(phase)
  return drag * c * Math.abs(c) + inertia * Math.sin(phase)
}
