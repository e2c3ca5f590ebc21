/**
 * Eigenvalues and eigenvectors of a symmetric 3 × 3 matrix, by Jacobi rotations.
 *
 * Jacobi keeps small eigenvalues of a matrix that is nearly diagonal accurate and leaves axes that are
 * decoupled from the others exactly as they are. Golub & Van Loan, Matrix Computations, 8.5 (memory).
 */
import type { Vec3 } from './frame-model.ts'

const PAIRS = [
  [0, 1],
  [0, 2],
  [1, 2],
] as const

/** In no particular order; vectors[i] belongs to values[i] and has length 1. */
export function eigen3(symmetric: readonly (readonly number[])[]): { values: number[]; vectors: Vec3[] } {
  const a = symmetric.map((row) => [...row])
  const v = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ]
  for (let sweep = 0; sweep < 30; sweep++) {
    let rotated = false
    for (const [p, q] of PAIRS) {
      const off = a[p]![q]!
      if (Math.abs(off) <= 1e-17 * Math.sqrt(Math.abs(a[p]![p]! * a[q]![q]!)) || off === 0) continue
      rotated = true
      const theta = (a[q]![q]! - a[p]![p]!) / (2 * off)
      const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.hypot(theta, 1))
      const c = 1 / Math.hypot(t, 1)
      const s = t * c
      for (let k = 0; k < 3; k++) {
        const kp = a[k]![p]!
        const kq = a[k]![q]!
        a[k]![p] = c * kp - s * kq
        a[k]![q] = s * kp + c * kq
      }
      for (let k = 0; k < 3; k++) {
        const pk = a[p]![k]!
        const qk = a[q]![k]!
        a[p]![k] = c * pk - s * qk
        a[q]![k] = s * pk + c * qk
      }
      a[p]![q] = 0
      a[q]![p] = 0
      for (let k = 0; k < 3; k++) {
        const kp = v[k]![p]!
        const kq = v[k]![q]!
        v[k]![p] = c * kp - s * kq
        v[k]![q] = s * kp + c * kq
      }
    }
    if (!rotated) break
  }
  return {
    values: [0, 1, 2].map((i) => a[i]![i]!),
    vectors: [0, 1, 2].map((i): Vec3 => [v[0]![i]!, v[1]![i]!, v[2]![i]!]),
  }
}
