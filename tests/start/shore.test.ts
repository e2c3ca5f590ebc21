/** A shore from a few answers: figures by hand, 1 ft = 0.3048 m. */
import { describe, expect, it } from 'vitest'
import { type Design, demoCatalog, demoDesign, derive, parseDesign } from '../../rules/index.ts'
import { setLevel } from '../../src/parameters/design-edits.ts'
import { firstShore } from '../../src/start/first-shore.ts'
import { missingIn } from '../../src/start/missing.ts'
import { answer, answerOf, grown, laidOut, placesAssumed } from '../../src/start/shore.ts'
import { FIGURES } from '../../src/start/use-answer.ts'

const FOOT = 0.3048
const first = firstShore('imperial', demoCatalog)
const tell = (
  design: Design,
  ...answers: Parameters<typeof answer> extends [Design, ...infer A] ? A : never
) => grown(answer(design, ...answers), demoCatalog, design)
const line = ({ site }: Design) =>
  site.soundings.map(({ distance, depth, assumed = false }) => [
    Math.round((distance / FOOT) * 1e6) / 1e6,
    Math.round((depth / FOOT) * 1e6) / 1e6,
    assumed,
  ])

describe('where nobody has said anything', () => {
  it('all is assumed and told as such, and nothing is the demo’s', () => {
    expect(line(first)).toEqual([
      [-10, -1, true],
      [0, 0, false],
      [10, 1, true],
      [30, 3, true],
    ])
    expect(first.site.wind).toBeUndefined()
    expect(first.site.wake).toBeUndefined()
    expect(first.site.levels).not.toEqual(demoDesign.site.levels)
    expect(first.dock.extras).toEqual({})
    const [found] = derive(first, demoCatalog).findings.filter(({ code }) => code === 'site-assumed')
    expect(found?.values.keys?.value).toEqual(['shore', 'bottom', 'levels', 'wind'])
  })

  it('it is as it would be read, to the last digit, in either unit', () => {
    for (const units of ['imperial', 'metric'] as const) {
      const begun = firstShore(units, demoCatalog)
      const parsed = parseDesign(begun)
      expect(parsed.ok && parsed.value).toEqual(begun)
    }
  })

  it('the dock is as short as one can be, and the same as laid out anew', () => {
    expect(first.dock).toMatchObject({ sections: 2, ramp: true })
    expect(laidOut(first, demoCatalog)).toEqual(first)
  })

  it('in meters it is asked at 3 and 10 m', () => {
    const { site } = firstShore('metric', demoCatalog)
    expect(site.soundings.map((s) => s.distance)).toEqual([-3, 0, 3, 10])
  })
})

