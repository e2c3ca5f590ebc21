/**
 * Runs a dock's frame through its combinations, and hands every state of every part to whoever judges it.
 *
 * Second order by states: the frame is softened by the axial forces of its dead load, with all of the people on it wherever there
 * are any (so three quarters of them soften it too much, not too little), and without; within a state loads add. Legs lean by the
 * larger of 1/500 and what the sleeves leave loose. Feet that would pull are let go (`lift-off.ts`).
 */
import type { Waves } from '../../dock.ts'
import type { Height } from '../../site/waves/trains.ts'
import type { AxialForce } from '../beam-column.ts'
import {
  type CaseLoad,
  endForces,
  factorState,
  layOutStates,
  loadNode,
  respond,
  type State,
  type StateLayout,
} from '../second-order.ts'
import {
  deadLoad,
  type LevelName,
  leanLoad,
  levelOf,
  liveLoad,
  PUSH,
  pushLoad,
  TOWARD,
  type Toward,
  weatherLoad,
} from './basic-loads.ts'
import { berth, bump, bumperAt } from './boat.ts'
import { type Combination, combinations, GRAVITY, type Gravity } from './combinations.ts'
import { judgedForces, type Touch, touch } from './contacts.ts'
import type { DockFrame } from './frame.ts'
import { letGo } from './lift-off.ts'
import { caseId } from './load-cases.ts'
import { crowdLoads, edgeLoads, type LoadedSide } from './people.ts'
import { type Lean, sliding } from './sliding.ts'
import { isPushedOff, type Outcome, underPush } from './under-push.ts'
import { upliftLoad } from './uplift.ts'

/**
 * Second-order analysis for allowable strengths is made under 1.6 times the combination at 0.8 of the stiffness, and its forces divided by
 * 1.6 again: axial forces soften the frame twice as much as they are (ADM 2020 C.2 and C.3, read in a reprint).
 */
export const SOFTENED = 1.6 / 0.8
/** Least lean of a frame as set up (memory: ADM 2020 C.2.2, 1/500 of the height). */
const PLUMB = 1 / 500
/** Lean that a sleeve leaves where the shop states none (judgment). */
const SLACK_LEAN = 1 / 100

/** One combination solved. */
export interface Solved {
  readonly combination: Combination
  /** Twelve for each of `frame.judged`: what acts at its ends, member axes; of a dock that does not stand with all contacts closed. */
  readonly forces: Float64Array
  /** The same for what parts carry: of a dock that does not stand under the part of the push that it just stands. */
  readonly carried: Float64Array
  /** What is off, by index of `frame.contacts`: up to `frame.legs.length` the feet. */
  readonly lifted: readonly number[]
  /** False where nothing bears. */
  readonly stands: boolean
  /** It would not stand if the load stayed, but slides away before it comes to that, or the load is over before it has gone over. */
  readonly spared: boolean
  readonly lean: Lean
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
  /** Movement under people alone, without axial forces, six a node. */
  readonly liveMovement: Float64Array
  /** True where D + L alone is past the buckling load of the softened frame. */
  readonly buckled: boolean
  readonly lean: number
  readonly sway: Sway
  /** Dead load and people on the softened frame, all contacts closed: for what is asked of it besides. Null where that has buckled. */
  readonly full: (() => Loaded) | null
}

export interface Loaded {
  readonly touching: Touch
  /** Twelve for each of `frame.judged`. */
  readonly dead: Float64Array
  readonly people: Float64Array
  /** What gaps under contacts do. */
  readonly gaps: Float64Array
  /** A lean to the left. */
  readonly leaning: Float64Array
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
  const half = {
    left: liveLoad(states, frame, { left: 1, right: 0 }),
    right: liveLoad(states, frame, { left: 0, right: 1 }),
  }
  const uDead = respond(plain, dead.onNodes)
  const uLive = respond(plain, live.onNodes)

  const lean = Math.max(PLUMB, kit.shop.catalog.sleeve.slack ?? SLACK_LEAN)
  const axialOf = (share: number): Float64Array =>
    memberAxial(plain, [uDead, uLive], [dead, live], [1, share])
  const axial: Record<Gravity, Float64Array> = {
    full: axialOf(GRAVITY.full),
    none: axialOf(GRAVITY.none),
  }

