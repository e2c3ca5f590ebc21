/**
 * A member with its end joints as the solver sees it: stretch, twist, and bending in two planes.
 *
 * Bending is told in slopes against the chord, because a member moved without bending then gives exactly
 * nothing: ties of very different stiffness lose no digits to each other, and a true mechanism has no
 * strain energy at all instead of a little rounding.
 */
import type { EndJoint, FrameMember, FrameModel, Vec3 } from './frame-model.ts'
import { type MemberAxes, memberAxes } from './member-axes.ts'

/** Stiffness of the joints of both ends for bending in one plane; Infinity is rigid, 0 free. */
export interface PlaneJoints {
  /** Across the member, N/m. */
  readonly acrossFrom: number
  readonly acrossTo: number
  /** In rotation, N·m/rad. */
  readonly turnFrom: number
  readonly turnTo: number
}

/** End moments from the end slopes against the chord: Ma = aa·θa + ab·θb, Mb = ab·θa + bb·θb (N·m/rad). */
export interface ChordStiffness {
  readonly aa: number
  readonly ab: number
  readonly bb: number
}

/** Bending in one of the two local planes. */
export interface BendingPlane {
  /** Direction of the deflection, global axes: local y or z. */
  readonly across: Vec3
  /** Axis about which a positive slope of the deflection turns, global axes: local z or −y. */
  readonly turn: Vec3
  /** Bending stiffness E·I, N·m². */
  readonly EI: number
  readonly joints: PlaneJoints
  readonly chord: ChordStiffness
}

export interface SolverMember {
  readonly index: number
  readonly from: number
  readonly to: number
  readonly axes: MemberAxes
  readonly axialOnly: boolean
  /** E·A / length without the joints, N/m. */
  readonly axialOfTube: number
  /** Joints along the member; Infinity is rigid. */
  readonly alongFrom: number
  readonly alongTo: number
  /** Stretching stiffness with its joints, N/m. */
  readonly axial: number
  /** Twisting stiffness with its joints, N·m/rad. */
  readonly torsion: number
  /** Deflection along local y (bending about z), then along local z (bending about y). */
  readonly planes: readonly [BendingPlane, BendingPlane]
}

const stiffnessOf = (joint: EndJoint | undefined): number =>
  joint === undefined || joint === 'rigid' ? Number.POSITIVE_INFINITY : joint === 'free' ? 0 : joint

const inSeries = (...stiffnesses: number[]): number => {
  const flexibility = stiffnesses.reduce((sum, stiffness) => sum + 1 / stiffness, 0)
  return 1 / flexibility
}

const NO_BENDING: ChordStiffness = { aa: 0, ab: 0, bb: 0 }

/**
 * Force method on the simply supported member: slopes from end moments are L/6EI·[2 −1; −1 2], to which
 * joints in rotation add 1/turn on the diagonal, and joints across add (1/acrossFrom + 1/acrossTo)/L² to
 * all four, for the shear (Ma + Mb)/L tilts the chord. Inverted by hand so that no term cancels.
 */
export function chordStiffness(EI: number, length: number, joints: PlaneJoints): ChordStiffness {
  if (EI === 0) return NO_BENDING
  const u = length / (6 * EI)
  const a = 1 / joints.turnFrom
  const b = 1 / joints.turnTo
  const c = (1 / joints.acrossFrom + 1 / joints.acrossTo) / length ** 2
  const hingedFrom = a === Number.POSITIVE_INFINITY
  const hingedTo = b === Number.POSITIVE_INFINITY
  if (c === Number.POSITIVE_INFINITY) {
    // No shear: the moments are equal and opposite.
    if (hingedFrom || hingedTo) return NO_BENDING
    const k = 1 / (6 * u + a + b)
    return { aa: k, ab: -k, bb: k }
  }
  if (hingedFrom) return hingedTo ? NO_BENDING : { aa: 0, ab: 0, bb: 1 / (2 * u + b + c) }
  if (hingedTo) return { aa: 1 / (2 * u + a + c), ab: 0, bb: 0 }
  const determinant = 3 * u * u + 2 * u * (a + b) + a * b + c * (6 * u + a + b)
  return {
    aa: (2 * u + b + c) / determinant,
    ab: (u - c) / determinant,
    bb: (2 * u + a + c) / determinant,
  }
}

/** Throws a RangeError if `up` is parallel to the member. */
export function solverMember(
  model: Pick<FrameModel, 'nodes'>,
  member: FrameMember,
  index: number,
): SolverMember {
  const axes = memberAxes(index, model.nodes[member.from]!, model.nodes[member.to]!, member.up)
  const { length } = axes
  const axialOnly = member.axialOnly === true
  const joint = (end: 'from' | 'to', component: number): number =>
    stiffnessOf(member.ends?.[end]?.[component])
  const plane = (across: Vec3, turn: Vec3, I: number, acrossAt: number, turnAt: number): BendingPlane => {
    const EI = axialOnly ? 0 : member.E * I
    const joints: PlaneJoints = axialOnly
      ? { acrossFrom: Number.POSITIVE_INFINITY, acrossTo: Number.POSITIVE_INFINITY, turnFrom: 0, turnTo: 0 }
      : {
          acrossFrom: joint('from', acrossAt),
          acrossTo: joint('to', acrossAt),
          turnFrom: joint('from', turnAt),
          turnTo: joint('to', turnAt),
        }
    return { across, turn, EI, joints, chord: chordStiffness(EI, length, joints) }
  }
  const { y, z } = axes
  const axialOfTube = (member.E * member.A) / length
  const alongFrom = joint('from', 0)
  const alongTo = joint('to', 0)
  return {
    index,
    from: member.from,
    to: member.to,
    axes,
    axialOnly,
    axialOfTube,
    alongFrom,
    alongTo,
    axial: inSeries(axialOfTube, alongFrom, alongTo),
    torsion: axialOnly ? 0 : inSeries((member.G * member.J) / length, joint('from', 3), joint('to', 3)),
    planes: [plane(y, z, member.Iz, 1, 5), plane(z, [-y[0], -y[1], -y[2]], member.Iy, 2, 4)],
  }
}

/** The chord stiffness as a 4 × 4 matrix on deflection and slope of both ends (w1, φ1, w2, φ2), row by row. */
export function planeMatrix(chord: ChordStiffness, length: number, out: Float64Array): void {
  const { aa, ab, bb } = chord
  const from = (aa + ab) / length
  const to = (ab + bb) / length
  const across = (from + to) / length
  out.set([across, from, -across, to, from, aa, -from, ab, -across, -from, across, -to, to, ab, -to, bb])
}
