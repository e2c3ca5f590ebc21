/**
 * Portals against closed forms and one worked by hand.
 *
 * Portal under a sway load H at the beam, two legs of height h, beam of span b, k = (Ib/b)/(Ic/h): sway with
 * pinned feet H h³ (2 + 1/k)/(12 E Ic), with fixed feet H h³ (2 + 3k)/(12 E Ic (1 + 6k)); slope-deflection,
 * common textbook result (no numbered source). Axial stiffness is set so high that it does not show in 1e-6.
 */
import { describe, expect, it } from 'vitest'
import { type Fixed6, type FrameModel, solveFrame } from '../../../rules/structure/index.ts'
import { CLAMPED, HINGE, IN_XZ, PINNED_XZ } from './frames.ts'

const near = (actual: number, expected: number, within = 1e-6): void => {
  expect(Math.abs(actual / expected - 1)).toBeLessThanOrEqual(within)
}

interface PortalSize {
  readonly E: number
  readonly Ic: number
  readonly Ib: number
  readonly h: number
  readonly b: number
  readonly H: number
  readonly A: number
}

/** In the global x–z plane; the load is halved between both tops, so that the beam's squash does not show. */
function portal({ E, Ic, Ib, h, b, H, A }: PortalSize, foot: Fixed6): FrameModel {
  const section = (I: number) => ({ E, G: E / 2.6, A, Iy: I, Iz: I, J: I })
  return {
    nodes: [
      { x: 0, y: 0, z: 0, fixed: foot },
      { x: 0, y: 0, z: h, fixed: IN_XZ },
      { x: b, y: 0, z: h, fixed: IN_XZ },
      { x: b, y: 0, z: 0, fixed: foot },
    ],
    members: [
      { from: 0, to: 1, ...section(Ic) },
      { from: 1, to: 2, ...section(Ib) },
      { from: 3, to: 2, ...section(Ic) },
    ],
    loads: [1, 2].map((node) => ({ node, force: [H / 2, 0, 0, 0, 0, 0] as const })),
  }
}

const METRIC = { E: 70e9, Ic: 1.3e-7, Ib: 8.2e-7, h: 2.2, b: 1.2, H: 500, A: 100 }

describe('a portal that sways', () => {
  it('on pinned feet follows H h³ (2 + 1/k)/(12 E Ic), with leg moments Hh/2', () => {
    const { E, Ic, Ib, h, b, H } = METRIC
    const k = Ib / b / (Ic / h)
    const { displacements, memberForces, reactions } = solveFrame(portal(METRIC, PINNED_XZ))
    near(displacements[1]![0], (H * h ** 3 * (2 + 1 / k)) / (12 * E * Ic))
    near(Math.hypot(memberForces[0]!.to[4], memberForces[0]!.to[5]), (H * h) / 2)
    // Couple of the feet against H·h.
    near(reactions[3]![2], (H * h) / b)
    near(reactions[0]![0], -H / 2)
  })

  it('on fixed feet follows H h³ (2 + 3k)/(12 E Ic (1 + 6k))', () => {
    const { E, Ic, Ib, h, b, H } = METRIC
    const k = Ib / b / (Ic / h)
    const { displacements } = solveFrame(portal(METRIC, CLAMPED))
    near(displacements[1]![0], (H * h ** 3 * (2 + 3 * k)) / (12 * E * Ic * (1 + 6 * k)))
  })

  it('under a beam that does not bend tends to H h³/6EI and H h³/24EI, with moments Hh/2 and Hh/4', () => {
    const size = { ...METRIC, Ib: METRIC.Ic * 1e8 }
    const { E, Ic, h, H } = size
    near(solveFrame(portal(size, PINNED_XZ)).displacements[1]![0], (H * h ** 3) / (6 * E * Ic))
    const fixed = solveFrame(portal(size, CLAMPED))
    near(fixed.displacements[1]![0], (H * h ** 3) / (24 * E * Ic))
    near(Math.hypot(fixed.memberForces[0]!.to[4], fixed.memberForces[0]!.to[5]), (H * h) / 4)
  })
})

describe('worked points in inches and pounds (computed, three digits)', () => {
  const INCH = 0.0254
  const POUND = 4.4482216
  const KSI = 6.8947573e6
  const E = 10_100 * KSI
  /** NPS 2 schedule 40: 2.375 in outside, 0.154 in wall. */
  const PIPE = (Math.PI / 64) * (2.375 ** 4 - (2.375 - 2 * 0.154) ** 4) * INCH ** 4
  /** 3 × 3 × 1/8 in square tube, sharp corners. */
  const TUBE = ((3 ** 4 - 2.75 ** 4) / 12) * INCH ** 4

  it('a 3 × 3 × 1/8 tube over 96 in under 6.667 lb/in sags 0.3679 in with 7,680 lb·in', () => {
    const L = 96 * INCH
    const w = ((40 / 144) * 24 * POUND) / INCH
    const section = { E, G: E / 2.66, A: 1e-3, Iy: TUBE, Iz: TUBE, J: TUBE }
    const { displacements, memberForces } = solveFrame({
      nodes: [
        { x: 0, y: 0, z: 0, fixed: [true, true, true, true, false, true] },
        { x: L / 2, y: 0, z: 0, fixed: IN_XZ },
        { x: L, y: 0, z: 0, fixed: [false, true, true, true, false, true] },
      ],
      members: [
        { from: 0, to: 1, ...section },
        { from: 1, to: 2, ...section },
      ],
      loads: [],
      memberLoads: [0, 1].map((member) => ({ member, perLength: [0, 0, -w] as const })),
    })
    near(-displacements[1]![2] / INCH, 0.3679, 1e-3)
    near(Math.abs(memberForces[0]!.to[4]) / (INCH * POUND), 7680, 1e-3)
  })

  it('a 2 in pipe standing 48 in bends 0.2741 in under 50 lb, 60 in 1.0709 in under 100 lb', () => {
    for (const [height, force, sway] of [
      [48, 50, 0.2741],
      [60, 100, 1.0709],
    ] as const) {
      const { displacements } = solveFrame({
        nodes: [
          { x: 0, y: 0, z: 0, fixed: CLAMPED },
          { x: 0, y: 0, z: height * INCH },
        ],
        members: [{ from: 0, to: 1, E, G: E / 2.66, A: 7e-4, Iy: PIPE, Iz: PIPE, J: 2 * PIPE }],
        loads: [{ node: 1, force: [force * POUND, 0, 0, 0, 0, 0] }],
      })
      near(displacements[1]![0] / INCH, sway, 1e-3)
    }
  })

  it('a portal of 60 in pipes under a 48 in tube sways 0.6073 in on pinned, 0.15105 in on fixed feet', () => {
    const size = { E, Ic: PIPE, Ib: TUBE, h: 60 * INCH, b: 48 * INCH, H: 100 * POUND, A: 10 }
    near(solveFrame(portal(size, PINNED_XZ)).displacements[1]![0] / INCH, 0.6073, 1e-3)
    near(solveFrame(portal(size, CLAMPED)).displacements[1]![0] / INCH, 0.15105, 1e-3)
  })
})

