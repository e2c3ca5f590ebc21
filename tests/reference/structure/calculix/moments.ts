/**
 * Buckling with all of the linear solution's section forces, not only the axial ones: plain dense analysis that
 * shows what separates `buckling` from CalculiX where a frame is bent as well as pressed.
 *
 * Second-order work of the stresses σ = N/A + My·z/Iy − Mz·y/Iz and of the shear stresses on a section that moves as
 * a rigid piece, V = v − z·θ, W = w + y·θ, integrated over the section:
 *   N/2·(v′² + w′² + (Iy+Iz)/A·θ′²) − My·v′θ′ − Mz·w′θ′ + Vy·w′θ − Vz·v′θ + T/2·(w′v″ − v′w″) − u′·(Vy·v′ + Vz·w′).
 * Derived here; cf. McGuire, Gallagher & Ziemian, Matrix Structural Analysis, 2nd ed., chapter 9 (memory).
 */
import { type FrameModel, solveFrame, type Vec6 } from '../../../../rules/structure/index.ts'
import { divide, lowestFactor, textbookGeometric } from '../../../rules/structure/plain-buckling.ts'
import {
  add,
  endRows,
  type Matrix,
  rotationOf,
  textbook,
  zeros,
} from '../../../rules/structure/plain-frame.ts'

const PARTS = 8

/** Four Gauss points on 0 … 1: exact for the degrees that occur. */
const GAUSS = [
  [0.06943184420297371, 0.17392742256872692],
  [0.33000947820757187, 0.326072577431273],
  [0.6699905217924281, 0.326072577431273],
  [0.9305681557970263, 0.17392742256872692],
] as const

/**
 * Geometric stiffness of one piece, member axes, from the forces on the member's `to` end.
 *
 * @param left how much of the member's length lies beyond the start of the piece, m
 */
function geometric(L: number, polar: number, left: number, [N, Vy, Vz, T, My, Mz]: Vec6): Matrix {
  const g = zeros(12)
  for (const [s, weight] of GAUSS) {
    const row = (): number[] => new Array<number>(12).fill(0)
    const [u1, v1, w1, v2, w2, t, t1] = [row(), row(), row(), row(), row(), row(), row()] as const
    const slope = [
      (-6 * s + 6 * s * s) / L,
      1 - 4 * s + 3 * s * s,
      (6 * s - 6 * s * s) / L,
      -2 * s + 3 * s * s,
    ]
    const bend = [(-6 + 12 * s) / L ** 2, (-4 + 6 * s) / L, (6 - 12 * s) / L ** 2, (-2 + 6 * s) / L]
    for (const end of [0, 1]) {
      v1[end * 6 + 1] = slope[end * 2]!
      v1[end * 6 + 5] = slope[end * 2 + 1]!
      w1[end * 6 + 2] = slope[end * 2]!
      w1[end * 6 + 4] = -slope[end * 2 + 1]!
      v2[end * 6 + 1] = bend[end * 2]!
      v2[end * 6 + 5] = bend[end * 2 + 1]!
      w2[end * 6 + 2] = bend[end * 2]!
      w2[end * 6 + 4] = -bend[end * 2 + 1]!
      u1[end * 6] = (end === 0 ? -1 : 1) / L
      t1[end * 6 + 3] = (end === 0 ? -1 : 1) / L
      t[end * 6 + 3] = end === 0 ? 1 - s : s
    }
    const rest = left - s * L
    const momentY = My - rest * Vz
    const momentZ = Mz + rest * Vy
    const work = (factor: number, a: readonly number[], b: readonly number[]): void => {
      for (let i = 0; i < 12; i++)
        for (let j = 0; j < 12; j++) g[i]![j]! += factor * weight * L * (a[i]! * b[j]! + a[j]! * b[i]!)
    }
    work(N / 2, v1, v1)
    work(N / 2, w1, w1)
    work((N * polar) / 2, t1, t1)
    work(-momentY, v1, t1)
    work(-momentZ, w1, t1)
    work(Vy, w1, t)
    work(-Vz, v1, t)
    work(T / 2, w1, v2)
    work(-T / 2, v1, w2)
    work(-Vy, u1, v1)
    work(-Vz, u1, w1)
  }
  return g
}

/** Lowest positive factor; node loads only. */
export function bucklingWithMoments(model: FrameModel): number {
  const forces = solveFrame(model).memberForces.map(({ to }) => to)
  const { nodes, pieces } = divide(
    model,
    forces.map(([N]) => N),
    PARTS,
  )
  const size = nodes.length * 6 + pieces.length * 12
  const K = zeros(size)
  const Kg = zeros(size)
  pieces.forEach(({ member, of, start, N }, p) => {
    const { R, L } = rotationOf(member, nodes[member.from]!, nodes[member.to]!)
    const bar = member.axialOnly === true
    const k = textbook(bar ? { ...member, Iy: 0, Iz: 0, J: 0 } : member, L)
    const T = endRows(K, member, R, k, nodes.length * 6 + p * 12)
    const left = L * PARTS * (1 - start)
    const polar = (member.Iy + member.Iz) / member.A
    add(K, k, T)
    add(Kg, bar ? textbookGeometric(N, L, true) : geometric(L, polar, left, forces[of]!), T)
  })
  return lowestFactor(nodes, K, Kg)
}
