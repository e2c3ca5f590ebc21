import { describe, expect, it } from 'vitest'
import { demoCatalog, demoDesign } from '../../rules/index.ts'
import { areaOf } from '../../rules/layout/footprint.ts'
import { withPlan } from '../../rules/plan/as-plan.ts'
import { around, slabsOf } from '../../src/scene/deck-rectangles.ts'
import { markerOf } from '../../src/scene/parts/marks.ts'
import { deriveAtOnce } from '../support/at-once.ts'
import { hung } from '../support/hung.ts'

const dock = deriveAtOnce(demoDesign, demoCatalog)
const grown = deriveAtOnce({ ...demoDesign, dock: { ...demoDesign.dock, sections: 9 } }, demoCatalog)

const lit = (selection: string | null, hover: string | null = null, of = dock) => {
  const markOf = markerOf(of, selection, hover)
  return of.placements.filter((placement) => markOf(placement)[0] === 1)
}

describe('what lights up', () => {
  it('with a leg is the leg with its pad, caps and bolts', () => {
    const kinds = new Set(lit('s5.end.left').map((p) => p.kind))
    expect([...kinds].sort()).toEqual(['foot-pad', 'leg', 'leg-cap', 'pad-bolt', 'set-bolt'])
  })

  it('with a section is all that is carried with it', () => {
    expect(lit('s4').every((p) => p.section === 's4')).toBe(true)
    expect(lit('s4').length).toBe(dock.placements.filter((p) => p.section === 's4' || p.of === 's4').length)
  })

  it('with a row of the list are its pieces, as many as the row counts', () => {
    for (const row of dock.parts) expect(lit(`part:${row.kind}\n${row.code}`)).toHaveLength(row.quantity)
  })

  it('with a pair are its brace and its legs', () => {
    const of = new Set(lit('s5.end').map((p) => p.of))
    expect(of).toEqual(new Set(['s5.end', 's5.end.left', 's5.end.right']))
  })

  it('as warned of is what findings of weight name, a section by its frame alone', () => {
    const markOf = markerOf(grown, null, null)
    const named = new Set(grown.findings.filter((f) => f.severity !== 'note').flatMap((f) => f.parts))
    expect(named.size).toBeGreaterThan(0)
    for (const placement of grown.placements) {
      const about = named.has(placement.of) && (placement.of.includes('.') || placement.kind === 'frame')
      expect(markOf(placement)[2] > 0, placement.of).toBe(about)
    }
  })

  it('is nothing where nothing is picked or warned of', () => {
    expect(lit(null)).toEqual([])
    expect(lit('nothing of that name')).toEqual([])
  })
})

describe('the deck as rectangles', () => {
  it('takes a run for one, a T for two', () => {
    const tee = deriveAtOnce(
      { ...demoDesign, dock: { ...demoDesign.dock, sections: 4, head: { shape: 'tee', sections: 4 } } },
      demoCatalog,
    )
    expect(slabsOf(dock.sections, 8).length).toBe(1)
    expect(slabsOf(tee.sections, 8).length).toBeLessThanOrEqual(3)
    const area = (s: { x0: number; x1: number; y0: number; y1: number }) => (s.x1 - s.x0) * (s.y1 - s.y0)
    const whole = tee.sections.reduce((sum, s) => sum + s.length * s.width, 0)
    const found = slabsOf(tee.sections, 8).reduce((sum, s) => sum + area(s), 0)
    // Gaps between sections come on top.
    expect(found / whole).toBeGreaterThan(1)
    expect(found / whole).toBeLessThan(1.03)
  })

  it('turns those that lie askew: a corner and the run behind it, as large as they are', () => {
    const plan = [
      { id: 's1', on: null, along: 0 },
      hung('c1', 's1', { frame: 'corner-45' }),
      hung('s2', 'c1'),
      hung('s3', 's2'),
    ]
    const { sections } = deriveAtOnce(withPlan(demoDesign, plan), demoCatalog)
    const slabs = slabsOf(sections, 8)
    expect(slabs.map(({ c }) => Math.round(((Math.acos(c) * 180) / Math.PI) * 10) / 10).sort()).toEqual([
      0, 22.5, 45,
    ])
    const [run] = slabs
    expect(run!.x1 - run!.x0).toBeCloseTo(2 * 2.4384 + 0.0254, 5)
    expect(run!.y1 - run!.y0).toBeCloseTo(1.2192, 5)
    const corner = slabs.at(-1)!
    expect((corner.x1 - corner.x0) * (corner.y1 - corner.y0)).toBeCloseTo(areaOf(sections[1]!), 5)
    const box = around(run!)
    expect(box.x1 - box.x0).toBeCloseTo((2 * 2.4384 + 0.0254 + 1.2192) * Math.SQRT1_2, 5)
  })
})
