/** The ground that clearances are measured to, against `bedAt` and against blocks in manifold-3d: every mode and shore. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { clearances } from '../../rules/clearance/clearance.ts'
import { makeGround } from '../../rules/clearance/ground.ts'
import {
  type Bed,
  type Design,
  type Dock,
  demoCatalog,
  demoDesign,
  makeBed,
  type Placement,
} from '../../rules/index.ts'
import { parsedDesign } from '../support/arbitraries.ts'
import { deriveAtOnce } from '../support/at-once.ts'
import { runs } from '../support/runs.ts'
import { groundManifold, matrixOf, partManifold } from './support/manifold.ts'

/** Evenly spread, to the tenth of a millimeter. */
const between = (min: number, max: number) =>
  fc.integer({ min: Math.round(min * 1e4), max: Math.round(max * 1e4) }).map((n) => n / 1e4)

/** A falling bed with bumps, measured on a line or over an area, with a bank, a wall or neither. */
const shore = fc
  .record({
    area: fc.boolean(),
    spots: fc.uniqueArray(fc.tuple(between(-4, 16), between(-5, 5), between(-0.3, 0.3)), {
      minLength: 4,
      maxLength: 30,
      selector: ([x]) => x,
    }),
    slope: between(0.02, 0.5),
    crossSlope: between(-0.3, 0.3),
    shore: fc.constantFrom('open', 'bank', 'wall'),
    height: between(0.2, 1.5),
  })
  .map(({ area, spots, slope, crossSlope, shore: kind, height }) => {
    const soundings = spots.map(([distance, offset, bump]) => ({
      distance,
      offset: area ? offset : 0,
      depth: distance * slope + bump,
    }))
    return parsedDesign({
      format: 'leadline/design',
      version: 1,
      site: {
        soundings: [...soundings, { distance: 17, offset: 0, depth: 17 * slope }],
        levels: { low: 0, high: 0 },
        bottom: 'sand',
        ...(area ? {} : { crossSlope }),
        ...(kind === 'open' ? {} : { shore: { kind, height } }),
      },
      dock: { deckHeight: 0.5, frame: '4x8', sections: 2 },
    })
  })

