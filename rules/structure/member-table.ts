/**
 * All members as the solver sees them: axes, stretch, twist, and bending in two planes.
 *
 * Columns of numbers instead of an object for each member: a frame of ten thousand members is laid out anew
 * with every change of a dock, and so many small objects cost more to keep than the frame costs to factor.
 */
import { ALL_RIGID, chordStiffness, type PlaneJoints } from './chord-stiffness.ts'
import type { EndJoint, FrameModel } from './frame-model.ts'
import { memberAxes } from './member-axes.ts'

export interface MemberTable {
  readonly count: number
  readonly from: Int32Array
  readonly to: Int32Array
  /** m */
  readonly length: Float64Array
  /** Nine each: local x, y, z in global axes. */
  readonly axes: Float64Array
  /** E·A / length without joints, N/m. */
  readonly tube: Float64Array
  /** Two each: joints along the member at from and to, N/m; Infinity is rigid. */
  readonly along: Float64Array
  /** Stretching stiffness with its joints, N/m. */
  readonly axial: Float64Array
  /** Twisting stiffness with its joints, N·m/rad. */
  readonly torsion: Float64Array
  /** Two each, by plane: E·I, N·m²; 0 for a bar. */
  readonly EI: Float64Array
  /** Eight each, by plane: acrossFrom, turnFrom, acrossTo, turnTo. */
  readonly joints: Float64Array
  /** Six each, by plane: aa, ab, bb. */
  readonly chord: Float64Array
}

/**
 * The two planes of bending. Across: where in `axes` the direction of the deflection stands. Turn: where the
 * axis stands about which a positive slope turns, and its sign. First local x–y (about z), then x–z (about −y).
 */
export const PLANES = [
  { across: 3, turn: 6, sign: 1, acrossJoint: 1, turnJoint: 5 },
  { across: 6, turn: 3, sign: -1, acrossJoint: 2, turnJoint: 4 },
] as const

export type PlaneIndex = 0 | 1

const BAR: PlaneJoints = { ...ALL_RIGID, turnFrom: 0, turnTo: 0 }

const stiffnessOf = (joint: EndJoint | undefined): number =>
  joint === undefined || joint === 'rigid' ? Number.POSITIVE_INFINITY : joint === 'free' ? 0 : joint

const inSeries = (a: number, b: number, c: number): number => 1 / (1 / a + 1 / b + 1 / c)

/** Throws a RangeError if `up` is parallel to its member. */
export function memberTable(model: Pick<FrameModel, 'nodes' | 'members'>): MemberTable {
  const count = model.members.length
  const numbers = (each: number): Float64Array => new Float64Array(count * each)
  const table: MemberTable = {
    count,
    from: new Int32Array(count),
    to: new Int32Array(count),
    length: numbers(1),
    axes: numbers(9),
    tube: numbers(1),
    along: numbers(2),
    axial: numbers(1),
    torsion: numbers(1),
    EI: numbers(2),
    joints: numbers(8),
    chord: numbers(6),
  }
  for (let i = 0; i < count; i++) fill(table, model, i)
  return table
}

function fill(table: MemberTable, model: Pick<FrameModel, 'nodes' | 'members'>, i: number): void {
  const member = model.members[i]!
  const { length, x, y, z } = memberAxes(i, model.nodes[member.from]!, model.nodes[member.to]!, member.up)
  const start = member.ends?.from
  const end = member.ends?.to
  const bar = member.axialOnly === true
  table.from[i] = member.from
  table.to[i] = member.to
  table.length[i] = length
  table.axes.set(x, i * 9)
  table.axes.set(y, i * 9 + 3)
  table.axes.set(z, i * 9 + 6)
  const tube = (member.E * member.A) / length
  const alongFrom = stiffnessOf(start?.[0])
  const alongTo = stiffnessOf(end?.[0])
  table.tube[i] = tube
  table.along[i * 2] = alongFrom
  table.along[i * 2 + 1] = alongTo
  table.axial[i] = inSeries(tube, alongFrom, alongTo)
  const twist = (member.G * member.J) / length
  table.torsion[i] = bar ? 0 : inSeries(twist, stiffnessOf(start?.[3]), stiffnessOf(end?.[3]))
  for (const plane of [0, 1] as const) {
    const { acrossJoint, turnJoint } = PLANES[plane]
    const EI = bar ? 0 : member.E * (plane === 0 ? member.Iz : member.Iy)
    const joints = bar
      ? BAR
      : {
          acrossFrom: stiffnessOf(start?.[acrossJoint]),
          turnFrom: stiffnessOf(start?.[turnJoint]),
          acrossTo: stiffnessOf(end?.[acrossJoint]),
          turnTo: stiffnessOf(end?.[turnJoint]),
        }
    table.EI[i * 2 + plane] = EI
    const at = i * 8 + plane * 4
    table.joints[at] = joints.acrossFrom
    table.joints[at + 1] = joints.turnFrom
    table.joints[at + 2] = joints.acrossTo
    table.joints[at + 3] = joints.turnTo
    table.chord.set(chordStiffness(EI, length, joints), i * 6 + plane * 3)
  }
}

/** The unit vector at a place in a member's axes. */
export const axisOf = (table: MemberTable, member: number, at: 0 | 3 | 6): [number, number, number] => [
  table.axes[member * 9 + at]!,
  table.axes[member * 9 + at + 1]!,
  table.axes[member * 9 + at + 2]!,
]
