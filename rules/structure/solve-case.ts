/**
 * One load case on a factored frame.
 */
import type { Layout } from './assembly.ts'
import { type BlockFactor, solveBlocks } from './block-ldl.ts'
import { checkLoads } from './check-frame.ts'
import { nearestTurn } from './directions.ts'
import {
  type FrameLoad,
  type FrameSolution,
  type MemberForces,
  type MemberLoad,
  UnstableFrameError,
  type Vec3,
  type Vec6,
} from './frame-model.ts'
import type { FreeRotation } from './free-rotations.ts'
import { byNode } from './mechanism.ts'
import { type EndLoads, endLoads } from './member-loads.ts'
import { addInGlobal, memberEndForces } from './response.ts'

export interface Factored {
  readonly layout: Layout
  readonly factor: BlockFactor
  /** Of the stiffness matrix, in order of elimination. */
  readonly diagonal: Float64Array
  readonly freeRotations: readonly FreeRotation[]
}

/** A moment under this part of the node's whole moment is the rounding left of none. */
const NO_MOMENT = 1e-9

/**
 * Refinement ends once it changes the solution by less than this part (each round is as good as the one
 * before it was, so what is left is the square of it), or after MOST rounds.
 */
const SETTLED = 1e-8
const MOST = 6

/**
 * Solves by refinement: what the members do not yet carry of the load is solved for again. The first round
 * is the plain solution; the next ones give back the digits that ties much stiffer than the frame cost.
 */
export function solveCase(
  { layout, factor, diagonal, freeRotations }: Factored,
  loads: readonly FrameLoad[],
  memberLoads: readonly MemberLoad[],
): FrameSolution {
  checkLoads(layout.model, loads, memberLoads)
  const onNodes = new Float64Array(layout.held.length)
  for (const { node, force } of loads) for (let k = 0; k < 6; k++) onNodes[node * 6 + k]! += force[k]!
  const onMembers = memberEndLoads(layout, memberLoads)
  const movement = new Float64Array(layout.held.length)
  for (let round = 0; round < MOST; round++) {
    const left = unbalanced(layout, round === 0 ? undefined : movement, onNodes, onMembers)
    if (round === 0) refuseMoments(freeRotations, left)
    const x = inOrder(layout, left)
    solveBlocks(factor, x)
    const step = byNode(layout, x)
    for (const { node, axis } of freeRotations) takeOut(step, node, axis)
    for (let i = 0; i < step.length; i++) movement[i]! += step[i]!
    const size = weigh(inOrder(layout, movement), diagonal)
    if (round > 0 && weigh(x, diagonal) <= SETTLED ** 2 * size) break
    if (size === 0) break
  }
  return collect(layout, movement, onNodes, onMembers)
}

/** Loads on the same member add up before they are brought to its ends. */
function memberEndLoads(layout: Layout, memberLoads: readonly MemberLoad[]): ReadonlyMap<number, EndLoads> {
  const perLength = new Map<number, Vec3>()
  for (const load of memberLoads) {
    const [x, y, z] = perLength.get(load.member) ?? [0, 0, 0]
    const [qx, qy, qz] = load.perLength
    perLength.set(load.member, [x + qx, y + qy, z + qz])
  }
  return new Map([...perLength].map(([member, q]) => [member, endLoads(layout.members, member, q)]))
}

/** What the nodes' loads and the members' forces leave on each node, global axes; without movement, at rest. */
function unbalanced(
  layout: Layout,
  movement: Float64Array | undefined,
  onNodes: Float64Array,
  onMembers: ReadonlyMap<number, EndLoads>,
): Float64Array {
  const left = new Float64Array(onNodes.length)
  const forces = new Float64Array(12)
  for (let i = 0; i < layout.members.count; i++) {
    const own = onMembers.get(i)
    if (movement === undefined && own === undefined) continue
    memberEndForces(layout.members, i, movement, own, forces)
    addInGlobal(layout.members, i, forces, 0, left)
    addInGlobal(layout.members, i, forces, 6, left)
  }
  for (let i = 0; i < left.length; i++) left[i] = onNodes[i]! - left[i]!
  return left
}

function refuseMoments(freeRotations: readonly FreeRotation[], left: Float64Array): void {
  for (const { node, axis } of freeRotations) {
    const moment = left.subarray(node * 6 + 3, node * 6 + 6)
    const along = moment[0]! * axis[0] + moment[1]! * axis[1] + moment[2]! * axis[2]
    if (Math.abs(along) > NO_MOMENT * Math.hypot(...moment))
      throw new UnstableFrameError(node, nearestTurn(axis), 'has a moment that nothing resists')
  }
}

/** Free rotations are 0 by agreement; rounding is taken out of them. */
function takeOut(step: Float64Array, node: number, axis: Vec3): void {
  const at = node * 6 + 3
  const along = step[at]! * axis[0] + step[at + 1]! * axis[1] + step[at + 2]! * axis[2]
  for (let k = 0; k < 3; k++) step[at + k]! -= along * axis[k]!
}

/** From six a node to the factor's order; held directions get zeros. */
function inOrder(layout: Layout, byNodes: Float64Array): Float64Array {
  const x = new Float64Array(layout.pattern.order.length * 6)
  layout.pattern.order.forEach((node, at) => {
    for (let k = 0; k < 6; k++) if (!layout.held[node * 6 + k]) x[at * 6 + k] = byNodes[node * 6 + k]!
  })
  return x
}

/** A square size that adds movements and rotations by what they cost. */
function weigh(x: Float64Array, diagonal: Float64Array): number {
  let sum = 0
  for (let i = 0; i < x.length; i++) sum += diagonal[i]! * x[i]! ** 2
  return sum
}

/** Six numbers from `at`; -0 becomes 0. */
const six = (values: Float64Array, at: number): Vec6 => [
  values[at]! + 0,
  values[at + 1]! + 0,
  values[at + 2]! + 0,
  values[at + 3]! + 0,
  values[at + 4]! + 0,
  values[at + 5]! + 0,
]

function collect(
  layout: Layout,
  movement: Float64Array,
  onNodes: Float64Array,
  onMembers: ReadonlyMap<number, EndLoads>,
): FrameSolution {
  const left = unbalanced(layout, movement, onNodes, onMembers)
  const reactions = left.map((value, i) => (layout.held[i] ? -value : 0))
  const forces = new Float64Array(12)
  const memberForces = layout.model.members.map((_, i): MemberForces => {
    memberEndForces(layout.members, i, movement, onMembers.get(i), forces)
    return { from: six(forces, 0), to: six(forces, 6) }
  })
  const nodes = layout.model.nodes
  return {
    displacements: nodes.map((_, i) => six(movement, i * 6)),
    reactions: nodes.map((_, i) => six(reactions, i * 6)),
    memberForces,
  }
}
