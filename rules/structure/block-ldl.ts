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
    const own = j * B
    const d = j * BB
    // Row by row of the unit triangle, then on to the rows below. Written out: six loops of six cost three times as much.
    const x0 = x[own]!
    const x1 = x[own + 1]! - values[d + 6]! * x0
    const x2 = x[own + 2]! - values[d + 12]! * x0 - values[d + 13]! * x1
    const x3 = x[own + 3]! - values[d + 18]! * x0 - values[d + 19]! * x1 - values[d + 20]! * x2
    const x4 =
      x[own + 4]! - values[d + 24]! * x0 - values[d + 25]! * x1 - values[d + 26]! * x2 - values[d + 27]! * x3
    const x5 =
      x[own + 5]! -
      values[d + 30]! * x0 -
      values[d + 31]! * x1 -
      values[d + 32]! * x2 -
      values[d + 33]! * x3 -
      values[d + 34]! * x4
    x[own + 1] = x1
    x[own + 2] = x2
    x[own + 3] = x3
    x[own + 4] = x4
    x[own + 5] = x5
    // Nothing comes of nothing: a load at one end leaves most of a long dock as it was.
    if (x0 === 0 && x1 === 0 && x2 === 0 && x3 === 0 && x4 === 0 && x5 === 0) continue
    for (let i = start[j]!; i < start[j + 1]!; i++) {
      let v = (count + i) * BB
      const other = row[i]! * B
      for (let r = 0; r < B; r++, v += B)
        x[other + r]! -=
          values[v]! * x0 +
          values[v + 1]! * x1 +
          values[v + 2]! * x2 +
          values[v + 3]! * x3 +
          values[v + 4]! * x4 +
          values[v + 5]! * x5
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
    const d = j * BB
    let x0 = x[own]!
    let x1 = x[own + 1]!
    let x2 = x[own + 2]!
    let x3 = x[own + 3]!
    let x4 = x[own + 4]!
    let x5 = x[own + 5]!
    for (let i = start[j]!; i < start[j + 1]!; i++) {
      let v = (count + i) * BB
      const other = row[i]! * B
      for (let r = 0; r < B; r++, v += B) {
        const value = x[other + r]!
        x0 -= values[v]! * value
        x1 -= values[v + 1]! * value
        x2 -= values[v + 2]! * value
        x3 -= values[v + 3]! * value
        x4 -= values[v + 4]! * value
        x5 -= values[v + 5]! * value
      }
    }
    x4 -= values[d + 34]! * x5
    x3 -= values[d + 33]! * x5 + values[d + 27]! * x4
    x2 -= values[d + 32]! * x5 + values[d + 26]! * x4 + values[d + 20]! * x3
    x1 -= values[d + 31]! * x5 + values[d + 25]! * x4 + values[d + 19]! * x3 + values[d + 13]! * x2
    x0 -=
      values[d + 30]! * x5 +
      values[d + 24]! * x4 +
      values[d + 18]! * x3 +
      values[d + 12]! * x2 +
      values[d + 6]! * x1
    x[own] = x0
    x[own + 1] = x1
    x[own + 2] = x2
    x[own + 3] = x3
    x[own + 4] = x4
    x[own + 5] = x5
  }
}