describe('the ground under a part', () => {
  it('covers its rectangle, and its triangles lie where bedAt says within 1 mm, on every kind of shore', () => {
    const modes = { line: 0, area: 0 }
    fc.assert(
      fc.property(
        shore,
        between(-7, 15),
        between(-7, 6),
        between(0.05, 2.4),
        between(0.05, 1.2),
        (design, x, y, w, h) => {
          const bed = makeBed(design.site)
          modes[bed.mode]++
          let area = 0
          for (const { corners } of makeGround(bed).under(x, x + w, y, y + h)) {
            const [a, b, c] = corners
            const twice = Math.abs((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]))
            area += twice / 2
            // Upright faces of a wall have no place of their own in plan.
            if (twice < 1e-9) continue
            for (const [p, q] of [
              [0.2, 0.3],
              [0.05, 0.05],
              [0.9, 0.05],
              [0.05, 0.9],
            ] as const) {
              const at = ([0, 1, 2] as const).map((k) => a[k] + p * (b[k] - a[k]) + q * (c[k] - a[k]))
              expect(Math.abs(bed.bedAt(at[0]!, at[1]!) - at[2]!)).toBeLessThan(1e-3)
            }
          }
          expect(area).toBeCloseTo(w * h, 6)
        },
      ),
      { seed: 4, numRuns: runs(300) },
    )
    expect(Math.min(modes.line, modes.area)).toBeGreaterThan(runs(60))
  })

  it('lies where bedAt says, within 1 mm, over so many soundings that some are triangulated', () => {
    const soundings = Array.from({ length: 200 }, (_, i) => {
      const [distance, offset] = [((21 * i * 0.6180339887) % 21) - 3, ((8 * i * 0.4142135623) % 8) - 4]
      return { distance, offset, depth: 0.1 * distance + 0.1 * Math.sin(i) }
    })
    const raw = { ...demoDesign, site: { ...demoDesign.site, soundings } }
    const bed = makeBed(parsedDesign(raw).site)
    expect(bed.triangulation).not.toBeNull()
    for (const [x, y] of [
      [1, 0],
      [9.3, -1.2],
      [17.5, 3.5],
      [-4, -5],
    ] as const) {
      let area = 0
      for (const { corners } of makeGround(bed).under(x, x + 1, y, y + 1)) {
        const [a, b, c] = corners
        area += Math.abs((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])) / 2
        const [px, py, pz] = [0, 1, 2].map((k) => (a[k]! + b[k]! + c[k]!) / 3) as [number, number, number]
        expect(Math.abs(bed.bedAt(px, py) - pz)).toBeLessThan(1e-3)
      }
      expect(area).toBeCloseTo(1, 6)
    }
  })

  it('is as far from a tilted tube as the library says, within 1 mm', () => {
    const seen = { line: 0, area: 0, wall: 0, under: 0 }
    fc.assert(
      fc.property(shore, tube, (design, { x, y, yaw, pitch, over }) => {
        const bed = makeBed(design.site)
        const placed = braceAt(bed, x, y, yaw, pitch, over)
        const solid = partManifold('brace', placed.code, demoCatalog).transform(matrixOf(placed))
        const { min, max } = solid.boundingBox()
        const corners = [min[0] - 0.3, max[0] + 0.3].flatMap((px) =>
          [min[1] - 0.3, max[1] + 0.3].map((py) => [px, py]),
        )
        const wall = design.site.shore?.kind === 'wall'
        // The library's blocks are flat from side to side: not so the top of a bank beyond the soundings.
        fc.pre(
          bed.mode === 'line' ||
            (corners.every(([px, py]) => bed.measured(px!, py!)) && !(wall && min[0] < 0.3)),
        )
        const ground = groundManifold(bed, min[0] - 0.3, max[0] + 0.3, min[1] - 0.3, max[1] + 0.3)
        const theirs = solid.minGap(ground, 0.25)
        ground.delete()
        const [own] = clearances(loneDock(design, placed), demoCatalog, bed, { within: 0.25 })
        if (theirs > 0 && theirs < 0.25) seen[wall && min[0] < 0.25 ? 'wall' : bed.mode]++
        if (theirs === 0) seen.under++
        expect(Math.abs((own?.gap ?? 0.25) - theirs)).toBeLessThan(1e-3)
        expect(own?.clash ?? false).toBe(theirs === 0)
      }),
      { seed: 11, numRuns: runs(500) },
    )
    for (const n of Object.values(seen)) expect(n).toBeGreaterThan(runs(4))
  })
})

const tube = fc.record({
  x: between(-2, 12),
  y: between(-3, 3),
  yaw: between(0, 2 * Math.PI),
  pitch: between(-0.9, 0.9),
  over: between(-0.1, 0.8),
})

/** A brace whose low hole is so far over the ground there. */
function braceAt(bed: Bed, x: number, y: number, yaw: number, pitch: number, over: number): Placement {
  const [sy, cy] = [Math.sin(yaw / 2), Math.cos(yaw / 2)]
  const [sp, cp] = [Math.sin(-pitch / 2), Math.cos(-pitch / 2)]
  return {
    kind: 'brace',
    code: 'brace-42',
    of: 's1.end',
    section: 's1',
    at: [x, y, bed.bedAt(x, y) + over],
    turn: [-sy * sp, cy * sp, sy * cp, cy * cp],
  }
}

/** A dock of nothing but one part. */
const loneDock = (design: Design, placed: Placement): Dock => ({
  ...deriveAtOnce(design, demoCatalog),
  placements: [placed],
  joints: [],
  pairs: [],
})
