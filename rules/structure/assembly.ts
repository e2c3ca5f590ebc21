/**
 * Members into the blocks of the frame's stiffness matrix (global axes, 6 × 6 for each node).
 *
 * A held direction keeps its place in its node's block, coupled to nothing; a node held in all six takes no
 * part at all.
 */
import { emptyBlocks } from './block-ldl.ts'
import { type BlockPattern, blockPattern, sharedBlock } from './block-pattern.ts'
import { checkFrame } from './check-frame.ts'
import type { FrameModel, Vec3 } from './frame-model.ts'
import { planeMatrix, type SolverMember, solverMember } from './member-stiffness.ts'

/** Where a member's stiffness goes; offsets into the block values, -1 where the node takes no part. */
interface Places {
  readonly from: number
  readonly to: number
  readonly between: number
  /** The rows of the block between are `from`'s. */
  readonly rowsAreFrom: boolean
}

/** A frame laid out for assembly: all that does not change with loads or with axial forces. */
export interface Layout {
  readonly model: Pick<FrameModel, 'nodes' | 'members'>
  readonly members: readonly SolverMember[]
  readonly pattern: BlockPattern
  readonly places: readonly Places[]
  /** 1 for each held degree of freedom, six a node in the model's order. */
  readonly held: Uint8Array
}

/** Checks the frame and lays it out. Throws RangeError as `checkFrame` and `memberAxes` do. */
export function layOut(model: Pick<FrameModel, 'nodes' | 'members'>): Layout {
  checkFrame(model)
  const members = model.members.map((member, i) => solverMember(model, member, i))
  const held = new Uint8Array(model.nodes.length * 6)
  model.nodes.forEach((node, i) => {
    node.fixed?.forEach((fixed, k) => {
      held[i * 6 + k] = fixed ? 1 : 0
    })
  })
  const takesPart = model.nodes.map((_, i) => held.subarray(i * 6, i * 6 + 6).includes(0))
  const pattern = blockPattern(
    takesPart,
    members.map(({ from, to }) => [from, to] as const),
  )
  const places = members.map(({ from, to }): Places => {
    const { block, rowsAreFirst } = sharedBlock(pattern, from, to)
    return {
      from: pattern.position[from]! * 36,
      to: pattern.position[to]! * 36,
      between: block * 36,
      rowsAreFrom: rowsAreFirst,
    }
  })
  return { model, members, pattern, places, held }
}

/** Writes the matrix of one of a member's bending planes on (w1, φ1, w2, φ2); asked once for each plane. */
export type PlaneSource = (member: SolverMember, plane: 0 | 1, out: Float64Array) => void

/** Bending without axial force. */
export const straightBending: PlaneSource = (member, plane, out) => {
  planeMatrix(member.planes[plane].chord, member.axes.length, out)
}

/** The stiffness matrix, its held directions still empty (see `holdDirections`). */
export function assemble(layout: Layout, planeOf: PlaneSource): Float64Array {
  const values = emptyBlocks(layout.pattern)
  const planes: readonly [Float64Array, Float64Array] = [new Float64Array(16), new Float64Array(16)]
  const block = new Float64Array(36)
  layout.members.forEach((member, i) => {
    const place = layout.places[i]!
    planeOf(member, 0, planes[0])
    planeOf(member, 1, planes[1])
    if (place.from < 0 && place.to < 0) return
    const add = (at: number, rowEnd: 0 | 1, columnEnd: 0 | 1): void => {
      if (at < 0) return
      memberBlock(member, planes, rowEnd, columnEnd, block)
      addFree(
        values,
        at,
        block,
        layout.held,
        rowEnd === 0 ? member.from : member.to,
        columnEnd === 0 ? member.from : member.to,
      )
    }
    add(place.from, 0, 0)
    add(place.to, 1, 1)
    if (place.rowsAreFrom) add(place.between, 0, 1)
    else add(place.between, 1, 0)
  })
  return values
}

/** Puts ones on the diagonal of held directions. */
export function holdDirections(layout: Layout, values: Float64Array): void {
  layout.pattern.order.forEach((node, at) => {
    for (let k = 0; k < 6; k++) if (layout.held[node * 6 + k]) values[at * 36 + k * 7] = 1
  })
}

/** The diagonal, by degree of freedom in order of elimination. */
export function diagonalOf(layout: Layout, values: Float64Array): Float64Array {
  const diagonal = new Float64Array(layout.pattern.order.length * 6)
  for (let i = 0; i < diagonal.length; i++) diagonal[i] = values[Math.floor(i / 6) * 36 + (i % 6) * 7]!
  return diagonal
}

/** The 6 × 6 part of a member's stiffness in global axes that ties one end's forces to one end's movement. */
function memberBlock(
  member: SolverMember,
  planes: readonly [Float64Array, Float64Array],
  rowEnd: 0 | 1,
  columnEnd: 0 | 1,
  out: Float64Array,
): void {
  const sign = rowEnd === columnEnd ? 1 : -1
  out.fill(0)
  outer(out, 0, member.axes.x, member.axes.x, sign * member.axial)
  outer(out, 21, member.axes.x, member.axes.x, sign * member.torsion)
  const row = rowEnd * 8
  const column = columnEnd * 2
  for (const p of [0, 1] as const) {
    const matrix = planes[p]
    const { across, turn } = member.planes[p]
    outer(out, 0, across, across, matrix[row + column]!)
    outer(out, 3, across, turn, matrix[row + column + 1]!)
    outer(out, 18, turn, across, matrix[row + 4 + column]!)
    outer(out, 21, turn, turn, matrix[row + 4 + column + 1]!)
  }
}

function outer(out: Float64Array, at: number, a: Vec3, b: Vec3, factor: number): void {
  if (factor === 0) return
  for (let r = 0; r < 3; r++) {
    const scaled = factor * a[r]!
    out[at + r * 6]! += scaled * b[0]
    out[at + r * 6 + 1]! += scaled * b[1]
    out[at + r * 6 + 2]! += scaled * b[2]
  }
}

function addFree(
  values: Float64Array,
  at: number,
  block: Float64Array,
  held: Uint8Array,
  rowNode: number,
  columnNode: number,
): void {
  for (let r = 0; r < 6; r++) {
    if (held[rowNode * 6 + r]) continue
    for (let c = 0; c < 6; c++) if (!held[columnNode * 6 + c]) values[at + r * 6 + c]! += block[r * 6 + c]!
  }
}
