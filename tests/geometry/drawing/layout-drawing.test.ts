/** The layout drawing: labels clear of each other on any dock, lengths true to scale, everything of the Dock on it. */
import fc from 'fast-check'
import jsQrModule from 'jsqr'
import { describe, expect, it } from 'vitest'
import { boltSize } from '../../../geometry/drawing/bolt-size.ts'
import { overlap } from '../../../geometry/drawing/cells.ts'
import { jointView } from '../../../geometry/drawing/details.ts'
import { elevationView } from '../../../geometry/drawing/elevation.ts'
import { boxOf, LEADER_STROKE, placeLabels } from '../../../geometry/drawing/labels.ts'
import { paintView } from '../../../geometry/drawing/paint.ts'
import { alikePairs, pairsByBrace, pairView } from '../../../geometry/drawing/pairs.ts'
import { planView } from '../../../geometry/drawing/plan.ts'
import { SCALES, scaleText } from '../../../geometry/drawing/sheet.ts'
import { clipLine } from '../../../geometry/drawing/view.ts'
import { drawnOf } from '../../../geometry/drawn.ts'
import type { PathMark, Point, Sheet, TextMark } from '../../../geometry/paper/marks.ts'
import type { PaperOptions } from '../../../geometry/paper/options.ts'
import { paperFrom } from '../../../geometry/paper/paper-of.ts'
import { CAP_HEIGHT } from '../../../geometry/paper/text.ts'
import { breaks, layoutDrawing } from '../../../geometry/sheets/layout-drawing.ts'
import {
  assessKit,
  type Catalog,
  type Design,
  type Dock,
  demoCatalog,
  demoDesign,
  deriveKit,
  ENGLISH,
  english,
  formatLength,
  projectOf,
  type Units,
} from '../../../rules/index.ts'
import { cornersOf } from '../../../rules/layout/footprint.ts'
import { factsOf } from '../../../rules/part-kinds.ts'
import en from '../../../rules/words/en/drawing.json' with { type: 'json' }
import { anyCase, parsedDesign } from '../../support/arbitraries.ts'
import { runs } from '../../support/runs.ts'

const jsQr = ((jsQrModule as unknown as { default?: unknown }).default ??
  jsQrModule) as typeof import('jsqr').default
const OPTIONS: PaperOptions = {
  units: 'imperial',
  language: ENGLISH,
  size: 'letter',
  date: '2026-05-01',
  by: 'A. Person',
}
const ENGLISH_METRIC = { units: 'metric', language: ENGLISH } as const
const drawing = (dock: Dock, design: Design, options: PaperOptions, catalog: Catalog = demoCatalog) =>
  layoutDrawing(paperFrom(projectOf(design, catalog, dock), options))
const quick = (design: Design, catalog = demoCatalog) => assessKit(deriveKit(design, catalog))

const textsOf = (sheet: Sheet): TextMark[] =>
  sheet.marks.filter((mark): mark is TextMark => mark.kind === 'text' && !mark.behind)

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

/** Texts that a leader runs over. */
function ledOver(sheet: Sheet): string[] {
  const texts = textsOf(sheet).map((mark) => ({ text: mark.text, box: boxOf(mark) }))
  return sheet.marks.flatMap((mark) =>
    mark.kind === 'path' && mark.stroke === LEADER_STROKE
      ? texts.filter(({ box }) => clipLine(mark.points[0]!, mark.points[1]!, box)).map(({ text }) => text)
      : [],
  )
}

const RUNS = runs(100)

