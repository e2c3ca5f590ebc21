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
import { endForces, type State, settle } from '../second-order.ts'
import type { DockFrame } from './frame.ts'

/** Guesses that take all feet at once, before they are let go one by one. */
const TOGETHER = 3
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
  column(foot: number, direction: number): Float64Array
  /** Adds to the judged members' forces what it does to move feet, three numbers each. */
  move(by: Float64Array, forces: Float64Array): void
}

export function lifter(state: State, frame: DockFrame): Lifter {
  const { legs, slot } = frame
  const kept = new Map<number, Float64Array>()
  const moving = (foot: number, direction: number, by: number) => {
    const { foot: node, members } = legs[foot]!
    return { node, direction: DIRECTIONS[direction]!, by, members: members.slice(0, 1) }
  }
  const end = new Float64Array(12)
  return {
    feet: Int32Array.from(legs, ({ members }) => slot[members[0]!]! * 12),
    stiffness: Float64Array.from(legs, ({ members }) => state.layout.members.axial[members[0]!]!),
    column(foot, direction) {
      const key = foot * 3 + direction
      let column = kept.get(key)
      if (!column) {
        const movement = settle(state, [moving(foot, direction, 1)])
        column = new Float64Array(legs.length * 3)
        for (let i = 0; i < legs.length; i++) {
          endForces(state, legs[i]!.members[0]!, movement, null, end, 0)
          for (let k = 0; k < 3; k++) column[i * 3 + k] = end[k]!
        }
        kept.set(key, column)
      }
      return column
    },
    move(by, forces) {
      const moves = Array.from(by).flatMap((way, i) =>
        way === 0 ? [] : [moving(Math.floor(i / 3), i % 3, way)],
      )
      const more = judgedForces(state, frame, settle(state, moves), null)
      for (let k = 0; k < forces.length; k++) forces[k]! += more[k]!
    },
  }
}

/** @param forces of the judged members with all feet held; left as they are with feet let go, or as they were where the dock tips */
export function letGo(lifting: Lifter, forces: Float64Array): Standing {
  const off = together(lifting, forces) ?? oneByOne(lifting, forces)
  if (!off || off.lifted.some((foot) => off.by[foot * 3]! > TIPPED))
    return { lifted: off?.lifted ?? [], sideways: off?.sideways ?? [], stands: false }
  if (off.loose.length > 0) lifting.move(off.by, forces)
  return { lifted: off.lifted, sideways: off.sideways, stands: true }
}

interface Off {
  lifted: number[]
  loose: number[]
  sideways: number[]
  /** How far each foot is moved, three each, m. */
  by: Float64Array
}

const none = ({ feet }: Lifter): Off => ({
  lifted: [],
  loose: [],
  sideways: [],
  by: new Float64Array(feet.length * 3),
})

/** What the bed does to feet that bear and pull, N, negative; by foot. */
function pulling(
  lifting: Lifter,
  forces: Float64Array,
  { lifted, loose, by }: Off,
): [foot: number, up: number][] {
  const found: [number, number][] = []
  for (let foot = 0; foot < lifting.feet.length; foot++) {
    if (lifted.includes(foot)) continue
    let up = forces[lifting.feet[foot]!]!
    for (const other of loose)
      for (let k = 0; k < 3; k++) {
        const way = by[other * 3 + k]!
        if (way !== 0) up += way * lifting.column(other, k)[foot * 3]!
      }
    if (up < -NO_PULL) found.push([foot, up])
  }
  return found
}

const withAll = (list: readonly number[], more: readonly number[]): number[] => [
  ...new Set([...list, ...more]),
]

/** All feet that pull are let go at once, and those that would sink set down: most often that is all. Null where it is not. */
function together(lifting: Lifter, forces: Float64Array): Off | null {
  let off = none(lifting)
  for (let round = 0; round <= TOGETHER; round++) {
    const pulls = pulling(lifting, forces, off).map(([foot]) => foot)
    const stay = off.lifted.filter((foot) => off.by[foot * 3]! >= -SUNK)
    if (pulls.length === 0 && stay.length === off.lifted.length) return off
    const lifted = [...stay, ...pulls]
    const loose = withAll(off.loose, pulls)
    const { to, sideways } = release(lifting, forces, lifted, loose)
    if (!to) return null
    off = { lifted, loose, sideways, by: to }
  }
  return null
}

