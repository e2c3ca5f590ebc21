/**
 * Bending of a member that carries an axial force: eight cubic elements, condensed to the member's ends.
 *
 * Eight are enough wherever the frame is not held more firmly than at its nodes: no member can need a factor
 * over that of both ends clamped, 4π²EI/L², and there eight elements are 0.05 % too stiff. At the other
 * classic cases they are within 0.01 %.
 */
import { condense } from './condense.ts'
import type { BendingPlane } from './member-stiffness.ts'

export const ELEMENTS = 8

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
function addElement(
  out: Float64Array,
  EI: number,
  h: number,
  Na: number,
  Nb: number,
  at: 0 | 2,
  size: 4 | 6,
): void {
  const k = EI / h ** 3
  const n = Na / (30 * h)
  const g = (Nb - Na) / (60 * h)
  const ww = 12 * k + 36 * (n + g)
  const w1f1 = 6 * h * k + 3 * h * n + 6 * h * g
  const w1f2 = 6 * h * k + 3 * h * n
  const f1f1 = 4 * h * h * k + 4 * h * h * n + 2 * h * h * g
  const f1f2 = 2 * h * h * k - h * h * (n + g)
  const f2f2 = 4 * h * h * k + 4 * h * h * n + 6 * h * h * g
  const rows = [ww, w1f1, -ww, w1f2, w1f1, f1f1, -w1f1, f1f2, -ww, -w1f1, ww, -w1f2, w1f2, f1f2, -w1f2, f2f2]
  for (let r = 0; r < 4; r++) for (let c = 0; c < 4; c++) out[(at + r) * size + at + c]! += rows[r * 4 + c]!
}

const pair = new Float64Array(36)
const noLoad = new Float64Array(6)

/**
 * The plane's matrix on (w1, φ1, w2, φ2) of the two nodes, end joints included, under the axial force.
 *
 * @param out 16 numbers
 * @returns how many negative eigenvalues were condensed away with the inside and the joints: the factors
 *   already passed at which the member buckles between nodes that do not move
 */
export function beamColumn(
  plane: BendingPlane,
  length: number,
  axial: AxialForce,
  out: Float64Array,
): number {
  const h = length / ELEMENTS
  const force = (at: number): number => axial.from + ((axial.to - axial.from) * at) / ELEMENTS
  let negative = 0
  out.fill(0)
  addElement(out, plane.EI, h, force(0), force(1), 0, 4)
  for (let e = 1; e < ELEMENTS; e++) {
    pair.fill(0)
    for (let r = 0; r < 4; r++) for (let c = 0; c < 4; c++) pair[r * 6 + c] = out[r * 4 + c]!
    addElement(pair, plane.EI, h, force(e), force(e + 1), 2, 6)
    if (condense(pair, 6, noLoad, 2, 0, 0) < 0) negative++
    if (condense(pair, 6, noLoad, 3, 0, 0) < 0) negative++
    for (let r = 0; r < 4; r++)
      for (let c = 0; c < 4; c++) out[r * 4 + c] = pair[(r < 2 ? r : r + 2) * 6 + (c < 2 ? c : c + 2)]!
  }
  const { acrossFrom, turnFrom, acrossTo, turnTo } = plane.joints
  const joints = [acrossFrom, turnFrom, acrossTo, turnTo]
  for (const i of [1, 3, 0, 2]) {
    const joint = joints[i]!
    if (joint === Number.POSITIVE_INFINITY) continue
    const ofElement = (i % 2 === 0 ? 12 / h ** 3 : 4 / h) * plane.EI
    if (condense(out, 4, noLoad, i, joint, NOTHING * ofElement) < 0) negative++
  }
  return negative
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