describe('labels', () => {
  it(`never stand on each other or off the sheet, on ${RUNS} random docks of both shops`, {
    timeout: 600_000,
  }, () => {
    let sheets = 0
    let labels = 0
    let led = 0
    fc.assert(
      fc.property(
        anyCase,
        fc.constantFrom('letter' as const, 'a4' as const, 'tabloid' as const, 'a3' as const),
        fc.constantFrom('imperial' as const, 'metric' as const),
        ({ design, catalog }, size, units) => {
          const paper = drawing(quick(design, catalog), design, { ...OPTIONS, size, units }, catalog)
          for (const sheet of paper.sheets) {
            sheets++
            labels += textsOf(sheet).length
            led += ledOver(sheet).length
            expect(faults(sheet).join('; ')).toBe('')
          }
        },
      ),
      { numRuns: RUNS, seed: 20261125, endOnFailure: true },
    )
    expect(sheets).toBeGreaterThan(RUNS * 2)
    expect(labels).toBeGreaterThan(RUNS * 60)
    // Only where a sheet is so full that a label finds no other place.
    expect(led / labels).toBeLessThan(1e-4)
  })

  it('are told where they do stand on each other', () => {
    const [sheet] = drawing(quick(demoDesign), demoDesign, OPTIONS).sheets
    const [one] = textsOf(sheet!)
    expect(faults({ ...sheet!, marks: [...sheet!.marks, { ...one!, text: 'on it' }] })).toHaveLength(1)
    const { x0, x1, y0, y1 } = boxOf(one!)
    const leader: PathMark = {
      kind: 'path',
      points: [
        [x0 - 1, (y0 + y1) / 2],
        [x1 + 1, (y0 + y1) / 2],
      ],
      closed: false,
      stroke: LEADER_STROKE,
      fill: null,
    }
    expect(ledOver({ ...sheet!, marks: [...sheet!.marks, leader] })).toContain(one!.text)
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

/** Of the title block, or behind the titles of a sheet with several. */
function scalesOf(sheet: Sheet, units: Units): readonly number[] {
  const texts = textsOf(sheet).map(({ text }) => text)
  return SCALES[units].filter((scale) => texts.includes(scaleText(scale, english(units))))
}

/** A line that is so long at a scale, with the figure beside it. */
function dimensioned(sheet: Sheet, scale: number, text: string, meters: number): boolean {
  const lines = sheet.marks.filter(
    (mark): mark is PathMark => mark.kind === 'path' && !mark.closed && mark.points.length === 2,
  )
  return textsOf(sheet)
    .filter((mark) => mark.text === text)
    .some((mark) => {
      const box = boxOf(mark)
      const [cx, cy] = [(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2]
      return lines.some(({ points: [a, b] }) => {
        const long = (Math.hypot(b![0] - a![0], b![1] - a![1]) * scale) / 1000
        const away = Math.hypot((a![0] + b![0]) / 2 - cx, (a![1] + b![1]) / 2 - cy)
        return away < 12 && Math.abs(long - meters) / meters < 0.005
      })
    })
}

/** Legs whose tubes are on a plan where they should be from each other, to 0.1 mm. */
function legsOn(sheet: Sheet, scale: number, dock: Dock): string[] {
  const tube = (0.060325 * 1000) / scale
  const spots = sheet.marks.flatMap((mark): Point[] => {
    if (mark.kind !== 'path' || !mark.closed || mark.points.length < 8) return []
    const [xs, ys] = [mark.points.map(([x]) => x), mark.points.map(([, y]) => y)]
    const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
    return Math.abs(x1 - x0 - tube) < 0.05 * tube && Math.abs(y1 - y0 - tube) < 0.05 * tube
      ? [[(x0 + x1) / 2, (y0 + y1) / 2]]
      : []
  })
  const k = 1000 / scale
  let best: string[] = []
  for (const first of dock.legs)
    for (const [ox, oy] of spots) {
      const found = dock.legs.filter(({ x, y }) =>
        spots.some(([sx, sy]) => Math.hypot(sx - ox - (x - first.x) * k, sy - oy + (y - first.y) * k) < 0.1),
      )
      if (found.length > best.length) best = found.map(({ id }) => id)
    }
  return best
}

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
        const drawn = drawnOf(projectOf(design, demoCatalog, dock), { units, language: ENGLISH })
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
            const [dx, dy] = [Math.abs(to[0] - from[0]), Math.abs(to[1] - from[1])]
            const long = along === 'slope' ? Math.hypot(dx, dy) : along === 'y' ? dy : dx
            expect(text).toBe(formatLength(long, english(units)))
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
        const paper = drawing(dock, design, { ...OPTIONS, size, units })
        const texts = paper.sheets.flatMap(textsOf).map(({ text }) => text)
        for (const leg of dock.legs) {
          for (const value of [leg.setHeight, leg.setHeightFrame, leg.x, -leg.bed])
            expect(texts).toContain(formatLength(value, english(units)))
          if (leg.stock !== null) expect(texts).toContain(formatLength(leg.stock, english(units)))
          const brace = dock.pairs.find(({ legs }) => legs.includes(leg.id))?.brace
          if (brace)
            expect(texts).toContain(
              formatLength((brace.low === leg.id ? brace.lowZ : brace.highZ) - leg.bed, english(units)),
            )
        }
        // How long the dock is, and the ramp.
        const ramp = dock.sections.find(({ role }) => role === 'ramp')!
        const level = ramp.length / Math.hypot(1, dock.ramp!.slope)
        const xs = dock.sections.flatMap((one) =>
          cornersOf(one === ramp ? { ...one, length: level } : one).map(([x]) => x),
        )
        const long = Math.max(...xs) - Math.min(...xs)
        for (const view of [plan, elevationView(drawn)]) {
          const told = view.dimensions.map(({ text }) => text)
          expect(told).toContain(formatLength(view === plan ? level : ramp.length, english(units)))
          if (view === plan) expect(told).toContain(formatLength(long, english(units)))
        }
        const parts = paper.sheets.filter(({ bookmark }) => bookmark?.startsWith('Plan')).length
        if (parts > 1)
          expect(
            texts.filter((text) => text.includes(`Overall ${formatLength(long, english(units))} by`)),
          ).toHaveLength(parts)
        // Each section once.
        for (const { id, x, y, length, heading, role } of dock.sections)
          if (role !== 'ramp') {
            const turn = (heading * Math.PI) / 180
            const [mx, my] = [x + (Math.cos(turn) * length) / 2, y + (Math.sin(turn) * length) / 2]
            const own = plan.dimensions.filter(({ from, to, along }) => {
              const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
              const middle = along === 'x' ? (from[0] + to[0]) / 2 - mx : (from[1] + to[1]) / 2 - my
              return (
                along === (heading % 180 === 0 ? 'x' : 'y') &&
                Math.abs(middle) < 1e-6 &&
                Math.abs((along === 'x' ? dx : dy) - length) < 1e-6
              )
            })
            expect([id, own.length >= 1]).toEqual([id, true])
          }
        for (const { id } of dock.sections) expect(texts).toContain(id)
        const code = dock.fingerprint.all.slice(0, 12).replace(/(.{4})(?=.)/g, '$1 ')
        for (const sheet of paper.sheets) {
          const own = textsOf(sheet).map(({ text }) => text)
          expect(own).toContain(code)
          expect(own).toContain('May 1, 2026')
        }
        // Each pair is drawn in exactly one view.
        expect(
          alikePairs(dock)
            .flat()
            .map(({ id }) => id)
            .sort(),
        ).toEqual(dock.pairs.map(({ id }) => id).sort())
      })

  for (const [name, change] of DOCKS)
    for (const [size, units] of [
      ['letter', 'imperial'],
      ['a4', 'metric'],
    ] as const)
      it(`of ${name} is measured with a ruler on ${size}: times the scale of its title block it is the Dock within 0.5 %`, () => {
        const design = parsedDesign({ ...demoDesign, dock: { ...demoDesign.dock, ...change } })
        const dock = quick(design)
        const { sheets } = drawing(dock, design, { ...OPTIONS, size, units })
        const measured = (text: string, meters: number): boolean =>
          sheets.some((sheet) =>
            scalesOf(sheet, units).some((scale) => dimensioned(sheet, scale, text, meters)),
          )
        for (const { id, length, role } of dock.sections)
          if (role !== 'ramp')
            expect([id, measured(formatLength(length, english(units)), length)]).toEqual([id, true])
        for (const { id, spacing } of dock.pairs)
          expect([id, measured(formatLength(spacing, english(units)), spacing)]).toEqual([id, true])
        // One pair of each kind is drawn; the heights of all are in the table.
        const drawnPairs = pairsByBrace(dock).map(([first]) => first!)
        for (const { id, setHeight } of dock.legs.filter((leg) =>
          drawnPairs.some(({ legs }) => legs.includes(leg.id)),
        ))
          expect([id, measured(formatLength(setHeight, english(units)), setHeight)]).toEqual([id, true])
        for (const { id, brace } of dock.pairs)
          if (brace)
            expect([id, measured(formatLength(brace.stock, english(units)), brace.stock)]).toEqual([id, true])
        // Where each leg stands on the plan, from each other.
        const found = new Set<string>()
        for (const sheet of sheets.filter(({ bookmark }) => bookmark?.startsWith('Plan')))
          for (const scale of scalesOf(sheet, units))
            for (const id of legsOn(sheet, scale, dock)) found.add(id)
        expect([...found].sort()).toEqual(
          dock.legs
            .filter(({ stock }) => stock !== null)
            .map(({ id }) => id)
            .sort(),
        )
      })

  it('is not measured right at another scale than it says', () => {
    const dock = quick(demoDesign)
    const [sheet] = drawing(dock, demoDesign, OPTIONS).sheets
    const { length } = dock.sections.find(({ role }) => role !== 'ramp')!
    const text = formatLength(length, english('imperial'))
    const [scale] = scalesOf(sheet!, 'imperial') as [number]
    expect(dimensioned(sheet!, scale, text, length)).toBe(true)
    expect(dimensioned(sheet!, scale * 1.01, text, length)).toBe(false)
    expect(legsOn(sheet!, scale, dock)).toHaveLength(dock.legs.length)
    expect(legsOn(sheet!, scale * 1.01, dock).length).toBeLessThan(dock.legs.length)
  })

  it('has no letter lower than 1.8 mm', () => {
    const design = parsedDesign({ ...demoDesign, dock: { ...demoDesign.dock, sections: 12 } })
    for (const size of ['letter', 'a4', 'tabloid', 'a3'] as const)
      for (const sheet of drawing(quick(design), design, { ...OPTIONS, size }).sheets)
        for (const mark of textsOf(sheet))
          expect([mark.text, mark.size * CAP_HEIGHT >= 1.8]).toEqual([mark.text, true])
  })

  it('is broken at joints, its parts no longer than the sheet and none left out', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -5, max: 5, noNaN: true }),
        fc.double({ min: 0.1, max: 200, noNaN: true }),
        fc.double({ min: 3, max: 40, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (from, long, most, less) => {
          const last = most - less
          const joints = Array.from({ length: 80 }, (_, i) => from + 1.3 + 2.4 * i)
          const places = breaks(from, from + long, most, last, joints)
          expect(places[0]).toBe(from)
          expect(places.at(-1)).toBe(from + long)
          for (let i = 1; i < places.length; i++) {
            const ends = (i > 1 ? 0.45 : 0) + (i < places.length - 1 ? 0.45 : 0)
            expect(places[i]!).toBeGreaterThan(places[i - 1]!)
            expect(places[i]! - places[i - 1]! + ends).toBeLessThanOrEqual(most + 1e-9)
          }
        },
      ),
      { numRuns: 500, seed: 7 },
    )
  })

  it('takes few sheets, and plan and side view stand together', () => {
    for (const [sections, most] of [
      [5, 3],
      [12, 5],
      [20, 4],
    ] as const)
      for (const size of ['letter', 'a4'] as const) {
        // The demo's bed falls 7 ft and more over twelve sections: twenty stand on a flat one.
        const soundings = [-3, 0, 4, 60].map((distance, i) => ({
          distance,
          depth: [-0.9, 0, 0.4, 1.1][i]!,
        }))
        const design = parsedDesign({
          ...demoDesign,
          ...(sections === 20 && { site: { ...demoDesign.site, soundings } }),
          dock: { ...demoDesign.dock, sections },
        })
        const { sheets } = drawing(quick(design), design, { ...OPTIONS, size })
        expect([sections, size, sheets.length <= most]).toEqual([sections, size, true])
        expect(sheets[0]!.bookmark).toMatch(/^Plan and side view/)
      }
  })

  it('tells customer, order, who surveyed and when, and every line of the notes', () => {
    const job = {
      customer: 'A. Customer',
      order: 'No. 17',
      by: 'B. Surveyor',
      surveyed: '2026-04-12, calm',
      notes: 'Gate is locked.\nCall before you come.',
    }
    const design = parsedDesign({ ...demoDesign, job })
    const { sheets } = drawing(quick(design), design, OPTIONS)
    for (const sheet of sheets) {
      const texts = textsOf(sheet).map(({ text }) => text)
      for (const fact of [job.customer, job.order, job.by, job.surveyed, OPTIONS.by])
        expect(texts).toContain(fact)
    }
    const all = sheets.flatMap(textsOf).map(({ text }) => text)
    for (const line of job.notes.split('\n')) expect(all).toContain(line)
    // However many there are.
    const lines = Array.from({ length: 400 }, (_, i) => `Note number ${i}`)
    const long = parsedDesign({ ...demoDesign, job: { ...job, notes: lines.join('\n') } })
    const told = drawing(quick(long), long, OPTIONS).sheets.flatMap(textsOf)
    expect(lines.filter((line) => !told.some(({ text }) => text === line))).toEqual([])
  })

  it('names bolts by the size that they are asked for by, and what customers add by name', () => {
    const design = parsedDesign({
      ...demoDesign,
      dock: { ...demoDesign.dock, sections: 4, extras: { bumper: 3 } },
    })
    const inch = drawing(quick(design), design, OPTIONS).sheets.flatMap(textsOf)
    expect(inch.map(({ text }) => text)).toContain('Hook bolt 5/16 in × 3 in')
    expect(inch.map(({ text }) => text)).toContain('Pin bolt 3/8 in × 2 1/2 in')
    expect(boltSize({ diameter: 0.008, length: 0.08 }, ENGLISH_METRIC)).toBe('M8 × 80')
    expect(inch.some(({ text }) => text.includes('A: Bumper 18 in'))).toBe(true)
    const bumpers = planView(drawnOf(projectOf(design, demoCatalog, quick(design)), ENGLISH_METRIC)).notes
    expect(bumpers.filter(({ text }) => text === 'A')).toHaveLength(3)
  })

  it('has every word of the head of its table in every unit', () => {
    for (const units of ['imperial', 'metric'] as const) {
      const texts = drawing(quick(demoDesign), demoDesign, { ...OPTIONS, units }).sheets.flatMap(textsOf)
      const bold = texts.filter(({ weight }) => weight === 'bold').map(({ text }) => text)
      const words = bold.flatMap((text) => text.split(' '))
      for (const key of [
        'number',
        'station',
        'bed',
        'set-height',
        'set-height-frame',
        'length',
        'brace-hole',
      ])
        for (const word of en[key as keyof typeof en].split(' '))
          expect([units, key, word, words.includes(word)]).toEqual([units, key, word, true])
      expect(bold.filter((text) => text.includes('…'))).toEqual([])
    }
  })

  it('hatches what is cut, and hides what is in the ground', () => {
    const dock = quick(demoDesign)
    const drawn = drawnOf(projectOf(demoDesign, demoCatalog, dock), ENGLISH_METRIC)
    const hook = jointView(drawn, 'hook')!
    const cut = hook.paths.filter(({ hatch }) => hatch)
    expect(new Set(cut.map(({ hatch }) => hatch!.angle))).toEqual(new Set([45, 135]))
    // A rail of 6 x 2 in with walls of 1/8 in: area of its cut by hand 2 (6 + 2 - 2/8) / 8 = 1.9375 sq in.
    const area = (points: readonly Point[]): number =>
      Math.abs(
        points.reduce((sum, [x, y], i) => {
          const [u, v] = points[(i + 1) % points.length]!
          return sum + (x * v - u * y) / 2
        }, 0),
      )
    const rail = cut.find(({ layer }) => layer === 'FRAME')!
    expect((area(rail.points) - area(rail.hollow!)) / 0.0254 ** 2).toBeCloseTo(1.9375, 3)
    // Lines of hatching lie within what they are of: so long in all as its area over their distance.
    const painted = paintView({ ...hook, paths: [rail], notes: [], dimensions: [] }, [0, 0], 4).marks
    const lines = painted.filter((m): m is PathMark => m.kind === 'path' && !m.closed)
    const long = lines.reduce((sum, { points: [a, b] }) => sum + Math.hypot(b![0] - a![0], b![1] - a![1]), 0)
    const paper = ((area(rail.points) - area(rail.hollow!)) * 1e6) / 16
    expect(Math.abs((long * rail.hatch!.every) / paper - 1)).toBeLessThan(0.05)
    const post = dock.placements.find(({ kind }) => factsOf(kind).frame === 'post-at-bed')!
    const extras = elevationView(drawn).paths.filter(({ layer }) => layer === 'EXTRA')
    const under = extras.filter(({ points }) => Math.min(...points.map(([, y]) => y)) < post.at[2] - 1e-5)
    // Its tube and its auger.
    expect(under.length).toBeGreaterThan(1)
    for (const { hidden, fill } of under) expect([hidden, fill]).toEqual([true, undefined])
  })

  it('is the same each time', () => {
    const dock = quick(demoDesign)
    expect(drawing(dock, demoDesign, OPTIONS)).toEqual(drawing(dock, demoDesign, OPTIONS))
  })
})

