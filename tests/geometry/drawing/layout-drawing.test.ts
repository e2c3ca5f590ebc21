/** The layout drawing: labels clear of each other on any dock, lengths true to scale, everything of the Dock on it. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { elevationView } from '../../../geometry/drawing/elevation.ts'
import { boxOf, overlap, placeLabels } from '../../../geometry/drawing/labels.ts'
import { layoutDrawing } from '../../../geometry/drawing/layout-drawing.ts'
import { paintView } from '../../../geometry/drawing/paint.ts'
import { alikePairs, pairView } from '../../../geometry/drawing/pairs.ts'
import { type Drawn, planView } from '../../../geometry/drawing/plan.ts'
import type { PathMark, Sheet, TextMark } from '../../../geometry/paper/marks.ts'
import type { PaperOptions } from '../../../geometry/paper/options.ts'
import {
  assessKit,
  type Design,
  demoCatalog,
  demoDesign,
  deriveKit,
  formatLength,
} from '../../../rules/index.ts'
import { anyCase, parsedDesign } from '../../support/arbitraries.ts'

const OPTIONS: PaperOptions = {
  units: 'imperial',
  lang: 'en',
  size: 'letter',
  date: '2026-05-01',
  by: 'A. Person',
}
const quick = (design: Design, catalog = demoCatalog) => assessKit(deriveKit(design, catalog))

const textsOf = (sheet: Sheet): TextMark[] => sheet.marks.filter((mark) => mark.kind === 'text')

/** Pairs of texts on a sheet that stand on each other, and texts that stand off it. */
function faults(sheet: Sheet): string[] {
  const texts = textsOf(sheet).filter(({ text }) => text.trim() !== '')
  const boxes = texts.map(boxOf)
  const found: string[] = []
  boxes.forEach((box, i) => {
    if (box.x0 < 8 || box.y0 < 8 || box.x1 > sheet.width - 8 || box.y1 > sheet.height - 8)
      found.push(`off the sheet: ${texts[i]!.text}`)
    for (let j = 0; j < i; j++)
      if (overlap(box, boxes[j]!)) found.push(`on each other: ${texts[i]!.text}, ${texts[j]!.text}`)
  })
  return found
}

describe('labels', () => {
  it('never stand on each other or off the sheet, on 500 random docks of both shops', {
    timeout: 600_000,
  }, () => {
    let sheets = 0
    let labels = 0
    fc.assert(
      fc.property(
        anyCase,
        fc.constantFrom('letter' as const, 'a4' as const, 'tabloid' as const, 'a3' as const),
        fc.constantFrom('imperial' as const, 'metric' as const),
        ({ design, catalog }, size, units) => {
          const paper = layoutDrawing(quick(design, catalog), design, catalog, { ...OPTIONS, size, units })
          for (const sheet of paper.sheets) {
            sheets++
            labels += textsOf(sheet).length
            expect(faults(sheet).join('; ')).toBe('')
          }
        },
      ),
      { numRuns: 500, seed: 20261125 },
    )
    expect(sheets).toBeGreaterThan(1000)
    expect(labels).toBeGreaterThan(30_000)
  })

  it('are told where they do stand on each other', () => {
    const [sheet] = layoutDrawing(quick(demoDesign), demoDesign, demoCatalog, OPTIONS).sheets
    const [one] = textsOf(sheet!)
    expect(faults({ ...sheet!, marks: [...sheet!.marks, { ...one!, text: 'on it' }] })).toHaveLength(1)
  })

  it('go elsewhere where their place is taken, with a leader where that is far', () => {
    const label = {
      text: 'a label',
      size: 3,
      weight: 'regular' as const,
      ink: '#000000' as const,
      at: [50, 50] as const,
      angle: 0 as const,
      wish: [50, 50] as const,
      optional: false,
    }
    const around = { bounds: { x0: 0, y0: 0, x1: 100, y1: 100 }, segments: [] }
    const alone = placeLabels([label], { ...around, taken: [] })
    expect(alone.marks).toHaveLength(1)
    const pushed = placeLabels([label], { ...around, taken: [{ x0: 30, y0: 38, x1: 70, y1: 62 }] })
    expect(pushed.marks.map(({ kind }) => kind)).toEqual(['path', 'text'])
    const none = placeLabels([{ ...label, optional: true }], {
      ...around,
      taken: [{ x0: 0, y0: 0, x1: 100, y1: 100 }],
    })
    expect(none.left).toHaveLength(1)
  })
})

