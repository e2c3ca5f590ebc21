/**
 * What a member does when its two nodes move: deformations, forces, energy.
 *
 * Differences of the nodes' movements are taken first: a frame that moves as a whole deforms by exactly
 * nothing, however stiff it is.
 */
import type { Vec3 } from './frame-model.ts'
import type { EndLoads } from './member-loads.ts'
import type { SolverMember } from './member-stiffness.ts'

/** Stretch (m), twist (rad), then for each bending plane the slopes at from and to against the chord (rad). */
type Deformation = [number, number, number, number, number, number]

const along = (axis: Vec3, v: Float64Array, at: number): number =>
  axis[0] * v[at]! + axis[1] * v[at + 1]! + axis[2] * v[at + 2]!

const difference = (axis: Vec3, v: Float64Array, to: number, from: number): number =>
  axis[0] * (v[to]! - v[from]!) +
  axis[1] * (v[to + 1]! - v[from + 1]!) +
  axis[2] * (v[to + 2]! - v[from + 2]!)

/** @param movement six for each node, global axes */
function deformation(member: SolverMember, movement: Float64Array): Deformation {
  const a = member.from * 6
  const b = member.to * 6
  const { x, length } = member.axes
  const [first, second] = member.planes
  const tilt = difference(first.across, movement, b, a) / length
  const lean = difference(second.across, movement, b, a) / length
  return [
    difference(x, movement, b, a),
    difference(x, movement, b + 3, a + 3),
    along(first.turn, movement, a + 3) - tilt,
    along(first.turn, movement, b + 3) - tilt,
    along(second.turn, movement, a + 3) - lean,
    along(second.turn, movement, b + 3) - lean,
  ]
}

/**
 * Forces that act on a member at its ends, in member axes, six at `from` and six at `to`.
 *
 * @param movement six for each node, global axes
 * @param loads the member's own loads, or none
 * @param out twelve numbers
 */
export function memberEndForces(
  member: SolverMember,
  movement: Float64Array,
  loads: EndLoads | undefined,
  out: Float64Array,
): void {
  const shape = deformation(member, movement)
  const pull = member.axial * shape[0]
  const twist = member.torsion * shape[1]
  out[0] = -pull - (loads?.along[0] ?? 0)
  out[6] = pull - (loads?.along[1] ?? 0)
  out[3] = -twist
  out[9] = twist
  for (let p = 0; p < 2; p++) {
    const { chord } = member.planes[p]!
    const from = shape[2 + 2 * p]!
    const to = shape[3 + 2 * p]!
    const momentFrom = chord.aa * from + chord.ab * to
    const momentTo = chord.ab * from + chord.bb * to
    const shear = (momentFrom + momentTo) / member.axes.length
    const own = loads?.planes[p]
    // Plane 0 bends about local z, plane 1 about −y.
    const sign = p === 0 ? 1 : -1
    const turnAt = p === 0 ? 5 : 4
    out[1 + p] = shear - (own?.[0] ?? 0)
    out[turnAt] = sign * (momentFrom - (own?.[1] ?? 0))
    out[7 + p] = -shear - (own?.[2] ?? 0)
    out[6 + turnAt] = sign * (momentTo - (own?.[3] ?? 0))
  }
}

/** Adds forces in member axes (six at `at`) to a node's six in global axes. */
export function addInGlobal(
  member: SolverMember,
  forces: Float64Array,
  at: 0 | 6,
  into: Float64Array,
  node: number,
): void {
  const { x, y, z } = member.axes
  for (let half = 0; half < 6; half += 3) {
    const fx = forces[at + half]!
    const fy = forces[at + half + 1]!
    const fz = forces[at + half + 2]!
    for (let k = 0; k < 3; k++) into[node * 6 + half + k]! += fx * x[k]! + fy * y[k]! + fz * z[k]!
  }
}

/** Twice the strain energy of a movement of the nodes, joints included, N·m. */
export function strainEnergy(member: SolverMember, movement: Float64Array): number {
  const shape = deformation(member, movement)
  let energy = member.axial * shape[0] ** 2 + member.torsion * shape[1] ** 2
  for (let p = 0; p < 2; p++) {
    const { aa, ab, bb } = member.planes[p]!.chord
    const from = shape[2 + 2 * p]!
    const to = shape[3 + 2 * p]!
    energy += aa * from ** 2 + 2 * ab * from * to + bb * to ** 2
  }
  return energy
}
