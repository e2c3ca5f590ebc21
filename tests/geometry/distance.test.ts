/** Distances of convex shapes: by hand where a sheet of paper is enough, else against manifold-3d. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Box, type Cylinder, moved } from '../../rules/clearance/convex.ts'
import { distance } from '../../rules/clearance/distance.ts'
import type { Quat, Vec3 } from '../../rules/index.ts'
import { runs } from '../support/runs.ts'
import { matrixOf, wasm } from './support/manifold.ts'
import { box, cylinder } from './support/shapes.ts'

const RUNS = runs(600)

describe('the distance of two shapes', () => {
  it('is that of their faces where boxes face each other', () => {
    expect(distance(box([0, 0, 0], 1, 1, 1), box([3.5, 0.3, 0.2], 1, 1, 1)).gap).toBeCloseTo(1.5, 6)
  })

  it('is that of corners where boxes stand corner to corner: 1, 2, 2 apart is 3', () => {
    expect(distance(box([0, 0, 0], 1, 1, 1), box([3, 4, 4], 1, 1, 1)).gap).toBeCloseTo(3, 6)
  })

  it('of crossed tubes is that of their axes less both radii', () => {
    const a = cylinder([0, 0, 0], [1, 0, 0], 1, 0.03)
    const b = cylinder([0.2, 0, 0.5], [0, 1, 0], 1, 0.04)
    const { gap, from, to } = distance(a, b)
    expect(gap).toBeCloseTo(0.43, 6)
    expect(from[0]).toBeCloseTo(0.2, 3)
    expect(from[2]).toBeCloseTo(0.03, 6)
    expect(to[2]).toBeCloseTo(0.46, 6)
  })

  it('counts a tube as flat at its ends, not as rounded', () => {
    const up = cylinder([0, 0, 1], [0, 0, 1], 1, 0.05)
    expect(distance(up, box([0.049, 0, -0.11], 0.01, 0.01, 0.1)).gap).toBeCloseTo(0.01, 6)
  })

  it('of a tube and a triangle under its middle is that to the face', () => {
    const leg = cylinder([0, 0, 1], [0, 0, 1], 0.5, 0.05)
    const face = {
      shape: 'triangle',
      corners: [
        [-2, -2, 0.2],
        [2, -2, 0.2],
        [0, 3, 0.2],
      ],
    } as const
    expect(distance(leg, face).gap).toBeCloseTo(0.3, 6)
  })

  it('is 0 where they overlap or touch, with a place in both', () => {
    const { gap, from, to } = distance(box([0, 0, 0], 1, 1, 1), cylinder([1.5, 0, 0], [1, 0, 0], 1, 0.2))
    expect(gap).toBe(0)
    for (const [k, v] of from.entries()) expect(to[k]).toBeCloseTo(v, 6)
    expect(from[0]).toBeGreaterThanOrEqual(0.5)
    expect(from[0]).toBeLessThanOrEqual(1)
    expect(distance(box([0, 0, 0], 1, 1, 1), box([2, 0, 0], 1, 1, 1)).gap).toBe(0)
  })

  it('beyond what is asked for is at least a bound beyond it', () => {
    expect(distance(box([0, 0, 0], 1, 1, 1), box([9, 0, 0], 1, 1, 1), 2).gap).toBeGreaterThan(2)
  })

  it(`is the library’s on ${RUNS} random pairs of tubes and boxes, within 0.05 mm`, () => {
    let [over, apart] = [0, 0]
    fc.assert(
      fc.property(solid, solid, (a, b) => {
        const [p, q] = [a, b].map(({ library, at, turn }) => library().transform(matrixOf(placed(at, turn))))
        const theirs = p!.minGap(q!, 5)
        if (theirs === 0) over++
        else apart++
        expect(
          Math.abs(distance(moved(a.own, a.at, a.turn), moved(b.own, b.at, b.turn)).gap - theirs),
        ).toBeLessThan(5e-5)
        p!.delete()
        q!.delete()
      }),
      { seed: 3, numRuns: RUNS },
    )
    expect(over).toBeGreaterThan(RUNS / 30)
    expect(apart).toBeGreaterThan(RUNS / 3)
  })
})

const placed = (at: Vec3, turn: Quat) => ({ kind: 'leg', code: '', of: '', section: '', at, turn }) as const

const length = (min: number, max: number) =>
  fc.integer({ min: Math.round(min * 1e4), max: Math.round(max * 1e4) }).map((n) => n / 1e4)
const place = fc.tuple(length(0, 1.2), length(0, 1.2), length(0, 1.2))
const turn = fc
  .tuple(length(-1, 1), length(-1, 1), length(-1, 1), length(-1, 1))
  .filter((q) => Math.hypot(...q) > 0.1)
  .map((q): Quat => q.map((v) => v / Math.hypot(...q)) as unknown as Quat)
const shape = fc.oneof(
  fc.tuple(length(0.05, 0.6), length(0.02, 0.3), length(0.01, 0.2)).map(([x, y, z]) => ({
    own: box([0, 0, 0], x, y, z) as Box | Cylinder,
    library: () => wasm.Manifold.cube([2 * x, 2 * y, 2 * z], true),
  })),
  fc.tuple(length(0.05, 0.6), length(0.01, 0.12)).map(([half, radius]) => ({
    own: cylinder([0, 0, 0], [0, 0, 1], half, radius) as Box | Cylinder,
    library: () => wasm.Manifold.cylinder(2 * half, radius, radius, 128, true),
  })),
)
const solid = fc.tuple(shape, place, turn).map(([s, at, q]) => ({ ...s, at, turn: q }))
