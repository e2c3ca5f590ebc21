/**
 * Clearances to what lies on the bed against manifold-3d: the drawn solids put where the placements say, spheres and cylinders stretched to
 * boulders and stumps, `minGap` between all that is near. Seeded random docks, each with boulders, stumps and boxes dropped among its legs.
 */
import fc from 'fast-check'
import type { Manifold } from 'manifold-3d'
import { describe, expect, it } from 'vitest'
import { TOUCHING } from '../../rules/clearance/clearance.ts'
import { obstacleClearances } from '../../rules/clearance/obstacles.ts'
import { isMeasured } from '../../rules/clearance/shapes.ts'
import type { Obstacle } from '../../rules/design/index.ts'
import { type Bed, type Dock, makeBed } from '../../rules/index.ts'
import { anyCase } from '../support/arbitraries.ts'
import { deriveAtOnce } from '../support/at-once.ts'
import { runs } from '../support/runs.ts'
import { matrixOf, partManifold, wasm } from './support/manifold.ts'

const DOCKS = runs(16)
const SEED = 41_077
const WITHIN = 0.1531
/** Sides of what is round there: 0.05 mm off at 0.6 m. */
const SIDES = 256

/** Said once more: an ellipsoid about its place on the bed; the others from the lowest bed under their rim up to their top. */
function solidOf({ kind, x, y, length, width, height, heading }: Obstacle, bed: Bed): Manifold {
  const ground = bed.bedAt(x, y)
  const turn = (heading * Math.PI) / 180
  const rim = [-1, 0, 1].flatMap((k) =>
    [-1, 0, 1].map((m) => {
      const [a, b] = [(k * length) / 2, (m * width) / 2]
      return bed.bedAt(
        x + Math.cos(turn) * a - Math.sin(turn) * b,
        y + Math.sin(turn) * a + Math.cos(turn) * b,
      )
    }),
  )
  const foot = Math.min(...rim)
  const top = ground + height
  const own =
    kind === 'boulder'
      ? wasm.Manifold.sphere(1, SIDES).scale([length / 2, width / 2, height])
      : kind === 'stump'
        ? wasm.Manifold.cylinder(top - foot, 1, 1, SIDES, true).scale([length / 2, width / 2, 1])
        : wasm.Manifold.cube([length, width, top - foot], true)
  return own.rotate([0, 0, heading]).translate([x, y, kind === 'boulder' ? ground : (top + foot) / 2])
}

/** Beside a leg of the dock, or between two. */
const near = (dock: Dock): fc.Arbitrary<Obstacle> =>
  fc
    .record({
      leg: fc.integer({ min: 0, max: Math.max(0, dock.legs.length - 1) }),
      aside: fc.double({ min: -0.9, max: 0.9, noNaN: true }),
      along: fc.double({ min: -0.9, max: 0.9, noNaN: true }),
      kind: fc.constantFrom('boulder', 'stump', 'other'),
      length: fc.double({ min: 0.1, max: 1.2, noNaN: true }),
      width: fc.double({ min: 0.1, max: 1.2, noNaN: true }),
      height: fc.double({ min: 0.05, max: 1.5, noNaN: true }),
      heading: fc.constantFrom(0, 90, 17, -60, 215),
    })
    .map(({ leg, aside, along, kind, ...rest }) => {
      const at = dock.legs[leg] ?? { x: 3, y: 0 }
      return { id: 'o', kind: kind as Obstacle['kind'], x: at.x + along, y: at.y + aside, ...rest }
    })

describe(`what lies on the bed under ${DOCKS} random docks (seed ${SEED})`, () => {
  it('clears each part by what the library says within 1 mm, and clashes where it says so', () => {
    const differences: string[] = []
    const seen = { near: 0, clash: 0, worst: 0, boulder: 0, stump: 0, other: 0 }
    fc.sample(anyCase, { seed: SEED, numRuns: DOCKS }).forEach(({ design, catalog }, i) => {
      const dock = deriveAtOnce(design, catalog)
      if (dock.legs.length === 0) return
      const bed = makeBed(design.site)
      for (const obstacle of fc.sample(near(dock), { seed: SEED + i, numRuns: 3 })) {
        const ours = new Map(
          obstacleClearances(dock, catalog, { obstacles: [obstacle] }, bed, WITHIN).map((c) => [
            c.part.placement,
            c,
          ]),
        )
        const solid = solidOf(obstacle, bed)
        const box = solid.boundingBox()
        dock.placements.forEach((p, index) => {
          if (!isMeasured(p.kind)) return
          const part = partManifold(p.kind, p.code, catalog).transform(matrixOf(p))
          const own = part.boundingBox()
          const close = [0, 1, 2].every(
            (k) => own.min[k]! <= box.max[k]! + WITHIN && box.min[k]! <= own.max[k]! + WITHIN,
          )
          if (close) {
            const gap = part.minGap(solid, WITHIN)
            const found = ours.get(index)
            const mine = found?.gap ?? WITHIN
            seen.worst = Math.max(seen.worst, Math.abs(mine - gap))
            if (Math.abs(mine - gap) > 1e-3)
              differences.push(`${obstacle.kind} ${p.kind} ${p.of}: ${mine}, library ${gap}`)
            if (gap > 0 && gap < WITHIN) {
              seen.near++
              seen[obstacle.kind]++
            }
            if (gap === 0) {
              const common = part.intersect(solid)
              const thick = Math.max(0, ...common.decompose().map((m) => (2 * m.volume()) / m.surfaceArea()))
              common.delete()
              if (thick > 2 * TOUCHING) seen.clash++
              if (thick > 2e-3 && !found?.clash) differences.push(`${p.kind} ${p.of}: no clash by us`)
              if (thick < 1e-6 && found?.clash && found.depth() > 1e-3)
                differences.push(`${p.kind} ${p.of}: no clash by the library`)
            }
          } else if (ours.has(index)) differences.push(`${p.kind} ${p.of}: not near by the library`)
          part.delete()
        })
        solid.delete()
      }
    })
    expect(differences).toEqual([])
    for (const kind of ['boulder', 'stump', 'other'] as const)
      expect(seen[kind], kind).toBeGreaterThan(runs(2))
    expect(seen.clash).toBeGreaterThan(runs(12))
    expect(seen.worst).toBeLessThan(1e-3)
  }, 300_000)
})
