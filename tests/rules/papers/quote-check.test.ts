/** What a paper's check code covers, what an estimate cannot be talked into, and what a file that was tampered with is told by. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { demoCatalog, demoDesign } from '../../../rules/index.ts'
import { ownTerms } from '../../../rules/papers/quote-since.ts'
import {
  estimate,
  parseQuoteFile,
  type QuoteAsked,
  type QuoteFile,
  quote,
  quoteFile,
  verifyQuote,
} from '../../../rules/papers.ts'
import { anyCase } from '../../support/arbitraries.ts'
import { deriveAtOnce } from '../../support/at-once.ts'
import { runs } from '../../support/runs.ts'

const SEED = Number(process.env.LEADLINE_SEED ?? 61_007)
const RUNS = runs(100)
const DAY = { date: '2026-03-01' } as const

const demo = deriveAtOnce(demoDesign, demoCatalog)
const made = (asked: Partial<QuoteAsked> = {}) => quote(demo, demoDesign, demoCatalog, { ...DAY, ...asked })

const service = fc.record(
  {
    code: fc.constantFrom('delivery', 'set-up', 'take-out', 'storage', 'hours'),
    quantity: fc.integer({ min: 0, max: 40_000 }).map((n) => n / 1000),
  },
  { requiredKeys: ['code'] },
)
const other = fc.record({
  name: fc.constantFrom('crane', 'old dock taken back'),
  quantity: fc.integer({ min: 0, max: 9000 }).map((n) => n / 1000),
  price: fc.integer({ min: -90_000, max: 90_000 }),
  taxed: fc.boolean(),
})
const asked: fc.Arbitrary<QuoteAsked> = fc.record({
  date: fc.constantFrom('2026-03-01', '2026-04-01'),
  services: fc.array(service, { maxLength: 3 }),
  discount: fc.oneof(
    fc.constant(null),
    fc.integer({ min: 0, max: 1_000_000 }).map((n) => ({ share: n / 1e6 })),
    fc.integer({ min: 0, max: 700_000 }).map((amount) => ({ amount })),
  ),
  fetched: fc.boolean(),
  untaxed: fc.boolean(),
  other: fc.array(other, { maxLength: 2 }),
})

describe(`the check code of a quote (seed ${SEED}, ${RUNS} pairs)`, () => {
  it('is the same for the same terms, in whatever order and on whatever day they are given', () => {
    fc.assert(
      fc.property(asked, (ask) => {
        const turned = {
          ...ask,
          date: '2027-01-01',
          until: '2027-02-01',
          services: [...ask.services!].reverse(),
          other: [...ask.other!].reverse(),
        }
        expect(made(turned).check).toBe(made(ask).check)
      }),
      { seed: SEED, numRuns: RUNS },
    )
  })

  it('is another wherever the total or any one term is another', () => {
    fc.assert(
      fc.property(asked, asked, fc.integer({ min: 0, max: 5 }), (one, two, which) => {
        const key = (['services', 'discount', 'fetched', 'untaxed', 'other', 'all'] as const)[which]!
        const next = key === 'all' ? two : { ...one, [key]: two[key] }
        const [a, b] = [made(one), made(next)]
        // Said by the figures on the two papers, not by what the engine took them from.
        const told = ({ lines, discount, tax, total, freight }: typeof a): string =>
          JSON.stringify([lines.map((line) => JSON.stringify(line)).sort(), discount, tax, total, freight.by])
        expect(a.check === b.check).toBe(told(a) === told(b))
        if (a.total !== b.total) expect(a.check).not.toBe(b.check)
      }),
      { seed: SEED + 1, numRuns: RUNS },
    )
  })

  it.each<[string, Partial<QuoteAsked>]>([
    ['a discount', { discount: { share: 0.000_001 } }],
    ['an amount off', { discount: { amount: 1 } }],
    ['no freight', { fetched: true }],
    ['no tax', { untaxed: true }],
    ['a service', { services: [{ code: 'delivery' }] }],
    ['a line by hand', { other: [{ name: 'crane', quantity: 1, price: -1 }] }],
    ['a line for nothing', { other: [{ name: 'crane', quantity: 1, price: 0 }] }],
  ])('is another with %s than without', (_, ask) => {
    expect(made(ask).check).not.toBe(made().check)
  })

  it('is another for another option, another price, another tax; and none is the dock’s own', () => {
    const options = {
      ...demoDesign,
      dock: { ...demoDesign.dock, extras: { ...demoDesign.dock.extras, bumper: 5 } },
    }
    const dearer = {
      ...demoCatalog,
      frames: demoCatalog.frames.map((frame) => ({ ...frame, price: frame.price + 1 })),
    }
    const taxed = {
      ...demoCatalog,
      quote: { ...demoCatalog.quote, tax: { ...demoCatalog.quote!.tax!, share: 0.055_001 } },
    }
    const codes = [
      made().check,
      quote(deriveAtOnce(options, demoCatalog), options, demoCatalog, DAY).check,
      quote(deriveAtOnce(demoDesign, dearer), demoDesign, dearer, DAY).check,
      quote(deriveAtOnce(demoDesign, taxed), demoDesign, taxed, DAY).check,
      estimate(demo, demoDesign, demoCatalog, DAY).check,
      demo.fingerprint.all,
    ]
    expect(new Set(codes).size).toBe(codes.length)
    for (const code of codes) expect(code).toMatch(/^[0-9a-f]{64}$/)
  })
})

describe('an estimate', () => {
  it(`is the catalog’s, whatever else it is handed (seed ${SEED}, ${RUNS} docks)`, () => {
    fc.assert(
      fc.property(anyCase, asked, ({ design, catalog }, ask) => {
        const dock = deriveAtOnce(design, catalog)
        const plain = estimate(dock, design, catalog, { date: ask.date })
        expect(estimate(dock, design, catalog, ask)).toEqual(plain)
        expect(plain.goods).toBe(dock.totals.price)
        // What a quote with nothing asked for comes to.
        expect(plain.total).toBe(quote(dock, design, catalog, { date: ask.date }).total)
        expect(plain).toMatchObject({ format: 'leadline/estimate', until: null, terms: [] })
        expect(plain.lines.some(({ group }) => group === 'services' || group === 'other')).toBe(false)
      }),
      { seed: SEED + 2, numRuns: RUNS },
    )
  })

  it('takes the discount that the catalog gives everyone', () => {
    const usual = { ...demoCatalog, quote: { ...demoCatalog.quote, discount: 0.1 } }
    // 10 % of 575680
    expect(estimate(demo, demoDesign, usual, DAY).discount).toEqual({ amount: -57_568, share: 0.1 })
  })

  it('is no quote to a reader of quotes', () => {
    const parsed = parseQuoteFile(quoteFile(estimate(demo, demoDesign, demoCatalog, DAY), demoDesign))
    expect(parsed.ok ? [] : parsed.issues.map(({ path }) => path)).toEqual(['format'])
  })
})

const read = (file: unknown): QuoteFile => {
  const parsed = parseQuoteFile(JSON.parse(JSON.stringify(file)))
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
  return parsed.value
}

describe('a quote’s file, worked out again', () => {
  it('is as it was made, for any terms', () => {
    fc.assert(
      fc.property(asked, (ask) => {
        expect(verifyQuote(read(quoteFile(made(ask), demoDesign)), demoCatalog)).toEqual([])
      }),
      { seed: SEED + 3, numRuns: RUNS },
    )
  })

  const file = quoteFile(made({ discount: { share: 0.05 }, services: [{ code: 'delivery' }] }), demoDesign)
  it.each<[string, string[], unknown]>([
    ['a lower total', ['total'], { ...file, total: file.total - 1 }],
    ['another check code', ['check'], { ...file, check: '0'.repeat(64) }],
    [
      'a deeper discount',
      ['discount.amount', 'tax.amount', 'total', 'check'],
      { ...file, priced: { ...file.priced, discount: { millionths: 60_000 } } },
    ],
    [
      'a cheaper line',
      ['lines[0]'],
      { ...file, lines: [{ ...file.lines[0]!, amount: 1 }, ...file.lines.slice(1)] },
    ],
    ['a line less', ['lines'], { ...file, lines: file.lines.slice(0, -1) }],
    [
      'another dock',
      ['fingerprint.design', 'lines[0]', 'check'],
      { ...file, design: { ...demoDesign, dock: { ...demoDesign.dock, sections: 4 } } },
    ],
    ['no code', ['check'], { ...file, check: undefined }],
  ])('with %s is told so', (_, paths, tampered) => {
    const told = verifyQuote(read(tampered), demoCatalog).map(({ path }) => path)
    for (const path of paths) expect(told).toContain(path)
  })

  it('by another catalog is told so first', () => {
    const other = { ...demoCatalog, edition: 'another' }
    expect(verifyQuote(read(file), other)[0]!.path).toBe('fingerprint.catalog')
  })

  it.each<[string, unknown]>([
    ['priced.discount', { millionths: 1_000_001 }],
    ['priced.discount', { amount: -1 }],
    ['priced.discount', { amount: 0.5 }],
  ])('out of range at %s is refused', (path, discount) => {
    const parsed = parseQuoteFile({ ...file, priced: { ...file.priced, discount } })
    expect(parsed.ok ? '' : parsed.issues.map((one) => one.path).join()).toContain(path)
  })
})

describe('terms that only the shop gives', () => {
  it.each<[boolean, Partial<QuoteAsked>]>([
    [false, {}],
    [true, { discount: { share: 0.05 } }],
    [true, { discount: { amount: 5 } }],
    [true, { services: [{ code: 'delivery' }] }],
    [true, { other: [{ name: 'crane', quantity: 1, price: 1 }] }],
    [true, { fetched: true }],
    [true, { untaxed: true }],
  ])('%s: %o', (own, ask) => {
    expect(ownTerms(read(quoteFile(made(ask), demoDesign)), demoCatalog)).toBe(own)
  })
})
