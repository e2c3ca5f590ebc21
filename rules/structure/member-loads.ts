/**
 * Even loads along a member, brought to its ends through the joints there.
 */
import { condense, NOTHING } from './condense.ts'
import { nearestMove, nearestTurn } from './directions.ts'
import { UnstableFrameError, type Vec3 } from './frame-model.ts'
import { type BendingPlane, chordStiffness, planeMatrix, type SolverMember } from './member-stiffness.ts'

/** Loads on the two ends that move the frame as the spread load does (the fixed-end forces reversed). */
export interface EndLoads {
  /** Along the member at from and to, N. */
  readonly along: readonly [number, number]
  /** For each bending plane: force and moment at from, force and moment at to (N, N·m). */
  readonly planes: readonly [Float64Array, Float64Array]
}

const RIGID = {
  acrossFrom: Number.POSITIVE_INFINITY,
  acrossTo: Number.POSITIVE_INFINITY,
  turnFrom: Number.POSITIVE_INFINITY,
  turnTo: Number.POSITIVE_INFINITY,
}

/** What is left on a member's end that nothing holds must be no load, up to rounding. */
const LEFT_OVER = 1e-9

const whyLoose = (member: SolverMember): string =>
  `is the end of member ${member.index}, whose joints let it slip under its load`

function alongLoads(member: SolverMember, q: number): readonly [number, number] {
  const half = (q * member.axes.length) / 2
  if (q === 0) return [0, 0]
  const k = member.axialOfTube
  const matrix = new Float64Array([k, -k, -k, k])
  const load = new Float64Array([half, half])
  const joints = [member.alongFrom, member.alongTo]
  joints.forEach((joint, i) => {
    if (joint === Number.POSITIVE_INFINITY) return
    const sign = condense(matrix, 2, load, i, joint, NOTHING * k)
    if (sign === 0 && load[i] !== 0)
      throw new UnstableFrameError(
        i === 0 ? member.from : member.to,
        nearestMove(member.axes.x),
        whyLoose(member),
      )
  })
  return [load[0]!, load[1]!]
}

function acrossLoads(member: SolverMember, plane: BendingPlane, q: number): Float64Array {
  const { length } = member.axes
  const half = (q * length) / 2
  if (q === 0 || plane.EI === 0) return new Float64Array([half, 0, half, 0])
  const bend = (q * length ** 2) / 12
  const load = new Float64Array([half, bend, half, -bend])
  const matrix = new Float64Array(16)
  planeMatrix(chordStiffness(plane.EI, length, RIGID), length, matrix)
  const { acrossFrom, turnFrom, acrossTo, turnTo } = plane.joints
  const ofTube = [matrix[0]!, matrix[5]!, matrix[10]!, matrix[15]!]
  const joints = [acrossFrom, turnFrom, acrossTo, turnTo]
  // Rotations first: what is loose across a hinged member is then its sliding, which is what is named.
  for (const i of [1, 3, 0, 2]) {
    const joint = joints[i]!
    if (joint === Number.POSITIVE_INFINITY) continue
    const sign = condense(matrix, 4, load, i, joint, NOTHING * ofTube[i]!)
    if (sign !== 0) continue
    const scale = i % 2 === 0 ? Math.abs(half) : Math.abs(bend)
    if (Math.abs(load[i]!) > LEFT_OVER * scale) {
      const turns = i % 2 === 1
      throw new UnstableFrameError(
        i < 2 ? member.from : member.to,
        turns ? nearestTurn(plane.turn) : nearestMove(plane.across),
        whyLoose(member),
      )
    }
    load[i] = 0
  }
  return load
}

/**
 * Throws UnstableFrameError if the joints leave the member itself loose in a direction in which it is loaded.
 *
 * @param perLength N/m in member axes
 */
export function endLoads(member: SolverMember, perLength: Vec3): EndLoads {
  return {
    along: alongLoads(member, perLength[0]),
    planes: [
      acrossLoads(member, member.planes[0], perLength[1]),
      acrossLoads(member, member.planes[1], perLength[2]),
    ],
  }
}
