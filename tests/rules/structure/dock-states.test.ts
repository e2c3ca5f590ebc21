/**
 * States of axial force (second-order.ts): against the plain solver where there is no such force, against closed forms of the
 * beam-column where there is, and against the buckling factor at its edge.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { lowestFactor } from '../../../rules/structure/buckling.ts'
import { type FrameModel, solveFrame, type Vec6 } from '../../../rules/structure/index.ts'
import {
  type CaseLoad,
  endForces,
  factorState,
  layOutStates,
  loadMember,
  loadNode,
  noLoad,
  respond,
  type State,
  type StateLayout,
} from '../../../rules/structure/second-order.ts'
import { expectRowsClose } from './compare.ts'
import { loadsOnRigidOnly, randomFrame } from './random-frames.ts'

const SEED = 20260301

/** A model's own loads, brought to its nodes. */
function caseOf({ layout }: StateLayout, model: FrameModel): CaseLoad {
  const load = noLoad(layout)
  for (const { node, force: f } of model.loads) loadNode(load, node, [f[0], f[1], f[2]], [f[3], f[4], f[5]])
  const { axes } = layout.members
  for (const { member, perLength } of model.memberLoads ?? []) {
    const x = member * 9
    const inGlobal = [0, 1, 2].map((k) =>
      perLength.reduce((sum, value, own) => sum + value * axes[x + own * 3 + k]!, 0),
    )
    loadMember(layout, load, member, inGlobal as [number, number, number])
  }
  return load
}

const rows = (all: Float64Array): number[][] =>
  Array.from({ length: all.length / 6 }, (_, i) => Array.from(all.subarray(i * 6, i * 6 + 6)))

function forcesOf(state: State, movement: Float64Array, load: CaseLoad | null): number[][] {
  const { count } = state.layout.members
  const all = new Float64Array(count * 12)
  for (let m = 0; m < count; m++) endForces(state, m, movement, load?.onMembers ?? null, all, m * 12)
  return rows(all)
}

const close = (actual: number, expected: number, part: number): void => {
  expect(Math.abs(actual / expected - 1)).toBeLessThanOrEqual(part)
}

describe('a state without axial force', () => {
  it(`is the plain solver's answer, member forces and loads along members included (fast-check seed ${SEED})`, () => {
    fc.assert(
      fc.property(randomFrame({ joints: true }).map(loadsOnRigidOnly), (model) => {
        const states = layOutStates(model)
        const state = factorState(states, null)
        const load = caseOf(states, model)
        const movement = respond(state, load.onNodes)
        const plain = solveFrame(model)
        expectRowsClose(rows(movement), plain.displacements, 1e-6)
        expectRowsClose(
          forcesOf(state, movement, load),
          plain.memberForces.flatMap(({ from, to }) => [from, to]),
          1e-6,
        )
      }),
      { seed: SEED, numRuns: 150 },
    )
  })

  it('is also what a state of zeros gives', () => {
    const model = pole(3, 1)
    const states = layOutStates(model)
    const load = caseOf(states, { ...model, loads: [{ node: 1, force: [0, 100, 0, 0, 0, 0] }] })
    const [a, b] = [null, new Float64Array(1)].map((axial) =>
      respond(factorState(states, axial), load.onNodes),
    )
    expect(rows(b!)).toEqual(rows(a!))
  })
})

const E = 70e9
const I = 1.3e-7
const SECTION = { E, G: 26e9, A: 5e-4, Iy: I, Iz: 2 * I, J: 3e-7 }
const CLAMPED = { fixed: [true, true, true, true, true, true] as const }

/** Clamped at its foot, along z; its top is the last node. Local z is global y for a member that stands. */
function pole(length: number, pieces: number): FrameModel {
  return {
    nodes: Array.from({ length: pieces + 1 }, (_, i) => ({
      x: 0,
      y: 0,
      z: (length * i) / pieces,
      ...(i === 0 && CLAMPED),
    })),
    members: Array.from({ length: pieces }, (_, i) => ({ from: i, to: i + 1, ...SECTION })),
    loads: [],
  }
}

/** Movement and foot moment under a push at the top, toward y, at an axial force (tension positive). */
function pushed(length: number, axial: number, pieces = 1) {
  const model = pole(length, pieces)
  const states = layOutStates(model)
  const state = factorState(states, new Float64Array(pieces).fill(axial))
  const load = noLoad(states.layout)
  loadNode(load, pieces, [0, 100, 0])
  const movement = respond(state, load.onNodes)
  const forces = forcesOf(state, movement, null)
  return { top: movement[pieces * 6 + 1]!, foot: Math.hypot(forces[0]![4]!, forces[0]![5]!), state }
}

