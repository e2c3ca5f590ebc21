/**
 * What a member does when its two nodes move: deformations, forces, energy.
 *
 * Differences of the nodes' movements are taken first: a frame that moves as a whole deforms by exactly
 * nothing, however stiff it is.
 */
import type { EndLoads } from './member-loads.ts'
import { type MemberTable, PLANES } from './member-table.ts'

/** Component of v (three from `at`) along an axis. */
const along = (axes: Float64Array, axis: number, v: Float64Array, at: number): number =>
  axes[axis]! * v[at]! + axes[axis + 1]! * v[at + 1]! + axes[axis + 2]! * v[at + 2]!

/** The same of a difference, taken first. */
const apart = (axes: Float64Array, axis: number, v: Float64Array, to: number, from: number): number =>
  axes[axis]! * (v[to]! - v[from]!) +
  axes[axis + 1]! * (v[to + 1]! - v[from + 1]!) +
  axes[axis + 2]! * (v[to + 2]! - v[from + 2]!)

/**
 * Stretch (m), twist (rad), then for each bending plane the slopes at from and to against the chord (rad).
 *
 * @param movement six for each node, global axes; undefined at rest
 */
function deformed(
  { axes, from, to, length }: MemberTable,
  member: number,
  movement: Float64Array | undefined,
): Float64Array {
  const shape = new Float64Array(6)
  if (movement === undefined) return shape
  const a = from[member]! * 6
  const b = to[member]! * 6
  const x = member * 9
  shape[0] = apart(axes, x, movement, b, a)
  shape[1] = apart(axes, x, movement, b + 3, a + 3)
  for (let p = 0; p < 2; p++) {
    const { across, turn, sign } = PLANES[p]!
    const tilt = apart(axes, x + across, movement, b, a) / length[member]!
    shape[2 + 2 * p] = sign * along(axes, x + turn, movement, a + 3) - tilt
    shape[3 + 2 * p] = sign * along(axes, x + turn, movement, b + 3) - tilt
  }
  return shape
}

/**
 * Forces that act on a member at its ends, in member axes, six at `from` and six at `to`.
 *
 * @param movement six for each node, global axes; undefined at rest
 * @param loads the member's own loads, or none
 * @param out twelve numbers
 */
export function memberEndForces(
  table: MemberTable,
  member: number,
  movement: Float64Array | undefined,
  loads: EndLoads | undefined,
  out: Float64Array,
): void {
  const shape = deformed(table, member, movement)
  const pull = table.axial[member]! * shape[0]!
  const twist = table.torsion[member]! * shape[1]!
  out[0] = -pull
  out[6] = pull
  out[3] = -twist
  out[9] = twist
  for (let p = 0; p < 2; p++) {
    const { acrossJoint, turnJoint, sign } = PLANES[p]!
    const at = member * 6 + p * 3
    const from = shape[2 + 2 * p]!
    const to = shape[3 + 2 * p]!
    const momentFrom = table.chord[at]! * from + table.chord[at + 1]! * to
    const momentTo = table.chord[at + 1]! * from + table.chord[at + 2]! * to
    const shear = (momentFrom + momentTo) / table.length[member]!
    out[acrossJoint] = shear
    out[turnJoint] = sign * momentFrom
    out[6 + acrossJoint] = -shear
    out[6 + turnJoint] = sign * momentTo
  }
  if (loads !== undefined) subtractLoads(loads, out)
}

function subtractLoads(loads: EndLoads, out: Float64Array): void {
  out[0]! -= loads.along[0]!
  out[6]! -= loads.along[1]!
  loads.planes.forEach((own, p) => {
    const { acrossJoint, turnJoint, sign } = PLANES[p]!
    out[acrossJoint]! -= own[0]!
    out[turnJoint]! -= sign * own[1]!
    out[6 + acrossJoint]! -= own[2]!
    out[6 + turnJoint]! -= sign * own[3]!
  })
}

/** Adds forces in member axes (six at `at`) to a node's six in global axes. */
export function addInGlobal(
  table: MemberTable,
  member: number,
  forces: Float64Array,
  at: 0 | 6,
  into: Float64Array,
): void {
  const { axes } = table
  const x = member * 9
  const node = (at === 0 ? table.from[member]! : table.to[member]!) * 6
  for (let half = 0; half < 6; half += 3) {
    const fx = forces[at + half]!
    const fy = forces[at + half + 1]!
    const fz = forces[at + half + 2]!
    for (let k = 0; k < 3; k++)
      into[node + half + k]! += fx * axes[x + k]! + fy * axes[x + 3 + k]! + fz * axes[x + 6 + k]!
  }
}

/** Twice the strain energy of a movement of the nodes, joints included, N·m. */
export function strainEnergy(table: MemberTable, member: number, movement: Float64Array): number {
  const shape = deformed(table, member, movement)
  let energy = table.axial[member]! * shape[0]! ** 2 + table.torsion[member]! * shape[1]! ** 2
  for (let p = 0; p < 2; p++) {
    const at = member * 6 + p * 3
    const from = shape[2 + 2 * p]!
    const to = shape[3 + 2 * p]!
    energy +=
      table.chord[at]! * from ** 2 + 2 * table.chord[at + 1]! * from * to + table.chord[at + 2]! * to ** 2
  }
  return energy
}
