/**
 * Feet bear and do not pull: those that would pull are let go upward, until what is left all bears.
 *
 * A foot is let go by moving its support until nothing pulls there, so that one factorization serves every case. It stays held
 * sideways: which feet bear is then a problem with one answer (a convex one), and what a foot that bears little cannot hold by
 * friction is told as sliding. What one foot's movement does to all members is kept by state.
 */
import { endForces, type State, settle } from '../second-order.ts'
import type { DockFrame } from './frame.ts'

/** Changes of the set of lifted feet before it is left as it is, and how many of them take all feet at once. */
const ROUNDS = 40
const TOGETHER = 3
/** Pull under this is none, N. */
const NO_PULL = 0.5
/** A foot this far under its bed bears, m. */
const SUNK = 1e-7

export interface Standing {
  /** By index of `frame.legs`. */
  readonly lifted: readonly number[]
  /** False where nothing bears any more, or no set of feet was found that all bear. */
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

/** A state's feet, and what it does to each member to move one of them up by 1. */
export interface Lifter {
  /** Of each leg, where its foot's upward force stands among the forces. */
  readonly feet: Int32Array
  unit(leg: number): Float64Array
}

export function lifter(state: State, frame: DockFrame): Lifter {
  const kept = new Map<number, Float64Array>()
  return {
    feet: Int32Array.from(frame.legs, ({ members }) => frame.slot[members[0]!]! * 12),
    unit(leg) {
      let forces = kept.get(leg)
      if (!forces) {
        const { foot, members } = frame.legs[leg]!
        const movement = settle(state, foot, 2, [members[0]!])
        forces = judgedForces(state, frame, movement, null)
        kept.set(leg, forces)
      }
      return forces
    },
  }
}

/** @param forces of the judged members with all feet held; left as they are with feet let go */
export function letGo({ feet, unit }: Lifter, forces: Float64Array): Standing {
  const n = feet.length
  let lifted: number[] = []
  /** Where each lifted foot went, m. */
  let shift: Float64Array = new Float64Array(0)
  const up = (leg: number): number => {
    let force = forces[feet[leg]!]!
    lifted.forEach((other, i) => {
      force += shift[i]! * unit(other)[feet[leg]!]!
    })
    return force
  }
  for (let round = 0; round < ROUNDS; round++) {
    let pulls: number[] = []
    let most = NO_PULL
    for (let leg = 0; leg < n; leg++) {
      if (lifted.includes(leg)) continue
      const pull = -up(leg)
      if (pull <= NO_PULL) continue
      // First all that pull together; once that has gone back and forth, the one that pulls most.
      if (round < TOGETHER) pulls.push(leg)
      else if (pull > most) {
        most = pull
        pulls = [leg]
      }
    }
    // A foot that was let go and now would sink into the bed bears again.
    const back = new Set(lifted.filter((_, i) => shift[i]! < -SUNK))
    if (pulls.length === 0 && back.size === 0) {
      lifted.forEach((leg, i) => {
        const own = unit(leg)
        for (let k = 0; k < forces.length; k++) forces[k]! += shift[i]! * own[k]!
      })
      return { lifted, stands: true }
    }
    lifted = [...lifted.filter((leg) => !back.has(leg)), ...pulls]
    const moved = lifted.length < n ? release(feet, unit, forces, lifted) : null
    if (!moved) return { lifted, stands: false }
    shift = moved
  }
  return { lifted, stands: false }
}

/** How far lifted feet go until nothing pulls at them, m; null where they do not come to rest. */
function release(
  feet: Int32Array,
  unit: Lifter['unit'],
  forces: Float64Array,
  lifted: readonly number[],
): Float64Array | null {
  const rows = lifted.map((leg) => {
    const row = new Float64Array(lifted.length + 1)
    row[lifted.length] = -forces[feet[leg]!]!
    lifted.forEach((other, column) => {
      row[column] = unit(other)[feet[leg]!]!
    })
    return row
  })
  return solveDense(rows)
}

/** Gaussian elimination with row exchange on rows with the right side last; null where there is no one answer. */
function solveDense(rows: Float64Array[]): Float64Array | null {
  const n = rows.length
  const size = rows.reduce((most, row, i) => Math.max(most, Math.abs(row[i]!)), 0)
  for (let c = 0; c < n; c++) {
    let best = c
    for (let r = c + 1; r < n; r++) if (Math.abs(rows[r]![c]!) > Math.abs(rows[best]![c]!)) best = r
    if (Math.abs(rows[best]![c]!) <= 1e-9 * size) return null
    ;[rows[c], rows[best]] = [rows[best]!, rows[c]!]
    const pivot = rows[c]!
    for (let r = c + 1; r < n; r++) {
      const row = rows[r]!
      const factor = row[c]! / pivot[c]!
      if (factor !== 0) for (let k = c; k <= n; k++) row[k]! -= factor * pivot[k]!
    }
  }
  const x = new Float64Array(n)
  for (let r = n - 1; r >= 0; r--) {
    let sum = rows[r]![n]!
    for (let k = r + 1; k < n; k++) sum -= rows[r]![k]! * x[k]!
    x[r] = sum / rows[r]![r]!
  }
  return x
}
