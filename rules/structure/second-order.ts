/**
 * A frame factored with the axial forces that are in it: P-Δ and P-δ, exactly as a beam-column has them.
 *
 * For a given state of axial forces the response is linear again, so load cases on top of one state can be added; a support can
 * be let go afterwards by moving it until it no longer pulls (`settle`). One layout serves all states of a frame.
 * Vectors hold six numbers a node, member tables twelve a member; global axes for nodes, member axes for members; SI.
 */
import {
  assemble,
  diagonalOf,
  holdDirections,
  type Layout,
  layOut,
  type PlaneSource,
  straightBending,
} from './assembly.ts'
import { beamColumns, string } from './beam-column.ts'
import { type BlockFactor, factorBlocks, solveBlocks } from './block-ldl.ts'
import { type FrameModel, UnstableFrameError } from './frame-model.ts'
import { type FreeRotation, findFreeRotations, holdRotations } from './free-rotations.ts'
import { endLoads } from './member-loads.ts'
import { type MemberTable, PLANES } from './member-table.ts'
import { addInGlobal } from './response.ts'

export interface StateLayout {
  readonly layout: Layout
  readonly freeRotations: readonly FreeRotation[]
  /** The plain stiffness. */
  readonly straight: Float64Array
}

/** One load case brought to nodes. */
export interface CaseLoad {
  /** Six a node: loads on the nodes and those of members brought to their ends. */
  readonly onNodes: Float64Array
  /** Twelve a member: what acts at its ends from its own loads, member axes; to be taken from its end forces. */
  readonly onMembers: Float64Array
}

export interface State {
  readonly layout: Layout
  readonly factor: BlockFactor
  /** Two 4 × 4 a member: bending in each plane on (w1, φ1, w2, φ2). */
  readonly planes: Float64Array
  /** True where the axial forces are past the frame's buckling load: it has no answer then. */
  readonly buckled: boolean
  /** Room for one member: how its two ends move in its own axes, and what that takes. Worked in anew by each call. */
  readonly room: { readonly local: Float64Array; readonly forces: Float64Array }
}

/** Lays a frame out once for all its states. Throws as `factorFrame` does for a frame that cannot be meant. */
export function layOutStates(model: Pick<FrameModel, 'nodes' | 'members'>): StateLayout {
  const layout = layOut(model)
  const straight = assemble(layout, straightBending(layout.members))
  return { layout, freeRotations: findFreeRotations(layout, straight), straight }
}

/**
 * @param axial mean axial force of each member, tension positive, N; null for none
 * Throws UnstableFrameError where the frame without axial forces can move without resistance.
 */
export function factorState(
  { layout, freeRotations, straight }: StateLayout,
  axial: Float64Array | null,
): State {
  const { members, pattern } = layout
  const planes = new Float64Array(members.count * 32)
  const plain = straightBending(members)
  const beamColumn = beamColumns(members)
  // Past its clamped load a member's own matrix no longer tells that it has buckled (Wittrick & Williams 1971): counted apart.
  let inside = 0
  const source: PlaneSource = (member, plane, out) => {
    const force = axial?.[member] ?? 0
    if (force === 0) plain(member, plane, out)
    else if (members.EI[member * 2 + plane] === 0)
      string(members.length[member]!, { from: force, to: force }, out)
    else inside += beamColumn(member, plane, { from: force, to: force }, out)
    const at = member * 32 + plane * 16
    for (let i = 0; i < 16; i++) planes[at + i] = out[i]!
  }
  const values = assemble(layout, source)
  holdRotations(layout, values, freeRotations)
  holdDirections(layout, values)
  const reference = diagonalOf(layout, straight)
  const factor = factorBlocks(pattern, values, { reference, suspect: 1e-12, vanished: 0 })
  if (axial === null && (factor.suspects.length > 0 || factor.negativePivots > 0))
    throw new UnstableFrameError(pattern.order[Math.floor((factor.suspects[0] ?? 0) / 6)]!, 'ux')
  return {
    layout,
    factor,
    planes,
    buckled: inside + factor.negativePivots > 0,
    room: { local: new Float64Array(12), forces: new Float64Array(12) },
  }
}

