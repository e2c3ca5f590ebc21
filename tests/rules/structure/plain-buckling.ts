/**
 * Buckling done another way, for comparison: members divided into nodes of their own, dense matrices, all
 * eigenvalues at once. Shares no code with the solver.
 *
 * Source: Przemieniecki, Theory of Matrix Structural Analysis (1968), 15.2 (memory); Householder and Sturm as in
 * Golub & Van Loan, Matrix Computations, chapter 8 (memory).
 */
import type { FrameMember, FrameModel, FrameNode } from '../../../rules/structure/index.ts'
import { add, endRows, freeUnknowns, type Matrix, rotationOf, textbook, zeros } from './plain-frame.ts'

/** Consistent geometric stiffness for an axial force N (tension positive), member axes; bending only. */
export function textbookGeometric(N: number, L: number, bar: boolean): Matrix {
  const g = zeros(12)
  const put = (i: number, j: number, value: number): void => {
    g[i]![j]! += (value * N) / (30 * L)
    if (i !== j) g[j]![i]! += (value * N) / (30 * L)
  }
  for (const [v, r, s] of [
    [1, 5, 1],
    [2, 4, -1],
  ] as const) {
    put(v, v, bar ? 30 : 36)
    put(v + 6, v + 6, bar ? 30 : 36)
    put(v, v + 6, bar ? -30 : -36)
    if (bar) continue
    put(v, r, s * 3 * L)
    put(v, r + 6, s * 3 * L)
    put(v + 6, r, -s * 3 * L)
    put(v + 6, r + 6, -s * 3 * L)
    put(r, r, 4 * L * L)
    put(r + 6, r + 6, 4 * L * L)
    put(r, r + 6, -L * L)
  }
  return g
}

export interface Piece {
  readonly member: FrameMember
  readonly N: number
  /** The member it is a piece of, and where along it it starts (0 to 1). */
  readonly of: number
  readonly start: number
}

/** Members but bars in `parts` pieces, the joints on the outer ones. */
export function divide(
  model: FrameModel,
  axial: readonly number[],
  parts: number,
): { nodes: FrameNode[]; pieces: Piece[] } {
  const nodes: FrameNode[] = [...model.nodes]
  const pieces: Piece[] = []
  model.members.forEach(({ ends, ...member }, m) => {
    const a = model.nodes[member.from]!
    const b = model.nodes[member.to]!
    const count = member.axialOnly ? 1 : parts
    let last = member.from
    for (let p = 1; p <= count; p++) {
      const t = p / count
      const between = { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t, z: a.z + (b.z - a.z) * t }
      const next = p === count ? member.to : nodes.push(between) - 1
      const outer = {
        ...(p === 1 && ends?.from ? { from: ends.from } : {}),
        ...(p === count && ends?.to ? { to: ends.to } : {}),
      }
      pieces.push({
        member: { ...member, from: last, to: next, ends: outer },
        N: axial[m]!,
        of: m,
        start: (p - 1) / count,
      })
      last = next
    }
  })
  return { nodes, pieces }
}

/** Lowest positive buckling factor of a frame for given axial forces; Infinity if none. */
export function plainBuckling(model: FrameModel, axial: readonly number[], parts: number): number {
  const { nodes, pieces } = divide(model, axial, parts)
  const size = nodes.length * 6 + pieces.length * 12
  const K = zeros(size)
  const Kg = zeros(size)
  pieces.forEach(({ member, N }, m) => {
    const { R, L } = rotationOf(member, nodes[member.from]!, nodes[member.to]!)
    const bar = member.axialOnly === true
    const k = textbook(bar ? { ...member, Iy: 0, Iz: 0, J: 0 } : member, L)
    const T = endRows(K, member, R, k, nodes.length * 6 + m * 12)
    add(K, k, T)
    add(Kg, textbookGeometric(N, L, bar), T)
  })
  return lowestFactor(nodes, K, Kg)
}

/** Lowest positive λ at which K + λ·Kg is singular; Infinity if none. */
export function lowestFactor(nodes: readonly FrameNode[], K: Matrix, Kg: Matrix): number {
  const free = freeUnknowns(nodes, K)
  const pick = (M: Matrix): Matrix => free.map((i) => free.map((j) => M[i]![j]!))
  const mu = largestEigenvalue(loadPerStiffness(pick(K), pick(Kg)))
  return mu > 0 ? 1 / mu : Number.POSITIVE_INFINITY
}

/** −C⁻¹·Kg·C⁻ᵀ with K = C·Cᵀ: its eigenvalues are 1/λ. */
function loadPerStiffness(K: Matrix, Kg: Matrix): Matrix {
  const n = K.length
  const C = zeros(n)
  for (let i = 0; i < n; i++)
    for (let j = 0; j <= i; j++) {
      let sum = K[i]![j]!
      for (let k = 0; k < j; k++) sum -= C[i]![k]! * C[j]![k]!
      C[i]![j] = i === j ? Math.sqrt(sum) : sum / C[j]![j]!
    }
  const forward = (M: Matrix): Matrix => {
    const X = M.map((row) => [...row])
    for (let r = 0; r < n; r++) {
      for (let k = 0; k < r; k++) {
        const f = C[r]![k]!
        if (f !== 0) for (let c = 0; c < n; c++) X[r]![c]! -= f * X[k]![c]!
      }
      for (let c = 0; c < n; c++) X[r]![c]! /= C[r]![r]!
    }
    return X
  }
  const transpose = (M: Matrix): Matrix => M.map((_, i) => M.map((row) => row[i]!))
  return forward(transpose(forward(Kg))).map((row) => row.map((value) => -value))
}

/** Householder to three diagonals, then bisection on the Sturm count. */
function largestEigenvalue(symmetric: Matrix): number {
  const n = symmetric.length
  const A = symmetric.map((row) => [...row])
  for (let c = 0; c < n - 2; c++) {
    const v = A.map((row, r) => (r > c ? row[c]! : 0))
    const norm = Math.hypot(...v)
    if (norm === 0) continue
    v[c + 1]! += Math.sign(v[c + 1]! || 1) * norm
    const vv = v.reduce((sum, value) => sum + value * value, 0)
    const p = A.map((row) => (2 / vv) * row.reduce((sum, value, k) => sum + value * v[k]!, 0))
    const half = v.reduce((sum, value, k) => sum + value * p[k]!, 0) / vv
    for (let r = 0; r < n; r++)
      for (let k = 0; k < n; k++) A[r]![k]! -= v[r]! * (p[k]! - half * v[k]!) + (p[r]! - half * v[r]!) * v[k]!
  }
  const above = (x: number): number => {
    let d = 1
    let count = 0
    for (let i = 0; i < n; i++) {
      const off = i === 0 ? 0 : A[i]![i - 1]! ** 2
      d = A[i]![i]! - x - off / (d === 0 ? 1e-300 : d)
      if (d > 0) count++
    }
    return count
  }
  let high = Math.max(...A.map((row) => row.reduce((sum, value) => sum + Math.abs(value), 0)))
  let low = 0
  if (above(high * 1e-13) === 0) return 0
  for (let i = 0; i < 200 && high - low > 1e-9 * high; i++) {
    const middle = (low + high) / 2
    if (above(middle) > 0) low = middle
    else high = middle
  }
  return high
}
