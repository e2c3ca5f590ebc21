/** Stations, labels and the survey form: what they tell is the dock's, and all of it. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  assessKit,
  type Catalog,
  type Design,
  type Dock,
  demoCatalog,
  demoDesign,
  deriveKit,
  english,
  makeBed,
  projectOf,
  wordsOf,
} from '../../../rules/index.ts'
import { setLegs } from '../../../rules/papers/set-legs.ts'
import { NOTHING_KNOWN, surveyKnown } from '../../../rules/papers/survey-known.ts'
import { countCards, fraction, labels, PAPERS, sentence, survey } from '../../../rules/papers.ts'
import en from '../../../rules/words/en/papers.json' with { type: 'json' }
import { anyCase } from '../../support/arbitraries.ts'
import { runs } from '../../support/runs.ts'

const SEED = Number(process.env.LEADLINE_SEED ?? 51_005)
const RUNS = runs(200)
const words = [wordsOf(PAPERS, english('imperial')), wordsOf(PAPERS, english('metric'))]
const dockOf = (design: Design, catalog: Catalog): Dock => assessKit(deriveKit(design, catalog))

describe('where the legs of the demo dock stand', () => {
  const dock = dockOf(demoDesign, demoCatalog)
  const legs = setLegs(projectOf(demoDesign, demoCatalog, dock)).filter(({ place }) => place.side === 'left')
  const out = legs.map((leg) => leg.out - dock.start!)

  it('one pitch apart, the first at the shore end of the standing section', () => {
    expect(legs.map(({ leg }) => leg)).toEqual([
      's2.start.left',
      's2.end.left',
      's3.end.left',
      's4.end.left',
      's5.end.left',
    ])
    // Leg axis 0.087313 from the edge; length 2.4384 and gap 0.0254.
    expect(out[0]).toBeCloseTo(0.087313, 5)
    expect(out[1]).toBeCloseTo(2.4384 - 0.087313, 5)
    for (const i of [2, 3, 4]) expect(out[i]! - out[i - 1]!).toBeCloseTo(2.4638, 5)
  })

  it('with the depth that the soundings have there, to the deck, to the frame, and the brace that is there', () => {
    // s5's legs: between 8 m (0.9 m) and 12 m (1.4 m) deep, in a straight line.
    const last = legs.at(-1)!
    const depth = 0.9 + ((last.out - 8) / 4) * 0.5
    expect(last.depth).toBeCloseTo(depth, 5)
    expect(last.setHeight).toBeCloseTo(depth + 0.45, 5)
    expect(last.setHeightFrame).toBeCloseTo(depth + 0.45 - 0.0254, 5)
    expect(last.braces.map(({ code }) => code)).toEqual(['brace-54'])
  })
})

describe(`legs, labels and cards (seed ${SEED}, ${RUNS} docks)`, () => {
  it('tell each leg once with the dock’s own figures, each frame and leg with a label, and no sentence has a gap', () => {
    let soft = 0
    fc.assert(
      fc.property(anyCase, ({ design, catalog }) => {
        const dock = dockOf(design, catalog)
        const told = setLegs(projectOf(design, catalog, dock))
        expect(told.map(({ leg }) => leg)).toEqual(dock.legs.map(({ id }) => id))
        expect(told.map(({ number }) => number)).toEqual(told.map((_, i) => i + 1))
        const bed = makeBed(design.site)
        for (const row of told) {
          const leg = dock.legs.find(({ id }) => id === row.leg)!
          const { setHeight, setHeightFrame, stock, aboveDeck } = leg
          expect(row).toMatchObject({ setHeight, setHeightFrame, stock, aboveDeck })
          expect(row.depth).toBeCloseTo(-leg.bed, 6)
          if (row.depth + bed.bedAt(leg.x, leg.y) > 0.01) soft++
          const pairs = dock.pairs.filter(({ brace, legs }) => brace && legs.includes(leg.id))
          expect(row.braces.map(({ code, end }) => `${code} ${end}`).sort()).toEqual(
            pairs.map(({ brace }) => `${brace!.code} ${brace!.low === leg.id ? 'low' : 'high'}`).sort(),
          )
        }

        const made = labels(projectOf(design, catalog, dock))
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
  const job = { customer: 'B. Sample' }
  const known = (design: Design, units: 'metric' | 'imperial' = 'metric') => surveyKnown(design, units)

  it('has what is known of a customer’s place written in, in the units of its fields', () => {
    const site = {
      ...demoDesign.site,
      levels: { low: -0.3, high: 0.254 },
      shore: { kind: 'wall' as const, height: 0.6096 },
      bearing: 120,
      benchmark: { name: 'Bolt in the rock', above: 0.8 },
    }
    const design = { ...demoDesign, job, site }
    const metric = known(design)
    expect(metric.written.get('survey-customer')).toBe('B. Sample')
    expect(metric.written.get('survey-mark')).toBe('Bolt in the rock')
    // How high it is over the water is to be read anew: the lake moves.
    for (const key of ['survey-mark-over', 'survey-low', 'survey-high', 'survey-bank-height'] as const)
      expect(metric.written.has(key)).toBe(false)
    expect(metric.written.get('survey-bearing')).toBe('120')
    expect([...metric.ticked]).toEqual(['survey-sand', 'survey-wall'])
    const imperial = known(design, 'imperial').written
    expect(imperial.get('survey-wind')).toBe('22')
    expect(imperial.get('survey-fetch')).toBe('0.25')
  })

  it('has nothing of an example, nor what was only assumed', () => {
    expect(known(demoDesign)).toEqual(NOTHING_KNOWN)
    const site = { ...demoDesign.site, assumed: ['bottom' as const, 'wind' as const], wake: 0.254 }
    const { written, ticked } = known({ ...demoDesign, job, site }, 'imperial')
    expect([written.has('survey-wind'), written.has('survey-fetch'), ticked.size]).toEqual([false, false, 0])
    expect(written.get('survey-wake')).toBe('10')
  })

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
      const fields = [...form.parts.flatMap(({ fields }) => fields), ...form.lines]
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
