import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { extentOf } from '../../geometry/index.ts'
import { demoCatalog, demoDesign, makeBed, parseDesign, projectOf } from '../../rules/index.ts'
import { makeLand } from '../../src/scene/terrain.ts'
import { stripRange } from '../../src/state/strip-range.ts'
import { deriveAtOnce } from '../support/at-once.ts'

function landOf(site: Record<string, unknown> = {}, dockChange: Record<string, unknown> = {}) {
  const parsed = parseDesign({
    ...demoDesign,
    site: { ...demoDesign.site, ...site },
    dock: { ...demoDesign.dock, ...dockChange },
  })
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
  const design = parsed.value
  const dock = deriveAtOnce(design, demoCatalog)
  const bed = makeBed(design.site)
  const range = stripRange(projectOf(design, demoCatalog, dock))
  const extent = extentOf(dock, design)
  return { land: makeLand(bed, extent, design.site, range.x0), bed, range, extent, dock }
}

const area = [
  { distance: -2, offset: 0, depth: -0.5 },
  { distance: 4, offset: -4, depth: 0.4 },
  { distance: 4, offset: 4, depth: 0.9 },
  { distance: 11, offset: -3, depth: 1.2 },
  { distance: 12, offset: 4, depth: 1.9 },
]

describe('the ground in the picture', () => {
  it.each([
    ['one line of soundings', {}],
    ['a cross slope', { crossSlope: 0.06 }],
    ['soundings over an area', { soundings: area }],
    ['a wall', { shore: { kind: 'wall', height: 0.5 } }],
  ])('is the bed wherever the strip or the dock is: %s', (_, site) => {
    const { land, bed, range, extent } = landOf(site)
    const place = fc.record({
      x: fc.double({ min: range.x0, max: range.x1, noNaN: true }),
      y: fc.double({ min: extent.y0, max: extent.y1, noNaN: true }),
    })
    fc.assert(
      fc.property(place, ({ x, y }) => {
        expect(land.at(x, y)).toBe(bed.bedAt(x, y))
      }),
      { seed: 3, numRuns: 500 },
    )
  })

  it('has a column at every break of the profile, so that the mesh is the bed between them', () => {
    const { land, bed, range } = landOf()
    for (const x of bed.knots(range.x0, range.x1).slice(1, -1))
      expect(Math.min(...land.mesh.xs.map((other) => Math.abs(other - x)))).toBe(0)
    expect([...land.mesh.xs]).toEqual([...land.mesh.xs].sort((a, b) => a - b))
    expect([...land.mesh.ys]).toEqual([...land.mesh.ys].sort((a, b) => a - b))
  })

  it('goes on beyond without a step', () => {
    const { land, range, extent } = landOf()
    for (const y of [extent.y0, extent.y1, 0])
      expect(Math.abs(land.at(range.x0 - 0.5001, y) - land.at(range.x0 - 0.4999, y))).toBeLessThan(0.01)
    for (const x of [-1, 3, 9]) {
      expect(Math.abs(land.at(x, extent.y1 + 1e-4) - land.at(x, extent.y1 - 1e-4))).toBeLessThan(0.01)
      expect(Math.abs(land.at(x, extent.y0 - 1e-4) - land.at(x, extent.y0 + 1e-4))).toBeLessThan(0.01)
    }
  })

  it('stays small for a long dock', () => {
    expect(landOf({}, { sections: 400 }).land.mesh.positions.length / 3).toBeLessThan(20_000)
  })
})
