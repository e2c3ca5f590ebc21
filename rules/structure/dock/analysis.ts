/**
 * Runs a dock's frame through its combinations, and hands every state of every part to whoever judges it.
 *
 * Second order by states: the frame is softened by the axial forces of its dead load, with all of the people on it wherever there
 * are any (so three quarters of them soften it too much, not too little), and without; within a state loads add. Legs lean by the
 * larger of 1/500 and what the sleeves leave loose. Feet that would pull are let go (`lift-off.ts`).
 */
import type { Waves } from '../../dock.ts'
import type { AxialForce } from '../beam-column.ts'
import {
  type CaseLoad,
  endForces,
  factorState,
  layOutStates,
  respond,
  type State,
  type StateLayout,
} from '../second-order.ts'
import { deadLoad, type LevelName, liveLoad } from './basic-loads.ts'
import { combinations, GRAVITY, type Gravity } from './combinations.ts'
import type { DockFrame } from './frame.ts'
import { basicLoads } from './loads-asked.ts'
import { sidesOf } from './side-loads.ts'
import { sliding } from './sliding.ts'
import { type Loaded, type Solved, soften } from './soften.ts'
import { type Sway, swayOf } from './sway.ts'

/** Least lean of a frame as set up (memory: ADM 2020 C.2.2, 1/500 of the height). */
const PLUMB = 1 / 500
/** Lean that a sleeve leaves where the shop states none (judgment). */
const SLACK_LEAN = 1 / 100

export interface Analysis {
  readonly frame: DockFrame
  readonly states: StateLayout
  /** Without axial forces. */
  readonly plain: State
  /** Axial force of each member under D + L, tension positive, N. */
  readonly gravityAxial: Float64Array
  readonly dead: CaseLoad
  readonly live: CaseLoad
  /** Movement under people alone, without axial forces, six a node. */
  readonly liveMovement: Float64Array
  /** True where D + L alone is past the buckling load of the softened frame. */
  readonly buckled: boolean
  readonly lean: number
  readonly sway: Sway
  /** Dead load and people on the softened frame, all contacts closed: for what is asked of it besides. Null where that has buckled. */
  readonly full: (() => Loaded) | null
}

/**
 * @param visit called with each combination solved; its buffers are used again for the next one
 * @param options `gravityOnly`: no combination, only what `buckling` and sway need; `fine`: as `underPush`
 * Throws UnstableFrameError where the dock can move without resistance.
 */
export function analyze(
  frame: DockFrame,
  waves: Waves | null,
  visit: (solved: Solved) => void,
  { gravityOnly = false, fine = true }: { readonly gravityOnly?: boolean; readonly fine?: boolean } = {},
): Analysis {
  const { kit } = frame
  const states = layOutStates(frame)
  const plain = factorState(states, null)
  const dead = deadLoad(states, frame)
  const live = liveLoad(states, frame, { left: 1, right: 1 })
  const uDead = respond(plain, dead.onNodes)
  const uLive = respond(plain, live.onNodes)
  const axialOf = (share: number): Float64Array =>
    memberAxial(plain, [uDead, uLive], [dead, live], [1, share])
  const axial: Record<Gravity, Float64Array> = {
    full: axialOf(GRAVITY.full),
    none: axialOf(GRAVITY.none),
  }

  const lean = Math.max(PLUMB, kit.shop.catalog.sleeve.slack ?? SLACK_LEAN)
  const sway = swayOf(states, frame, plain)
  const sides = sidesOf(states, frame, { plain, sway, lean })
  const list = gravityOnly
    ? []
    : combinations(levelsOf(frame), hasWeather(frame, waves), sides, kit.design.dock.boat !== undefined)
  const loads = basicLoads(states, frame, waves, { dead, live, sides })
  const rubbing = sliding(frame)
  let buckled = false
  let full: (() => Loaded) | null = null
  for (const gravity of ['full', 'none'] as const) {
    const mine = list.filter((c) => c.gravity === gravity)
    if (mine.length === 0) continue
    const softened = soften({ frame, states, loads, lean, rubbing, fine }, axial[gravity])
    if (!softened) {
      buckled = true
      continue
    }
    for (const combination of mine) visit(softened.solve(combination))
    if (gravity === 'full') full = softened.loaded
  }
  return {
    frame,
    states,
    plain,
    gravityAxial: axial.full,
    dead,
    live,
    liveMovement: uLive,
    buckled,
    lean,
    sway,
    full,
  }
}

/** Levels of the lake that are looked at. */
function levelsOf({ kit }: DockFrame): LevelName[] {
  const { levels } = kit.design.site
  const names: LevelName[] = ['today']
  if (levels.low < 0) names.unshift('low')
  if (levels.high > 0) names.push('high')
  return names
}

const hasWeather = ({ kit }: DockFrame, waves: Waves | null): boolean =>
  waves !== null || (kit.design.site.wind?.speed ?? 0) > 0

/** Mean axial force of each member, tension positive, N. */
function memberAxial(
  state: State,
  movements: readonly Float64Array[],
  loads: readonly CaseLoad[],
  factors: readonly number[],
): Float64Array {
  const count = state.layout.members.count
  const axial = new Float64Array(count)
  const forces = new Float64Array(12)
  for (let m = 0; m < count; m++)
    factors.forEach((factor, i) => {
      if (factor === 0) return
      endForces(state, m, movements[i]!, loads[i]!.onMembers, forces, 0)
      axial[m]! += (factor * (forces[6]! - forces[0]!)) / 2
    })
  return axial
}

/** The same at both ends, for `buckling`. */
export const evenAxial = (axial: Float64Array): AxialForce[] => Array.from(axial, (n) => ({ from: n, to: n }))
