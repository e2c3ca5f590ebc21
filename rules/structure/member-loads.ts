/**
 * Even loads along a member, brought to its ends through the joints there.
 */
import { ALL_RIGID, chordStiffness, planeMatrix } from './chord-stiffness.ts'
import { condense, NOTHING } from './condense.ts'
import { nearestMove, nearestTurn } from './directions.ts'
import { UnstableFrameError, type Vec3 } from './frame-model.ts'
import { axisOf, type MemberTable, PLANES, type PlaneIndex } from './member-table.ts'

/** Loads on the two ends that move the frame as the spread load does (the fixed-end forces reversed). */
export interface EndLoads {
  /** Along the member at from and to, N. */
  readonly along: Float64Array
  /** For each bending plane: force and moment at from, force and moment at to (N, N·m). */
  readonly planes: readonly [Float64Array, Float64Array]
}

/** What is left on a member's end that nothing holds must be no load, up to rounding. */
const LEFT_OVER = 1e-9

const whyLoose = (member: number): string =>
  `is the end of member ${member}, whose joints let it slip under its load`

function alongLoads(table: MemberTable, member: number, q: number): Float64Array {
  const half = (q * table.length[member]!) / 2
  const load = new Float64Array([half, half])
  if (q === 0) return load
  const k = table.tube[member]!
  const matrix = new Float64Array([k, -k, -k, k])
  for (const i of [0, 1]) {
    const joint = table.along[member * 2 + i]!
    if (joint === Number.POSITIVE_INFINITY) continue
    if (condense(matrix, 2, load, i, joint, NOTHING * k) !== 0) continue
    const node = i === 0 ? table.from[member]! : table.to[member]!
    throw new UnstableFrameError(node, nearestMove(axisOf(table, member, 0)), whyLoose(member))
  }
  return load
}

/** Rotations first: what is loose across a hinged member is then its sliding, which is what is named. */
const TURNS_FIRST = [1, 3, 0, 2] as const

function acrossLoads(table: MemberTable, member: number, plane: PlaneIndex, q: number): Float64Array {
  const length = table.length[member]!
  const EI = table.EI[member * 2 + plane]!
  const half = (q * length) / 2
  if (q === 0 || EI === 0) return new Float64Array([half, 0, half, 0])
  const bend = (q * length ** 2) / 12
  const load = new Float64Array([half, bend, half, -bend])
  const first = member * 8 + plane * 4
  // Most ends are rigid, and then there is nothing to condense.
  if (TURNS_FIRST.every((i) => table.joints[first + i] === Number.POSITIVE_INFINITY)) return load
  const matrix = new Float64Array(16)
  planeMatrix(...chordStiffness(EI, length, ALL_RIGID), length, matrix)
  const ofTube = matrix.filter((_, i) => i % 5 === 0)
  for (const i of TURNS_FIRST) {
    const joint = table.joints[first + i]!
    if (joint === Number.POSITIVE_INFINITY) continue
    if (condense(matrix, 4, load, i, joint, NOTHING * ofTube[i]!) !== 0) continue
    const turns = i % 2 === 1
    if (Math.abs(load[i]!) > LEFT_OVER * Math.abs(turns ? bend : half)) {
      const { across, turn } = PLANES[plane]
      const node = i < 2 ? table.from[member]! : table.to[member]!
      const direction = turns
        ? nearestTurn(axisOf(table, member, turn))
        : nearestMove(axisOf(table, member, across))
      throw new UnstableFrameError(node, direction, whyLoose(member))
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
export function endLoads(table: MemberTable, member: number, [qx, qy, qz]: Vec3): EndLoads {
  return {
    along: alongLoads(table, member, qx),
    planes: [acrossLoads(table, member, 0, qy), acrossLoads(table, member, 1, qz)],
  }
}
