/**
 * Linear buckling of a space frame.
 */
import { assemble, holdDirections, type Layout, straightBending } from './assembly.ts'
import { type AxialForce, beamColumns, string } from './beam-column.ts'
import { factorBlocks } from './block-ldl.ts'
import { nearestMove } from './directions.ts'
import { factorFrame } from './factor-frame.ts'
import { type FrameModel, type FrameSolution, UnstableFrameError } from './frame-model.ts'
import { type FreeRotation, holdRotations } from './free-rotations.ts'
import { axisOf, type MemberTable, PLANES, type PlaneIndex } from './member-table.ts'

const PLANE_INDEXES = [0, 1] as const

/** The factor is closed in on to this part of itself. */
const CLOSE = 1e-5

/** An axial force under this part of the largest force about is the rounding left of none. */
const NO_FORCE = 1e-9

/** Axial force counts as rounding under so many units in the last place of the movement that makes it. */
const ROUNDING = 64 * Number.EPSILON

/** Doublings and halvings in search of a first bracket; no frame that can be solved needs as many. */
const TRIES = 60

/** Bars alone buckle, if ever, long before their force is so many times the largest E·A. */
const FAR = 1e3

/**
 * The lowest positive factor on all loads at which the frame buckles in the linear sense: axial forces from
 * the linear solution, grown with the factor; shapes before buckling undeformed. Infinity if no factor does.
 *
 * In it: members bending between their nodes, joints of any kind at their ends, axial force that changes along
 * a member. A pinned strut buckles by itself (Euler) where it is an ordinary member with free rotations at its
 * ends. A member that is `axialOnly` is a bar: it leans with its nodes and pushes them over, but does not bow;
 * its own Euler load is a check of its own.
 *
 * Not in it: what bending moments, shear and twist do to buckling (lateral-torsional buckling among them), and
 * torsional buckling. On dock-shaped frames pushed sideways with a fifth of their weight that changes the factor by
 * 0.03 %; on portals free to fall out of their plane it was measured up to 28 % too high, on an irregular space frame
 * 5 % too low (tests/reference/structure/calculix).
 *
 * How: the stiffness K + λ·Kg has as many negative eigenvalues as factors lie between 0 and λ. They are
 * counted (negative pivots, those condensed away inside members among them) and the first is closed in on by
 * bisection. So factors that lie together and factors of loads reversed do no harm.
 * Source: Wittrick & Williams, Q. J. Mech. Appl. Math. 24 (1971) 263 (memory).
 *
 * Throws as `solveFrame`; also UnstableFrameError where a pressed member has nothing that keeps it from
 * turning aside at the smallest factor (no bending stiffness, or joints that leave it loose).
 */
export function buckling(model: FrameModel): number {
  const { layout, freeRotations, solve } = factorFrame(model)
  return lowestFactor(
    layout,
    freeRotations,
    axialForces(model, layout, solve(model.loads, model.memberLoads)),
  )
}

/**
 * The same for a frame that is laid out already, with the axial forces of its members.
 *
 * @param close the factor is closed in on to this part of itself
 */
export function lowestFactor(
  layout: Layout,
  freeRotations: readonly FreeRotation[],
  axial: readonly AxialForce[],
  close = CLOSE,
): number {
  const { members, model } = layout
  const pressed = axial.flatMap((force, member) => (press(force) > 0 ? [{ member, force }] : []))
  if (pressed.length === 0) return Number.POSITIVE_INFINITY
  for (const { member, force } of pressed)
    if (model.members[member]!.axialOnly !== true) refuseLoose(members, member, force)

  const count = counter(layout, freeRotations, axial)
  const bound = Math.min(
    ...pressed.flatMap(({ member, force }) => PLANE_INDEXES.map((p) => clamped(members, member, p, force))),
  )
  let high = bound * 1.01
  if (bound === Number.POSITIVE_INFINITY) {
    const strongest = members.tube.reduce((most, k, i) => Math.max(most, k * members.length[i]!), 0)
    const end = (FAR * strongest) / Math.min(...pressed.map(({ force }) => press(force)))
    high = (1e-9 * end) / FAR
    while (count(high) === 0) {
      if (high > end) return Number.POSITIVE_INFINITY
      high *= 4
    }
  }
  for (let tries = 0; count(high) === 0; tries++) {
    if (tries === TRIES) return Number.POSITIVE_INFINITY
    high *= 2
  }
  let low = high / 2
  for (let tries = 0; count(low) > 0; tries++) {
    if (tries === TRIES) throw new Error('buckling: the frame is too soft for its factor to be told from 0')
    high = low
    low /= 2
  }
  while (high - low > close * high) {
    const middle = (low + high) / 2
    if (count(middle) > 0) high = middle
    else low = middle
  }
  return (low + high) / 2
}

