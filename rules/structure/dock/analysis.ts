/**
 * Runs a dock's frame through its combinations, and hands every state of every part to whoever judges it.
 *
 * Second order by states: the frame is softened by the axial forces of its dead load with all, three quarters or none of the
 * people on it, at 0.8 of its stiffness (Aluminum Design Manual 2020, chapter C, memory); within a state loads add. Legs lean by the
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
import {
  deadLoad,
  leanLoad,
  type LevelName,
  liveLoad,
  PUSH,
  pushLoad,
  TOWARD,
  type Toward,
  weatherLoad,
} from './basic-loads.ts'
import { type Combination, combinations, GRAVITY, type Gravity } from './combinations.ts'
import type { DockFrame } from './frame.ts'
import { letGo, type Settlements } from './lift-off.ts'

/** Of the stiffness that second-order analysis may count on. */
const SOFT = 0.8
/** Least lean of a frame as set up (memory: ADM 2020 C.2.2, 1/500 of the height). */
const PLUMB = 1 / 500
/** Lean that a sleeve leaves where the shop states none (judgment). */
export const SLACK_LEAN = 1 / 100

/** One combination solved. */
export interface Solved {
  readonly combination: Combination
  readonly state: State
  readonly movement: Float64Array
  readonly onMembers: Float64Array
  readonly lifted: readonly number[]
  readonly stands: boolean
}

export interface Analysis {
  readonly frame: DockFrame
  readonly states: StateLayout
  /** Without axial forces. */
  readonly plain: State
  /** Axial force of each member under D + L, tension positive, N. */
  readonly gravityAxial: Float64Array
  readonly dead: CaseLoad
  readonly live: CaseLoad
  /** Movement under people alone, on the state softened by D + L: at full stiffness. */
  readonly liveMovement: Float64Array
  /** True where D + L alone is past the buckling load of the softened frame. */
  readonly buckled: boolean
  readonly lean: number
  readonly sway: Sway
}

interface Response {
  readonly movement: Float64Array
  readonly load: CaseLoad
}

/** Sections whose corners are tried with a push. */
const MOST_OUTER = 4

/** Outermost corners: of sections that carry no other one, the last of them in the list. */
export function outerCorners(frame: DockFrame): readonly number[] {
  const { joints, layout } = frame.kit
  const carrying = new Set(joints.all.filter((j) => j.kind === 'hook').map((j) => j.host.index))
  return layout.placed
    .filter((p) => p.role !== 'ramp' && !carrying.has(p.index))
    .slice(-MOST_OUTER)
    .flatMap((p) => frame.corners[p.index]!)
}

/**
 * @param visit called with each combination solved; its buffers are used again for the next one
 * Throws UnstableFrameError where the dock can move without resistance.
 */
