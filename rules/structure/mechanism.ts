/**
 * Tells a mechanism from a frame that is merely soft.
 *
 * A small pivot i of L·D·Lᵀ comes with the movement v that solves Lᵀv = e_i: the softest the frame offers
 * with degree of freedom i moved by 1, and its energy vᵀKv is the exact pivot. The pivot itself is a
 * difference of large numbers, good to some 1e-16 of them; the energy summed member by member from their
 * deformations is good to about the square of that. So a frame 1e-13 as soft as its stiffest tie still stands
 * (refinement gives its digits back), one whose pivots are all rounding does not, and a mechanism is found in
 * whatever direction it lies.
 */
import type { Layout } from './assembly.ts'
import { type BlockFactor, backward } from './block-ldl.ts'
import { DIRECTIONS, type Direction, UnstableFrameError } from './frame-model.ts'
import type { FreeRotation } from './free-rotations.ts'
import { strainEnergy } from './response.ts'

/** Pivots under this part of their diagonal are looked at. */
export const SUSPECT = 1e-9

/** Pivots under this part of their diagonal say nothing any more, and are not divided by. */
export const VANISHED = 1e-14

/** Energy under this part of what the movement would cost were its nodes moved one by one. */
const NO_ENERGY = 1e-18

/** Throws UnstableFrameError if one of the factor's suspects is a mechanism. */
export function refuseMechanisms(
  layout: Layout,
  factor: BlockFactor,
  diagonal: Float64Array,
  freeRotations: readonly FreeRotation[],
): void {
  for (const dof of factor.suspects) {
    const v = new Float64Array(diagonal.length)
    v[dof] = 1
    backward(factor, v)
    const movement = byNode(layout, v)
    let energy = 0
    for (let i = 0; i < layout.members.count; i++) energy += strainEnergy(layout.members, i, movement)
    for (const { node, axis, stiffness } of freeRotations) {
      const [rx, ry, rz] = movement.subarray(node * 6 + 3, node * 6 + 6)
      energy += stiffness * (axis[0] * rx! + axis[1] * ry! + axis[2] * rz!) ** 2
    }
    let apart = 0
    for (let i = 0; i < v.length; i++) apart += diagonal[i]! * v[i]! ** 2
    const pivot = factor.values[Math.floor(dof / 6) * 36 + (dof % 6) * 7]!
    const lost = Math.abs(pivot - energy) > energy / 2
    if (energy <= NO_ENERGY * apart || lost) throw largest(layout, movement)
  }
}

/** Six for each node of the model from a vector in order of elimination; held nodes get zeros. */
export function byNode(layout: Layout, v: Float64Array): Float64Array {
  const movement = new Float64Array(layout.held.length)
  layout.pattern.order.forEach((node, at) => {
    for (let k = 0; k < 6; k++) if (!layout.held[node * 6 + k]) movement[node * 6 + k] = v[at * 6 + k]!
  })
  return movement
}

/** Names the node and direction that move most: a movement along, unless the mechanism only turns nodes. */
function largest(layout: Layout, movement: Float64Array): UnstableFrameError {
  const reach = layout.members.length.reduce((most, length) => Math.max(most, length), 0)
  const best = { along: 0, alongAt: 0, about: 0, aboutAt: 0 }
  // A first of equals is kept against rounding.
  const more = (a: number, b: number): boolean => a > b * (1 + 1e-9)
  movement.forEach((value, i) => {
    const size = Math.abs(value)
    if (i % 6 < 3) {
      if (more(size, best.along)) Object.assign(best, { along: size, alongAt: i })
    } else if (more(size, best.about)) Object.assign(best, { about: size, aboutAt: i })
  })
  const at = best.along > 1e-6 * reach * best.about ? best.alongAt : best.aboutAt
  return new UnstableFrameError(Math.floor(at / 6), DIRECTIONS[at % 6] as Direction)
}