describe('the square code of a drawing', () => {
  const LINK = `https://example.org/dock.html#leadline=${'aB3_'.repeat(180)}`
  it('stands on one of its sheets, on nothing else, and is read back by another program', () => {
    for (const change of [{}, { sections: 12 }, { sections: 4, head: { shape: 'tee', sections: 4 } }]) {
      const design = parsedDesign({ ...demoDesign, dock: { ...demoDesign.dock, ...change } })
      const { sheets } = drawing(quick(design), design, { ...OPTIONS, link: LINK })
      const told = sheets.filter((sheet) =>
        textsOf(sheet).some(({ text }) => text.startsWith('Opens this dock')),
      )
      expect(told).toHaveLength(1)
      const [sheet] = told
      expect(faults(sheet!)).toEqual([])
      const k = 12
      const [width, height] = [Math.round(sheet!.width * k), Math.round(sheet!.height * k)]
      const pixels = new Uint8ClampedArray(width * height * 4).fill(255)
      for (const mark of sheet!.marks) {
        if (mark.kind !== 'path' || mark.fill !== '#000000' || mark.stroke) continue
        const [[x0, y0], , [x1, y1]] = mark.points as [[number, number], unknown, [number, number]]
        for (let y = Math.round(y0 * k); y < Math.round(y1 * k); y++)
          for (let x = Math.round(x0 * k); x < Math.round(x1 * k); x++)
            pixels.fill(0, (y * width + x) * 4, (y * width + x) * 4 + 3)
      }
      expect(jsQr(pixels, width, height)?.data).toBe(LINK)
    }
  })

  it('is left out where no code can hold the address', () => {
    const { sheets } = drawing(quick(demoDesign), demoDesign, {
      ...OPTIONS,
      link: `https://example.org/#${'x'.repeat(3000)}`,
    })
    expect(sheets.flatMap(textsOf).some(({ text }) => text.startsWith('Opens this dock'))).toBe(false)
  })
})
