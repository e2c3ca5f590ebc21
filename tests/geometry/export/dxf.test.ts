/** The DXF against a program that reads it (dxf-parser): units, layers, where each leg stands. */
import DxfParser from 'dxf-parser'
import { describe, expect, it, vi } from 'vitest'
import { planView } from '../../../geometry/drawing/plan.ts'
import { PENS } from '../../../geometry/drawing/view.ts'
import { drawnOf } from '../../../geometry/drawn.ts'
import { dxfOf } from '../../../geometry/export/dxf.ts'
import type { PaperOptions } from '../../../geometry/paper/options.ts'
import { paperFrom } from '../../../geometry/paper/paper-of.ts'
import { type Design, type Dock, demoCatalog, demoDesign, ENGLISH, projectOf } from '../../../rules/index.ts'
import { parsedDesign } from '../../support/arbitraries.ts'
import { deriveFound } from '../../support/at-once.ts'

const OPTIONS: PaperOptions = {
  units: 'imperial',
  language: ENGLISH,
  size: 'letter',
  date: '2026-05-01',
  by: 'A. Person',
}

const dxfFrom = (dock: Dock, design: Design, options: PaperOptions) =>
  dxfOf(paperFrom(projectOf(design, demoCatalog, dock), options))

describe('a DXF', () => {
  for (const [name, change] of [
    ['three sections', { sections: 3 }],
    ['twelve sections', { sections: 12 }],
    ['a tee', { sections: 4, head: { shape: 'tee', sections: 4 } }],
  ] as const)
    for (const [units, code, perUnit] of [
      ['imperial', 1, 0.0254],
      ['metric', 4, 0.001],
    ] as const)
      it(`of ${name} in ${units} units is read back: units, layers, every leg in its place`, () => {
        const design = parsedDesign({ ...demoDesign, dock: { ...demoDesign.dock, ...change } })
        const dock = deriveFound(design, demoCatalog)
        const text = dxfFrom(dock, design, { ...OPTIONS, units })
        const read = new DxfParser().parseSync(text)!
        expect(read.header.$INSUNITS).toBe(code)
        expect(Object.keys(read.tables.layer.layers)).toEqual(expect.arrayContaining(Object.keys(PENS)))
        const used = new Set(read.entities.map(({ layer }) => layer))
        for (const layer of ['FRAME', 'DECK', 'LEG', 'PAD', 'JOINT', 'BED', 'WATER', 'DIM', 'TEXT'])
          expect(used).toContain(layer)
        type Circle = { type: string; layer: string; center: { x: number; y: number }; radius: number }
        const circles = (read.entities as unknown as Circle[]).filter(
          ({ type, layer }) => type === 'CIRCLE' && layer === 'LEG',
        )
        expect(circles).toHaveLength(dock.legs.length)
        dock.legs.forEach((leg, i) => {
          expect(circles[i]!.center.x * perUnit).toBeCloseTo(leg.x, 4)
          expect(circles[i]!.center.y * perUnit).toBeCloseTo(leg.y, 4)
          expect(circles[i]!.radius * perUnit).toBeCloseTo(0.060325 / 2, 5)
        })
        // The plan lies where the Dock has it: as far as its frames go.
        type Line = { type: string; layer: string; vertices: { x: number; y: number }[] }
        const { bounds } = planView(
          drawnOf(projectOf(design, demoCatalog, dock), { units, language: ENGLISH }),
        )
        const frames = (read.entities as unknown as Line[])
          .filter(({ layer, vertices }) => layer === 'FRAME' && vertices)
          .flatMap(({ vertices }) => vertices)
          .filter(({ y }) => y * perUnit >= bounds.y0 - 1e-6)
        const far = Math.max(...frames.map(({ x }) => x * perUnit))
        expect(far).toBeCloseTo(
          Math.max(
            ...dock.sections.map(({ x, heading, length, width }) =>
              heading % 180 === 0 ? x + length : x + width / 2,
            ),
          ),
          3,
        )
      })

  it('reaches from the shore end to the lake end, in the unit that it says', () => {
    const dock = deriveFound(demoDesign, demoCatalog)
    for (const [units, perUnit] of [
      ['imperial', 0.0254],
      ['metric', 0.001],
    ] as const) {
      const read = new DxfParser().parseSync(dxfFrom(dock, demoDesign, { ...OPTIONS, units }))!
      type Line = { layer: string; vertices?: { x: number; y: number }[] }
      // Its bed is the longest line of its layer.
      const [x0, x1] = (read.entities as unknown as Line[])
        .filter(({ layer, vertices }) => layer === 'BED' && vertices)
        .map(({ vertices }): [number, number] => {
          const xs = vertices!.map(({ x }) => x * perUnit)
          return [Math.min(...xs), Math.max(...xs)]
        })
        .reduce((most, one) => (one[1] - one[0] > most[1] - most[0] ? one : most))
      const { bounds } = planView(
        drawnOf(projectOf(demoDesign, demoCatalog, dock), { units, language: ENGLISH }),
      )
      expect(x0).toBeCloseTo(bounds.x0, 4)
      expect(x1).toBeCloseTo(bounds.x1, 4)
      // And every section's outline is there, at its corners.
      const frames = (read.entities as unknown as Line[]).filter(
        ({ layer, vertices }) => layer === 'FRAME' && vertices?.length === 4,
      )
      for (const { x, y, length, width } of dock.sections.filter(({ role }) => role !== 'ramp')) {
        const far = [x + length, y + width / 2]
        expect(
          frames.some(({ vertices }) =>
            vertices!.some((at) => Math.hypot(at.x * perUnit - far[0]!, at.y * perUnit - far[1]!) < 1e-4),
          ),
        ).toBe(true)
      }
    }
  })

  it('holds nothing of the clock or of chance', () => {
    const dock = deriveFound(demoDesign, demoCatalog)
    const at = (time: string): string => {
      vi.setSystemTime(new Date(time))
      return dxfFrom(dock, demoDesign, OPTIONS)
    }
    vi.useFakeTimers()
    const chance = vi.spyOn(Math, 'random')
    try {
      expect(at('2031-12-31T23:59:59Z')).toBe(at('2001-01-01T00:00:00Z'))
      expect(chance).not.toHaveBeenCalled()
    } finally {
      chance.mockRestore()
      vi.useRealTimers()
    }
  })

  it('is the same text each time', () => {
    const dock = deriveFound(demoDesign, demoCatalog)
    expect(dxfFrom(dock, demoDesign, OPTIONS)).toBe(dxfFrom(dock, demoDesign, OPTIONS))
  })
})
