/** How far shapes are in each other: by hand, and by its own meaning: no shorter shift takes them apart. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Box, type Cylinder, moved, type Triangle } from '../../rules/clearance/convex.ts'
import { distance } from '../../rules/clearance/distance.ts'
import { liftOf, overlapOf } from '../../rules/clearance/overlap.ts'
import type { Quat, Vec3 } from '../../rules/index.ts'
import { box, cylinder } from './support/shapes.ts'

describe('the overlap of two shapes', () => {
  it('of boxes is the least of what their faces overlap', () => {
    expect(overlapOf(box([0, 0, 0], 1, 1, 1), box([1.9, 0.5, 0.5], 1, 1, 1))).toBeCloseTo(0.1, 6)
  })

  it('of a box turned by 45° with a corner in a face is that corner’s depth', () => {
    const turned = moved(
      box([0, 0, 0], 1, 1, 1),
      [1 + Math.SQRT2 - 0.2, 0, 0],
      [0, 0, Math.sin(Math.PI / 8), Math.cos(Math.PI / 8)],
    )
    expect(overlapOf(box([0, 0, 0], 1, 1, 1), turned)).toBeCloseTo(0.2, 6)
  })

  it('of parallel tubes is both radii less the distance of their axes', () => {
    const [a, b] = [cylinder([0, 0, 0], [0, 0, 1], 1, 0.05), cylinder([0.03, 0.04, 0.1], [0, 0, 1], 1, 0.02)]
    expect(overlapOf(a, b)).toBeCloseTo(0.02, 4)
  })

  it('of a tube beside the corner of a box is the way out past the corner', () => {
    // The axis is 0.03, 0.04 from the upright edge: 0.05 of a radius of 0.06.
    expect(overlapOf(box([0, 0, 0], 1, 1, 1), cylinder([1.03, 1.04, 0], [0, 0, 1], 3, 0.06))).toBeCloseTo(
      0.01,
      4,
    )
  })

  it('is nothing where they are apart', () => {
    expect(overlapOf(box([0, 0, 0], 1, 1, 1), box([2.1, 0, 0], 1, 1, 1))).toBe(0)
  })

  it('of random tubes and boxes is no more than the least shift: nothing 2 % shorter takes them apart in any of 200 directions', () => {
    let [seen, deepest] = [0, 0]
    fc.assert(
      fc.property(solid, solid, (p, q) => {
        if (distance(p, q).gap > 0) return
        const depth = overlapOf(p, q)
        seen++
        deepest = Math.max(deepest, depth)
        const less = Math.max(0, depth * 0.98 - 5e-5)
        for (const d of DIRECTIONS) {
          const there = moved(q, [d[0] * less, d[1] * less, d[2] * less], [0, 0, 0, 1])
          expect(distance(p, there).gap).toBeLessThan(1e-6)
        }
      }),
      { seed: 8, numRuns: 500, endOnFailure: true },
    )
    expect(seen).toBeGreaterThan(100)
    expect(deepest).toBeGreaterThan(0.1)
  })
})

describe('the lift out of the ground', () => {
  const flat: Triangle[] = [
    { shape: 'triangle', corners: [[-2, -2, 0.3], [2, -2, 0.3], [2, 2, 0.3]] },
    { shape: 'triangle', corners: [[-2, -2, 0.3], [2, 2, 0.3], [-2, 2, 0.3]] },
  ] // biome-ignore format: corners read best in a row.

  it('of a block in level ground is how far its underside is below it, wherever its middle is', () => {
    expect(liftOf(box([0, 0, 0.5], 0.5, 0.5, 0.25), flat)).toBeCloseTo(0.05, 4)
    expect(liftOf(box([0, 0, 0], 0.5, 0.5, 0.1), flat)).toBeCloseTo(0.4, 4)
  })

  it('of a tube across a slope of 1 in 2 is the radius over the slope, less how high its axis is', () => {
    const slope: Triangle[] = [
      { shape: 'triangle', corners: [[-4, -4, -2], [4, -4, 2], [0, 8, 0]] },
    ] // biome-ignore format: corners read best in a row.
    const need = 0.1 * Math.hypot(1, 0.5)
    expect(liftOf(cylinder([0, 0, 0.03], [0, 1, 0], 0.5, 0.1), slope)).toBeCloseTo(need - 0.03, 4)
  })
})

const length = (min: number, max: number) =>
  fc.integer({ min: Math.round(min * 1e4), max: Math.round(max * 1e4) }).map((n) => n / 1e4)
const turn = fc
  .tuple(length(-1, 1), length(-1, 1), length(-1, 1), length(-1, 1))
  .filter((q) => Math.hypot(...q) > 0.1)
  .map((q): Quat => q.map((v) => v / Math.hypot(...q)) as unknown as Quat)
const solid: fc.Arbitrary<Box | Cylinder> = fc
  .tuple(
    fc.oneof(
      fc
        .tuple(length(0.05, 0.6), length(0.02, 0.3), length(0.02, 0.2))
        .map(([x, y, z]): Box | Cylinder => box([0, 0, 0], x, y, z)),
      fc
        .tuple(length(0.05, 0.6), length(0.02, 0.12))
        .map(([half, radius]): Box | Cylinder => cylinder([0, 0, 0], [0, 0, 1], half, radius)),
    ),
    fc.tuple(length(0, 0.5), length(0, 0.5), length(0, 0.5)),
    turn,
  )
  .map(([shape, at, q]) => moved(shape, at, q))

/** Spread evenly over the sphere. */
const DIRECTIONS: readonly Vec3[] = Array.from({ length: 200 }, (_, i) => {
  const z = 1 - (2 * i + 1) / 200
  const r = Math.sqrt(1 - z * z)
  return [r * Math.cos(i * 2.39996), r * Math.sin(i * 2.39996), z]
})
