/**
 * What the space-frame solver is given and what it gives back: plain data, SI (m, N, N·m, Pa, rad).
 *
 * Frames of reference: nodes, node loads, displacements and reactions are in global axes (x, y horizontal,
 * z up). Members, their ends, their loads and their forces are in member axes: local x from `from` to `to`,
 * local y = up × x, local z = x × y. `up` defaults to [0, 0, 1], for a vertical member to [0, 1, 0].
 */

/** Six components: along x, y, z, then about x, y, z. */
export type Vec6 = readonly [number, number, number, number, number, number]

export type Vec3 = readonly [number, number, number]

/** Six supports, in the order of `Vec6`; true holds. */
export type Fixed6 = readonly [boolean, boolean, boolean, boolean, boolean, boolean]

/** A joint between a node and a member's end: rigid, free, or a stiffness (N/m along, N·m/rad about). */
export type EndJoint = 'rigid' | 'free' | number

/** One end's six joints in member axes, in the order ux, uy, uz, rx, ry, rz. */
export type End6 = readonly [EndJoint, EndJoint, EndJoint, EndJoint, EndJoint, EndJoint]

export interface FrameNode {
  readonly x: number
  readonly y: number
  readonly z: number
  /** Held directions in global axes; none where left out. */
  readonly fixed?: Fixed6
}

/** A straight Euler–Bernoulli member of one section. */
export interface FrameMember {
  /** Index of the node it starts at. */
  readonly from: number
  /** Index of the node it ends at. */
  readonly to: number
  /** Young's modulus, Pa. */
  readonly E: number
  /** Shear modulus, Pa (torsion only). */
  readonly G: number
  /** Area, m². */
  readonly A: number
  /** Second moment for bending in the local x–z plane, m⁴. */
  readonly Iy: number
  /** Second moment for bending in the local x–y plane, m⁴. */
  readonly Iz: number
  /** Torsion constant, m⁴. */
  readonly J: number
  /** Lies in the local x–z plane on the side of +z; global axes, any length but zero. */
  readonly up?: Vec3
  readonly ends?: { readonly from?: End6; readonly to?: End6 }
  /**
   * A bar: pinned at both ends, resists only being stretched or pressed. Of its `ends` only ux counts.
   * A load across it goes to its two nodes in halves.
   */
  readonly axialOnly?: boolean
}

/** A load on a node: force (N) and moment (N·m) in global axes. */
export interface FrameLoad {
  readonly node: number
  readonly force: Vec6
}

/** A load spread evenly over a member's whole length, N/m in member axes. */
export interface MemberLoad {
  readonly member: number
  readonly perLength: Vec3
}

export interface FrameModel {
  readonly nodes: readonly FrameNode[]
  readonly members: readonly FrameMember[]
  readonly loads: readonly FrameLoad[]
  readonly memberLoads?: readonly MemberLoad[]
}

/** Forces that act on a member at its two ends, in member axes. */
export interface MemberForces {
  readonly from: Vec6
  readonly to: Vec6
}

export interface FrameSolution {
  /** For each node, m and rad in global axes. */
  readonly displacements: readonly Vec6[]
  /** For each node, what the supports do to the frame, N and N·m in global axes; 0 where nothing holds. */
  readonly reactions: readonly Vec6[]
  /** For each member. */
  readonly memberForces: readonly MemberForces[]
}

export const DIRECTIONS = ['ux', 'uy', 'uz', 'rx', 'ry', 'rz'] as const

/** A global direction of a node: a movement along x, y, z or a rotation about it. */
export type Direction = (typeof DIRECTIONS)[number]

/** The frame, or a part of it, can move without resistance. */
export class UnstableFrameError extends Error {
  override readonly name = 'UnstableFrameError'
  /** Index of the node that moves (of several, the one that moves most). */
  readonly node: number
  /** Global direction in which it moves most. */
  readonly direction: Direction

  constructor(node: number, direction: Direction, why = 'can move without resistance') {
    super(`unstable frame: node ${node} ${why} in ${direction}`)
    this.node = node
    this.direction = direction
  }
}