export function analyze(frame: DockFrame, waves: Waves | null, visit: (solved: Solved) => void): Analysis {
  const { kit } = frame
  const states = layOutStates(frame)
  const plain = factorState(states, null)
  const dead = deadLoad(states, frame)
  const live = liveLoad(states, frame, { left: 1, right: 1 })
  const half = { left: liveLoad(states, frame, { left: 1, right: 0 }), right: liveLoad(states, frame, { left: 0, right: 1 }) }
  const uDead = respond(plain, dead.onNodes)
  const uLive = respond(plain, live.onNodes)

  const lean = Math.max(PLUMB, kit.shop.catalog.sleeve.slack ?? SLACK_LEAN)
  const axialOf = (share: number): Float64Array => memberAxial(plain, [uDead, uLive], [dead, live], [1, share])
  const axial: Record<Gravity, Float64Array> = {
    full: axialOf(GRAVITY.full),
    most: axialOf(GRAVITY.most),
    none: axialOf(GRAVITY.none),
  }

  const weather = waves !== null || (kit.design.site.wind?.speed ?? 0) > 0
  const { levels } = kit.design.site
  const names: LevelName[] = ['today']
  if (levels.low < 0) names.unshift('low')
  if (levels.high > 0) names.push('high')
  const sway = swayOf(states, frame, plain)
  const sides = sideLoads(states, sway)
  const list = combinations(names, weather, sides)

  const weatherLoads = new Map<string, CaseLoad>()
  let buckled = false
  let liveMovement = uLive
  for (const gravity of ['full', 'most', 'none'] as const) {
    const mine = list.filter((c) => c.gravity === gravity)
    if (mine.length === 0) continue
    const state = factorState(
      states,
      axial[gravity].map((n) => n / SOFT),
    )
    if (state.buckled) {
      buckled = true
      continue
    }
    const legAxial = Float64Array.from(frame.legs, ({ members }) => -axial[gravity][members[0]!]!)
    const known = new Map<string, Response>()
    const ask = (key: string, make: () => CaseLoad): Response => {
      let response = known.get(key)
      if (!response) {
        const load = make()
        response = { load, movement: respond(state, load.onNodes) }
        known.set(key, response)
      }
      return response
    }
    const leanTo = (toward: Toward): [Response, number] => {
      const across = toward === 'left' || toward === 'right'
      const sign = toward === 'left' || toward === 'lake' ? 1 : -1
      const key = across ? 'left' : 'lake'
      return [ask(`lean ${key}`, () => leanLoad(states, frame, legAxial, lean, TOWARD[key])), sign]
    }
    if (gravity === 'full') {
      const left = ask('live left', () => half.left).movement
      const right = ask('live right', () => half.right).movement
      liveMovement = left.map((u, i) => (u + right[i]!) * SOFT)
    }
    const kept: Settlements = new Map()
    const size = plain.layout.held.length
    const movement = new Float64Array(size)
    const onMembers = new Float64Array(frame.members.length * 12)
    for (const combination of mine) {
      movement.fill(0)
      onMembers.fill(0)
      const add = ({ movement: u, load }: Response, factor: number): void => {
        for (let i = 0; i < size; i++) movement[i]! += factor * u[i]!
        for (let i = 0; i < onMembers.length; i++) onMembers[i]! += factor * load.onMembers[i]!
      }
      add(
        ask('dead', () => dead),
        combination.dead,
      )
      const [left, right] = combination.live
      if (left > 0)
        add(
          ask('live left', () => half.left),
          left,
        )
      if (right > 0)
        add(
          ask('live right', () => half.right),
          right,
        )
      const { weather, side } = combination
      if (weather) {
        const key = `${weather.level} ${weather.toward}`
        add(
          ask(key, () => {
            let load = weatherLoads.get(key)
            if (!load) {
              load = weatherLoad(states, frame, waves, weather.level, weather.toward)
              weatherLoads.set(key, load)
            }
            return load
          }),
          weather.factor,
        )
      }
      if (side !== null)
        add(
          ask(`side ${side}`, () => sides[side]!.load),
          1,
        )
      const [leaning, sign] = leanTo(combination.lean)
      add(leaning, sign)
      const standing = letGo(state, frame, kept, movement, onMembers)
      visit({ combination, state, onMembers, ...standing })
    }
  }
  return { frame, states, plain, gravityAxial: axial.full, dead, live, liveMovement, buckled, lean, sway }
}

/** How far the softest outer corner gives under the push, along the dock's axes, without axial forces. */
export interface Sway {
  /** m */
  readonly along: number
  readonly across: number
  readonly nodeAlong: number
  readonly nodeAcross: number
}

export function swayOf(states: StateLayout, frame: DockFrame, plain: State): Sway {
  const sway = { along: 0, across: 0, nodeAlong: -1, nodeAcross: -1 }
  for (const node of outerCorners(frame)) {
    const along = respond(plain, pushLoad(states, node, PUSH, 0).onNodes)[node * 6]!
    const across = respond(plain, pushLoad(states, node, 0, PUSH).onNodes)[node * 6 + 1]!
    if (along > sway.along) Object.assign(sway, { along, nodeAlong: node })
    if (across > sway.across) Object.assign(sway, { across, nodeAcross: node })
  }
  return sway
}

/** The push at the corner that gives most, each way. */
function sideLoads(
  states: StateLayout,
  sway: Sway,
): { readonly name: string; readonly toward: Toward; readonly load: CaseLoad }[] {
  return (['left', 'right', 'shore', 'lake'] as const).flatMap((toward) => {
    const [x, y] = TOWARD[toward]
    const node = x === 0 ? sway.nodeAcross : sway.nodeAlong
    if (node < 0) return []
    return [{ name: `D+P ${toward}`, toward, load: pushLoad(states, node, PUSH * x, PUSH * y) }]
  })
}

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
      endForces(state, m, movements[i]!, loads[i]!.onMembers, forces)
      axial[m]! += (factor * (forces[6]! - forces[0]!)) / 2
    })
  return axial
}

/** The same at both ends, for `buckling`. */
export const evenAxial = (axial: Float64Array): AxialForce[] =>
  Array.from(axial, (n) => ({ from: n, to: n }))