describe('a state with axial force, against the beam-column in closed form (Timoshenko & Gere, Theory of Elastic Stability, 2nd ed., chapter 1; memory)', () => {
  const L = 2.4
  // Toward y a standing member bends about its local y (Iy): PLANES by member axes.
  const EI = E * bendingI()
  const Pcr = (Math.PI ** 2 * EI) / (4 * L ** 2)

  /** Which second moment resists a push toward y: told by the plain solver. */
  function bendingI(): number {
    const { displacements } = solveFrame({ ...pole(L, 1), loads: [{ node: 1, force: [0, 100, 0, 0, 0, 0] }] })
    return (100 * L ** 3) / (3 * E * displacements[1]![1]!)
  }

  it('a pressed cantilever gives H·L³/3EI · 3(tan kL − kL)/(kL)³, its foot H·tan(kL)/k', () => {
    for (const part of [0.05, 0.3, 0.6, 0.9]) {
      const P = part * Pcr
      const k = Math.sqrt(P / EI)
      const { top, foot } = pushed(L, -P)
      close(top, (100 * (Math.tan(k * L) - k * L)) / (k * P), 2e-4)
      close(foot, (100 * Math.tan(k * L)) / k, 2e-4)
    }
  })

  it('a pulled cantilever gives H(kL − tanh kL)/(kP), its foot H·tanh(kL)/k', () => {
    for (const part of [0.1, 1, 5]) {
      const P = part * Pcr
      const k = Math.sqrt(P / EI)
      const { top, foot } = pushed(L, P)
      close(top, (100 * (k * L - Math.tanh(k * L))) / (k * P), 2e-4)
      close(foot, (100 * Math.tanh(k * L)) / k, 2e-4)
    }
  })

  it('a pinned strut bent by a force in its middle gives Q·L³/48EI · 3(tan u − u)/u³, u = kL/2', () => {
    const model: FrameModel = {
      ...pole(L, 2),
      nodes: [
        { x: 0, y: 0, z: 0, fixed: [true, true, true, false, false, true] },
        { x: 0, y: 0, z: L / 2 },
        { x: 0, y: 0, z: L, fixed: [true, true, false, false, false, true] },
      ],
    }
    const states = layOutStates(model)
    for (const part of [0.2, 0.5, 0.8, 0.95]) {
      const P = (part * Math.PI ** 2 * EI) / L ** 2
      const u = (Math.sqrt(P / EI) * L) / 2
      const load = noLoad(states.layout)
      loadNode(load, 1, [0, 100, 0])
      const movement = respond(factorState(states, new Float64Array(2).fill(-P)), load.onNodes)
      close(movement[7]!, (((100 * L ** 3) / (48 * EI)) * 3 * (Math.tan(u) - u)) / u ** 3, 2e-4)
    }
  })

  it('turning an end of a member held at both takes (4EI/L)·s and brings (2EI/L)·c across', () => {
    const model: FrameModel = {
      nodes: [
        { x: 0, y: 0, z: 0, ...CLAMPED },
        { x: 0, y: 0, z: L, fixed: [true, true, true, false, false, false] },
      ],
      members: [{ from: 0, to: 1, ...SECTION }],
      loads: [],
    }
    const states = layOutStates(model)
    const P = 1.7 * Pcr
    const v = Math.sqrt(P / EI) * L
    const bottom = 2 - 2 * Math.cos(v) - v * Math.sin(v)
    const near = (v * (Math.sin(v) - v * Math.cos(v))) / bottom
    const far = (v * (v - Math.sin(v))) / bottom
    const state = factorState(states, new Float64Array([-P]))
    const load = noLoad(states.layout)
    loadNode(load, 1, [0, 0, 0], [50, 0, 0])
    const movement = respond(state, load.onNodes)
    close(movement[9]!, (50 * L) / (near * EI), 2e-4)
    const [from] = forcesOf(state, movement, null)
    close(Math.hypot(from![4]!, from![5]!), (50 * far) / near, 2e-4)
  })

  it('a stiff leg in a sleeve that gives leans by HL²/c · 1/(1 − P/Pcr) with Pcr = c/L, exactly', () => {
    const c = 20e3
    const stiff = { E: 1e10, G: 1e10, A: 1, Iy: 1, Iz: 1, J: 1 }
    const model: FrameModel = {
      ...pole(L, 1),
      members: [
        {
          from: 0,
          to: 1,
          ...stiff,
          ends: { from: ['rigid', 'rigid', 'rigid', 'rigid', c, c] },
        },
      ],
    }
    const states = layOutStates(model)
    for (const part of [0.1, 0.5, 0.9]) {
      const load = noLoad(states.layout)
      loadNode(load, 1, [0, 100, 0])
      const movement = respond(factorState(states, new Float64Array([(-part * c) / L])), load.onNodes)
      close(movement[7]!, (100 * L ** 2) / c / (1 - part), 5e-5)
    }
  })

  it('a leaning bar beside it takes part: the sway grows as the sum of both loads over Pcr', () => {
    const c = 20e3
    const stiff = { E: 1e10, G: 1e10, A: 1, Iy: 1, Iz: 1, J: 1 }
    const bar = { E: 70e9, G: 26e9, A: 1e-3, Iy: 0, Iz: 0, J: 0, axialOnly: true }
    const model: FrameModel = {
      nodes: [
        { x: 0, y: 0, z: 0, ...CLAMPED },
        { x: 0, y: 0, z: L },
        { x: 1, y: 0, z: 0, fixed: [true, true, true, false, false, false] },
        { x: 1, y: 0, z: L, fixed: [false, false, true, false, false, false] },
      ],
      members: [
        { from: 0, to: 1, ...stiff, ends: { from: ['rigid', 'rigid', 'rigid', 'rigid', c, c] } },
        { from: 2, to: 3, ...bar },
        { from: 1, to: 3, ...stiff, ends: { to: ['rigid', 'rigid', 'rigid', 'free', 'free', 'free'] } },
      ],
      loads: [],
    }
    const states = layOutStates(model)
    const load = noLoad(states.layout)
    // In the middle between both, so that neither turns about the other.
    loadNode(load, 1, [0, 50, 0])
    loadNode(load, 3, [0, 50, 0])
    const plain = respond(factorState(states, null), load.onNodes)
    const both = respond(
      factorState(states, new Float64Array([(-0.2 * c) / L, (-0.2 * c) / L, 0])),
      load.onNodes,
    )
    close((both[7]! + both[19]!) / (plain[7]! + plain[19]!), 1 / (1 - 0.4), 0.02)
  })
})

