/**
 * Buckling against classic closed forms, to 0.2 %.
 *
 * Source of the column equations: Timoshenko & Gere, Theory of Elastic Stability, 2nd ed. (1961), chapter 2
 * (memory); effective length factors 0.5, 0.7, 1, 2: AISC 360-22 Commentary, Table C-A-7.1.
 */
import { describe, expect, it } from 'vitest'
import {
  buckling,
  type End6,
  type Fixed6,
  type FrameMember,
  type FrameModel,
} from '../../../rules/structure/index.ts'
import {
  between,
  CLAMPED,
  FREE,
  HINGE,
  IN_XZ,
  PINNED_UPRIGHT,
  PINNED_XZ,
  rootOf,
  STIFF_TUBE,
  TUBE,
} from './frames.ts'

const { E, Iy, Iz } = TUBE
const WEAK = E * Math.min(Iy, Iz)
const L = 2.4

const near = (actual: number, expected: number, within = 2e-3): void => {
  expect(Math.abs(actual / expected - 1)).toBeLessThanOrEqual(within)
}

/** Upright from a foot; pressed at its top by 1 N. */
const column = (foot: Fixed6, top: Fixed6, rest: Partial<FrameMember> = {}, force = -1): FrameModel => ({
  nodes: [
    { x: 0, y: 0, z: 0, fixed: foot },
    { x: 0, y: 0, z: L, fixed: top },
  ],
  members: [between(0, 1, rest)],
  loads: [{ node: 1, force: [0, 0, force, 0, 0, 0] }],
})

const HELD_TOP: Fixed6 = [true, true, false, false, false, false]
const CLAMPED_TOP: Fixed6 = [true, true, false, true, true, true]
const GUIDED_TOP: Fixed6 = [false, false, false, true, true, true]

describe('an Euler column', () => {
  it('fixed at the foot and free at the top buckles at π²EI/(2L)²', () => {
    near(buckling(column(CLAMPED, FREE)), (Math.PI ** 2 * WEAK) / (2 * L) ** 2)
  })

  it('pinned at both ends buckles at π²EI/L²', () => {
    near(buckling(column(PINNED_UPRIGHT, HELD_TOP)), (Math.PI ** 2 * WEAK) / L ** 2)
  })

  it('fixed at the foot and pinned at the top buckles at (4.4934/L)² EI', () => {
    const u = rootOf((x) => Math.tan(x) - x, 4.2, 4.6)
    near(buckling(column(CLAMPED, HELD_TOP)), (u / L) ** 2 * WEAK)
  })

  it('fixed at both ends buckles at 4π²EI/L²', () => {
    near(buckling(column(CLAMPED, CLAMPED_TOP)), (4 * Math.PI ** 2 * WEAK) / L ** 2)
  })

  it('fixed at both ends but free to sway buckles at π²EI/L²', () => {
    near(buckling(column(CLAMPED, GUIDED_TOP)), (Math.PI ** 2 * WEAK) / L ** 2)
  })

  it('held about its weak axis buckles about its strong one', () => {
    // Iz > Iy: local y is global x, so holding y at the top leaves the strong plane free.
    near(
      buckling(column(CLAMPED, [false, true, false, true, false, true])),
      (Math.PI ** 2 * E * Iz) / (2 * L) ** 2,
    )
  })

  it('pinned by its joints between held nodes buckles by itself at π²EI/L²', () => {
    const strut = column(CLAMPED, [true, true, false, true, true, true], { ends: { from: HINGE, to: HINGE } })
    near(buckling(strut), (Math.PI ** 2 * WEAK) / L ** 2)
  })

  it('pulled does not buckle', () => {
    expect(buckling(column(CLAMPED, FREE, {}, 1))).toBe(Number.POSITIVE_INFINITY)
    expect(buckling(column(CLAMPED, FREE, {}, 0))).toBe(Number.POSITIVE_INFINITY)
  })

  it('under its own weight, fixed at the foot, buckles at 7.8373 EI/L³ for each length (Greenhill 1881)', () => {
    // Root of the Bessel function J(−1/3): 1.86635; q L³/EI = 9/4 · 1.86635² = 7.8373.
    const model = {
      ...column(CLAMPED, FREE),
      loads: [],
      memberLoads: [{ member: 0, perLength: [-1, 0, 0] as const }],
    }
    near(buckling(model), (7.8373 * WEAK) / L ** 3)
  })

  it('lying askew buckles as it does upright', () => {
    const along = [2 / 7, 3 / 7, 6 / 7] as const
    const model: FrameModel = {
      nodes: [
        { x: 0, y: 0, z: 0, fixed: CLAMPED },
        { x: along[0] * L, y: along[1] * L, z: along[2] * L },
      ],
      members: [between(0, 1, { A: 1 })],
      loads: [{ node: 1, force: [-along[0], -along[1], -along[2], 0, 0, 0] }],
    }
    near(buckling(model), (Math.PI ** 2 * WEAK) / (2 * L) ** 2)
  })
})

