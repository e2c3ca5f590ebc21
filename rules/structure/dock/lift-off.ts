/**
 * Feet bear and do not pull: those that would pull are let go, until what is left all bears.
 *
 * A foot is let go by moving its support until nothing acts there, so that one factorization serves every case. What is in the air
 * holds nothing, sideways neither: the other leg of its pair takes that over. A foot that comes down again in the course of this bears,
 * and holds nothing sideways: next to nothing presses it, so friction is next to nothing (on the safe side). All other feet stay held
 * sideways; what their friction cannot hold is told as sliding.
 *
 * With the feet given that hold sideways no more, which of all feet bear is a problem with one answer (a convex one), and feet
 * are only ever added to those. So it comes to an end.
 */
import { endForces, type State, settle, settler } from '../second-order.ts'
import type { DockFrame } from './frame.ts'

/** Guesses that take all feet at once, before they are let go one by one. */
const TOGETHER = 3
/** One by one: of the greatest pull, what counts as as much. */
const NEARLY = 0.7
/** Pull under this is none, N. */
const NO_PULL = 0.5
/** A foot this far under its bed bears, m. */
const SUNK = 1e-7
/** A foot this high over its bed: small movements are counted on, and on such a deck nobody stands (judgment), m. */
export const TIPPED = 0.3
/** Of a leg's own stiffness along it: what resists a foot's movement by less than this is nothing but rounding. */
const LOOSE = 1e-8

export interface Standing {
  /** Off the bed, by index of `frame.legs`. */
  readonly lifted: readonly number[]
  /** What is let go sideways, foot · 3 + 1 or 2 (x or y): of these feet, and of those that came down again. */
  readonly sideways: readonly number[]
  /** False where nothing bears any more, or the dock tips. */
  readonly stands: boolean
}

/** Twelve for each of `frame.judged`. */
export function judgedForces(
  state: State,
  frame: DockFrame,
  movement: Float64Array,
  onMembers: Float64Array | null,
): Float64Array {
  const { judged } = frame
  const all = new Float64Array(judged.length * 12)
  for (let i = 0; i < judged.length; i++) endForces(state, judged[i]!, movement, onMembers, all, i * 12)
  return all
}

/** Directions of a foot in the order of its leg's own axes, from the foot up: z, x, y. */
const DIRECTIONS = [2, 0, 1] as const

/** A state's feet, three directions each: up, then x and y. */
export interface Lifter {
  /** Of each foot, where its force stands among the judged members' forces; up, x, y follow one another. */
  readonly feet: Int32Array
  /** Of each leg along itself, N/m. */
  readonly stiffness: Float64Array
  /** What it does to all feet, three each, to move one of them by 1 in one direction. */
  column(dof: number): Float64Array
  /** Adds to the judged members' forces what it does to move feet, three numbers each. */
  move(by: Float64Array, forces: Float64Array): void
}

export function lifter(state: State, frame: DockFrame): Lifter {
  const { legs, slot } = frame
  const kept = new Map<number, Float64Array>()
  const moving = (dof: number, by: number) => {
    const { foot: node, members } = legs[footOf(dof)]!
    return { node, direction: DIRECTIONS[dof % 3]!, by, members: members.slice(0, 1) }
  }
  let settleOne: ReturnType<typeof settler> | null = null
  return {
    feet: Int32Array.from(legs, ({ members }) => slot[members[0]!]! * 12),
    stiffness: Float64Array.from(legs, ({ members }) => state.layout.members.axial[members[0]!]!),
    column(dof) {
      let column = kept.get(dof)
      if (!column) {
        settleOne ??= settler(
          state,
          legs.map(({ members }) => members[0]!),
        )
        column = settleOne(moving(dof, 1))
        kept.set(dof, column)
      }
      return column
    },
    move(by, forces) {
      const moves = Array.from(by).flatMap((way, dof) => (way === 0 ? [] : [moving(dof, way)]))
      const more = judgedForces(state, frame, settle(state, moves), null)
      for (let k = 0; k < forces.length; k++) forces[k]! += more[k]!
    },
  }
}

