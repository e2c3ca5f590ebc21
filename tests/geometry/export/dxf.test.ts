/** The DXF against a program that reads it (dxf-parser): units, layers, where each leg stands. */
import DxfParser from 'dxf-parser'
import { describe, expect, it, vi } from 'vitest'
import { jointView } from '../../../geometry/drawing/details.ts'
import { elevationView } from '../../../geometry/drawing/elevation.ts'
import { alikePairs, pairView } from '../../../geometry/drawing/pairs.ts'
import { planView } from '../../../geometry/drawing/plan.ts'
import { scaleText } from '../../../geometry/drawing/sheet.ts'
import { PENS } from '../../../geometry/drawing/view.ts'
import { drawnOf } from '../../../geometry/drawn.ts'
import { dxfOf } from '../../../geometry/export/dxf.ts'
import { codeOf } from '../../../geometry/paper/document.ts'
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

interface Entity {
  readonly type: string
  readonly layer: string
  readonly name?: string
  readonly inPaperSpace?: boolean
  readonly vertices?: readonly { x: number; y: number }[]
  readonly position?: { x: number; y: number }
}

/** All entities of the model, none of the sheet's; those of blocks where they are inserted. */
function exploded(read: NonNullable<ReturnType<DxfParser['parseSync']>>): Entity[] {
  const blocks = read.blocks as unknown as Record<string, { entities: Entity[] }>
  return (read.entities as unknown as Entity[]).flatMap((one) => {
    if (one.inPaperSpace) return []
    if (one.type !== 'INSERT') return [one]
    const { x, y } = one.position!
    return blocks[one.name!]!.entities.map((part) => ({
      ...part,
      ...(part.vertices && { vertices: part.vertices.map((at) => ({ x: at.x + x, y: at.y + y })) }),
    }))
  })
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
        const used = new Set(exploded(read).map(({ layer }) => layer))
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
        const { bounds } = planView(
          drawnOf(projectOf(design, demoCatalog, dock), { units, language: ENGLISH }),
        )
        const frames = exploded(read)
          .filter(({ layer }) => layer === 'FRAME')
          .flatMap(({ vertices }) => vertices ?? [])
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
      const frames = exploded(read).filter(
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

  for (const [name, change] of [
    ['a straight dock', { sections: 5 }],
    ['a tee', { sections: 4, head: { shape: 'tee', sections: 4 } }],
  ] as const)
    for (const [units, perUnit] of [
      ['imperial', 0.0254],
      ['metric', 0.001],
    ] as const)
      it(`of ${name} in ${units} units has dimensions that measure what the Dock has`, () => {
        const design = parsedDesign({ ...demoDesign, dock: { ...demoDesign.dock, ...change } })
        const dock = deriveFound(design, demoCatalog)
        const read = new DxfParser().parseSync(dxfFrom(dock, design, { ...OPTIONS, units }))!
        type At = { x: number; y: number }
        const dimensions = (
          read.entities as unknown as {
            type: string
            block: string
            actualMeasurement: number
            angle?: number
            linearOrAngularPoint1: At
            linearOrAngularPoint2: At
          }[]
        ).filter(({ type }) => type === 'DIMENSION')
        const measured = dimensions.map((one) => {
          const [a, b] = [one.linearOrAngularPoint1, one.linearOrAngularPoint2]
          const turn = ((one.angle ?? 0) * Math.PI) / 180
          const own = Math.abs((b.x - a.x) * Math.cos(turn) + (b.y - a.y) * Math.sin(turn))
          expect(Math.abs(own - one.actualMeasurement)).toBeLessThan(3e-6)
          expect((read.blocks[one.block] as { entities: unknown[] }).entities.length).toBeGreaterThan(3)
          return own * perUnit
        })
        const count = (length: number): number =>
          measured.filter((own) => Math.abs(own - length) < 1e-6).length
        expect(count(design.dock.deckHeight)).toBeGreaterThan(0)
        for (const { length, role } of dock.sections)
          if (role !== 'ramp')
            expect(count(length)).toBeGreaterThanOrEqual(
              dock.sections.filter((one) => one.role !== 'ramp' && one.length === length).length,
            )
        expect(count(dock.sections.find(({ role }) => role === 'ramp')!.length)).toBeGreaterThan(0)
        // Of each group of pairs that are alike its first is drawn.
        const drawn = drawnOf(projectOf(design, demoCatalog, dock), { units, language: ENGLISH })
        for (const [pair] of alikePairs(dock)) {
          for (const id of pair!.legs)
            expect(count(dock.legs.find((leg) => leg.id === id)!.setHeight)).toBeGreaterThan(0)
          expect(count(pair!.spacing)).toBeGreaterThan(0)
          if (pair!.brace) {
            expect(count(pair!.brace.stock)).toBeGreaterThan(0)
            expect(count(pair!.brace.rise)).toBeGreaterThan(0)
          }
        }
        // As many as the drawing's views have.
        expect(dimensions).toHaveLength(
          [
            planView(drawn),
            elevationView(drawn),
            ...alikePairs(dock).map((pairs) => pairView(drawn, pairs)),
            ...(['hinge', 'hook'] as const).flatMap((kind) => jointView(drawn, kind) ?? []),
          ]
            .map((view) => view.dimensions.length)
            .reduce((a, b) => a + b),
        )
      })

  it('has parts that are alike as one block, the ground hatched, widths of lines, a style of text, its extents', () => {
    const design = parsedDesign({ ...demoDesign, dock: { ...demoDesign.dock, sections: 6 } })
    const dock = deriveFound(design, demoCatalog)
    const text = dxfFrom(dock, design, OPTIONS)
    const read = new DxfParser().parseSync(text)!
    const inserts = (read.entities as unknown as Entity[]).filter(({ type }) => type === 'INSERT')
    const sections = new Map<string, number>()
    for (const { name } of inserts)
      if (name!.startsWith('PLAN_')) sections.set(name!, (sections.get(name!) ?? 0) + 1)
    // Sections of one length lie one behind the other.
    expect(Math.max(...sections.values())).toBeGreaterThanOrEqual(5)
    for (const { name } of inserts)
      expect(inserts.filter((one) => one.name === name).length).toBeGreaterThan(1)
    const drawn = drawnOf(projectOf(design, demoCatalog, dock), { units: 'imperial', language: ENGLISH })
    const joints = (['hinge', 'hook'] as const).flatMap((kind) => jointView(drawn, kind) ?? [])
    const cut = joints.flatMap(({ paths }) => paths.filter(({ hatch }) => hatch))
    expect(cut.length).toBeGreaterThan(3)
    expect(text.match(/^0\nHATCH$/gm)).toHaveLength(1 + alikePairs(dock).length + cut.length)
    for (const [layer, { width }] of Object.entries(PENS))
      expect(text).toMatch(
        new RegExp(`\n2\n${layer}\n70\n0\n62\n\\d+\n6\nContinuous\n370\n${Math.round(width * 100)}\n`),
      )
    expect(text).toMatch(/\n100\nAcDbTextStyleTableRecord\n2\nLEADLINE\n/)
    expect(text).not.toMatch(/\n7\nSTANDARD\n/)
    const least = read.header.$EXTMIN as { x: number; y: number }
    const most = read.header.$EXTMAX as { x: number; y: number }
    const points = exploded(read).flatMap(({ vertices }) => vertices ?? [])
    expect(points.length).toBeGreaterThan(100)
    for (const { x, y } of points) {
      expect(x).toBeGreaterThanOrEqual(least.x - 1e-5)
      expect(x).toBeLessThanOrEqual(most.x + 1e-5)
      expect(y).toBeGreaterThanOrEqual(least.y - 1e-5)
      expect(y).toBeLessThanOrEqual(most.y + 1e-5)
    }
  })

  for (const units of ['imperial', 'metric'] as const)
    it(`has a sheet in ${units} units: all of the model in its window at a scale, a title block, a mark where it is forbidden`, () => {
      const job = { customer: 'A. Customer', order: 'A-17' }
      const at = (deckHeight: number) => {
        const design = parsedDesign({ ...demoDesign, job, dock: { ...demoDesign.dock, deckHeight } })
        const dock = deriveFound(design, demoCatalog)
        return { dock, text: dxfFrom(dock, design, { ...OPTIONS, units }) }
      }
      const textsOf = (text: string): string[] =>
        (new DxfParser().parseSync(text)!.entities as unknown as (Entity & { text?: string })[])
          .filter(({ type, inPaperSpace }) => type === 'TEXT' && inPaperSpace)
          .map((one) => one.text!)
      const { dock, text } = at(demoDesign.dock.deckHeight)
      const texts = textsOf(text)
      for (const told of [dock.name, job.customer, job.order, 'May 1, 2026', OPTIONS.by, codeOf(dock)])
        expect(texts).toContain(told)
      const mark = 'DO NOT BUILD'
      expect(texts.filter((one) => one.includes(mark))).toEqual([])
      // Its viewports, which the reader passes over: the sheet itself, and the window.
      const windows = text.split('\n0\nVIEWPORT\n').slice(1)
      expect(windows).toHaveLength(2)
      const value = (code: number): number =>
        Number(
          new RegExp(`(?:^|\\n)${code}\\n([-\\d.]+)\\n`).exec(
            windows[1]!.slice(windows[1]!.indexOf('AcDbViewport')),
          )![1],
        )
      const [width, height, seen] = [value(40), value(41), value(45)]
      const scale = seen / height
      expect(Math.abs(scale - Math.round(scale))).toBeLessThan(1e-4)
      const { $EXTMIN: least, $EXTMAX: most } = new DxfParser().parseSync(text)!.header as unknown as Record<
        string,
        { x: number; y: number }
      >
      const [half, up] = [(width * scale) / 2, seen / 2]
      expect(value(12) - half).toBeLessThanOrEqual(least!.x)
      expect(value(12) + half).toBeGreaterThanOrEqual(most!.x)
      expect(value(22) - up).toBeLessThanOrEqual(least!.y)
      expect(value(22) + up).toBeGreaterThanOrEqual(most!.y)
      expect(texts).toContain(scaleText(Math.round(scale), { units, language: ENGLISH }))
      // Where no leg is long enough.
      const forbidden = at(3)
      expect(forbidden.dock.findings.some(({ severity }) => severity === 'stop')).toBe(true)
      expect(
        textsOf(forbidden.text).filter((one) => one.toUpperCase().includes(mark)).length,
      ).toBeGreaterThan(0)
    })

  it('writes letters of any script, and none of a name is a code of the format', () => {
    const name = 'Док 中文 العربية é ^J 50%%d \\U+0041 😀'
    const design = parsedDesign({ ...demoDesign, name })
    const text = dxfFrom(deriveFound(design, demoCatalog), design, OPTIONS)
    const read = new DxfParser().parseSync(text)!
    const texts = (read.entities as unknown as { type: string; text: string }[])
      .filter(({ type }) => type === 'TEXT')
      .map(({ text: one }) => one)
    const decoded = texts.map((one) =>
      one.replace(/\\U\+([0-9A-F]{4})/g, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16))),
    )
    expect(decoded).toContain(name)
    expect(texts.filter((one) => /\?|%%|\^/.test(one))).toEqual([])
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