describe('a column on springs', () => {
  const tube = { Iy: TUBE.Iz }
  const EI = E * Iz

  it('free at the top with a foot that turns with c buckles where u·tan u = cL/EI', () => {
    for (const c of [2e3, 2e4, 4e5]) {
      const spring: End6 = ['rigid', 'rigid', 'rigid', 'rigid', c, c]
      const u = rootOf((x) => x * Math.tan(x) - (c * L) / EI, 1e-6, Math.PI / 2 - 1e-9)
      near(buckling(column(CLAMPED, FREE, { ...tube, ends: { from: spring } })), (u / L) ** 2 * EI)
    }
  })

  it('pinned at the foot with a top held across by a spring buckles at kL while the spring is soft', () => {
    // The column turns as a straight piece: P·δ = k·δ·L; with a stiff spring it is Euler's pinned column.
    for (const k of [1e4, 1e8]) {
      const held: End6 = ['rigid', k, k, 'rigid', 'free', 'free']
      const model = column(PINNED_UPRIGHT, CLAMPED_TOP, { ...tube, ends: { to: held } })
      near(buckling(model), Math.min(k * L, (Math.PI ** 2 * EI) / L ** 2))
    }
  })

  it('with alike springs at both ends, held, buckles where tan(u/2) = −u·EI/cL', () => {
    // Symmetric shape: moment M = c·θ at both ends of a pinned column; (cL/EI)·tan(u/2) + u = 0.
    const c = 2e4
    const spring: End6 = ['rigid', 'rigid', 'rigid', 'rigid', c, c]
    const ratio = (c * L) / EI
    const u = rootOf((x) => ratio * Math.sin(x / 2) + x * Math.cos(x / 2), Math.PI, 2 * Math.PI)
    near(
      buckling(column(CLAMPED, CLAMPED_TOP, { ...tube, ends: { from: spring, to: spring } })),
      (u / L) ** 2 * EI,
    )
  })
})

/** In the x–z plane; both tops pressed alike. */
function portal(foot: Fixed6, top: Fixed6, Ic: number, Ib: number, h: number, b: number): FrameModel {
  const section = (I: number) => ({ ...STIFF_TUBE, Iy: I, Iz: I })
  return {
    nodes: [
      { x: 0, y: 0, z: 0, fixed: foot },
      { x: 0, y: 0, z: h, fixed: top },
      { x: b, y: 0, z: h, fixed: top },
      { x: b, y: 0, z: 0, fixed: foot },
    ],
    members: [
      { from: 0, to: 1, ...section(Ic) },
      { from: 1, to: 2, ...section(Ib) },
      { from: 2, to: 3, ...section(Ic) },
    ],
    loads: [1, 2].map((node) => ({ node, force: [0, 0, -1, 0, 0, 0] as const })),
  }
}

describe('a portal under two alike loads', () => {
  // Swaying, each top is turned back by the beam bent in an S: 6·E·Ib/b.
  const Ic = 1.3e-7
  const Ib = 8.2e-7
  const h = 2.2
  const b = 1.2
  const ratio = (6 * (Ib / b)) / (Ic / h)

  it('on pinned feet sways away where u·tan u = 6k', () => {
    const u = rootOf((x) => x * Math.tan(x) - ratio, 1e-6, Math.PI / 2 - 1e-9)
    near(buckling(portal(PINNED_XZ, IN_XZ, Ic, Ib, h, b)), (u / h) ** 2 * E * Ic)
  })

  it('on fixed feet sways away where tan u = −u/6k', () => {
    const u = rootOf((x) => ratio * Math.sin(x) + x * Math.cos(x), Math.PI / 2, Math.PI)
    near(buckling(portal(CLAMPED, IN_XZ, Ic, Ib, h, b)), (u / h) ** 2 * E * Ic)
  })

  it('held against sway, on pinned feet, buckles with the beam bent in a C', () => {
    // Pinned–restrained column, top stiffness c = 2EIb/b: with s = ch/EIc, s·(1/u² − cot(u)/u) + 1 = 0.
    const s = (2 * (Ib / b)) / (Ic / h)
    const held: Fixed6 = [true, true, false, true, false, true]
    const u = rootOf((x) => s * (Math.sin(x) - x * Math.cos(x)) + x * x * Math.sin(x), 3.2, 4.49)
    near(buckling(portal(PINNED_XZ, held, Ic, Ib, h, b)), (u / h) ** 2 * E * Ic)
  })
})

