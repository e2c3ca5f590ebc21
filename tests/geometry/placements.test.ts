/** What is drawn is what was placed: counts, and parts that stand where the dock's numbers say. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { extentOf, groupPlacements, partKeyOf, rotate, solidOf } from '../../geometry/index.ts'
import { type Catalog, type Dock, demoCatalog, type Placement } from '../../rules/index.ts'
import { anyCase, parsedDesign } from '../support/arbitraries.ts'
import { deriveAtOnce } from '../support/at-once.ts'
import { contractDemo } from '../support/worked-designs.ts'

/** Least and most of a placed solid along each axis. */
function placedBounds(p: Placement, catalog: Catalog): [number[], number[]] {
  const { positions } = solidOf(p.kind, p.code, catalog)
  const [low, high] = [Array(3).fill(Number.POSITIVE_INFINITY), Array(3).fill(Number.NEGATIVE_INFINITY)]
  for (let v = 0; v < positions.length; v += 3) {
    const at = rotate(p.turn, [positions[v]!, positions[v + 1]!, positions[v + 2]!])
    for (const k of [0, 1, 2] as const) {
      low[k] = Math.min(low[k], at[k] + p.at[k])
      high[k] = Math.max(high[k], at[k] + p.at[k])
    }
  }
  return [low, high]
}

const of = (dock: Dock, kind: Placement['kind']): Placement[] =>
  dock.placements.filter((p) => p.kind === kind)

describe('instances', () => {
  it('of all groups together are the placements, each once, and every group has the row’s quantity', () => {
    fc.assert(
      fc.property(anyCase, ({ design, catalog }) => {
        const dock = deriveAtOnce(design, catalog)
        const groups = groupPlacements(dock)
        const drawn = [...groups.values()].flat()
        expect(drawn.length).toBe(dock.placements.length)
        expect(new Set(drawn).size).toBe(drawn.length)
        expect(groups.size).toBe(dock.parts.length)
        for (const { kind, code, quantity } of dock.parts)
          expect(groups.get(partKeyOf(kind, code))?.length).toBe(quantity)
        for (const { kind, code } of drawn)
          expect(solidOf(kind, code, catalog).indices.length).toBeGreaterThan(0)
      }),
      { seed: 5, numRuns: 150 },
    )
  })

  it('stand where the dock’s numbers say, on random docks of both shops', () => {
    let legs = 0
    fc.assert(
      fc.property(anyCase, ({ design, catalog }) => {
        const dock = deriveAtOnce(design, catalog)
        for (const leg of dock.legs) {
          const tube = of(dock, 'leg').find((p) => p.of === leg.id)
          const pad = of(dock, 'foot-pad').find((p) => p.of === leg.id)!
          const { sole } = catalog.pads.find((p) => p.code === leg.pad)!
          expect(placedBounds(pad, catalog)[0][2]).toBeCloseTo(leg.bed, 5)
          if (!tube) continue
          legs++
          const [low, high] = placedBounds(tube, catalog)
          expect(low[2]).toBeCloseTo(leg.bed + sole, 5)
          expect(high[2]).toBeCloseTo(design.dock.deckHeight + leg.aboveDeck!, 5)
          expect((low[0]! + high[0]!) / 2).toBeCloseTo(leg.x, 4)
          expect((low[1]! + high[1]!) / 2).toBeCloseTo(leg.y, 4)
        }
        for (const section of dock.sections.filter((s) => s.role !== 'ramp')) {
          const frame = of(dock, 'frame').find((p) => p.section === section.id)!
          expect(placedBounds(frame, catalog)[1][2]).toBeCloseTo(
            design.dock.deckHeight - catalog.decking.rise,
            5,
          )
        }
        for (const { brace, id } of dock.pairs) {
          if (!brace) continue
          const placed = of(dock, 'brace').find((p) => p.of === id)!
          const far = rotate(placed.turn, [brace.stock, 0, 0])
          expect(placed.at[2]).toBeCloseTo(brace.lowZ, 5)
          expect(placed.at[2] + far[2]).toBeCloseTo(brace.highZ, 4)
        }
      }),
      { seed: 6, numRuns: 60 },
    )
    expect(legs).toBeGreaterThan(200)
  })

  it('of twenty sections are under a quarter of a million triangles', () => {
    const design = parsedDesign({ ...contractDemo, dock: { ...contractDemo.dock, sections: 20 } })
    const dock = deriveAtOnce(design, demoCatalog)
    const triangles = dock.placements.reduce(
      (sum, p) => sum + solidOf(p.kind, p.code, demoCatalog).indices.length / 3,
      0,
    )
    expect(triangles).toBeGreaterThan(20_000)
    expect(triangles).toBeLessThan(250_000)
  })
})

describe('the extent that is shown', () => {
  it('holds every section with 3 m and more round it, and does not follow a sounding a kilometer off', () => {
    fc.assert(
      fc.property(anyCase, ({ design, catalog }) => {
        const far = { distance: 1500, offset: -900, depth: 30 }
        const dock = deriveAtOnce(design, catalog)
        const { x0, x1, y0, y1 } = extentOf(dock, {
          ...design,
          site: { ...design.site, soundings: [...design.site.soundings, far] },
        })
        for (const { x, y } of dock.sections) {
          expect(x - x0).toBeGreaterThanOrEqual(3 - 1e-9)
          expect(x1 - x).toBeGreaterThanOrEqual(3 - 1e-9)
          expect(y - y0).toBeGreaterThanOrEqual(3 - 1e-9)
          expect(y1 - y).toBeGreaterThanOrEqual(3 - 1e-9)
        }
        expect(Math.min(-x0, x1, -y0, y1)).toBeGreaterThanOrEqual(3 - 1e-9)
        expect(Math.max(x1 - x0, y1 - y0)).toBeLessThan(500)
      }),
      { seed: 8, numRuns: 150 },
    )
  })
})