describe('the edge of buckling', () => {
  it(`lies where the factor says: a state just under it answers, one just over it is told as buckled (fast-check seed ${SEED + 1})`, () => {
    let looked = 0
    fc.assert(
      fc.property(randomFrame({ joints: false }), (model) => {
        const states = layOutStates(model)
        const axial = axialOf(model)
        const even = Array.from(axial, (n) => ({ from: n, to: n }))
        const factor = lowestFactor(states.layout, states.freeRotations, even, 1e-6)
        if (!Number.isFinite(factor) || factor > 1e7) return
        looked++
        const at = (times: number): boolean =>
          factorState(
            states,
            axial.map((n) => n * times),
          ).buckled
        expect(at(factor * (1 - 1e-4))).toBe(false)
        expect(at(factor * (1 + 1e-4))).toBe(true)
        for (const far of [1.5, 2, 4, 8]) expect(at(factor * far)).toBe(true)
      }),
      { seed: SEED + 1, numRuns: 100 },
    )
    expect(looked).toBeGreaterThan(50)
  })

  it('is not lost beyond: a strut between nodes that cannot move is told as buckled at any factor over its own', () => {
    const model: FrameModel = {
      nodes: [
        { x: 0, y: 0, z: 0, ...CLAMPED },
        { x: 0, y: 0, z: 2, fixed: [true, true, false, true, true, true] },
      ],
      members: [{ from: 0, to: 1, ...SECTION }],
      loads: [],
    }
    const states = layOutStates(model)
    const euler = (4 * Math.PI ** 2 * E * I) / 4
    expect(factorState(states, new Float64Array([-0.99 * euler])).buckled).toBe(false)
    for (const times of [1.01, 1.5, 3, 10])
      expect(factorState(states, new Float64Array([-times * euler])).buckled).toBe(true)
  })
})

/** Mean axial force of each member under the model's own loads. */
const axialOf = (model: FrameModel): Float64Array =>
  Float64Array.from(solveFrame(model).memberForces, ({ from, to }: { from: Vec6; to: Vec6 }) =>
    Math.abs(to[0] - from[0]) < 1e-6 ? 0 : (to[0] - from[0]) / 2,
  )
