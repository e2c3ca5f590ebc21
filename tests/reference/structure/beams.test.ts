/**
 * Single members against closed forms, to 1e-6.
 *
 * Source unless said otherwise: AISC Steel Construction Manual, 15th ed., Table 3-23 (formulae exact, case
 * numbers from memory).
 */
import { describe, expect, it } from 'vitest'
import { type End6, type FrameModel, solveFrame } from '../../../rules/structure/index.ts'
import { between, CLAMPED, HINGE, TUBE } from './frames.ts'

const { E, G, A, Iy, Iz, J } = TUBE
const L = 2.4
const P = 750
const w = 310

const near = (actual: number, expected: number): void => {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(1e-6 * Math.abs(expected))
}

/** A cantilever along global x; local y = global y, local z = global z. */
const cantilever = (rest: Partial<FrameModel>, ends?: { from?: End6; to?: End6 }): FrameModel => ({
  nodes: [
    { x: 0, y: 0, z: 0, fixed: CLAMPED },
    { x: L, y: 0, z: 0 },
  ],
  members: [{ from: 0, to: 1, ...TUBE, ...(ends ? { ends } : {}) }],
  loads: [],
  ...rest,
})

describe('a cantilever', () => {
  it('bends under a tip load by PL³/3EI in either plane, with root moment PL (case 22)', () => {
    const { displacements, reactions, memberForces } = solveFrame(
      cantilever({ loads: [{ node: 1, force: [0, P, -P, 0, 0, 0] }] }),
    )
    near(displacements[1]![1], (P * L ** 3) / (3 * E * Iz))
    near(displacements[1]![2], (-P * L ** 3) / (3 * E * Iy))
    // Right-hand rule: a tip that goes up turns about −y, a tip that goes to +y turns about +z.
    near(displacements[1]![4], (P * L ** 2) / (2 * E * Iy))
    near(displacements[1]![5], (P * L ** 2) / (2 * E * Iz))
    near(reactions[0]![1], -P)
    near(reactions[0]![2], P)
    near(reactions[0]![4], -P * L)
    near(reactions[0]![5], -P * L)
    // What acts on the member at its root is what the support does, member and global axes being the same.
    memberForces[0]!.from.forEach((value, i) => {
      expect(value).toBeCloseTo(reactions[0]![i]!, 6)
    })
    near(memberForces[0]!.to[1], P)
    near(memberForces[0]!.to[2], -P)
  })

  it('bends under an even load by wL⁴/8EI, with root moment wL²/2 (case 19)', () => {
    const { displacements, reactions, memberForces } = solveFrame(
      cantilever({ memberLoads: [{ member: 0, perLength: [0, w, -w] }] }),
    )
    near(displacements[1]![1], (w * L ** 4) / (8 * E * Iz))
    near(displacements[1]![2], (-w * L ** 4) / (8 * E * Iy))
    near(reactions[0]![5], (-w * L ** 2) / 2)
    near(reactions[0]![4], (-w * L ** 2) / 2)
    for (const value of memberForces[0]!.to) expect(Math.abs(value)).toBeLessThan(1e-6 * w * L)
  })

  it('bends under a tip moment by ML²/2EI', () => {
    const { displacements } = solveFrame(cantilever({ loads: [{ node: 1, force: [0, 0, 0, 0, P, P] }] }))
    near(displacements[1]![1], (P * L ** 2) / (2 * E * Iz))
    near(displacements[1]![2], (-P * L ** 2) / (2 * E * Iy))
  })

  it('stretches by PL/EA and under a load along it by qL²/2EA', () => {
    near(
      solveFrame(cantilever({ loads: [{ node: 1, force: [P, 0, 0, 0, 0, 0] }] })).displacements[1]![0],
      (P * L) / (E * A),
    )
    const spread = solveFrame(cantilever({ memberLoads: [{ member: 0, perLength: [w, 0, 0] }] }))
    near(spread.displacements[1]![0], (w * L ** 2) / (2 * E * A))
    near(spread.memberForces[0]!.from[0], -w * L)
    expect(Math.abs(spread.memberForces[0]!.to[0])).toBeLessThan(1e-6 * w * L)
  })

  it('twists by TL/GJ', () => {
    const { displacements, reactions } = solveFrame(
      cantilever({ loads: [{ node: 1, force: [0, 0, 0, 40, 0, 0] }] }),
    )
    near(displacements[1]![3], (40 * L) / (G * J))
    near(reactions[0]![3], -40)
  })

  it('on a spring root adds PL²/c in bending, P/k across, P/k along, T/c in twist (springs in series)', () => {
    const root: End6 = [2e5, 3e5, 4e5, 900, 2e4, 3e4]
    const { displacements } = solveFrame(
      cantilever({ loads: [{ node: 1, force: [P, P, P, 40, 0, 0] }] }, { from: root }),
    )
    near(displacements[1]![0], (P * L) / (E * A) + P / 2e5)
    near(displacements[1]![1], (P * L ** 3) / (3 * E * Iz) + P / 3e5 + (P * L ** 2) / 3e4)
    near(displacements[1]![2], (P * L ** 3) / (3 * E * Iy) + P / 4e5 + (P * L ** 2) / 2e4)
    near(displacements[1]![3], (40 * L) / (G * J) + 40 / 900)
  })
})