/**
 * One foot after the other, the one that pulls most first; whoever would sink on the way is set down again. Each step takes energy
 * out, so no set comes twice. Source: Lawson & Hanson, Solving Least Squares Problems (1974), chapter 23 (memory), with a way out
 * where nothing resists. Null where the dock tips.
 */
function oneByOne(lifting: Lifter, forces: Float64Array): Off | null {
  const off = none(lifting)
  for (let round = 0; round < 4 * lifting.feet.length; round++) {
    let next = -1
    let most = 0
    for (const [foot, up] of pulling(lifting, forces, off))
      if (up < most) {
        most = up
        next = foot
      }
    if (next < 0) return off
    off.lifted.push(next)
    off.loose = withAll(off.loose, [next])
    // With none left in the air the loose ones still give way sideways.
    for (;;) {
      const { to, way, sideways } = release(lifting, forces, off.lifted, off.loose)
      off.sideways = sideways
      const step = way ?? to!.map((there, i) => there - off.by[i]!)
      // As far as it goes, or until a foot on the way comes down.
      let part = to ? 1 : Number.POSITIVE_INFINITY
      let down = -1
      for (const foot of off.lifted) {
        const here = off.by[foot * 3]!
        const rise = step[foot * 3]!
        if (rise >= 0 || here + part * rise >= 0) continue
        part = here / -rise
        down = foot
      }
      if (part === Number.POSITIVE_INFINITY) return null
      for (let i = 0; i < step.length; i++) off.by[i]! += part * step[i]!
      if (down < 0) break
      off.by[down * 3] = 0
      off.lifted = off.lifted.filter((foot) => foot !== down)
    }
  }
  return null
}

/**
 * Where feet go until nothing acts on `lifted` upward and on `loose` sideways; or, where nothing stops a lifted one, the way that
 * they go. A foot without which nothing would hold the dock sideways stays held so.
 */
function release(
  { feet, stiffness, column }: Lifter,
  forces: Float64Array,
  lifted: readonly number[],
  loose: readonly number[],
): { readonly to?: Float64Array; readonly way?: Float64Array; readonly sideways: number[] } {
  // By Maxwell's reciprocity the matrix is symmetric, and positive where the dock is stable: LDLᵀ without exchange of rows.
  const dofs: number[] = []
  const rows: Float64Array[] = []
  const x: number[] = []
  const sideways = (): number[] => dofs.filter((dof) => dof % 3 !== 0)
  const place = (solution: ArrayLike<number>): Float64Array => {
    const all = new Float64Array(feet.length * 3)
    dofs.forEach((dof, i) => {
      all[dof] = solution[i]!
    })
    return all
  }
  for (const dof of [
    ...loose.flatMap((foot) => [foot * 3 + 1, foot * 3 + 2]),
    ...lifted.map((foot) => foot * 3),
  ]) {
    const foot = Math.floor(dof / 3)
    const own = column(foot, dof % 3)
    const row = Float64Array.from([...dofs.map((other) => own[other]!), own[dof]!])
    const r = dofs.length
    let b = -forces[feet[foot]! + (dof % 3)]!
    for (let c = 0; c < r; c++) {
      const other = rows[c]!
      let sum = row[c]!
      for (let k = 0; k < c; k++) sum -= row[k]! * other[k]! * rows[k]![k]!
      row[c] = sum / other[c]!
      b -= row[c]! * x[c]!
    }
    for (let k = 0; k < r; k++) row[r]! -= row[k]! ** 2 * rows[k]![k]!
    if (row[r]! > LOOSE * stiffness[foot]!) {
      dofs.push(dof)
      rows.push(row)
      x.push(b)
    } else if (dof % 3 === 0) {
      const way = dofs.map((_, i) => -row[i]!)
      backward(rows, way)
      dofs.push(dof)
      return { way: place([...way, 1]), sideways: sideways() }
    }
  }
  for (let r = 0; r < x.length; r++) x[r]! /= rows[r]![r]!
  backward(rows, x)
  return { to: place(x), sideways: sideways() }
}

/** Solves Lᵀ·x = x. */
function backward(rows: readonly Float64Array[], x: number[]): void {
  for (let r = x.length - 1; r >= 0; r--) for (let k = r + 1; k < x.length; k++) x[r]! -= rows[k]![r]! * x[k]!
}
