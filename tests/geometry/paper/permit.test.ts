/** The permit drawing: its figures against those of the Dock worked by hand, what nobody has said left to be written. */
import { describe, expect, it } from 'vitest'
import { lakeSection, lotClearances, sitePlan } from '../../../geometry/drawing/permit-views.ts'
import { scaleText } from '../../../geometry/drawing/sheet.ts'
import type { Paper } from '../../../geometry/paper/marks.ts'
import { paperFrom } from '../../../geometry/paper/paper-of.ts'
import { permitPaper } from '../../../geometry/sheets/permit.ts'
import { type Design, demoCatalog, demoDesign, ENGLISH, english, projectOf } from '../../../rules/index.ts'
import { parsedDesign } from '../../support/arbitraries.ts'
import { deriveFound } from '../../support/at-once.ts'

const metric = english('metric')
const of = (design: Design) =>
  paperFrom(projectOf(design, demoCatalog, deriveFound(design, demoCatalog)), {
    units: 'metric',
    language: ENGLISH,
    size: 'a4',
    date: '2026-05-01',
    by: '',
  })
const textsOf = ({ sheets }: Paper): string[] =>
  sheets.flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])))

/** Lot lines along the dock 5 m to the left of its middle line and askew to the right; the lake lies to the south. */
const lots = parsedDesign({
  ...demoDesign,
  job: { customer: 'A. Customer', surveyed: '2026-04-12' },
  site: {
    ...demoDesign.site,
    bearing: 180,
    limits: {
      reach: 12,
      sides: [
        { from: [0, 5], to: [20, 5] },
        { from: [0, -6], to: [10, -16] },
      ],
    },
  },
})

describe('a permit drawing', () => {
  it('has overall lengths, reach, depth and levels as they follow from the Dock', () => {
    const drawn = of(lots)
    const { dock, bed } = drawn
    const ramp = dock.sections.find(({ role }) => role === 'ramp')!
    const last = dock.sections.at(-1)!
    const end = last.x + last.length
    const long = end - ramp.x
    const plan = sitePlan(drawn)
    const told = plan.dimensions.map(({ text }) => text)
    const m = (value: number): string => `${value.toFixed(2)} m`
    expect(told).toContain(m(long))
    expect(told).toContain(m(end))
    expect(told).toContain(m(last.width))
    const section = lakeSection(drawn, plan.bounds)
    const inSection = section.dimensions.map(({ text }) => text)
    for (const value of [long, end, lots.dock.deckHeight, -bed.bedAt(end, 0)])
      expect(inSection).toContain(m(value))
    const texts = textsOf(permitPaper(drawn))
    expect(texts).toContain(`${m(end)}; limit given: 12.00 m`)
    expect(texts).toContain(`${m(long)} by ${m(last.width)}`)
    const { low, high } = lots.site.levels
    expect(texts).toContain(`${m(-low)} under the survey day`)
    expect(texts).toContain(`${m(high)} over the survey day`)
    expect(texts).toContain(m(lots.dock.deckHeight - high))
    expect(texts.filter((text) => text.startsWith('edge at'))).toHaveLength(2)
    // Deck over the lake: of the level part from the hinge on, and what of the ramp lies beyond the water's edge.
    const over =
      (end - Math.max(0, end - (dock.sections.length - 1) * last.length - ramp.length)) * last.width
    const area = texts.find((text) => / m\u00b2$/.test(text))!
    expect(Math.abs(Number.parseFloat(area) - over)).toBeLessThan(0.6)
  })

  it('measures from the nearest corner square to each lot line', () => {
    const drawn = of(lots)
    const last = drawn.dock.sections.at(-1)!
    const [left, right] = lotClearances(drawn)
    expect(left!.long).toBeCloseTo(5 - last.width / 2, 9)
    // x + y = -6 askew: nearest is the right corner of the shore end.
    const ramp = drawn.dock.sections.find(({ role }) => role === 'ramp')!
    expect(right!.long).toBeCloseTo((ramp.x - ramp.width / 2 + 6) / Math.SQRT2, 6)
    const texts = textsOf(permitPaper(drawn))
    for (const { long } of [left!, right!]) expect(texts).toContain(`${long.toFixed(2)} m`)
  })

  it('draws north where it is known, and leaves room to draw it where it is not', () => {
    const north = (design: Design) => textsOf(permitPaper(of(design))).filter((text) => text === 'N')
    const asked = (design: Design) =>
      textsOf(permitPaper(of(design))).filter((text) => text.startsWith('North:'))
    const { bearing: _, ...site } = lots.site
    const unknown = { ...lots, site }
    expect([north(lots).length, asked(lots).length]).toEqual([1, 0])
    expect([north(unknown).length, asked(unknown).length]).toEqual([0, 1])
  })

  it('leaves a line to write on for what nobody has said, and says to ask the authority', () => {
    const known = textsOf(permitPaper(of(lots)))
    const blank = textsOf(permitPaper(of(demoDesign)))
    for (const label of ['Address and parcel', 'Lake or river', 'Signature']) {
      expect(known).toContain(label)
      expect(blank).toContain(label)
    }
    expect(known).toContain('A. Customer')
    expect(blank).toContain('Applicant')
    expect(known.join(' ')).toContain('ask yours what it wants')
  })

  it('tells scales as surveyors do', () => {
    expect(scaleText(240, english('imperial'))).toBe('1 in = 20 ft')
    expect(scaleText(48, english('imperial'))).toBe('1/4 in = 1 ft')
    expect(scaleText(125, metric)).toBe('1:125')
  })
})
