/** Bed, contours and water: what is drawn of the lake lies where the engine's bed is. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type BedMesh, bedMesh, contours, depthSteps, waterSurface } from '../../geometry/index.ts'
import { makeBed } from '../../rules/index.ts'
import { anyCase, parsedDesign } from '../support/arbitraries.ts'
import { contractDemo } from '../support/worked-designs.ts'

const EXTENT = { x0: -6, x1: 20, y0: -5, y1: 5 }
const bedOf = (site: object) =>
  makeBed(parsedDesign({ ...contractDemo, site: { ...contractDemo.site, ...site } }).site)
const wall = { shore: { kind: 'wall', height: 0.8 } }

/** Area of a mesh laid flat, m2; negative where a triangle looks down. */
function planArea(positions: Float32Array, indices: Uint32Array): { sum: number; least: number } {
  let [sum, least] = [0, Number.POSITIVE_INFINITY]
  for (let t = 0; t < indices.length; t += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => 3 * indices[t + k]!) as [number, number, number]
    const area =
      ((positions[b]! - positions[a]!) * (positions[c + 1]! - positions[a + 1]!) -
        (positions[b + 1]! - positions[a + 1]!) * (positions[c]! - positions[a]!)) /
      2
    sum += area
    least = Math.min(least, area)
  }
  return { sum, least }
}

describe('the bed mesh', () => {
  it('has the bed’s height and depth at every vertex, covers its extent once and looks up', () => {
    fc.assert(
      fc.property(anyCase, ({ design }) => {
        const bed = makeBed(design.site)
        const mesh = bedMesh(bed, EXTENT, 0.5)
        expect(mesh.positions.length).toBe(mesh.nx * mesh.ny * 3)
        for (let v = 0; v < mesh.depths.length; v++) {
          const [x, y, z] = [0, 1, 2].map((k) => mesh.positions[3 * v + k]!) as [number, number, number]
          expect(mesh.depths[v]).toBe(0 - z)
          // Beside a wall single precision cannot tell which side is meant.
          if (Math.abs(x) > 1e-3) expect(Math.abs(bed.bedAt(x, y) - z)).toBeLessThan(2e-4)
          expect(mesh.normals[3 * v + 2]).toBeGreaterThan(-1e-6)
          expect(Math.hypot(...mesh.normals.slice(3 * v, 3 * v + 3))).toBeCloseTo(1, 4)
        }
        const { sum, least } = planArea(mesh.positions, mesh.indices)
        expect(sum).toBeCloseTo(260, 2)
        expect(least).toBeGreaterThan(-1e-9)
      }),
      { seed: 2, numRuns: 60 },
    )
  })

  it('is exact between its vertices along a line of soundings: a column stands at every break', () => {
    const bed = bedOf({})
    const { positions, nx } = bedMesh(bed, EXTENT, 1.7)
    const xs = [...Array(nx).keys()].map((i) => positions[3 * i]!)
    for (const x of [-3, 0, 4, 8, 12]) expect(xs.some((at) => Math.abs(at - x) < 1e-6)).toBe(true)
    for (let i = 0; i + 1 < nx; i++) {
      const middle = (xs[i]! + xs[i + 1]!) / 2
      const drawn = (positions[3 * i + 2]! + positions[3 * i + 5]!) / 2
      expect(Math.abs(bed.bedAt(middle, 2) - drawn)).toBeLessThan(1e-6)
    }
  })

  it('stands a wall upright at the water’s edge, with hard edges', () => {
    const mesh = bedMesh(bedOf(wall), EXTENT, 0.5)
    const columns = [...Array(mesh.nx).keys()].filter((i) => Math.abs(mesh.positions[3 * i]!) < 1e-6)
    expect(
      columns.map((i) =>
        [mesh.positions[3 * i + 2], mesh.normals[3 * i], mesh.normals[3 * i + 2]].map(
          (v) => Math.round(v! * 1e3) / 1e3 + 0,
        ),
      ),
    ).toEqual([
      [0.8, 0, 1],
      [0.8, 1, 0],
      [0, 1, 0],
      [0, 0.124, 0.992],
    ])
  })

  it('keeps to 20,000 vertices and a bit however large the lake', () => {
    const soundings = [
      { distance: 0, depth: 0 },
      { distance: 500, offset: 200, depth: 9 },
      { distance: 700, offset: -300, depth: 12 },
    ]
    const mesh = bedMesh(bedOf({ soundings }), { x0: -100, x1: 900, y0: -500, y1: 500 }, 0.1)
    expect(mesh.depths.length).toBeGreaterThan(15_000)
    expect(mesh.depths.length).toBeLessThan(22_000)
  })
})

const hills = {
  soundings: [-6, -3, 0, 3, 6, 9, 12, 15, 18].flatMap((distance, i) =>
    [-5, -2, 0, 3, 5].map((offset, k) => ({
      distance,
      offset,
      depth: distance * 0.12 + 0.35 * Math.sin(i * 2.1 + k * 1.7),
    })),
  ),
}