describe('a braced pair of legs, worked by hand', () => {
  /*
   * Two legs 2.0 m high and 1.6 m apart on pinned feet, a cross member hinged between their tops, and one brace
   * from the foot of leg A to leg B at 1.2 m: a 3-4-5 triangle, 2.0 m long. A push H = 450 N to +x at the top
   * of leg B.
   *
   * Statics. Leg A is pinned at both ends and unloaded between: it carries no shear, and the cross member
   * carries nothing, for H enters at B.
   *   Moments of leg B about its foot: H·2.0 = X·1.2, X = 450·2.0/1.2 = 750 N, the brace's horizontal part.
   *   The brace holds leg B back toward A: it is pulled with N = X·5/4 = 937.5 N; its vertical part is
   *   X·3/4 = 562.5 N, downward on leg B.
   *   Foot of B: horizontal X − H = 300 N to +x; vertical 562.5 N upward. So leg B is pressed with 562.5 N
   *   below the brace and with nothing above it.
   *   Foot of A takes the brace: X = 750 N to −x and 562.5 N downward. Sum: 300 − 750 + 450 = 0.
   *   Moment in leg B at the brace: H·0.8 = 360 N·m (from below: 300·1.2 = 360).
   *
   * Sway at the top of B by virtual work (unit load for H, so m = M/H, n = N/H), E = 70 GPa,
   * I = 1.25e-7 m⁴ (EI = 8,750 N·m²), leg A = 5.0e-4 m² (EA = 3.5e7 N), brace A = 3.0e-4 m² (EA = 2.1e7 N):
   *   bending, above the brace:  H·0.8³/(3EI)       = 450·0.512/26,250              = 8.777143e-3 m
   *   bending, below (M falls to 0 over 1.2 m):
   *                              (0.8·360)·1.2/(3EI) = 288·1.2/26,250               = 1.3165714e-2 m
   *   brace:  N·(N/H)·l/EA = 937.5·2.0833333·2.0/2.1e7                              = 1.8601190e-4 m
   *   leg B:  562.5·1.25·1.2/3.5e7                                                  = 2.4107143e-5 m
   *   sum                                                                           = 2.21529761e-2 m
   */
  const E = 70e9
  const LEG = { E, G: 26e9, A: 5e-4, Iy: 1.25e-7, Iz: 1.25e-7, J: 2.5e-7 }
  const { displacements, reactions, memberForces } = solveFrame({
    nodes: [
      { x: 0, y: 0, z: 0, fixed: PINNED_XZ },
      { x: 0, y: 0, z: 2, fixed: IN_XZ },
      { x: 1.6, y: 0, z: 0, fixed: PINNED_XZ },
      { x: 1.6, y: 0, z: 1.2, fixed: IN_XZ },
      { x: 1.6, y: 0, z: 2, fixed: IN_XZ },
    ],
    members: [
      { from: 0, to: 1, ...LEG },
      { from: 2, to: 3, ...LEG },
      { from: 3, to: 4, ...LEG },
      { from: 1, to: 4, ...LEG, ends: { from: HINGE, to: HINGE } },
      { from: 0, to: 3, ...LEG, A: 3e-4, axialOnly: true },
    ],
    loads: [{ node: 4, force: [450, 0, 0, 0, 0, 0] }],
  })

  it('has the feet, the brace and the leg moment that statics gives', () => {
    near(reactions[2]![0], 300)
    near(reactions[2]![2], 562.5)
    near(reactions[0]![0], -750)
    near(reactions[0]![2], -562.5)
    near(memberForces[4]!.to[0], 937.5)
    near(memberForces[4]!.from[0], -937.5)
    near(memberForces[1]!.from[0], 562.5)
    expect(Math.abs(memberForces[2]!.from[0])).toBeLessThan(1e-6)
    near(Math.hypot(memberForces[1]!.to[4], memberForces[1]!.to[5]), 360)
    for (const value of [...memberForces[3]!.from, ...memberForces[0]!.from.slice(0, 3)])
      expect(Math.abs(value)).toBeLessThan(1e-6)
  })

  it('sways at the top as far as virtual work gives', () => {
    near(displacements[4]![0], 2.21529761e-2, 1e-7)
  })
})
