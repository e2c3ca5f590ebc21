/**
 * Members into the blocks of the frame's stiffness matrix (global axes, 6 × 6 for each node).
 *
 * A held direction keeps its place in its node's block, coupled to nothing; a node held in all six takes no
 * part at all.
 */
import { emptyBlocks } from './block-ldl.ts'
import { type BlockPattern, blockPattern, sharedBlock } from './block-pattern.ts'
import { checkFrame } from './check-frame.ts'
import { planeMatrix } from './chord-stiffness.ts'
import type { FrameModel } from './frame-model.ts'
import { type MemberTable, memberTable, PLANES, type PlaneIndex } from './member-table.ts'

/** A frame laid out for assembly: all that does not change with loads or with axial forces. */
export interface Layout {
  readonly model: Pick<FrameModel, 'nodes' | 'members'>
  readonly members: MemberTable
  readonly pattern: BlockPattern
  /**
   * Four each, where a member's stiffness goes: block of from, of to, of both, and 1 if the rows of the last
   * are from's. -1 where a node takes no part.
   */
  readonly places: Int32Array
  /** 1 for each held degree of freedom, six a node in the model's order. */
  readonly held: Uint8Array
  /** What even loads of 1 along each own axis do to members whose joints give; filled as they are asked for, in case after case. */
  readonly evenLoads: Map<number, readonly Float64Array[]>
  /** Room for a member's twelve end forces while its load is worked out. */
  readonly room: Float64Array
}

/** Checks the frame and lays it out. Throws RangeError as `checkFrame` and `memberAxes` do. */
export function layOut(model: Pick<FrameModel, 'nodes' | 'members'>): Layout {
  checkFrame(model)
  const members = memberTable(model)
  const held = new Uint8Array(model.nodes.length * 6)
  model.nodes.forEach((node, i) => {
    for (let k = 0; k < 6; k++) held[i * 6 + k] = node.fixed?.[k] ? 1 : 0
  })
  const takesPart = new Uint8Array(model.nodes.length)
  for (let i = 0; i < held.length; i++) if (!held[i]) takesPart[Math.floor(i / 6)] = 1
  const pattern = blockPattern(takesPart, members.from, members.to)
  const places = new Int32Array(members.count * 4)
  for (let i = 0; i < members.count; i++) {
    const from = members.from[i]!
    const to = members.to[i]!
    places[i * 4] = pattern.position[from]!
    places[i * 4 + 1] = pattern.position[to]!
    places[i * 4 + 2] = sharedBlock(pattern, from, to)
    places[i * 4 + 3] = pattern.position[from]! > pattern.position[to]! ? 1 : 0
  }
  return { model, members, pattern, places, held, evenLoads: new Map(), room: new Float64Array(12) }
}

/** Writes the matrix of one of a member's bending planes on (w1, φ1, w2, φ2); asked once for each plane. */
export type PlaneSource = (member: number, plane: PlaneIndex, out: Float64Array) => void

/** Bending without axial force. */
export const straightBending =
  ({ chord, length }: MemberTable): PlaneSource =>
  (member, plane, out) => {
    const at = member * 6 + plane * 3
    planeMatrix(chord[at]!, chord[at + 1]!, chord[at + 2]!, length[member]!, out)
  }

/** The stiffness matrix; rows and columns of held directions are left empty (see `holdDirections`). */
export function assemble(layout: Layout, planeOf: PlaneSource): Float64Array {
  const { members, pattern, places } = layout
  const values = emptyBlocks(pattern)
  const planes = [new Float64Array(16), new Float64Array(16)] as const
  for (let i = 0; i < members.count; i++) {
    planeOf(i, 0, planes[0])
    planeOf(i, 1, planes[1])
    const from = places[i * 4]!
    const to = places[i * 4 + 1]!
    const both = places[i * 4 + 2]!
    if (from >= 0) addBlock(members, i, planes, 0, 0, values, from * 36)
    if (to >= 0) addBlock(members, i, planes, 1, 1, values, to * 36)
    if (both < 0) continue
    if (places[i * 4 + 3]) addBlock(members, i, planes, 0, 1, values, both * 36)
    else addBlock(members, i, planes, 1, 0, values, both * 36)
  }
  clearHeld(layout, values)
  return values
}

/** Empties the rows and columns of held directions. */
function clearHeld({ pattern, held }: Layout, values: Float64Array): void {
  const { order, start, row } = pattern
  for (let column = 0; column < order.length; column++) {
    const own = order[column]! * 6
    clear(values, column * 36, held, own, own)
    for (let i = start[column]!; i < start[column + 1]!; i++)
      clear(values, (order.length + i) * 36, held, order[row[i]!]! * 6, own)
  }
}

/** In one block; `rows` and `columns` say where its nodes' directions start in `held`. */
function clear(values: Float64Array, at: number, held: Uint8Array, rows: number, columns: number): void {
  for (let k = 0; k < 6; k++) {
    if (held[rows + k]) for (let c = 0; c < 6; c++) values[at + k * 6 + c] = 0
    if (held[columns + k]) for (let r = 0; r < 6; r++) values[at + r * 6 + k] = 0
  }
}

/** Puts ones on the diagonal of held directions. */
export function holdDirections({ pattern, held }: Layout, values: Float64Array): void {
  pattern.order.forEach((node, at) => {
    for (let k = 0; k < 6; k++) if (held[node * 6 + k]) values[at * 36 + k * 7] = 1
  })
}

/** The diagonal, by degree of freedom in order of elimination. */
export function diagonalOf({ pattern }: Layout, values: Float64Array): Float64Array {
  const diagonal = new Float64Array(pattern.order.length * 6)
  for (let at = 0; at < pattern.order.length; at++)
    for (let k = 0; k < 6; k++) diagonal[at * 6 + k] = values[at * 36 + k * 7]!
  return diagonal
}

/**
 * Adds the 6 × 6 part of a member's stiffness, global axes, that ties one end's forces to one end's movement.
 */
function addBlock(
  { axes, axial, torsion }: MemberTable,
  member: number,
  planes: readonly [Float64Array, Float64Array],
  rowEnd: 0 | 1,
  columnEnd: 0 | 1,
  out: Float64Array,
  at: number,
): void {
  const x = member * 9
  const ends = rowEnd === columnEnd ? 1 : -1
  addOuter(out, at, axes, x, x, ends * axial[member]!)
  addOuter(out, at + 21, axes, x, x, ends * torsion[member]!)
  const entry = rowEnd * 8 + columnEnd * 2
  for (let p = 0; p < 2; p++) {
    const matrix = planes[p]!
    const { sign } = PLANES[p]!
    const across = x + PLANES[p]!.across
    const turn = x + PLANES[p]!.turn
    addOuter(out, at, axes, across, across, matrix[entry]!)
    addOuter(out, at + 3, axes, across, turn, sign * matrix[entry + 1]!)
    addOuter(out, at + 18, axes, turn, across, sign * matrix[entry + 4]!)
    addOuter(out, at + 21, axes, turn, turn, matrix[entry + 5]!)
  }
}

/** Adds factor · a·bᵀ to a 3 × 3 quarter of a 6 × 6 block. */
function addOuter(
  out: Float64Array,
  at: number,
  axes: Float64Array,
  a: number,
  b: number,
  factor: number,
): void {
  if (factor === 0) return
  for (let r = 0; r < 3; r++) {
    const scaled = factor * axes[a + r]!
    out[at + r * 6]! += scaled * axes[b]!
    out[at + r * 6 + 1]! += scaled * axes[b + 1]!
    out[at + r * 6 + 2]! += scaled * axes[b + 2]!
  }
}
