/**
 * L·D·Lᵀ of a sparse symmetric matrix of 6 × 6 blocks, in place, without pivoting.
 *
 * Serves definite matrices (a frame) and indefinite ones (a frame past its buckling load, where only the
 * number of negative pivots is wanted: Sylvester's law of inertia).
 */
import type { BlockPattern } from './block-pattern.ts'

const B = 6
const BB = 36

export interface BlockFactor {
  readonly pattern: BlockPattern
  /** All blocks, row by row; of diagonal blocks the lower half counts. L without its unit diagonal, and D. */
  readonly values: Float64Array
  readonly negativePivots: number
  /** Degrees of freedom whose pivot is under `suspect` of their reference. */
  readonly suspects: readonly number[]
}

export const emptyBlocks = (pattern: BlockPattern): Float64Array =>
  new Float64Array((pattern.order.length + pattern.row.length) * BB)

export interface PivotRule {
  /** Size that each pivot is judged against, by degree of freedom. */
  readonly reference: Float64Array
  /** Pivots (absolute) under this part of the reference are reported. */
  readonly suspect: number
  /** Pivots (absolute) under this part of the reference are replaced by the reference. */
  readonly vanished: number
}

/** Factors `values` in place. */
export function factorBlocks(pattern: BlockPattern, values: Float64Array, rule: PivotRule): BlockFactor {
  const { start, target } = pattern
  const count = pattern.order.length
  const suspects: number[] = []
  let negativePivots = 0
  let widest = 0
  for (let j = 0; j < count; j++) widest = Math.max(widest, start[j + 1]! - start[j]!)
  /** The column's blocks as they were before division by D: L·D. */
  const scaled = new Float64Array(widest * BB)
  let next = 0
  for (let j = 0; j < count; j++) {
    const diagonal = j * BB
    for (let c = 0; c < B; c++) {
      const dof = j * B + c
      let pivot = values[diagonal + c * B + c]!
      const reference = rule.reference[dof]!
      if (Math.abs(pivot) <= rule.suspect * reference) {
        suspects.push(dof)
        if (Math.abs(pivot) <= rule.vanished * reference) {
          pivot = reference
          values[diagonal + c * B + c] = pivot
        }
      }
      if (pivot < 0) negativePivots++
      for (let r = c + 1; r < B; r++) {
        const factor = values[diagonal + r * B + c]! / pivot
        if (factor === 0) continue
        // The column still holds L·D; rows below are updated with it before it becomes L.
        for (let k = r; k < B; k++) values[diagonal + k * B + r]! -= factor * values[diagonal + k * B + c]!
      }
      for (let r = c + 1; r < B; r++) values[diagonal + r * B + c]! /= pivot
    }
    const first = start[j]!
    const blocks = start[j + 1]! - first
    for (let b = 0; b < blocks; b++) divideBlock(values, diagonal, (count + first + b) * BB, scaled, b * BB)
    for (let a = 0; a < blocks; a++) {
      subtract(values, target[next]! * BB, (count + first + a) * BB, scaled, a * BB)
      next++
      for (let b = a + 1; b < blocks; b++) {
        subtract(values, target[next]! * BB, (count + first + b) * BB, scaled, a * BB)
        next++
      }
    }
  }
  return { pattern, values, negativePivots, suspects }
}

/** Turns an off-diagonal block A into L with A = L·D·Ljjᵀ, and keeps L·D in `scaled`. */
function divideBlock(
  values: Float64Array,
  diagonal: number,
  block: number,
  scaled: Float64Array,
  at: number,
): void {
  for (let r = 0; r < B; r++) {
    const from = block + r * B
    const into = at + r * B
    for (let c = 0; c < B; c++) {
      let sum = values[from + c]!
      for (let k = 0; k < c; k++) sum -= scaled[into + k]! * values[diagonal + c * B + k]!
      scaled[into + c] = sum
    }
    for (let c = 0; c < B; c++) values[from + c] = scaled[into + c]! / values[diagonal + c * B + c]!
  }
}

/** target −= L · (L·D)ᵀ, block by block. */
function subtract(values: Float64Array, into: number, left: number, right: Float64Array, at: number): void {
  for (let r = 0; r < BB; r += B) {
    const l0 = values[left + r]!
    const l1 = values[left + r + 1]!
    const l2 = values[left + r + 2]!
    const l3 = values[left + r + 3]!
    const l4 = values[left + r + 4]!
    const l5 = values[left + r + 5]!
    for (let c = 0; c < B; c++) {
      const m = at + c * B
      values[into + r + c]! -=
        l0 * right[m]! +
        l1 * right[m + 1]! +
        l2 * right[m + 2]! +
        l3 * right[m + 3]! +
        l4 * right[m + 4]! +
        l5 * right[m + 5]!
    }
  }
}

/** Solves L·D·Lᵀ x = b in place; `x` in order of elimination. */
export function solveBlocks(factor: BlockFactor, x: Float64Array): void {
  const { pattern, values } = factor
  const { start, row } = pattern
  const count = pattern.order.length
  for (let j = 0; j < count; j++) {
    const diagonal = j * BB
    const own = j * B
    for (let r = 1; r < B; r++)
      for (let k = 0; k < r; k++) x[own + r]! -= values[diagonal + r * B + k]! * x[own + k]!
    for (let i = start[j]!; i < start[j + 1]!; i++) {
      const block = (count + i) * BB
      const other = row[i]! * B
      for (let r = 0; r < B; r++) {
        let sum = 0
        for (let k = 0; k < B; k++) sum += values[block + r * B + k]! * x[own + k]!
        x[other + r]! -= sum
      }
    }
  }
  for (let j = 0; j < count; j++) for (let r = 0; r < B; r++) x[j * B + r]! /= values[j * BB + r * B + r]!
  backward(factor, x)
}

/** Solves Lᵀ x = b in place. */
export function backward(factor: BlockFactor, x: Float64Array): void {
  const { pattern, values } = factor
  const { start, row } = pattern
  const count = pattern.order.length
  for (let j = count - 1; j >= 0; j--) {
    const own = j * B
    for (let i = start[j]!; i < start[j + 1]!; i++) {
      const block = (count + i) * BB
      const other = row[i]! * B
      for (let r = 0; r < B; r++) {
        const value = x[other + r]!
        if (value === 0) continue
        for (let k = 0; k < B; k++) x[own + k]! -= values[block + r * B + k]! * value
      }
    }
    const diagonal = j * BB
    for (let r = B - 1; r > 0; r--)
      for (let k = 0; k < r; k++) x[own + k]! -= values[diagonal + r * B + k]! * x[own + r]!
  }
}