/** The largest pressing force in a member, N; negative if all of it is pulled. */
const press = ({ from, to }: AxialForce): number => Math.max(-from, -to)

/** Axial force of each member under the model's loads; rounding is 0. */
function axialForces(model: FrameModel, layout: Layout, solution: FrameSolution): AxialForce[] {
  let largest = 0
  for (const { from, to } of solution.memberForces)
    largest = Math.max(largest, ...from.slice(0, 3).map(Math.abs), ...to.slice(0, 3).map(Math.abs))
  for (const { force } of model.loads) largest = Math.max(largest, ...force.slice(0, 3).map(Math.abs))
  return model.members.map(({ from, to }, i) => {
    const forces = solution.memberForces[i]!
    const axial = layout.members.axial[i]!
    const moves = [...solution.displacements[from]!.slice(0, 3), ...solution.displacements[to]!.slice(0, 3)]
    const none = Math.max(NO_FORCE * largest, ROUNDING * axial * Math.max(...moves.map(Math.abs)))
    const cut = (value: number): number => (Math.abs(value) <= none ? 0 : value)
    return { from: cut(-forces.from[0]), to: cut(forces.to[0]) }
  })
}

/** The factor at which a plane of the member buckles with both ends clamped; Infinity for a bar. */
function clamped(members: MemberTable, member: number, plane: PlaneIndex, force: AxialForce): number {
  const EI = members.EI[member * 2 + plane]!
  if (EI === 0) return Number.POSITIVE_INFINITY
  const mean = -(force.from + force.to) / 2
  return (4 * Math.PI ** 2 * EI) / members.length[member]! ** 2 / (mean > 0 ? mean : press(force))
}

function refuseLoose(members: MemberTable, member: number, force: AxialForce): void {
  const beamColumn = beamColumns(members)
  for (const plane of PLANE_INDEXES) {
    const little = 1e-10 * clamped(members, member, plane, force)
    const axial = { from: little * force.from, to: little * force.to }
    const hasBending = members.EI[member * 2 + plane]! > 0
    if (hasBending && beamColumn(member, plane, axial, new Float64Array(16)) === 0) continue
    const why = `is the end of member ${member}, which is pressed and free to turn aside`
    const direction = nearestMove(axisOf(members, member, PLANES[plane].across))
    throw new UnstableFrameError(members.from[member]!, direction, why)
  }
}

function sameBending({ EI, joints }: MemberTable, member: number): boolean {
  const at = member * 8
  for (let i = 0; i < 4; i++) if (joints[at + i] !== joints[at + 4 + i]) return false
  return EI[member * 2] === EI[member * 2 + 1]
}

/** Counts the factors between 0 and a given one. */
function counter(
  layout: Layout,
  freeRotations: readonly FreeRotation[],
  axial: readonly AxialForce[],
): (factor: number) => number {
  const { members, pattern } = layout
  const straight = straightBending(members)
  const beamColumn = beamColumns(members)
  const reference = new Float64Array(pattern.order.length * 6).fill(1)
  const first = new Float64Array(16)
  return (factor) => {
    let inside = 0
    let insideFirst = 0
    const values = assemble(layout, (member, plane, out) => {
      const { from, to } = axial[member]!
      if (from === 0 && to === 0) return straight(member, plane, out)
      const force = { from: from * factor, to: to * factor }
      if (members.EI[member * 2 + plane] === 0) return string(members.length[member]!, force, out)
      if (plane === 1 && sameBending(members, member)) {
        out.set(first)
        inside += insideFirst
        return
      }
      const negative = beamColumn(member, plane, force, out)
      inside += negative
      if (plane === 0) {
        first.set(out)
        insideFirst = negative
      }
    })
    holdRotations(layout, values, freeRotations)
    holdDirections(layout, values)
    return inside + factorBlocks(pattern, values, { reference, suspect: 0, vanished: 0 }).negativePivots
  }
}
