/**
 * What holds for every frame, on random ones.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  buckling,
  type FrameLoad,
  type FrameModel,
  factorFrame,
  type MemberLoad,
  solveFrame,
} from '../../../rules/structure/index.ts'
import { expectRowsClose } from './compare.ts'
import { loadsOnRigidOnly, randomFrame } from './random-frames.ts'
import { divided, rotation, turned, turnSix } from './turned.ts'

const SEED = 20260201
const anyFrame = randomFrame({ joints: true }).map(loadsOnRigidOnly)

const ends = (forces: readonly { from: readonly number[]; to: readonly number[] }[]): (readonly number[])[] =>
  forces.flatMap(({ from, to }) => [from, to])

const angle = fc.integer({ min: -3141, max: 3141 }).map((a) => a / 1000)
const axis = fc
  .tuple(fc.integer({ min: -9, max: 9 }), fc.integer({ min: -9, max: 9 }), fc.integer({ min: -9, max: 9 }))
  .filter((v) => Math.hypot(...v) > 0)
const nodeLoads = (model: FrameModel): fc.Arbitrary<FrameLoad[]> =>
  fc.array(
    fc.record({
      node: fc.nat({ max: model.nodes.length - 1 }),
      force: fc.tuple(
        ...([0, 0, 0, 0, 0, 0].map(() => fc.integer({ min: -500, max: 500 })) as [
          fc.Arbitrary<number>,
          fc.Arbitrary<number>,
          fc.Arbitrary<number>,
          fc.Arbitrary<number>,
          fc.Arbitrary<number>,
          fc.Arbitrary<number>,
        ]),
      ),
    }),
    { minLength: 1, maxLength: 4 },
  )

/** Work of one set of node loads on the movements of another, N·m. */
const work = (loads: readonly FrameLoad[], movements: readonly (readonly number[])[]): number =>
  loads.reduce(
    (sum, { node, force }) => sum + force.reduce((own, value, k) => own + value * movements[node]![k]!, 0),
    0,
  )

