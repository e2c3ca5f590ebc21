/**
 * Bending of a member that carries an axial force: eight cubic elements, condensed to the member's ends.
 *
 * Eight are enough wherever the frame is not held more firmly than at its nodes: no member can need a factor
 * over that of both ends clamped, 4π²EI/L², and there eight elements are 0.05 % too stiff. At the other
 * classic cases they are within 0.02 %.
 */
import { condense } from './condense.ts'
import type { MemberTable, PlaneIndex } from './member-table.ts'

/** A power of two. */
const ELEMENTS = 8

/** Joint pivots under this part of an element's stiffness are the rounding left of none. */
const NOTHING = 1e-14

/** Axial force at both ends, tension positive, N; straight between them. */
export interface AxialForce {
  readonly from: number
  readonly to: number
}

/**
 * A cubic element on (w1, φ1, w2, φ2) and its geometric stiffness ∫ N·w′² for N straight from Na to Nb.
 * Source: Przemieniecki (1968), 15.2, for constant N (memory); the part straight in ξ integrated by hand from
 * the same Hermite polynomials.
 */
function element(EI: number, h: number, Na: number, Nb: number, out: Float64Array): void {
  const k = EI / h ** 3
  const n = Na / (30 * h)
  const g = (Nb - Na) / (60 * h)
  const ww = 12 * k + 36 * (n + g)
  const w1f1 = 6 * h * k + 3 * h * n + 6 * h * g
  const w1f2 = 6 * h * k + 3 * h * n
  const f1f2 = 2 * h * h * k - h * h * (n + g)
  out[0] = ww
  out[1] = w1f1
  out[2] = -ww
  out[3] = w1f2
  out[5] = 4 * h * h * (k + n) + 2 * h * h * g
  out[6] = -w1f1
  out[7] = f1f2
  out[10] = ww
  out[11] = -w1f2
  out[15] = 4 * h * h * (k + n) + 6 * h * h * g
  out[4] = w1f1
  out[8] = -ww
  out[9] = -w1f1
  out[12] = w1f2
  out[13] = f1f2
  out[14] = -w1f2
}

/** What is worked in, one member after the other. */
interface Room {
  readonly pair: Float64Array
  readonly next: Float64Array
  /** Stays zeros. */
  readonly noLoad: Float64Array
}

/** Joins two pieces and condenses the node between them; gives how many negative eigenvalues that took away. */
function join({ pair, noLoad }: Room, left: Float64Array, right: Float64Array, out: Float64Array): number {
  pair.fill(0)
  for (let r = 0; r < 4; r++)
    for (let c = 0; c < 4; c++) {
      pair[r * 6 + c]! += left[r * 4 + c]!
      pair[(r + 2) * 6 + c + 2]! += right[r * 4 + c]!
    }
  const negative =
    (condense(pair, 6, noLoad, 2, 0, 0) < 0 ? 1 : 0) + (condense(pair, 6, noLoad, 3, 0, 0) < 0 ? 1 : 0)
  for (let r = 0; r < 4; r++)
    for (let c = 0; c < 4; c++) out[r * 4 + c] = pair[(r < 2 ? r : r + 2) * 6 + (c < 2 ? c : c + 2)]!
  return negative
}

/** The member without its joints: elements in a row; alike ones by doubling. */
function pieces(room: Room, EI: number, h: number, axial: AxialForce, out: Float64Array): number {
  let negative = 0
  if (axial.from === axial.to) {
    element(EI, h, axial.from, axial.from, out)
    for (let joined = 2; joined <= ELEMENTS; joined *= 2)
      negative += (ELEMENTS / joined) * join(room, out, out, out)
    return negative
  }
  const step = (axial.to - axial.from) / ELEMENTS
  element(EI, h, axial.from, axial.from + step, out)
  for (let e = 1; e < ELEMENTS; e++) {
    element(EI, h, axial.from + e * step, axial.from + (e + 1) * step, room.next)
    negative += join(room, out, room.next, out)
  }
  return negative
}

/**
 * The plane's matrix on (w1, φ1, w2, φ2) of the two nodes, end joints included, under the axial force.
 *
 * @param out 16 numbers
 * @returns how many negative eigenvalues were condensed away with the inside and the joints: the factors
 *   already passed at which the member buckles between nodes that do not move
 */
type BeamColumn = (member: number, plane: PlaneIndex, axial: AxialForce, out: Float64Array) => number

/** For the members of one frame, one after the other: thousands are asked for, so what is worked in is made once. */
export function beamColumns({ EI, length, joints }: MemberTable): BeamColumn {
  const room: Room = {
    pair: new Float64Array(36),
    next: new Float64Array(16),
    noLoad: new Float64Array(6),
  }
  return (member, plane, axial, out) => {
    const stiffness = EI[member * 2 + plane]!
    const h = length[member]! / ELEMENTS
    let negative = pieces(room, stiffness, h, axial, out)
    for (const i of [1, 3, 0, 2]) {
      const joint = joints[member * 8 + plane * 4 + i]!
      if (joint === Number.POSITIVE_INFINITY) continue
      const ofElement = (i % 2 === 0 ? 12 / h ** 3 : 4 / h) * stiffness
      if (condense(out, 4, room.noLoad, i, joint, NOTHING * ofElement) < 0) negative++
    }
    return negative
  }
}

/** A member without bending stiffness under its mean axial force: a string, or a bar that leans. */
export function string(length: number, axial: AxialForce, out: Float64Array): void {
  const k = (axial.from + axial.to) / (2 * length)
  out.fill(0)
  out[0] = k
  out[10] = k
  out[2] = -k
  out[8] = -k
}