/** @param forces of the judged members with all feet held; left as they are with feet let go, or as they were where the dock tips */
export function letGo(lifting: Lifter, forces: Float64Array): Standing {
  const off = together(lifting, forces) ?? oneByOne(lifting, forces)
  if (off === 'tips') return { lifted: [], sideways: [], stands: false }
  const { by, free } = off
  const lifted = free.filter(isUp).map(footOf)
  const sideways = free.filter((dof) => !isUp(dof))
  if (lifted.some((foot) => by[foot * 3]! > TIPPED)) return { lifted, sideways, stands: false }
  if (free.length > 0) lifting.move(by, forces)
  return { lifted, sideways, stands: true }
}

/** A foot's directions by one number: foot · 3 + 0, 1, 2 for up, x, y. */
const isUp = (dof: number): boolean => dof % 3 === 0
const footOf = (dof: number): number => (dof - (dof % 3)) / 3

interface Off {
  /** What is let go. */
  readonly free: readonly number[]
  /** How far each foot is moved, three each, m. */
  readonly by: Float64Array
}

/** Feet that bear and pull, and what the bed does to them, N, negative. */
function pulling(
  { feet, column }: Lifter,
  forces: Float64Array,
  { free, by }: Off,
): [foot: number, up: number][] {
  const found: [number, number][] = []
  const lifted = new Set(free.filter(isUp).map(footOf))
  const moved = free.filter((dof) => by[dof] !== 0).map((dof) => ({ way: by[dof]!, own: column(dof) }))
  for (let foot = 0; foot < feet.length; foot++) {
    if (lifted.has(foot)) continue
    let up = forces[feet[foot]!]!
    for (const { way, own } of moved) up += way * own[foot * 3]!
    if (up < -NO_PULL) found.push([foot, up])
  }
  return found
}

/** All feet that pull are let go at once, and those that would sink set down: most often that is all. Null where it is not. */
function together(lifting: Lifter, forces: Float64Array): Off | null {
  let off: Off = { free: [], by: new Float64Array(lifting.feet.length * 3) }
  let ask: number[] = []
  const solver = solverOf(lifting, forces)
  for (let round = 0; round <= TOGETHER; round++) {
    const pulls = pulling(lifting, forces, off).map(([foot]) => foot)
    const sinks = new Set(off.free.filter((dof) => isUp(dof) && off.by[dof]! < -SUNK))
    if (pulls.length === 0 && sinks.size === 0) return off
    ask = letLoose(
      ask.filter((dof) => !sinks.has(dof)),
      pulls,
    )
    const { by, free, to } = solver.release(ask)
    if (!to) return null
    off = { free, by }
  }
  return null
}

/** Sideways, where they are not yet, and up. */
const letLoose = (ask: readonly number[], feet: readonly number[]): number[] => {
  const has = new Set(ask)
  return [
    ...ask,
    ...feet.flatMap((foot) => [foot * 3 + 1, foot * 3 + 2, foot * 3].filter((dof) => !has.has(dof))),
  ]
}

/**
 * One foot after the other, those that pull most first; whoever would sink on the way is set down again. Each step takes energy
 * out, so no set comes twice. Source: Lawson & Hanson, Solving Least Squares Problems (1974), chapter 23 (memory), with a way out
 * where nothing resists.
 */