export const noLoad = ({ members, held }: Layout): CaseLoad => ({
  onNodes: new Float64Array(held.length),
  onMembers: new Float64Array(members.count * 12),
})

/** Adds a force and moment on a node, global axes. */
export function loadNode(
  { onNodes }: CaseLoad,
  node: number,
  force: readonly [number, number, number],
  moment: readonly [number, number, number] = [0, 0, 0],
): void {
  for (let k = 0; k < 3; k++) {
    onNodes[node * 6 + k]! += force[k]!
    onNodes[node * 6 + 3 + k]! += moment[k]!
  }
}

/** Most members have no joints that give, and their share of an even load is known. */
function isRigid({ joints, along, EI }: MemberTable, member: number): boolean {
  if (EI[member * 2] === 0 || EI[member * 2 + 1] === 0) return false
  for (let i = 0; i < 8; i++) if (joints[member * 8 + i] !== Number.POSITIVE_INFINITY) return false
  return along[member * 2] === Number.POSITIVE_INFINITY && along[member * 2 + 1] === Number.POSITIVE_INFINITY
}

/** q·L/2 and ±q·L²/12 at both ends. */
function evenLoad(length: number, [qx, qy, qz]: readonly [number, number, number], out: Float64Array): void {
  const half = length / 2
  const twelfth = length ** 2 / 12
  out[0] = qx * half
  out[6] = qx * half
  out[1] = qy * half
  out[7] = qy * half
  out[5] = qy * twelfth
  out[11] = -qy * twelfth
  out[2] = qz * half
  out[8] = qz * half
  out[4] = -qz * twelfth
  out[10] = qz * twelfth
}

/** Adds an even load along a member, N/m in global axes. */
export function loadMember(
  layout: Layout,
  load: CaseLoad,
  member: number,
  perLength: readonly [number, number, number],
): void {
  const { members, room: forces } = layout
  const { axes } = members
  const x = member * 9
  const own = [0, 3, 6].map(
    (k) => axes[x + k]! * perLength[0] + axes[x + k + 1]! * perLength[1] + axes[x + k + 2]! * perLength[2],
  ) as [number, number, number]
  const at = member * 12
  forces.fill(0)
  if (isRigid(members, member)) evenLoad(members.length[member]!, own, forces)
  else jointedLoad(layout, member, own, forces)
  for (let i = 0; i < 12; i++) load.onMembers[at + i]! += forces[i]!
  addInGlobal(members, member, forces, 0, load.onNodes)
  addInGlobal(members, member, forces, 6, load.onNodes)
}

function jointedLoad(
  layout: Layout,
  member: number,
  own: readonly [number, number, number],
  out: Float64Array,
): void {
  let units = layout.evenLoads.get(member)
  if (!units) {
    units = ([0, 1, 2] as const).map((axis) => unitLoad(layout, member, axis))
    layout.evenLoads.set(member, units)
  }
  for (let axis = 0; axis < 3; axis++) {
    const q = own[axis]!
    if (q !== 0) for (let i = 0; i < 12; i++) out[i]! += q * units[axis]![i]!
  }
}

function unitLoad({ members }: Layout, member: number, axis: 0 | 1 | 2): Float64Array {
  const out = new Float64Array(12)
  const ends = endLoads(members, member, [axis === 0 ? 1 : 0, axis === 1 ? 1 : 0, axis === 2 ? 1 : 0])
  out[0] = ends.along[0]!
  out[6] = ends.along[1]!
  ends.planes.forEach((plane, p) => {
    const { acrossJoint, turnJoint, sign } = PLANES[p]!
    out[acrossJoint] = plane[0]!
    out[turnJoint] = sign * plane[1]!
    out[6 + acrossJoint] = plane[2]!
    out[6 + turnJoint] = sign * plane[3]!
  })
  return out
}

