/**
 * Feet bear and do not pull: those that would pull are let go, until what is left all bears.
 *
 * A foot let go is free in all three directions (a pad in the air rubs on nothing). It is let go by moving its support until
 * nothing holds it, so that one factorization serves every case: reactions of the movements of one foot are kept by state.
 */
import { endForces, settle, type State } from '../second-order.ts'
import type { DockFrame } from './frame.ts'

/** Changes of the set of lifted feet before it is left as it is. */
const ROUNDS = 12
/** Pull under this is none, N. */
const NO_PULL = 0.5

export interface Standing {
  readonly movement: Float64Array
  /** By index of `frame.legs`. */
  readonly lifted: readonly number[]
  /** False where nothing bears any more, or no set of feet was found that all bear. */
  readonly stands: boolean
}

/** What feet do when they are moved by 1: kept for a state. */
export type Settlements = Map<number, Float64Array>

const forces = new Float64Array(12)

/** Reaction of a foot, upward and sideways, N: z, x, y as the leg's member axes have them. */
export function footForce(
  state: State,
  frame: DockFrame,
  i: number,
  movement: Float64Array,
  onMembers: Float64Array | null,
): [up: number, x: number, y: number] {
  endForces(state, frame.legs[i]!.members[0]!, movement, onMembers, forces)
  return [forces[0]!, forces[1]!, forces[2]!]
}

/** Directions of a support in the order in which `footForce` tells them. */
const DIRECTION = [2, 0, 1] as const

export function letGo(
  state: State,
  frame: DockFrame,
  kept: Settlements,
  movement: Float64Array,
  onMembers: Float64Array,
): Standing {
  const n = frame.legs.length
  let lifted: number[] = []
  let now = movement
  for (let round = 0; round < ROUNDS; round++) {
    const pulls: number[] = []
    for (let i = 0; i < n; i++)
      if (!lifted.includes(i) && footForce(state, frame, i, now, onMembers)[0] < -NO_PULL) pulls.push(i)
    // A foot that was let go and now would sink into the bed bears again.
    const back = lifted.filter((i) => now[frame.legs[i]!.foot * 6 + 2]! < -1e-9)
    if (pulls.length === 0 && back.length === 0) return { movement: now, lifted, stands: true }
    lifted = [...lifted.filter((i) => !back.includes(i)), ...pulls]
    if (lifted.length === n) return { movement, lifted, stands: false }
    const released = release(state, frame, kept, movement, onMembers, lifted)
    if (!released) return { movement, lifted, stands: false }
    now = released
  }
  return { movement: now, lifted, stands: false }
}

function release(
  state: State,
  frame: DockFrame,
  kept: Settlements,
  movement: Float64Array,
  onMembers: Float64Array,
  lifted: readonly number[],
): Float64Array | null {
  const size = lifted.length * 3
  const matrix = Array.from({ length: size }, () => new Float64Array(size + 1))
  const units: Float64Array[] = []
  for (const i of lifted)
    for (let k = 0; k < 3; k++) {
      const key = i * 3 + k
      let unit = kept.get(key)
      if (!unit) {
        unit = settle(state, frame.legs[i]!.foot, DIRECTION[k]!, [frame.legs[i]!.members[0]!])
        kept.set(key, unit)
      }
      units.push(unit)
    }
  lifted.forEach((i, a) => {
    const held = footForce(state, frame, i, movement, onMembers)
    for (let k = 0; k < 3; k++) matrix[a * 3 + k]![size] = -held[k]!
    units.forEach((unit, column) => {
      const moved = footForce(state, frame, i, unit, null)
      for (let k = 0; k < 3; k++) matrix[a * 3 + k]![column] = moved[k]!
    })
  })
  const shift = solveDense(matrix)
  if (!shift) return null
  const now = movement.slice()
  units.forEach((unit, column) => {
    const by = shift[column]!
    for (let j = 0; j < now.length; j++) now[j]! += by * unit[j]!
  })
  return now
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
