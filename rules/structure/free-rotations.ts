/**
 * Rotations of a single node that nothing resists: the node of a truss, a shaft's end in a free joint.
 *
 * The stiffness matrix K is never negative, so K·v = 0 for a rotation v of one node exactly if vᵀKv = 0,
 * which that node's own 3 × 3 block decides; v need not lie along a global axis. Such a rotation is 0 by
 * agreement where no moment turns it.
 */
import type { Layout } from './assembly.ts'
import { eigen3 } from './eigen3.ts'
import type { Vec3 } from './frame-model.ts'

export interface FreeRotation {
  readonly node: number
  /** Unit vector in global axes. */
  readonly axis: Vec3
  /** Stiffness that it is given, N·m/rad; changes nothing else, for the rotation is coupled to nothing. */
  readonly stiffness: number
}

/** A rotational stiffness under this part of the node's own is the rounding left of none. */
const NONE = 1e-12

/** @param values the assembled stiffness, its held directions still empty */
export function findFreeRotations(layout: Layout, values: Float64Array): FreeRotation[] {
  const found: FreeRotation[] = []
  const { order } = layout.pattern
  for (let at = 0; at < order.length; at++) {
    const block = at * 36 + 21
    const size = values[block]! + values[block + 7]! + values[block + 14]!
    if (!wellHeld(values, block, size)) found.push(...nodesFreeRotations(layout, values, at, size))
  }
  return found
}

function nodesFreeRotations(layout: Layout, values: Float64Array, at: number, size: number): FreeRotation[] {
  const node = layout.pattern.order[at]!
  const matrix = [0, 1, 2].map((r) => [0, 1, 2].map((c) => values[at * 36 + 21 + r * 6 + c]!))
  const stiffness = size === 0 ? 1 : size
  // A held rotation is not a free one: it gets a stiffness for the search.
  for (let k = 0; k < 3; k++) if (layout.held[node * 6 + 3 + k]) matrix[k]![k] = stiffness
  const eigen = eigen3(matrix)
  return eigen.values.flatMap((value, i) =>
    value <= NONE * size ? [{ node, axis: eigen.vectors[i]!, stiffness }] : [],
  )
}

/** The product of three stiffnesses that are all at most `size` is large only if none is next to nothing. */
function wellHeld(values: Float64Array, at: number, size: number): boolean {
  const a = values[at]!
  const b = values[at + 1]!
  const c = values[at + 2]!
  const d = values[at + 7]!
  const e = values[at + 8]!
  const f = values[at + 14]!
  return a * (d * f - e * e) - b * (b * f - c * e) + c * (b * e - c * d) > 1e-9 * size ** 3
}

/** Gives free rotations their stiffness, in place. */
export function holdRotations(
  layout: Layout,
  values: Float64Array,
  rotations: readonly FreeRotation[],
): void {
  for (const { node, axis, stiffness } of rotations) {
    const at = layout.pattern.position[node]! * 36
    for (let r = 0; r < 3; r++)
      for (let c = 0; c < 3; c++) values[at + (3 + r) * 6 + 3 + c]! += stiffness * axis[r]! * axis[c]!
  }
}