/** Movements under a load, six a node. */
export function respond({ layout, factor }: State, onNodes: Float64Array): Float64Array {
  const { order } = layout.pattern
  const x = new Float64Array(order.length * 6)
  for (let at = 0; at < order.length; at++) {
    const node = order[at]! * 6
    for (let k = 0; k < 6; k++) if (!layout.held[node + k]) x[at * 6 + k] = onNodes[node + k]!
  }
  solveBlocks(factor, x)
  const movement = new Float64Array(layout.held.length)
  for (let at = 0; at < order.length; at++) {
    const node = order[at]! * 6
    for (let k = 0; k < 6; k++) if (!layout.held[node + k]) movement[node + k] = x[at * 6 + k]!
  }
  return movement
}

/**
 * Forces that act on a member at its ends, member axes: what its nodes' movement gives, less its own loads.
 *
 * @param onMembers as `CaseLoad`, or null without loads on members
 * @param out twelve numbers from `o`
 */
export function endForces(
  state: State,
  member: number,
  movement: Float64Array,
  onMembers: Float64Array | null,
  out: Float64Array,
  o: number,
): void {
  toLocal(state, member, movement)
  localForces(state, member, out, o)
  if (onMembers) for (let i = 0; i < 12; i++) out[o + i]! -= onMembers[member * 12 + i]!
}

/** A member's end forces from how its ends move in the state's room. */
function localForces(
  { layout, planes, room: { local } }: State,
  member: number,
  out: Float64Array,
  o: number,
): void {
  const { members } = layout
  const pull = members.axial[member]! * (local[6]! - local[0]!)
  const twist = members.torsion[member]! * (local[9]! - local[3]!)
  out[o] = -pull
  out[o + 6] = pull
  out[o + 3] = -twist
  out[o + 9] = twist
  bend(planes, member * 32, local, 1, 5, 1, out, o)
  bend(planes, member * 32 + 16, local, 2, 4, -1, out, o)
}

/** One plane's end forces from how the ends move in the member's axes. */
function bend(
  k: Float64Array,
  at: number,
  local: Float64Array,
  across: number,
  turn: number,
  sign: number,
  out: Float64Array,
  o: number,
): void {
  const w1 = local[across]!
  const f1 = sign * local[turn]!
  const w2 = local[6 + across]!
  const f2 = sign * local[6 + turn]!
  out[o + across] = k[at]! * w1 + k[at + 1]! * f1 + k[at + 2]! * w2 + k[at + 3]! * f2
  out[o + turn] = sign * (k[at + 4]! * w1 + k[at + 5]! * f1 + k[at + 6]! * w2 + k[at + 7]! * f2)
  out[o + 6 + across] = k[at + 8]! * w1 + k[at + 9]! * f1 + k[at + 10]! * w2 + k[at + 11]! * f2
  out[o + 6 + turn] = sign * (k[at + 12]! * w1 + k[at + 13]! * f1 + k[at + 14]! * w2 + k[at + 15]! * f2)
}

/** Turns and moves of both ends, into the state's room. Written out, as `solveBlocks` is: it is asked of every member in every case. */
function toLocal({ layout, room: { local } }: State, member: number, movement: Float64Array): void {
  const { axes, from, to } = layout.members
  const a = member * 9
  const xx = axes[a]!
  const xy = axes[a + 1]!
  const xz = axes[a + 2]!
  const yx = axes[a + 3]!
  const yy = axes[a + 4]!
  const yz = axes[a + 5]!
  const zx = axes[a + 6]!
  const zy = axes[a + 7]!
  const zz = axes[a + 8]!
  for (let part = 0; part < 12; part += 3) {
    const at = (part < 6 ? from[member]! : to[member]!) * 6 + (part % 6)
    const u = movement[at]!
    const v = movement[at + 1]!
    const w = movement[at + 2]!
    local[part] = xx * u + xy * v + xz * w
    local[part + 1] = yx * u + yy * v + yz * w
    local[part + 2] = zx * u + zy * v + zz * w
  }
}

/** A member's end that is moved against its node: a support that is moved, where nothing else ends there, or a joint that opens. */
export interface Moved {
  readonly node: number
  /** 0, 1, 2: x, y, z; 3, 4, 5: turns about them. */
  readonly direction: number
  /** m or rad */
  readonly by: number
  readonly members: readonly number[]
}

