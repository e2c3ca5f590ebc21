/** A dock's frame softened by one state of axial forces, in which loads add: each combination solved in it. */
import { type CaseLoad, factorState, respond, type StateLayout } from '../second-order.ts'
import { leanLoad, TOWARD } from './basic-loads.ts'
import type { Combination } from './combinations.ts'
import { judgedForces, type Touch, touch } from './contacts.ts'
import type { DockFrame } from './frame.ts'
import { letGo } from './lift-off.ts'
import type { BasicLoads } from './loads-asked.ts'
import type { Lean, Sliding } from './sliding.ts'
import { isPushedOff, type Outcome, underPush } from './under-push.ts'

/**
 * Second-order analysis for allowable strengths is made under 1.6 times the combination at 0.8 of the stiffness, and its forces divided by
 * 1.6 again: axial forces soften the frame twice as much as they are (ADM 2020 C.2 and C.3, read in a reprint).
 */
export const SOFTENED = 1.6 / 0.8
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

export interface Softened {
  /** Its buffers are used again for the next one. */
  solve(combination: Combination): Solved
  loaded(): Loaded
}

interface Unsoftened {
  readonly frame: DockFrame
  readonly states: StateLayout
  readonly loads: BasicLoads
  readonly lean: number
  readonly rubbing: Sliding
  /** As `underPush`. */
  readonly fine: boolean
}

/** Null where it has buckled. @param axial of each member, tension positive, N */
export function soften(of: Unsoftened, axial: Float64Array): Softened | null {
  const { frame, states, loads, lean, rubbing, fine } = of
  const state = factorState(
    states,
    axial.map((n) => n * SOFTENED),
  )
  if (state.buckled) return null
  const legAxial = Float64Array.from(frame.legs, ({ members }) => -axial[members[0]!]!)
  // Within a state all is linear, so only forces are kept, and added up for each combination.
  const known = new Map<string, Float64Array>()
  const ask: Ask = (key, make) => {
    let forces = known.get(key)
    if (!forces) {
      const load = make()
      forces = judgedForces(state, frame, respond(state, load.onNodes), load.onMembers)
      known.set(key, forces)
    }
    return forces
  }
  const touching = touch(state, frame)
  const gaps = new Float64Array(frame.judged.length * 12)
  touching.move(
    frame.contacts.flatMap(({ gap }) => [-gap, 0, 0]),
    gaps,
  )
  const gapped = frame.contacts.some(({ gap }) => gap > 0)
  const leaning = (way: 'left' | 'lake') =>
    ask(`lean ${way}`, () => leanLoad(states, frame, legAxial, lean, TOWARD[way]))
  const forces = new Float64Array(frame.judged.length * 12)
  const closed = new Float64Array(forces.length)
  return {
    solve(combination) {
      const { lean: toward } = combination
      const still = stillTerms(combination, loads, ask, gapped ? gaps : null)
      const way = toward === 'left' || toward === 'right' ? 'left' : 'lake'
      still.push({ forces: leaning(way), factor: toward === way ? 1 : -1 })
      const grown = grownTerms(combination, loads, ask)
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
      return { combination, forces, ...outcome, ...standing, lean: leans }
    },
    loaded: () => ({
      touching,
      dead: ask('dead', () => loads.dead),
      people: ask('people', () => loads.live),
      gaps,
      leaning: leaning('left'),
    }),
  }
}

/** Forces of a basic load, made where it is asked for the first time. */
type Ask = (key: string, make: () => CaseLoad) => Float64Array

/** What is there without the push: dead load, gaps under contacts, people. */
function stillTerms(
  { dead, live }: Combination,
  loads: BasicLoads,
  ask: Ask,
  gaps: Float64Array | null,
): Term[] {
  const terms: Term[] = [{ forces: ask('dead', () => loads.dead), factor: dead }]
  if (gaps) terms.push({ forces: gaps, factor: 1 })
  for (const [i, name] of (['left', 'right'] as const).entries())
    if (live[i]! > 0) terms.push({ forces: ask(name, () => loads.half[name]), factor: live[i]! })
  return terms
}

/** The push: weather, and what comes from a side. */
function grownTerms({ weather, side }: Combination, loads: BasicLoads, ask: Ask): Term[] {
  const terms: Term[] = []
  if (weather) {
    const { level, toward, waves: height, factor, moored } = weather
    const key = `${level} ${toward} ${height}`
    const own = `${key} ${moored}`
    terms.push({ forces: ask(own, () => loads.weather(level, toward, height, moored)), factor })
    const uplift = weather.uplift ? loads.uplift(level, toward, height) : null
    if (uplift) terms.push({ forces: ask(`uplift ${key}`, () => uplift), factor: weather.uplift! })
  }
  if (side !== null) terms.push({ forces: ask(`side ${side}`, () => loads.sides[side]!.load), factor: 1 })
  return terms
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
