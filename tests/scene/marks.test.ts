import { describe, expect, it } from 'vitest'
import { demoCatalog, demoDesign } from '../../rules/index.ts'
import { slabsOf } from '../../src/scene/deck-rectangles.ts'
import { markerOf } from '../../src/scene/parts/marks.ts'
import { deriveAtOnce } from '../support/at-once.ts'

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
})
