/**
 * Linear complementarity: z ≥ 0, w = M·z + r ≥ 0, zᵀ·w = 0; by Lemke's algorithm, and by trying all sets.
 *
 * Source: Cottle, Pang, Stone, The Linear Complementarity Problem (1992), 4.4 (memory).
 */
import { gauss, type Matrix } from '../../../rules/structure/plain-frame.ts'

/** Of the greatest number in the tableau's column: less is rounding. */
const NOTHING = 1e-9

/** z, or null where it ends in a ray: for a positive semidefinite M there is no answer then. */
export function lemke(M: Matrix, r: readonly number[]): number[] | null {
  const n = r.length
  if (r.every((value) => value >= 0)) return r.map(() => 0)
  // Columns: w, z, the artificial one, right side. It is not the same in each row, so that equal rows make no tie.
  const T = M.map((row, i) => [
    ...row.map((_, j) => (i === j ? 1 : 0)),
    ...row.map((value) => -value),
    -(1 + i * 1e-3),
    r[i]!,
  ])
  const basis = r.map((_, i) => i)
  const pivot = (row: number, column: number): void => {
    const own = T[row]!
    const by = own[column]!
    for (let k = 0; k < own.length; k++) own[k]! /= by
    T.forEach((other, i) => {
      const f = other[column]!
      if (i !== row && f !== 0) for (let k = 0; k < other.length; k++) other[k]! -= f * own[k]!
    })
    basis[row] = column
  }
  let row = 0
  for (let i = 1; i < n; i++) if (r[i]! / (1 + i * 1e-3) < r[row]! / (1 + row * 1e-3)) row = i
  let leaves = basis[row]!
  pivot(row, 2 * n)
  for (let round = 0; round < 50 * n; round++) {
    const column = leaves < n ? leaves + n : leaves - n
    const large = Math.max(...T.map((one) => Math.abs(one[column]!)))
    let best = Number.POSITIVE_INFINITY
    row = -1
    T.forEach((one, i) => {
      if (one[column]! <= NOTHING * large) return
      const ratio = one[2 * n + 1]! / one[column]!
      if (ratio < best || (ratio === best && basis[i] === 2 * n)) {
        best = ratio
        row = i
      }
    })
    if (row < 0) return null
    leaves = basis[row]!
    pivot(row, column)
    if (leaves === 2 * n) return solveSet(M, r, (i) => basis.includes(i + n))
  }
  throw new Error('lemke: no end')
}

/** z where w is 0 on a set and z is 0 outside of it; null where nothing resists. */
function solveSet(M: Matrix, r: readonly number[], of: (i: number) => boolean): number[] | null {
  const set = r.flatMap((_, i) => (of(i) ? [i] : []))
  const z = r.map(() => 0)
  try {
    gauss(
      set.map((i) => set.map((j) => M[i]![j]!)),
      set.map((i) => -r[i]!),
    ).forEach((value, at) => {
      z[set[at]!] = value
    })
  } catch {
    return null
  }
  return z
}

export const slackOf = (M: Matrix, r: readonly number[], z: readonly number[]): number[] =>
  M.map((row, i) => row.reduce((sum, value, j) => sum + value * z[j]!, r[i]!))

/** All answers there are, each set tried; `small` in the unit of r and z is rounding. */
export function allAnswers(M: Matrix, r: readonly number[], small: number): number[][] {
  const found: number[][] = []
  for (let set = 0; set < 1 << r.length; set++) {
    const z = solveSet(M, r, (i) => ((set >> i) & 1) === 1)
    if (z?.every((v) => v >= -small) && slackOf(M, r, z).every((v) => v >= -small)) found.push(z)
  }
  return found
}