describe('depth contours', () => {
  it('of the demo’s even shore run straight across at the distances worked by hand', () => {
    const mesh = bedMesh(bedOf({}), EXTENT, 0.5)
    const lines = contours(mesh, [0.25, 0.7, 1.4])
    // 0.5 m deep at 4 m, 0.9 m at 8 m, 1.4 m at 12 m.
    expect(
      lines.map(({ points }) => [
        ...new Set([...points].filter((_, i) => i % 3 === 0).map((x) => Math.round(x * 1e4) / 1e4)),
      ]),
    ).toEqual([[2], [6], [12]])
    for (const { points, depth, closed } of lines) {
      expect(closed).toBe(false)
      expect(points.filter((_, i) => i % 3 === 2).every((z) => Math.abs(z + depth) < 1e-6)).toBe(true)
      expect(Math.abs(points.at(-2)! - points[1]!)).toBeCloseTo(10, 5)
    }
  })

  it('lie on the bed, end only at the border or close, keep the deep side on their left, and miss no crossing', () => {
    const bed = bedOf(hills)
    const mesh = bedMesh(bed, EXTENT, 0.25)
    const depths = depthSteps(Math.max(...mesh.depths), 0.25)
    expect(depths.length).toBeGreaterThan(6)
    const lines = contours(mesh, depths)
    expect(lines.some((l) => l.closed)).toBe(true)
    let segments = 0
    for (const { points, depth, closed } of lines) {
      const n = points.length / 3
      segments += closed ? n : n - 1
      if (!closed)
        for (const i of [0, n - 1]) {
          const [x, y] = [points[3 * i]!, points[3 * i + 1]!]
          const off = Math.min(x - EXTENT.x0, EXTENT.x1 - x, y - EXTENT.y0, EXTENT.y1 - y)
          expect(Math.abs(off)).toBeLessThan(1e-5)
        }
      for (let i = 0; i + 1 < n; i++) {
        const [ax, ay, bx, by] = [points[3 * i]!, points[3 * i + 1]!, points[3 * i + 3]!, points[3 * i + 4]!]
        const long = Math.hypot(bx - ax, by - ay)
        // The mesh itself is within a few centimeters of a bed with creases in it.
        expect(Math.abs(-bed.bedAt((ax + bx) / 2, (ay + by) / 2) - depth)).toBeLessThan(0.05)
        if (long < 0.15) continue
        const [px, py] = [
          (ax + bx) / 2 - ((by - ay) / long) * 0.05,
          (ay + by) / 2 + ((bx - ax) / long) * 0.05,
        ]
        const [qx, qy] = [
          (ax + bx) / 2 + ((by - ay) / long) * 0.05,
          (ay + by) / 2 - ((bx - ax) / long) * 0.05,
        ]
        expect(bed.bedAt(px, py)).toBeLessThan(bed.bedAt(qx, qy) + 0.01)
      }
    }
    expect(segments).toBe(depths.reduce((sum, depth) => sum + crossed(mesh, depth), 0))
  })
})

/** Triangles that a depth passes through. */
function crossed({ indices, depths }: BedMesh, depth: number): number {
  let n = 0
  for (let t = 0; t < indices.length; t += 3) {
    const deep = [0, 1, 2].filter((k) => depths[indices[t + k]!]! >= depth).length
    if (deep === 1 || deep === 2) n++
  }
  return n
}

describe('the water’s surface', () => {
  it('on the demo’s even shore reaches from the water’s edge over the lake, and farther up the bank at the high level', () => {
    const mesh = bedMesh(bedOf({}), EXTENT, 0.5)
    const still = waterSurface(mesh, 0)
    expect(Math.min(...still.positions.filter((_, i) => i % 3 === 0))).toBeCloseTo(0, 5)
    expect(planArea(still.positions, still.indices).sum).toBeCloseTo(200, 3)
    // The bank rises 0.9 m in 3 m: 0.25 m up is 0.8333 m back.
    const high = waterSurface(mesh, 0.25)
    expect(Math.min(...high.positions.filter((_, i) => i % 3 === 0))).toBeCloseTo(-0.25 / 0.3, 5)
    expect(high.positions.filter((_, i) => i % 3 === 2).every((z) => z === 0.25)).toBe(true)
  })

  it('is level, looks up, is nowhere over land and has at each vertex the water that is under it', () => {
    for (const site of [hills, {}, wall]) {
      const bed = bedOf(site)
      const mesh = bedMesh(bed, EXTENT, 0.25)
      for (const level of [-0.3, 0, 0.25]) {
        const { positions, indices, depths } = waterSurface(mesh, level)
        expect(indices.length).toBeGreaterThan(0)
        expect(planArea(positions, indices).least).toBeGreaterThan(-1e-9)
        for (let v = 0; v < depths.length; v++) {
          expect(depths[v]).toBeGreaterThanOrEqual(0)
          const [x, y] = [positions[3 * v]!, positions[3 * v + 1]!]
          if (Math.abs(x) > 1e-3) expect(Math.abs(level - bed.bedAt(x, y) - depths[v]!)).toBeLessThan(0.06)
        }
      }
    }
  })
})
