/**
 * The same analysis done another way, for comparison: dense matrices from the textbook's 12 × 12 member matrix,
 * every jointed end with unknowns of its own, Gauss elimination with pivoting. Slow and plain; shares no code with
 * the solver.
 *
 * Source: Przemieniecki, Theory of Matrix Structural Analysis (1968), 5.6 (memory).
 */
import type { EndJoint, FrameMember, FrameModel, FrameNode } from '../../../rules/structure/index.ts'

export type Matrix = number[][]

export const zeros = (rows: number, columns = rows): Matrix =>
  Array.from({ length: rows }, () => new Array<number>(columns).fill(0))

/** Solves A·x = b; throws where A is singular to rounding. */
export function gauss(A: Matrix, b: readonly number[]): number[] {
  const n = b.length
  const a = A.map((row, i) => [...row, b[i]!])
  for (let c = 0; c < n; c++) {
    let best = c
    for (let r = c; r < n; r++) if (Math.abs(a[r]![c]!) > Math.abs(a[best]![c]!)) best = r
    ;[a[c], a[best]] = [a[best]!, a[c]!]
    const pivot = a[c]![c]!
    if (Math.abs(pivot) < 1e-11) throw new Error('gauss: singular')
    for (let r = c + 1; r < n; r++) {
      const f = a[r]![c]! / pivot
      if (f === 0) continue
      for (let k = c; k <= n; k++) a[r]![k]! -= f * a[c]![k]!
    }
  }
  const x = new Array<number>(n).fill(0)
  for (let r = n - 1; r >= 0; r--) {
    let sum = a[r]![n]!
    for (let k = r + 1; k < n; k++) sum -= a[r]![k]! * x[k]!
    x[r] = sum / a[r]![r]!
  }
  return x
}

/** Rows are local x, y, z in global axes. */
export function rotationOf(member: FrameMember, from: FrameNode, to: FrameNode): { R: Matrix; L: number } {
  const cross = (a: readonly number[], b: readonly number[]): number[] => [
    a[1]! * b[2]! - a[2]! * b[1]!,
    a[2]! * b[0]! - a[0]! * b[2]!,
    a[0]! * b[1]! - a[1]! * b[0]!,
  ]
  const unit = (v: readonly number[]): number[] => v.map((value) => value / Math.hypot(...v))
  const d = [to.x - from.x, to.y - from.y, to.z - from.z]
  const x = unit(d)
  const up = member.up ?? (Math.hypot(x[0]!, x[1]!) < 1e-6 ? [0, 1, 0] : [0, 0, 1])
  const y = unit(cross(up, x))
  return { R: [x, y, cross(x, y)], L: Math.hypot(...d) }
}

/** Textbook stiffness of a member with rigid ends, member axes. */
export function textbook({ E, G, A, Iy, Iz, J }: FrameMember, L: number): Matrix {
  const k = zeros(12)
  const put = (i: number, j: number, value: number): void => {
    k[i]![j]! += value
    if (i !== j) k[j]![i]! += value
  }
  for (const [i, j, value] of [
    [0, 6, (E * A) / L],
    [3, 9, (G * J) / L],
  ] as const) {
    put(i, i, value)
    put(j, j, value)
    put(i, j, -value)
  }
  // Bending about z moves y and turns +z; bending about y moves z and turns −y.
  for (const [I, v, r, sign] of [
    [Iz, 1, 5, 1],
    [Iy, 2, 4, -1],
  ] as const) {
    const c = (E * I) / L ** 3
    put(v, v, 12 * c)
    put(v + 6, v + 6, 12 * c)
    put(v, v + 6, -12 * c)
    put(v, r, sign * 6 * L * c)
    put(v, r + 6, sign * 6 * L * c)
    put(v + 6, r, -sign * 6 * L * c)
    put(v + 6, r + 6, -sign * 6 * L * c)
    put(r, r, 4 * L * L * c)
    put(r + 6, r + 6, 4 * L * L * c)
    put(r, r + 6, 2 * L * L * c)
  }
  return k
}

export interface PlainSolution {
  readonly displacements: number[][]
  readonly reactions: number[][]
  readonly memberForces: { from: number[]; to: number[] }[]
}

/** What of a member's end moves with its node; else the stiffness between the two. */
function jointOf(member: FrameMember, end: 'from' | 'to', component: number): number | 'rigid' {
  if (member.axialOnly && component > 2) return 0
  if (member.axialOnly && component > 0) return 'rigid'
  const joint: EndJoint = member.ends?.[end]?.[component] ?? 'rigid'
  return joint === 'free' ? 0 : joint
}