/** What it takes at a member's two ends, member axes, to move the one at `node` by `by` with all else held; into `out`. */
function toMove(state: State, member: number, { node, direction, by }: Moved, out: Float64Array): void {
  const { members } = state.layout
  const { local } = state.room
  const end = members.from[member]! === node ? 0 : 6
  const { axes } = members
  const at = member * 9 + (direction % 3)
  const part = end + (direction < 3 ? 0 : 3)
  local.fill(0)
  for (let k = 0; k < 3; k++) local[part + k] = by * axes[at + 3 * k]!
  localForces(state, member, out, 0)
}

/**
 * Movements of nodes where members' ends are moved against them and nothing else acts, six a node. The moved ends themselves are not in
 * it: what acts in those members is `endForces` of the movement and `toMove` besides.
 */
export function shift(state: State, moves: readonly Moved[]): Float64Array {
  const { layout } = state
  const { forces } = state.room
  const load = new Float64Array(layout.held.length)
  for (const move of moves)
    for (const member of move.members) {
      toMove(state, member, move, forces)
      for (let i = 0; i < 12; i++) forces[i] = -forces[i]!
      addInGlobal(layout.members, member, forces, 0, load)
      addInGlobal(layout.members, member, forces, 6, load)
    }
  return respond(state, load)
}

/** Movements where supports are moved and nothing else acts, six a node: the supports' own among them. */
export function settle(state: State, moves: readonly Moved[]): Float64Array {
  const movement = shift(state, moves)
  for (const { node, direction, by } of moves) movement[node * 6 + direction] = by
  return movement
}

/** Adds to a member's end forces (twelve from `o`) what moving its own end takes. */
export function addMoved(state: State, member: number, move: Moved, out: Float64Array, o: number): void {
  const { forces } = state.room
  toMove(state, member, move, forces)
  for (let i = 0; i < 12; i++) out[o + i]! += forces[i]!
}

/**
 * What moving one member's end by 1 does to the first ends of some members: their three forces there, member axes. As `shift`,
 * `endForces` and `addMoved` would tell it; for many ends of one state it takes half the time, for nothing is made anew but what it returns.
 */
export function settler(state: State, ends: readonly number[]): (move: Omit<Moved, 'by'>) => Float64Array {
  const { layout, factor } = state
  const { held, members, pattern } = layout
  const { position } = pattern
  const x = new Float64Array(pattern.order.length * 6)
  const load = new Float64Array(held.length)
  const movement = new Float64Array(held.length)
  const forces = new Float64Array(12)
  const nodes = [...new Set(ends.flatMap((member) => [members.from[member]!, members.to[member]!]))]
  return (one) => {
    const move: Moved = { ...one, by: 1 }
    const touched = new Set<number>()
    for (const member of move.members) {
      toMove(state, member, move, forces)
      for (let i = 0; i < 12; i++) forces[i] = -forces[i]!
      addInGlobal(members, member, forces, 0, load)
      addInGlobal(members, member, forces, 6, load)
      touched.add(members.from[member]!).add(members.to[member]!)
    }
    x.fill(0)
    for (const node of touched)
      for (let k = 0, at = position[node]!; k < 6; k++) {
        if (at >= 0 && !held[node * 6 + k]) x[at * 6 + k] = load[node * 6 + k]!
        load[node * 6 + k] = 0
      }
    solveBlocks(factor, x)
    for (const node of nodes)
      for (let k = 0, at = position[node]!; k < 6; k++)
        movement[node * 6 + k] = at < 0 || held[node * 6 + k] ? 0 : x[at * 6 + k]!
    const out = new Float64Array(ends.length * 3)
    for (let i = 0; i < ends.length; i++) {
      endForces(state, ends[i]!, movement, null, forces, 0)
      if (move.members.includes(ends[i]!)) addMoved(state, ends[i]!, move, forces, 0)
      for (let k = 0; k < 3; k++) out[i * 3 + k] = forces[k]!
    }
    for (const node of nodes) movement.fill(0, node * 6, node * 6 + 6)
    return out
  }
}