describe('a linear frame', () => {
  it(`is in balance: reactions and loads add to no force and no moment (fast-check seed ${SEED})`, () => {
    fc.assert(
      fc.property(anyFrame, (model) => {
        const { reactions } = solveFrame(model)
        const sum = new Array<number>(6).fill(0)
        let size = 1
        const addAt = (at: readonly number[], [fx, fy, fz, mx, my, mz]: readonly number[]): void => {
          const [x, y, z] = at as [number, number, number]
          const six = [
            fx!,
            fy!,
            fz!,
            mx! + y * fz! - z * fy!,
            my! + z * fx! - x * fz!,
            mz! + x * fy! - y * fx!,
          ]
          six.forEach((value, k) => {
            sum[k]! += value
            size = Math.max(size, Math.abs(value))
          })
        }
        const place = (node: number): number[] => {
          const { x, y, z } = model.nodes[node]!
          return [x, y, z]
        }
        reactions.forEach((reaction, node) => {
          addAt(place(node), reaction)
        })
        for (const { node, force } of model.loads) addAt(place(node), force)
        // A load along a member acts in its middle; its axes are those of a frame with nothing else in it.
        for (const { member, perLength } of model.memberLoads ?? []) {
          const { from, to, up } = model.members[member]!
          const a = place(from)
          const b = place(to)
          const length = Math.hypot(b[0]! - a[0]!, b[1]! - a[1]!, b[2]! - a[2]!)
          const x = [0, 1, 2].map((k) => (b[k]! - a[k]!) / length)
          const reference = up ?? (Math.hypot(x[0]!, x[1]!) < 1e-6 ? [0, 1, 0] : [0, 0, 1])
          const cross = (p: readonly number[], q: readonly number[]): number[] => [
            p[1]! * q[2]! - p[2]! * q[1]!,
            p[2]! * q[0]! - p[0]! * q[2]!,
            p[0]! * q[1]! - p[1]! * q[0]!,
          ]
          const raw = cross(reference, x)
          const y = raw.map((value) => value / Math.hypot(...raw))
          const z = cross(x, y)
          const force = [0, 1, 2].map(
            (k) => length * (perLength[0] * x[k]! + perLength[1] * y[k]! + perLength[2] * z[k]!),
          )
          addAt(
            [0, 1, 2].map((k) => (a[k]! + b[k]!) / 2),
            [...force, 0, 0, 0],
          )
        }
        for (const value of sum) expect(Math.abs(value) / size).toBeLessThan(1e-8)
      }),
      { seed: SEED, numRuns: 150 },
    )
  })

  it(`obeys Betti: loads do the same work on each other's movements (fast-check seed ${SEED + 1})`, () => {
    const two = anyFrame.chain((model) => fc.tuple(fc.constant(model), nodeLoads(model), nodeLoads(model)))
    fc.assert(
      fc.property(two, ([model, first, second]) => {
        const { solve } = factorFrame(model)
        const a = solve(first).displacements
        const b = solve(second).displacements
        const scale = Math.sqrt(work(first, a) * work(second, b)) + 1e-12
        expect(Math.abs(work(first, b) - work(second, a)) / scale).toBeLessThan(1e-8)
      }),
      { seed: SEED + 1, numRuns: 150 },
    )
  })

  it(`adds load cases (superposition), from one factorization as from two (fast-check seed ${SEED + 2})`, () => {
    const two = anyFrame.chain((model) => fc.tuple(fc.constant(model), nodeLoads(model)))
    fc.assert(
      fc.property(two, ([model, second]) => {
        const scaled = <T extends { readonly [key: string]: unknown }>(
          loads: readonly T[],
          key: keyof T,
          by: number,
        ): T[] => loads.map((load) => ({ ...load, [key]: (load[key] as number[]).map((v) => v * by) }))
        const both = solveFrame({
          ...model,
          loads: [
            ...(scaled(model.loads as never[], 'force' as never, 2) as FrameLoad[]),
            ...(scaled(second as never[], 'force' as never, -3) as FrameLoad[]),
          ],
          memberLoads: scaled(
            (model.memberLoads ?? []) as never[],
            'perLength' as never,
            2,
          ) as unknown as MemberLoad[],
        })
        const { solve } = factorFrame(model)
        const a = solve(model.loads, model.memberLoads)
        const b = solve(second)
        const sum = (p: readonly (readonly number[])[], q: readonly (readonly number[])[]): number[][] =>
          p.map((row, i) => row.map((value, k) => 2 * value - 3 * q[i]![k]!))
        expectRowsClose(both.displacements, sum(a.displacements, b.displacements), 1e-7)
        expectRowsClose(both.reactions, sum(a.reactions, b.reactions), 1e-7)
        expectRowsClose(ends(both.memberForces), sum(ends(a.memberForces), ends(b.memberForces)), 1e-7)
      }),
      { seed: SEED + 2, numRuns: 100 },
    )
  })

  it(`turned as a whole moves turned, with the same member forces and factor (fast-check seed ${SEED + 3})`, () => {
    const upright = randomFrame({ joints: true, allUp: true }).map(loadsOnRigidOnly)
    fc.assert(
      fc.property(upright, axis, angle, (model, about, by) => {
        const R = rotation(about, by)
        const plain = solveFrame(model)
        const other = solveFrame(turned(model, R))
        const turnAll = (rows: readonly (readonly number[])[]): number[][] =>
          rows.map((row) => [...turnSix(R, row as never)])
        expectRowsClose(other.displacements, turnAll(plain.displacements), 1e-7)
        expectRowsClose(other.reactions, turnAll(plain.reactions), 1e-7)
        expectRowsClose(ends(other.memberForces), ends(plain.memberForces), 1e-7)
      }),
      { seed: SEED + 3, numRuns: 100 },
    )
    fc.assert(
      fc.property(randomFrame({ joints: false, allUp: true }), axis, angle, (model, about, by) => {
        const plain = buckling(model)
        const other = buckling(turned(model, rotation(about, by)))
        if (plain < 1e8) expect(Math.abs(other / plain - 1)).toBeLessThan(1e-4)
        else expect(other).toBeGreaterThan(1e7)
      }),
      { seed: SEED + 3, numRuns: 60 },
    )
  })

  it(`does not notice that a member is divided, joints and spread loads included (fast-check seed ${SEED + 4})`, () => {
    // A bar cannot be divided, nor a member that its joints leave loose by itself.
    const canBe = (model: FrameModel): number[] =>
      model.members.flatMap(({ axialOnly, ends: joints }, i) =>
        axialOnly || joints?.from?.includes('free') ? [] : [i],
      )
    const cut = anyFrame.chain((model) =>
      fc.tuple(fc.constant(model), fc.constantFrom(...canBe(model)), fc.integer({ min: 1, max: 9 })),
    )
    fc.assert(
      fc.property(cut, ([model, member, tenths]) => {
        const whole = solveFrame(model)
        const pieces = solveFrame(divided(model, member, tenths / 10))
        const count = model.nodes.length
        expectRowsClose(pieces.displacements.slice(0, count), whole.displacements, 1e-7)
        expectRowsClose(pieces.reactions.slice(0, count), whole.reactions, 1e-7)
        const last = pieces.memberForces.length - 1
        const joined = whole.memberForces.map((_, i) =>
          i === member
            ? { from: pieces.memberForces[i]!.from, to: pieces.memberForces[last]!.to }
            : pieces.memberForces[i]!,
        )
        expectRowsClose(ends(joined), ends(whole.memberForces), 1e-7)
      }),
      { seed: SEED + 4, numRuns: 100 },
    )
  })

  it(`has the same buckling factor, within 0.2 %, with a member divided (fast-check seed ${SEED + 5})`, () => {
    const cut = randomFrame({ joints: false }).chain((model) =>
      fc.tuple(fc.constant(model), fc.nat({ max: model.members.length - 1 }), fc.integer({ min: 2, max: 8 })),
    )
    fc.assert(
      fc.property(cut, ([model, member, tenths]) => {
        const whole = buckling(model)
        const pieces = buckling(divided(model, member, tenths / 10))
        if (whole < 1e8) expect(Math.abs(pieces / whole - 1)).toBeLessThan(2e-3)
        else expect(pieces).toBeGreaterThan(1e7)
      }),
      { seed: SEED + 5, numRuns: 60 },
    )
  })

  it(`does not give more under its own loads when a brace or a member is added (fast-check seed ${SEED + 6})`, () => {
    const braced = anyFrame.chain((model) =>
      fc.tuple(
        fc.constant(model),
        fc.nat({ max: model.nodes.length - 1 }),
        fc.nat({ max: model.nodes.length - 1 }),
        fc.boolean(),
      ),
    )
    fc.assert(
      fc.property(braced, ([model, from, to, axialOnly]) => {
        fc.pre(from !== to)
        const alone = { ...model, memberLoads: [] }
        const brace = { ...model.members[0]!, from, to, axialOnly }
        const { up: _, ...member } = brace
        const before = work(alone.loads, solveFrame(alone).displacements)
        const after = work(
          alone.loads,
          solveFrame({ ...alone, members: [...alone.members, member] }).displacements,
        )
        expect(after).toBeLessThanOrEqual(before * (1 + 1e-8) + 1e-12)
      }),
      { seed: SEED + 6, numRuns: 150 },
    )
  })

  it(`has a buckling factor that goes as one over the loads (fast-check seed ${SEED + 7})`, () => {
    fc.assert(
      fc.property(randomFrame({ joints: false }), fc.integer({ min: 2, max: 50 }), (model, times) => {
        const more = {
          ...model,
          loads: model.loads.map(({ node, force }) => ({
            node,
            force: force.map((value) => value * times) as unknown as FrameLoad['force'],
          })),
          memberLoads: (model.memberLoads ?? []).map(({ member, perLength: [x, y, z] }) => ({
            member,
            perLength: [x * times, y * times, z * times] as const,
          })),
        }
        const plain = buckling(model)
        if (plain < 1e8) expect(Math.abs((buckling(more) * times) / plain - 1)).toBeLessThan(1e-4)
        else expect(buckling(more)).toBeGreaterThan(1e6)
      }),
      { seed: SEED + 7, numRuns: 60 },
    )
  })
})