/** Both ends of a beam along global x held; its ends as given. */
const held = (ends: { from?: End6; to?: End6 }, rest: Partial<FrameModel> = {}): FrameModel => ({
  nodes: [
    { x: 0, y: 0, z: 0, fixed: CLAMPED },
    { x: L, y: 0, z: 0, fixed: CLAMPED },
  ],
  members: [{ from: 0, to: 1, ...TUBE, ends }],
  loads: [],
  memberLoads: [{ member: 0, perLength: [0, w, -w] }],
  ...rest,
})

describe('a beam between two supports', () => {
  it('simply supported sags under an even load by 5wL⁴/384EI, with middle moment wL²/8 (case 1)', () => {
    const { displacements, memberForces } = solveFrame({
      nodes: [
        { x: 0, y: 0, z: 0, fixed: [true, true, true, true, false, false] },
        { x: L / 2, y: 0, z: 0 },
        { x: L, y: 0, z: 0, fixed: [false, true, true, false, false, false] },
      ],
      members: [
        { from: 0, to: 1, ...TUBE },
        { from: 1, to: 2, ...TUBE },
      ],
      loads: [],
      memberLoads: [
        { member: 0, perLength: [0, 0, -w] },
        { member: 1, perLength: [0, 0, -w] },
      ],
    })
    near(displacements[1]![2], (-5 * w * L ** 4) / (384 * E * Iy))
    near(displacements[0]![4], (w * L ** 3) / (24 * E * Iy))
    // Sagging: at the right end of the left half the moment turns about −y.
    near(memberForces[0]!.to[4], (-w * L ** 2) / 8)
  })

  it('simply supported sags under a middle load by PL³/48EI, with moment PL/4 (case 7)', () => {
    const { displacements, memberForces, reactions } = solveFrame({
      nodes: [
        { x: 0, y: 0, z: 0, fixed: [true, true, true, true, false, false] },
        { x: L / 2, y: 0, z: 0 },
        { x: L, y: 0, z: 0, fixed: [false, true, true, false, false, false] },
      ],
      members: [
        { from: 0, to: 1, ...TUBE },
        { from: 1, to: 2, ...TUBE },
      ],
      loads: [{ node: 1, force: [0, 0, -P, 0, 0, 0] }],
    })
    near(displacements[1]![2], (-P * L ** 3) / (48 * E * Iy))
    near(memberForces[0]!.to[4], (-P * L) / 4)
    near(reactions[2]![2], P / 2)
  })

  it('fixed at both ends has end moments wL²/12 (case 15)', () => {
    const { reactions } = solveFrame(held({}))
    near(reactions[0]![4], (-w * L ** 2) / 12)
    near(reactions[1]![4], (w * L ** 2) / 12)
    near(reactions[0]![5], (-w * L ** 2) / 12)
    near(reactions[0]![2], (w * L) / 2)
  })

  it('hinged at one end by its joint has 3wL/8 there, 5wL/8 and wL²/8 at the other (case 12)', () => {
    const { reactions, memberForces } = solveFrame(held({ to: HINGE }))
    near(reactions[1]![2], (3 * w * L) / 8)
    near(reactions[0]![2], (5 * w * L) / 8)
    near(reactions[0]![4], (-w * L ** 2) / 8)
    near(reactions[0]![5], (-w * L ** 2) / 8)
    expect(Math.abs(memberForces[0]!.to[4])).toBeLessThan(1e-6 * w * L ** 2)
  })

  it('hinged at both ends by its joints carries the load to them in halves, without moment', () => {
    const { reactions } = solveFrame(held({ from: HINGE, to: HINGE }))
    for (const end of reactions) {
      near(end[2], (w * L) / 2)
      near(end[1], (-w * L) / 2)
      expect(Math.hypot(end[4], end[5])).toBeLessThan(1e-6 * w * L ** 2)
    }
  })

  it('free to slide across at one end without turning has wL²/3 and wL²/6 (case 23)', () => {
    const guided: End6 = ['rigid', 'free', 'free', 'rigid', 'rigid', 'rigid']
    const { reactions } = solveFrame(held({ to: guided }))
    near(reactions[0]![4], (-w * L ** 2) / 3)
    near(reactions[1]![4], (-w * L ** 2) / 6)
    near(reactions[0]![2], w * L)
    expect(Math.abs(reactions[1]![2])).toBeLessThan(1e-6 * w * L)
  })

  it('on a spring that gives across at one end has the reaction 3wL/8 / (1 + 3EI/kL³) there, hinged', () => {
    // Tip of a cantilever under w and a force R up: wL⁴/8EI − RL³/3EI = R/k.
    const k = 5e4
    const end: End6 = ['rigid', k, k, 'rigid', 'free', 'free']
    const { reactions } = solveFrame(held({ to: end }))
    near(reactions[1]![2], (3 * w * L) / 8 / (1 + (3 * E * Iy) / (k * L ** 3)))
    near(reactions[1]![1], (-3 * w * L) / 8 / (1 + (3 * E * Iz) / (k * L ** 3)))
  })

  it('with alike springs at both ends has end moments wL²/12 / (1 + 2EI/cL)', () => {
    // Slopes: wL³/24EI − ML/2EI = M/c.
    const c = 2e4
    const spring: End6 = ['rigid', 'rigid', 'rigid', 'rigid', c, c]
    const { reactions } = solveFrame(held({ from: spring, to: spring }))
    near(reactions[0]![4], (-w * L ** 2) / 12 / (1 + (2 * E * Iy) / (c * L)))
    near(reactions[0]![5], (-w * L ** 2) / 12 / (1 + (2 * E * Iz) / (c * L)))
  })

  it('loaded along it between two held ends, one of them on a spring, splits the load by stiffness', () => {
    // R at the spring: stretch qL²/2EA − RL/EA = R/k.
    const k = 1.5e7
    const { reactions } = solveFrame(
      held(
        { to: [k, 'rigid', 'rigid', 'rigid', 'rigid', 'rigid'] },
        { memberLoads: [{ member: 0, perLength: [w, 0, 0] }] },
      ),
    )
    near(reactions[1]![0], -((w * L) / 2) / (1 + (E * A) / (k * L)))
    near(reactions[0]![0] + reactions[1]![0], -w * L)
  })

  it('free along at one end hands all of a load along it to the other', () => {
    const free: End6 = ['free', 'rigid', 'rigid', 'rigid', 'rigid', 'rigid']
    const { reactions } = solveFrame(
      held({ to: free }, { memberLoads: [{ member: 0, perLength: [w, 0, 0] }] }),
    )
    near(reactions[0]![0], -w * L)
    expect(reactions[1]![0]).toBe(0)
  })

  it('adds two loads on one member', () => {
    const { reactions } = solveFrame(
      held(
        {},
        {
          memberLoads: [
            { member: 0, perLength: [0, 0, -w] },
            { member: 0, perLength: [0, 0, -w] },
          ],
        },
      ),
    )
    near(reactions[0]![4], (-2 * w * L ** 2) / 12)
  })
})

