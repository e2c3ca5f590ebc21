/** Stations, labels and the survey form: what they tell is the dock's, and all of it. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { demoCatalog, demoDesign } from '../../../rules/index.ts'
import {
  countCards,
  fraction,
  labels,
  paperWords,
  sentence,
  stations,
  survey,
} from '../../../rules/papers.ts'
import en from '../../../rules/words/papers.en.json' with { type: 'json' }
import { anyCase } from '../../support/arbitraries.ts'
import { deriveAtOnce } from '../../support/at-once.ts'
import { runs } from '../../support/runs.ts'

const SEED = Number(process.env.LEADLINE_SEED ?? 51_005)
const RUNS = runs(200)
const words = [paperWords('en', 'imperial'), paperWords('en', 'metric')]

describe('the stations of the demo dock', () => {
  const dock = deriveAtOnce(demoDesign, demoCatalog)
  const { stations: all, start, ramp } = stations(dock, demoDesign, demoCatalog)

  it('are one pitch apart, the first at the shore end of the standing section', () => {
    expect(all.map(({ section, edge }) => `${section}.${edge}`)).toEqual([
      's2.start',
      's2.end',
      's3.end',
      's4.end',
      's5.end',
    ])
    // Leg axis 0.087313 from the edge; length 2.4384 and gap 0.0254.
    expect(all[0]!.fromStart).toBeCloseTo(0.087313, 6)
    expect(all[1]!.fromStart).toBeCloseTo(2.4384 - 0.087313, 6)
    for (const i of [2, 3, 4]) expect(all[i]!.fromStart - all[i - 1]!.fromStart).toBeCloseTo(2.4638, 5)
    for (const { fromWater, fromStart } of all) expect(fromWater - fromStart).toBeCloseTo(start!, 5)
    expect(ramp).toMatchObject({ section: 's1', slope: dock.ramp!.slope })
  })

  it('have the depth that the soundings have there', () => {
    // s5's legs: between 8 m (0.9 m) and 12 m (1.4 m) deep, in a straight line.
    const last = all.at(-1)!
    const depth = 0.9 + ((last.fromWater - 8) / 4) * 0.5
    expect(last.left!.depth).toBeCloseTo(depth, 5)
    expect(last.left!.setHeight).toBeCloseTo(depth + 0.45, 5)
    expect(last.left!.setHeightFrame).toBeCloseTo(depth + 0.45 - 0.0254, 5)
    expect(last.left!.brace).toMatchObject({ pair: 's5.end', code: 'brace-54' })
    expect([last.left!.brace!.end, last.right!.brace!.end].sort()).toEqual(['high', 'low'])
  })
})

describe(`stations, labels and cards (seed ${SEED}, ${RUNS} docks)`, () => {
  it('tell each leg once with the dock’s own figures, each frame and leg with a label, and no sentence has a gap', () => {
    let soft = 0
    fc.assert(
      fc.property(anyCase, ({ design, catalog }) => {
        const dock = deriveAtOnce(design, catalog)
        const { stations: all } = stations(dock, design, catalog)
        const told = all.flatMap(({ left, right }) => [left, right].filter((leg) => leg !== null))
        expect(told.map(({ leg }) => leg).sort()).toEqual(dock.legs.map(({ id }) => id).sort())
        expect(all.map(({ number }) => number)).toEqual(all.map((_, i) => i + 1))
        for (const row of told) {
          const leg = dock.legs.find(({ id }) => id === row.leg)!
          const { setHeight, setHeightFrame, code, stock, aboveDeck, pad } = leg
          expect(row).toMatchObject({ setHeight, setHeightFrame, code, stock, aboveDeck, pad })
          expect(row.firmDepth).toBeCloseTo(-leg.bed, 6)
          if (row.firmDepth - row.depth > 0.01) soft++
          const pair = dock.pairs.find(({ brace, legs }) => brace && legs.includes(leg.id))
          expect(row.brace?.code).toBe(pair?.brace?.code)
          if (pair) expect(row.brace!.end).toBe(pair.brace!.low === leg.id ? 'low' : 'high')
        }

        const made = labels(dock, catalog)
        const ids = [
          ...dock.sections.map(({ id }) => id),
          ...dock.legs.flatMap(({ id, code }) => (code ? [id] : [])),
        ]
        expect(made.map(({ id }) => id).sort()).toEqual(ids.sort())
        const check = dock.fingerprint.all.slice(0, 12)
        for (const { id, qr, where } of made) {
          expect(qr).toBe(`${id} ${check}`)
          expect(qr).toMatch(/^[A-Za-z0-9_.-]+ [0-9a-f]{12}$/)
          for (const one of where)
            for (const inWords of words) expect(sentence(one, inWords)).toMatch(/^[^{}]{5,}$/)
        }
        for (const { rows } of countCards(dock, catalog))
          for (const { goes, turns } of rows)
            for (const one of [goes, ...turns.map(({ say }) => say)])
              expect(sentence(one, words[0]!)).toMatch(/^[^{}]{5,}$/)
      }),
      { seed: SEED, numRuns: RUNS },
    )
    expect(soft).toBeGreaterThan(RUNS / 40)
  })
})

describe('turns', () => {
  it.each([
    [0.75, '3/4'],
    [1, '1'],
    [1.5, '1 1/2'],
    [2.25, '2 1/4'],
    [0, '0'],
    [0.6, '0.6'],
    [1e-7, '0'],
    [0.2499999, '1/4'],
    [1 / 3, '0.33'],
    [0.9999999, '1'],
  ])('%d is %s', (turns, words) => expect(fraction(turns)).toBe(words))
})

describe('the survey sheet', () => {
  it('asks every meter, or every 2 to 4 feet, from the bank outward', () => {
    const meters = survey('metric').rows.map(({ distance }) => distance)
    expect(meters).toEqual(Array.from({ length: 19 }, (_, i) => i - 3))
    const feet = survey('imperial').rows.map(({ distance }) => Math.round(distance / 0.3048))
    expect(feet.slice(0, 9)).toEqual([-8, -4, 0, 2, 4, 6, 8, 12, 16])
    for (let i = 1; i < feet.length; i++) expect([2, 4]).toContain(feet[i]! - feet[i - 1]!)
    expect(survey('imperial').rows.filter(({ place }) => place === 'edge')).toEqual([
      { distance: 0, place: 'edge' },
    ])
  })

  it('has words for all of it, and units of one system', () => {
    for (const units of ['metric', 'imperial'] as const) {
      const form = survey(units)
      const fields = form.parts.flatMap(({ fields }) => fields)
      const keys = [
        form.title,
        ...form.how,
        ...form.columns,
        ...form.cautions,
        ...form.parts.map(({ title }) => title),
        ...fields.flatMap(({ label, hint, choices }) => [label, ...(hint ? [hint] : []), ...choices]),
      ]
      for (const key of keys) expect(en, key).toHaveProperty([key])
      const foreign = units === 'metric' ? ['ft', 'in', 'mi', 'mph', 'lb'] : ['m', 'cm', 'km', 'm/s', 'kg']
      expect(fields.map(({ unit }) => unit).filter((unit) => unit && foreign.includes(unit))).toEqual([])
      expect(fields.some(({ label }) => label === 'survey-services')).toBe(true)
    }
  })
})