const DOCKS: readonly (readonly [string, Record<string, unknown>])[] = [
  ['three sections', { sections: 3 }],
  ['twelve sections', { sections: 12 }],
  ['a tee', { sections: 4, head: { shape: 'tee', sections: 4 } }],
]

describe('a drawing', () => {
  for (const [name, change] of DOCKS)
    for (const [size, units, scale] of [
      ['letter', 'imperial', 96],
      ['a4', 'metric', 100],
    ] as const)
      it(`of ${name} on ${size} is true to scale within 0.5 %, and says what the Dock says`, () => {
        const design = parsedDesign({ ...demoDesign, dock: { ...demoDesign.dock, ...change } })
        const dock = quick(design)
        const drawn: Drawn = { dock, design, catalog: demoCatalog, units, lang: 'en' }
        // Frames as outlines of their side rails: the longest straight edge on the FRAME layer is a section's length.
        const plan = planView(drawn)
        const painted = paintView(plan, [0, 0], scale)
        const edges = painted.marks
          .filter((mark): mark is PathMark => mark.kind === 'path' && mark.closed)
          .flatMap(({ points }) =>
            points.map((p, i) => {
              const q = points[(i + 1) % points.length]!
              return Math.hypot(q[0] - p[0], q[1] - p[1])
            }),
          )
        for (const { length } of dock.sections.filter(({ role }) => role !== 'ramp')) {
          const near = edges.reduce((best, edge) =>
            Math.abs((edge * scale) / 1000 - length) < Math.abs((best * scale) / 1000 - length) ? edge : best,
          )
          expect(Math.abs((near * scale) / 1000 - length) / length).toBeLessThan(0.005)
        }
        // Dimension lines: what is written is how long they are.
        for (const view of [plan, elevationView(drawn), ...alikePairs(dock).map((a) => pairView(drawn, a))])
          for (const { from, to, along, text } of view.dimensions) {
            const long = along === 'y' ? Math.abs(to[1] - from[1]) : Math.abs(to[0] - from[0])
            expect(text).toBe(formatLength(long, units))
            const [line] = paintView(
              {
                ...view,
                paths: [],
                notes: [],
                dimensions: view.dimensions.filter((d) => d.text === text && d.from === from),
              },
              [0, 0],
              scale,
            ).segments
            const drawnLong = Math.hypot(line![1][0] - line![0][0], line![1][1] - line![0][1])
            expect((drawnLong * scale) / 1000).toBeCloseTo(long, 6)
          }
        // Every leg is in the table with its figures; every section on the plan.
        const paper = layoutDrawing(dock, design, demoCatalog, { ...OPTIONS, size, units })
        const texts = paper.sheets.flatMap(textsOf).map(({ text }) => text)
        for (const leg of dock.legs) {
          for (const value of [leg.setHeight, leg.setHeightFrame, leg.x, -leg.bed])
            expect(texts).toContain(formatLength(value, units))
          if (leg.stock !== null) expect(texts).toContain(formatLength(leg.stock, units))
        }
        for (const { id } of dock.sections) expect(texts).toContain(id)
        const code = dock.fingerprint.all.slice(0, 12).replace(/(.{4})(?=.)/g, '$1 ')
        for (const sheet of paper.sheets) {
          const own = textsOf(sheet).map(({ text }) => text)
          expect(own).toContain(code)
          expect(own).toContain('2026-05-01')
        }
        // Each pair is drawn in exactly one view.
        expect(
          alikePairs(dock)
            .flat()
            .map(({ id }) => id)
            .sort(),
        ).toEqual(dock.pairs.map(({ id }) => id).sort())
      })

  it('is the same each time', () => {
    const dock = quick(demoDesign)
    expect(layoutDrawing(dock, demoDesign, demoCatalog, OPTIONS)).toEqual(
      layoutDrawing(dock, demoDesign, demoCatalog, OPTIONS),
    )
  })
})