describe('a member in space', () => {
  it('that lies askew moves by its closed form in its own axes', () => {
    // Direction (2, 3, 6)/7, up so turned that no axis is global: u = Σ (F·e) e · flexibility.
    const tip = { x: (2 / 7) * L, y: (3 / 7) * L, z: (6 / 7) * L }
    const up = [1, -1, 0.5] as const
    const F = [300, -500, 200] as const
    const x = [2 / 7, 3 / 7, 6 / 7] as const
    const cross = (a: readonly number[], b: readonly number[]): [number, number, number] => [
      a[1]! * b[2]! - a[2]! * b[1]!,
      a[2]! * b[0]! - a[0]! * b[2]!,
      a[0]! * b[1]! - a[1]! * b[0]!,
    ]
    const dot = (a: readonly number[], b: readonly number[]): number =>
      a[0]! * b[0]! + a[1]! * b[1]! + a[2]! * b[2]!
    const yRaw = cross(up, x)
    const y = yRaw.map((value) => value / Math.hypot(...yRaw)) as [number, number, number]
    const z = cross(x, y)
    const { displacements, memberForces } = solveFrame({
      nodes: [{ x: 0, y: 0, z: 0, fixed: CLAMPED }, tip],
      members: [{ from: 0, to: 1, ...TUBE, up }],
      loads: [{ node: 1, force: [...F, 0, 0, 0] }],
    })
    for (const k of [0, 1, 2] as const)
      near(
        displacements[1]![k],
        (dot(F, x) * L * x[k]) / (E * A) +
          (dot(F, y) * L ** 3 * y[k]) / (3 * E * Iz) +
          (dot(F, z) * L ** 3 * z[k]) / (3 * E * Iy),
      )
    near(memberForces[0]!.to[0], dot(F, x))
    near(memberForces[0]!.to[1], dot(F, y))
    near(memberForces[0]!.to[2], dot(F, z))
    near(memberForces[0]!.from[4], dot(F, z) * L)
    near(memberForces[0]!.from[5], -dot(F, y) * L)
  })

  it('that stands upright has up = +y by default: local y is global x, local z is global y', () => {
    const { displacements } = solveFrame({
      nodes: [
        { x: 0, y: 0, z: 0, fixed: CLAMPED },
        { x: 0, y: 0, z: L },
      ],
      members: [{ from: 0, to: 1, ...TUBE }],
      loads: [{ node: 1, force: [P, P, 0, 0, 0, 0] }],
    })
    near(displacements[1]![0], (P * L ** 3) / (3 * E * Iz))
    near(displacements[1]![1], (P * L ** 3) / (3 * E * Iy))
  })

  it('bent at a right angle sinks at its tip by P(a³ + b³)/3EI + Pab²/GJ', () => {
    // Bending of both arms and the twist of the first, by virtual work.
    const a = 1.5
    const b = 0.8
    const { displacements, reactions } = solveFrame({
      nodes: [
        { x: 0, y: 0, z: 0, fixed: CLAMPED },
        { x: a, y: 0, z: 0 },
        { x: a, y: b, z: 0 },
      ],
      members: [
        { from: 0, to: 1, ...TUBE },
        { from: 1, to: 2, ...TUBE },
      ],
      loads: [{ node: 2, force: [0, 0, -P, 0, 0, 0] }],
    })
    near(displacements[2]![2], -((P * (a ** 3 + b ** 3)) / (3 * E * Iy) + (P * a * b ** 2) / (G * J)))
    near(reactions[0]![3], P * b)
    near(reactions[0]![4], -P * a)
  })

  it('keeps six digits next to a tie that is 1e10 times stiffer', () => {
    const { displacements } = solveFrame({
      nodes: [
        { x: 0, y: 0, z: 0, fixed: CLAMPED },
        { x: 0, y: 0, z: L },
        { x: 3, y: 0, z: L },
        { x: 3, y: 0, z: 0, fixed: CLAMPED },
      ],
      members: [between(0, 1), between(1, 2, { A: 1e4, axialOnly: true }), between(3, 2)],
      loads: [{ node: 1, force: [P, 0, 0, 0, 0, 0] }],
    })
    // Two cantilevers share the load through a strut that does not give.
    near(displacements[1]![0], ((P / 2) * L ** 3) / (3 * E * Iz))
    near(displacements[2]![0], ((P / 2) * L ** 3) / (3 * E * Iz))
  })
})

describe('supports', () => {
  it('report 0 in every direction that nothing holds, and displacements 0 in every one that is held', () => {
    const { displacements, reactions } = solveFrame(
      cantilever({ loads: [{ node: 1, force: [P, P, P, 1, 2, 3] }] }),
    )
    expect(displacements[0]).toEqual([0, 0, 0, 0, 0, 0])
    expect(reactions[1]).toEqual([0, 0, 0, 0, 0, 0])
  })

  it('take what stands on them directly, without the frame', () => {
    const { reactions } = solveFrame(cantilever({ loads: [{ node: 0, force: [1, 2, 3, 4, 5, 6] }] }))
    expect(reactions[0]).toEqual([-1, -2, -3, -4, -5, -6])
  })

  it('may be none where no member is: a node held in all directions', () => {
    const { displacements } = solveFrame({
      nodes: [{ x: 0, y: 0, z: 0, fixed: CLAMPED }],
      members: [],
      loads: [],
    })
    expect(displacements).toEqual([[0, 0, 0, 0, 0, 0]])
  })
})