  const weather = waves !== null || (kit.design.site.wind?.speed ?? 0) > 0
  const { levels } = kit.design.site
  const names: LevelName[] = ['today']
  if (levels.low < 0) names.unshift('low')
  if (levels.high > 0) names.push('high')
  const sway = swayOf(states, frame, plain)
  const sides = [
    ...sideLoads(states, frame, sway),
    ...bumpLoads(states, frame, plain),
    ...crowdLoads(states, frame, lean),
    ...edgeLoads(states, frame),
  ]
  const list = gravityOnly ? [] : combinations(names, weather, sides)

  const weatherLoads = new Map<string, CaseLoad>()
  const weatherOf = (key: string, level: LevelName, toward: Toward, height: Height): CaseLoad => {
    let load = weatherLoads.get(key)
    if (!load) {
      load = weatherLoad(states, frame, waves, level, toward, height)
      weatherLoads.set(key, load)
    }
    return load
  }
  const uplifts = new Map<string, CaseLoad | null>()
  /** Null where no crest reaches the deck. */
  const upliftFor = (key: string, level: LevelName, toward: Toward, height: Height): CaseLoad | null => {
    let load = uplifts.get(key)
    if (load === undefined) {
      load = waves && upliftLoad(states, frame, waves, levelOf(levels, level), toward, height)
      uplifts.set(key, load)
    }
    return load
  }
  let buckled = false
  let full: (() => Loaded) | null = null
  const gapped = frame.contacts.some(({ gap }) => gap > 0)
  const rubbing = sliding(frame)
  for (const gravity of ['full', 'none'] as const) {
    const mine = list.filter((c) => c.gravity === gravity)
    if (mine.length === 0) continue
    const state = factorState(
      states,
      axial[gravity].map((n) => n * SOFTENED),
    )
    if (state.buckled) {
      buckled = true
      continue
    }
    const legAxial = Float64Array.from(frame.legs, ({ members }) => -axial[gravity][members[0]!]!)
    // Within a state all is linear, so only forces are kept, and added up for each combination.
    const known = new Map<string, Float64Array>()
    const ask = (key: string, make: () => CaseLoad): Float64Array => {
      let forces = known.get(key)
      if (!forces) {
        const load = make()
        forces = judgedForces(state, frame, respond(state, load.onNodes), load.onMembers)
        known.set(key, forces)
      }
      return forces
    }
    const touching = touch(state, frame)
    const gapForces = new Float64Array(frame.judged.length * 12)
    touching.move(
      frame.contacts.flatMap(({ gap }) => [-gap, 0, 0]),
      gapForces,
    )
    const leaning = (way: 'left' | 'lake') =>
      ask(`lean ${way}`, () => leanLoad(states, frame, legAxial, lean, TOWARD[way]))
    const forces = new Float64Array(frame.judged.length * 12)
    const closed = new Float64Array(forces.length)
    for (const combination of mine) {
      const { dead: own, live: on, weather, side, lean: toward } = combination
      const still: Term[] = [{ forces: ask('dead', () => dead), factor: own }]
      if (gapped) still.push({ forces: gapForces, factor: 1 })
      for (const [i, name] of (['left', 'right'] as const).entries())
        if (on[i]! > 0) still.push({ forces: ask(name, () => half[name]), factor: on[i]! })
      const way = toward === 'left' || toward === 'right' ? 'left' : 'lake'
      still.push({ forces: leaning(way), factor: toward === way ? 1 : -1 })
      const grown: Term[] = []
      if (weather) {
        const { level, toward: to, waves: height, factor } = weather
        const key = `${level} ${to} ${height}`
        grown.push({ forces: ask(key, () => weatherOf(key, level, to, height)), factor })
        const uplift = weather.uplift ? upliftFor(key, level, to, height) : null
        if (uplift) grown.push({ forces: ask(`uplift ${key}`, () => uplift), factor: weather.uplift! })
      }
      if (side !== null) grown.push({ forces: ask(`side ${side}`, () => sides[side]!.load), factor: 1 })
      addUp(forces, still, grown)
      const leans: Lean = { axial: legAxial, x: TOWARD[toward][0] * lean, y: TOWARD[toward][1] * lean }
      closed.set(forces)
      const standing = letGo(touching, forces)
      let outcome: Outcome = { spared: false, carried: forces }
      if (grown.length > 0 && (!standing.stands || isPushedOff(rubbing, closed, leans)))
        outcome = underPush(
          frame,
          combination,
          standing.stands,
          forces,
          {
            touching,
            rubbing,
            still: addUp(new Float64Array(forces.length), still),
            grown: addUp(new Float64Array(forces.length), grown),
            lean: leans,
          },
          fine,
        )
      visit({ combination, forces, ...outcome, ...standing, lean: leans })
    }
    if (gravity === 'full')
      full = () => ({
        touching,
        dead: ask('dead', () => dead),
        people: ask('people', () => live),
        gaps: gapForces,
        leaning: leaning('left'),
      })
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

/** Forces of a basic load, and how many times it acts. */
interface Term {
  readonly forces: Float64Array
  readonly factor: number
}

/** Their sum, into `sum`: which is given back. */
function addUp(sum: Float64Array, ...lists: readonly (readonly Term[])[]): Float64Array {
  sum.fill(0)
  for (const list of lists)
    for (const { forces, factor } of list) for (let i = 0; i < sum.length; i++) sum[i]! += factor * forces[i]!
  return sum
}

/** How far the softest outer corner gives under the push, along the dock's axes, without axial forces. */
export interface Sway {
  /** m */
  readonly along: number
  readonly across: number
  readonly nodeAlong: number
  readonly nodeAcross: number
  /** All that give as much, one for each line along which a push acts: a dock that is alike on both sides is pushed on both. */
  readonly softAlong: readonly number[]
  readonly softAcross: readonly number[]
}

/** Of the softest corner's give: what gives so much is as soft. */
const AS_SOFT = 0.98

export function swayOf(states: StateLayout, frame: DockFrame, plain: State): Sway {
  const { nodes } = frame
  const outer = outerCorners(frame)
  const softest = (direction: 0 | 1) => {
    const gives = outer.map((node) => {
      const push = direction === 0 ? pushLoad(states, node, PUSH, 0) : pushLoad(states, node, 0, PUSH)
      return respond(plain, push.onNodes)[node * 6 + direction]!
    })
    const most = gives.reduce((high, give) => Math.max(high, give), 0)
    const line = direction === 0 ? 'y' : 'x'
    const soft: number[] = []
    outer.forEach((node, i) => {
      const alike = soft.some((other) => Math.abs(nodes[other]![line] - nodes[node]![line]) < 1e-3)
      if (most > 0 && gives[i]! >= AS_SOFT * most && !alike) soft.push(node)
    })
    return { most, node: most > 0 ? outer[gives.indexOf(most)]! : -1, soft }
  }
  const along = softest(0)
  const across = softest(1)
  return {
    along: along.most,
    across: across.most,
    nodeAlong: along.node,
    nodeAcross: across.node,
    softAlong: along.soft,
    softAcross: across.soft,
  }
}

/** The push at the corners that give most, each way, with the weight of who pushes. */
function sideLoads(states: StateLayout, frame: DockFrame, sway: Sway): LoadedSide[] {
  return (['left', 'right', 'shore', 'lake'] as const).flatMap((toward) => {
    const [x, y] = TOWARD[toward]
    return (x === 0 ? sway.softAcross : sway.softAlong).map((node) => {
      const load = pushLoad(states, node, PUSH * x, PUSH * y)
      // Whoever shoves stands on that section, in its middle.
      const section = frame.corners.find((corners) => corners?.includes(node)) ?? []
      for (const corner of section) loadNode(load, corner, [0, 0, -PUSH / section.length])
      return { name: caseId('shove', toward), toward, outside: false, load }
    })
  })
}

/** A boat that comes alongside pushes its berth away from itself, for a moment. */
function bumpLoads(states: StateLayout, frame: DockFrame, plain: State): LoadedSide[] {
  const { boat } = frame.kit.design.dock
  const nodes = berth(frame)
  if (!boat || boat.mass === 0 || nodes.length === 0) return []
  const toward = boat.side === 'left' ? 'right' : 'left'
  const sign = TOWARD[toward][1]
  const node = nodes.at(-1)!
  const give = respond(plain, pushLoad(states, node, 0, 1).onNodes)[node * 6 + 1]!
  const { energy, force } = bump(boat.mass, give, bumperAt(frame))
  const load = pushLoad(states, node, 0, sign * force)
  return [{ name: caseId('boat', toward), toward, outside: true, bump: { energy, force }, load }]
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
      endForces(state, m, movements[i]!, loads[i]!.onMembers, forces, 0)
      axial[m]! += (factor * (forces[6]! - forces[0]!)) / 2
    })
  return axial
}

/** The same at both ends, for `buckling`. */
export const evenAxial = (axial: Float64Array): AxialForce[] => Array.from(axial, (n) => ({ from: n, to: n }))