/** Fixed-end forces reversed, member axes. */
function spread(model: FrameModel, m: number, L: number): number[] {
  const f = new Array<number>(12).fill(0)
  for (const { member, perLength } of model.memberLoads ?? []) {
    if (member !== m) continue
    const [qx, qy, qz] = perLength
    for (const e of [0, 6]) {
      const sign = e === 0 ? 1 : -1
      f[e]! += (qx * L) / 2
      f[e + 1]! += (qy * L) / 2
      f[e + 2]! += (qz * L) / 2
      f[e + 4]! -= (sign * qz * L * L) / 12
      f[e + 5]! += (sign * qy * L * L) / 12
    }
  }
  return f
}

/** A row says which unknowns make up a movement of a member's end, and how much of each. */
export type Rows = readonly (readonly (readonly [number, number])[])[]

/** Adds Tᵀ·k·T. */
export function add(K: Matrix, k: Matrix, T: Rows): void {
  T.forEach((rowOf, i) => {
    T.forEach((columnOf, j) => {
      const value = k[i]![j]!
      if (value === 0) return
      for (const [r, a] of rowOf) for (const [c, b] of columnOf) K[r]![c]! += a * value * b
    })
  })
}

/**
 * The twelve end movements of a member in member axes. A jointed one is an unknown of its own (`own` + its
 * place), with a spring to its node; one that nothing holds gets next to nothing, so that it stays put.
 */
export function endRows(K: Matrix, member: FrameMember, R: Matrix, k: Matrix, own: number): Rows {
  return k.map((row, i) => {
    const at = (i < 6 ? member.from : member.to) * 6 + (i % 6 < 3 ? 0 : 3)
    const ofNode = R[i % 3]!.map((value, p) => [at + p, value] as const)
    const s = jointOf(member, i < 6 ? 'from' : 'to', i % 6)
    if (s === 'rigid') return ofNode
    const ofEnd = [[own + i, 1] as const]
    const spring = [
      [s, -s],
      [-s, s],
    ]
    add(K, spring, [ofEnd, ofNode])
    if (s === 0) K[own + i]![own + i]! += 1e-13 * Math.max(row[i]!, 1e4)
    return ofEnd
  })
}

/** The unknowns that are free to move and that anything resists. */
export function freeUnknowns(nodes: readonly FrameNode[], K: Matrix): number[] {
  const held = nodes.flatMap(({ fixed }) => fixed ?? new Array<boolean>(6).fill(false))
  return K.map((_, i) => i).filter((i) => !held[i] && (i < held.length || K[i]![i] !== 0))
}

/** Linear solution. */
export function plainSolve(model: FrameModel): PlainSolution {
  const size = model.nodes.length * 6 + model.members.length * 12
  const K = zeros(size)
  const F = new Array<number>(size).fill(0)
  const parts = model.members.map((member, m) => {
    const { R, L } = rotationOf(member, model.nodes[member.from]!, model.nodes[member.to]!)
    const k = textbook(member, L)
    const f = spread(model, m, L)
    const T = endRows(K, member, R, k, model.nodes.length * 6 + m * 12)
    add(K, k, T)
    T.forEach((row, i) => {
      for (const [r, a] of row) F[r]! += a * f[i]!
    })
    return { k, f, T }
  })
  for (const { node, force } of model.loads)
    force.forEach((value, c) => {
      F[node * 6 + c]! += value
    })
  const free = freeUnknowns(model.nodes, K)
  const x = gauss(
    free.map((i) => free.map((j) => K[i]![j]!)),
    free.map((i) => F[i]!),
  )
  const u = new Array<number>(size).fill(0)
  free.forEach((i, at) => {
    u[i] = x[at]!
  })
  const memberForces = parts.map(({ k, f, T }, m) => {
    const local = T.map((row) => row.reduce((sum, [i, a]) => sum + a * u[i]!, 0))
    const forces = k.map((row, i) => {
      if (model.members[m]!.axialOnly && i % 6 > 2) return 0
      return row.reduce((sum, value, j) => sum + value * local[j]!, 0) - f[i]!
    })
    return { from: forces.slice(0, 6), to: forces.slice(6) }
  })
  const reactions = model.nodes.map(({ fixed }, n) =>
    Array.from({ length: 6 }, (_, c) =>
      fixed?.[c] ? K[n * 6 + c]!.reduce((sum, value, j) => sum + value * u[j]!, 0) - F[n * 6 + c]! : 0,
    ),
  )
  return { displacements: model.nodes.map((_, n) => u.slice(n * 6, n * 6 + 6)), reactions, memberForces }
}