describe('many factors together', () => {
  const forest = (count: number, forceOf: (i: number) => number): FrameModel => ({
    nodes: Array.from({ length: count }, (_, i) => [
      { x: i, y: 0, z: 0, fixed: CLAMPED },
      { x: i, y: 0, z: L },
    ]).flat(),
    members: Array.from({ length: count }, (_, i) => between(2 * i, 2 * i + 1, { Iz: Iy })),
    loads: Array.from({ length: count }, (_, i) => ({
      node: 2 * i + 1,
      force: [0, 0, forceOf(i), 0, 0, 0] as const,
    })),
  })
  const alone = (Math.PI ** 2 * WEAK) / (2 * L) ** 2

  it('of 40 alike columns, each in two directions, are one factor', () => {
    near(buckling(forest(40, () => -1)), alone)
  })

  it('of 40 columns that differ by 1e-4 give the lowest', () => {
    near(buckling(forest(40, (i) => -1 - i * 1e-4)), alone / 1.0039, 2e-5 + 1e-4)
  })

  it('do not take the negative factors of pulled columns for positive ones', () => {
    // Reversed, the pulled ones would buckle at a tenth of the factor.
    near(buckling(forest(20, (i) => (i % 2 ? 10 : -1))), alone)
  })

  it('of 40 columns tied together at their tops are still those of one', () => {
    const model = forest(40, () => -1)
    const ties = Array.from({ length: 39 }, (_, i) => between(2 * i + 1, 2 * i + 3, { axialOnly: true }))
    near(buckling({ ...model, members: [...model.members, ...ties] }), alone)
  })
})

describe('bars', () => {
  it('that lean push over what holds them: a pinned bar held by a spring k buckles at kL', () => {
    const k = (TUBE.E * TUBE.A) / 3
    const model: FrameModel = {
      nodes: [
        { x: 0, y: 0, z: 0, fixed: CLAMPED },
        { x: 0, y: 0, z: L, fixed: [false, true, false, false, false, false] },
        { x: 3, y: 0, z: L, fixed: CLAMPED },
      ],
      members: [
        { from: 0, to: 1, ...TUBE, axialOnly: true },
        { from: 1, to: 2, ...TUBE, axialOnly: true },
      ],
      loads: [{ node: 1, force: [0, 0, -1, 0, 0, 0] }],
    }
    near(buckling(model), k * L)
  })

  it('that lean on a column take from it what they carry (leaning column, by the sum of loads)', () => {
    // Both of height L, tops tied. The bar with load W pushes with W·δ/L, so on the column with load P
    // EI y'' = P(δ − y) + (Wδ/L)(L − x), clamped at 0; y(L) = δ asks tan u = u·(1 + P/W), u² = PL²/EI.
    const model: FrameModel = {
      nodes: [
        { x: 0, y: 0, z: 0, fixed: CLAMPED },
        { x: 0, y: 0, z: L, fixed: IN_XZ },
        { x: 2, y: 0, z: 0, fixed: CLAMPED },
        { x: 2, y: 0, z: L, fixed: IN_XZ },
      ],
      members: [between(0, 1), between(2, 3, { axialOnly: true }), between(1, 3, { axialOnly: true })],
      loads: [
        { node: 1, force: [0, 0, -1, 0, 0, 0] },
        { node: 3, force: [0, 0, -2, 0, 0, 0] },
      ],
    }
    const u = rootOf((x) => Math.sin(x) - x * 1.5 * Math.cos(x), 0.1, Math.PI / 2 - 1e-9)
    near(buckling(model), (u / L) ** 2 * E * Iz)
  })

  it('between nodes that do not move never buckle by themselves', () => {
    const strut = column(CLAMPED, CLAMPED_TOP, { axialOnly: true })
    expect(buckling(strut)).toBe(Number.POSITIVE_INFINITY)
  })

  it('and members that only bend give Infinity: axial force that is rounding presses nothing', () => {
    for (const A of [TUBE.A, 1e3]) {
      // Along (2, 3, 6)/7, pushed along (3, −2, 0): at right angles, though not in floating point.
      const model: FrameModel = {
        nodes: [
          { x: 0, y: 0, z: 0, fixed: CLAMPED },
          { x: (2 / 7) * L, y: (3 / 7) * L, z: (6 / 7) * L },
        ],
        members: [between(0, 1, { A })],
        loads: [
          { node: 1, force: [300, -200, 0, 0, 0, 0] },
          { node: 1, force: [0, 0, 0, 12, 7, -5] },
        ],
      }
      expect(buckling(model)).toBe(Number.POSITIVE_INFINITY)
    }
  })

  it('only pulled give Infinity', () => {
    const model: FrameModel = {
      nodes: [
        { x: -1, y: 0, z: 2, fixed: CLAMPED },
        { x: 1, y: 0, z: 2, fixed: CLAMPED },
        { x: 0, y: 0, z: 0.3, fixed: [false, true, false, false, false, false] },
      ],
      members: [between(0, 2, { axialOnly: true }), between(1, 2)],
      loads: [{ node: 2, force: [0, 0, -500, 0, 0, 0] }],
    }
    expect(buckling(model)).toBe(Number.POSITIVE_INFINITY)
  })
})