describe('an answer', () => {
  it('of one depth draws the shore through it; the other stays assumed', () => {
    const one = tell(first, 'near', { depth: 2 * FOOT })
    // 2 ft in 10 is 6 ft in 30.
    expect(line(one)).toEqual([
      [-10, -1, true],
      [0, 0, false],
      [10, 2, false],
      [30, 6, true],
    ])
    // Ramp ends at the first section's edge, 0.65 m back of the water; 3.698 m to 10 ft: one section and no room for two (2 x 2.4638 m).
    expect(one.dock).toMatchObject({ sections: 2, ramp: true })
  })

  it('of both makes the dock as long as the shore is known', () => {
    const both = tell(tell(first, 'near', { depth: 2 * FOOT }), 'far', { depth: 4 * FOOT })
    expect(line(both).slice(2)).toEqual([
      [10, 2, false],
      [30, 4, false],
    ])
    // From -0.65 m: three spans of 2.4638 m and a frame of 2.4384 m come to 9.18 m, its legs, 0.0873 m short of its end, to 9.09 of 9.144 m.
    expect(both.dock).toMatchObject({ sections: 5, ramp: true })
    expect(answerOf(both, 'far')).toEqual({ distance: 30 * FOOT, offset: 0, depth: 4 * FOOT })
  })

  it('of a distance alone says nothing of the depth there', () => {
    const moved = answer(first, 'far', { distance: 40 * FOOT })
    expect(line(moved)[3]).toEqual([40, 3, true])
  })

  it('of the bank is a height; one too low for a ramp over high water has none', () => {
    expect(line(tell(first, 'bank', { depth: 3 * FOOT }))[0]).toEqual([-10, -3, false])
    const level = tell(first, 'bank', { depth: 0 })
    expect(line(level)[0]).toEqual([-10, 0, false])
    expect(level.dock).toMatchObject({ ramp: false })
    const codes = derive(level, demoCatalog).findings.map(({ code }) => code)
    expect(codes).not.toContain('start-not-found')
  })

  it('of the bank measures it: each height that the question offers carries the dock within a step of where it was told', () => {
    for (const units of ['imperial', 'metric'] as const)
      for (const depth of [FIGURES[units].bank.low, FIGURES[units].bank.steps]) {
        const told = tell(tell(firstShore(units, demoCatalog), 'near', { depth: FOOT }), 'bank', { depth })
        expect(told.dock.ramp).toBe(true)
        const codes = derive(told, demoCatalog).findings.map(({ code }) => code)
        expect(codes, `${units} ${depth}`).not.toContain('bank-not-sounded')
      }
  })

  it('leaves a dock as it is that somebody has laid out', () => {
    const own: Design = { ...first, dock: { ...first.dock, sections: 7 } }
    expect(tell(own, 'far', { depth: 4 * FOOT }).dock).toEqual(own.dock)
    const plan: Design = { ...first, dock: { ...first.dock, plan: [{ id: 'a', on: null, along: 0 }] } }
    expect(tell(plan, 'far', { depth: 4 * FOOT }).dock).toEqual(plan.dock)
  })

  it('where there is no sounding for it is one more', () => {
    const edge: Design = {
      ...first,
      site: { ...first.site, soundings: [{ distance: 0, offset: 0, depth: 0 }] },
    }
    const told = answer(answer(answer(edge, 'near', { depth: FOOT }), 'far', { depth: 2 * FOOT }), 'bank', {
      depth: FOOT,
    })
    expect(line(told)).toEqual([
      [0, 0, false],
      [10, 1, false],
      [30, 2, false],
      [-10, -1, false],
    ])
  })

  it('keeps what was measured in between', () => {
    const told = answer(demoDesign, 'far', { depth: 2 })
    expect(told.site.soundings.map((s) => s.depth)).toEqual([-0.9, 0, 0.5, 0.9, 2])
  })
})

describe('what nobody has said', () => {
  it('is each thing by itself, in the order in which it is asked', () => {
    expect(missingIn(first)).toEqual(['near', 'far', 'bank', 'bottom', 'levels.high', 'levels.low', 'wind'])
    const known = tell(tell(first, 'near', { depth: FOOT }), 'bank', { depth: FOOT })
    expect(missingIn(known)).toEqual(['far', 'bottom', 'levels.high', 'levels.low', 'wind'])
  })

  it('one level that is said leaves the other to say', () => {
    const drops = setLevel(first, 'low', -0.3)
    expect(drops.site.assumed).toEqual(['bottom', 'levels.high', 'wind'])
    expect(parseDesign(drops).ok).toBe(true)
    const found = derive(drops, demoCatalog).findings.find(({ code }) => code === 'site-assumed')
    expect(found?.values.keys?.value).toEqual(['shore', 'bottom', 'levels.high', 'wind'])
    expect(setLevel(drops, 'high', 0.3).site.assumed).toEqual(['bottom', 'wind'])
    expect(setLevel(drops, 'low', -0.4).site.assumed).toEqual(['bottom', 'levels.high', 'wind'])
  })

  it('a place between two that were measured is told by its index, and answered there', () => {
    const soundings = [...first.site.soundings, { distance: 1.5, offset: 0, depth: 0.2 }]
    const between = { ...first, site: { ...first.site, soundings } }
    expect(placesAssumed(between)).toEqual(['bank', 2, 'far'])
    const said = answer(between, 2, { depth: 2 * FOOT })
    expect(said.site.soundings[2]).toEqual({ distance: 10 * FOOT, offset: 0, depth: 2 * FOOT })
    expect(placesAssumed(said)).toEqual(['bank', 'far'])
  })
})
