/** What the wave that is taken for strength does to legs, at one level of the lake. */
import type { Waves } from '../../dock.ts'
import { CREST } from '../../site/waves/limits.ts'
import { atPhase, type OnUpright, onUpright, type Upright } from '../../site/waves/morison.ts'
import { coherentShare } from '../../site/waves/short-crested.ts'
import { type Height, inDepth, type Train, trainsOf } from '../../site/waves/trains.ts'

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
  /** Along the way that the wave goes, and along its crests, m. */
  readonly along: number
  readonly across: number
}

/**
 * Forces on all legs at the moment at which they add up to most, under the wind's wave or a boat's wake, whichever adds up to more.
 * A wave comes abeam to all legs alike; head-on it passes one after the other, and what pushes here pulls there. Null for each leg without water.
 */
export function legWaves(
  waves: Waves,
  legs: readonly LegInWater[],
  height: Height,
): readonly (LegWave | null)[] {
  const passed = trainsOf(waves, height).map((train) => passing(train, legs))
  const worst = passed.reduce((most, one) => (one.total > most.total ? one : most), NONE)
  return legs.map((_, i) => worst.legs[i] ?? null)
}

interface Passing {
  /** N */
  readonly total: number
  readonly legs: readonly (LegWave | null)[]
}

const NONE: Passing = { total: -1, legs: [] }

function passing(train: Train, legs: readonly LegInWater[]): Passing {
  const known = new Map<string, { on: OnUpright; k: number } | null>()
  const pushed = legs.map(({ depth, width, shape }) => {
    // Feet on even ground are alike.
    const key = `${Math.round(depth * 1e6)} ${width} ${shape}`
    let one = known.get(key)
    if (one === undefined) {
      const wave = inDepth(train, depth)
      one = wave && { on: onUpright(wave, { width, shape }, CREST), k: wave.k }
      known.set(key, one)
    }
    return one
  })
  const behind = phasesBehind(legs, pushed)
  const phaseOf = (i: number, step: number): number => (2 * Math.PI * step) / PHASES - behind[i]!
  let best = { total: -1, step: 0 }
  for (let step = 0; step < PHASES; step++) {
    let total = 0
    for (let i = 0; i < legs.length; i++) if (pushed[i]) total += atPhase(pushed[i]!.on, phaseOf(i, step))
    if (total > best.total) best = { total, step }
  }
  const share = train.shortCrested ? shareOf(legs, pushed) : 1
  const all = pushed.map((one, i) => {
    if (!one) return null
    const phase = phaseOf(i, best.step)
    const { drag, dragAt, inertia, inertiaAt } = one.on
    const c = drag * Math.cos(phase) ** 2
    const s = Math.abs(inertia * Math.sin(phase))
    return {
      force: share * atPhase(one.on, phase),
      arm: c + s > 0 ? (c * dragAt + s * inertiaAt) / (c + s) : dragAt,
    }
  })
  return { total: share * best.total, legs: all }
}

/** Of all legs in the water, that a crest is at at once. */
function shareOf(legs: readonly LegInWater[], pushed: readonly ({ readonly k: number } | null)[]): number {
  const wet = legs.filter((_, i) => pushed[i])
  if (wet.length === 0) return 1
  const at = wet.map(({ across }) => across)
  const k = pushed.reduce((least, one) => Math.min(least, one?.k ?? least), Number.POSITIVE_INFINITY)
  return coherentShare(Math.max(...at) - Math.min(...at), k)
}

/** How far a wave is behind at each leg, rad: its number goes with the depth, so it is added up from leg to leg. */
function phasesBehind(
  legs: readonly LegInWater[],
  pushed: readonly ({ readonly k: number } | null)[],
): Float64Array {
  const behind = new Float64Array(legs.length)
  const order = legs.map((_, i) => i).filter((i) => pushed[i])
  order.sort((a, b) => legs[a]!.along - legs[b]!.along)
  for (let n = 1; n < order.length; n++) {
    const [last, i] = [order[n - 1]!, order[n]!]
    const k = (pushed[last]!.k + pushed[i]!.k) / 2
    behind[i] = behind[last]! + k * (legs[i]!.along - legs[last]!.along)
  }
  return behind
}