function oneByOne(lifting: Lifter, forces: Float64Array): Off | 'tips' {
  const by = new Float64Array(lifting.feet.length * 3)
  let off: Off = { free: [], by }
  let ask: number[] = []
  const solver = solverOf(lifting, forces)
  for (let round = 0; round < 4 * lifting.feet.length; round++) {
    const pulls = pulling(lifting, forces, off)
    if (pulls.length === 0) return off
    const most = pulls.reduce((least, [, up]) => Math.min(least, up), 0)
    ask = letLoose(
      ask,
      pulls.filter(([, up]) => up <= most * NEARLY).map(([foot]) => foot),
    )
    // With none left in the air the loose ones still give way sideways.
    for (;;) {
      const { to, by: there, free } = solver.release(ask)
      const step = to ? there.map((way, i) => way - by[i]!) : there
      // As far as it goes, or until a foot on the way comes down.
      let part = to ? 1 : Number.POSITIVE_INFINITY
      let down = -1
      for (const dof of free) {
        if (!isUp(dof) || step[dof]! >= 0 || by[dof]! + part * step[dof]! >= 0) continue
        part = by[dof]! / -step[dof]!
        down = dof
      }
      if (part === Number.POSITIVE_INFINITY) return 'tips'
      for (let i = 0; i < step.length; i++) by[i]! += part * step[i]!
      off = { free, by }
      if (down < 0) break
      by[down] = 0
      ask = ask.filter((dof) => dof !== down)
    }
  }
  return 'tips'
}

interface Solver {
  /**
   * Where feet go until nothing acts on what is let go (`to`); or, where nothing stops a lifted one, the way that they go. A foot without
   * which nothing would hold the dock sideways stays held so: `free` is what is really let go.
   */
  release(ask: readonly number[]): {
    readonly to: boolean
    readonly by: Float64Array
    readonly free: number[]
  }
}

/**
 * By Maxwell's reciprocity what feet do to each other is symmetric, and positive where the dock is stable: LDLᵀ without exchange of rows.
 * What is asked in the same order as before is kept.
 */
function solverOf({ feet, stiffness, column }: Lifter, forces: Float64Array): Solver {
  let asked: number[] = []
  /** By what was asked: how many rows there are after it. */
  let count: number[] = []
  const dofs: number[] = []
  const rows: Float64Array[] = []
  const pivots: number[] = []
  const rest: number[] = []
  /** Adds a row, or gives how the others follow where nothing resists it. */
  const append = (dof: number): Float64Array | null => {
    const n = dofs.length
    const own = column(dof)
    const row = new Float64Array(n)
    let pivot = own[dof]!
    let b = -forces[feet[footOf(dof)]! + (dof % 3)]!
    for (let c = 0; c < n; c++) {
      const other = rows[c]!
      let sum = own[dofs[c]!]!
      for (let k = 0; k < c; k++) sum -= row[k]! * other[k]!
      row[c] = sum
    }
    for (let c = 0; c < n; c++) {
      const share = row[c]! / pivots[c]!
      pivot -= row[c]! * share
      b -= share * rest[c]!
      row[c] = share
    }
    if (!(pivot > LOOSE * stiffness[footOf(dof)]!)) return row
    dofs.push(dof)
    rows.push(row)
    pivots.push(pivot)
    rest.push(b)
    return null
  }
  const place = (x: ArrayLike<number>): Float64Array => {
    const all = new Float64Array(feet.length * 3)
    dofs.forEach((dof, i) => {
      all[dof] = x[i]!
    })
    return all
  }
  return {
    release(ask) {
      let same = 0
      while (same < asked.length && asked[same] === ask[same]) same++
      const left = same === 0 ? 0 : count[same - 1]!
      for (const list of [dofs, rows, pivots, rest]) list.length = left
      asked = asked.slice(0, same)
      count = count.slice(0, same)
      for (const dof of ask.slice(same)) {
        const follow = append(dof)
        if (follow && isUp(dof)) {
          const by = place(
            backward(
              rows,
              Array.from(follow, (share) => -share),
            ),
          )
          by[dof] = 1
          return { to: false, by, free: [...dofs, dof] }
        }
        asked.push(dof)
        count.push(dofs.length)
      }
      const by = place(
        backward(
          rows,
          rest.map((b, i) => b / pivots[i]!),
        ),
      )
      return { to: true, by, free: [...dofs] }
    },
  }
}

/** Solves Lᵀ·x = x. */
function backward(rows: readonly Float64Array[], x: number[]): number[] {
  for (let r = x.length - 1; r > 0; r--) {
    const row = rows[r]!
    const value = x[r]!
    for (let k = 0; k < r; k++) x[k]! -= row[k]! * value
  }
  return x
}
