/** What the wave that is taken for strength does to legs, at one level of the lake. */
import type { Waves } from '../../dock.ts'
import { dispersion } from '../../site/waves/dispersion.ts'
import { atPhase, type OnUpright, onUpright, type Upright } from '../../site/waves/morison.ts'
import { BREAKING, CREST, HIGHEST } from '../../site/waves/waves.ts'

/** Water over a foot that is no more than this gets no wave, m. */
const DRY = 0.05
/** Of the depth's limit: from here on a wave counts as breaking. */
const NEAR = 0.98

/** Steps of phase in which the worst moment of a passing wave is looked for. */
const PHASES = 24

export interface LegWave {
  /** N, with the wave; negative against it. */
  readonly force: number
  /** Where it acts, m over the foot. */
  readonly arm: number
}

export interface LegInWater extends Upright {
  /** Still water over its foot, m. */
  readonly depth: number
  /** Along the way that the wave goes, m. */
  readonly along: number
}

/**
 * Forces on all legs at the moment at which they add up to most. A wave comes abeam to all legs alike; head-on it passes one after the
 * other, and what pushes here pulls there. Null for each leg without water, or where the Design tells only of wakes.
 */
export function legWaves(waves: Waves, legs: readonly LegInWater[]): readonly (LegWave | null)[] {
  if (waves.period === 0) return legs.map(() => null)
  const known = new Map<string, { on: OnUpright; k: number }>()
  const pushed = legs.map(({ depth, width, shape }) => {
    if (depth <= DRY) return null
    // To 5 mm of depth: feet on even ground are alike.
    const water = Math.round(depth * 200) / 200
    const key = `${water} ${width} ${shape}`
    let one = known.get(key)
    if (!one) {
      const height = Math.min(HIGHEST * waves.open, BREAKING * water)
      const { k } = dispersion(waves.period, water)
      const wave = { height, period: waves.period, depth: water, k }
      one = { on: onUpright(wave, { width, shape }, CREST, height >= NEAR * BREAKING * water), k }
      known.set(key, one)
    }
    return one
  })
  const phaseOf = (i: number, step: number): number =>
    (2 * Math.PI * step) / PHASES - pushed[i]!.k * legs[i]!.along
  let best = { total: -1, step: 0 }
  for (let step = 0; step < PHASES; step++) {
    let total = 0
    for (let i = 0; i < legs.length; i++) if (pushed[i]) total += atPhase(pushed[i]!.on, phaseOf(i, step))
    if (total > best.total) best = { total, step }
  }
  return pushed.map((one, i) => {
    if (!one) return null
    const phase = phaseOf(i, best.step)
    const force = atPhase(one.on, phase)
    const { drag, dragAt, inertia, inertiaAt } = one.on
    const c = drag * Math.cos(phase) ** 2
    const s = Math.abs(inertia * Math.sin(phase))
    return { force, arm: c + s > 0 ? (c * dragAt + s * inertiaAt) / (c + s) : dragAt }
  })
}
