/** A quote's file comes back as it was; what is no such file is told with its path, and nothing throws. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { demoCatalog, demoDesign, parseDesign } from '../../../rules/index.ts'
import {
  parseAsked,
  parseQuoteFile,
  parseQuoteText,
  quote,
  quoteChanges,
  quoteFile,
} from '../../../rules/papers.ts'
import { anyCase } from '../../support/arbitraries.ts'
import { deriveAtOnce } from '../../support/at-once.ts'

const SEED = Number(process.env.LEADLINE_SEED ?? 51_006)
const DAY = { date: '2026-03-01' } as const
const dock = deriveAtOnce(demoDesign, demoCatalog)
const file = quoteFile(quote(dock, demoDesign, demoCatalog, DAY), demoDesign)

describe('a quote’s file', () => {
  it('is what the next quote is compared with', () => {
    const parsed = parseQuoteText(JSON.stringify(file))
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
    const { design: was, ...before } = parsed.value
    const old = deriveAtOnce(was, demoCatalog)
    const higher = { ...demoDesign, dock: { ...demoDesign.dock, sections: 6 } }
    const now = deriveAtOnce(higher, demoCatalog)
    const changes = quoteChanges(
      { dock: old, quote: before },
      { dock: now, quote: quote(now, higher, demoCatalog, { date: '2026-04-01' }) },
    )
    expect(changes.since).toBe('2026-03-01')
    expect(changes.parts.find(({ kind }) => kind === 'frame')).toMatchObject({ have: 5, need: 6, add: 1 })
    expect(changes.legs.map(({ leg, is }) => [leg, is])).toEqual([
      ['s6.end.left', 'new'],
      ['s6.end.right', 'new'],
    ])
  })

  it(`of any dock comes back the same (seed ${SEED}, 100 docks)`, () => {
    fc.assert(
      fc.property(anyCase, ({ design, catalog }) => {
        const made = quoteFile(quote(deriveAtOnce(design, catalog), design, catalog, DAY), design)
        const parsed = parseQuoteText(JSON.stringify(made))
        expect(parsed.ok && parsed.value).toEqual(JSON.parse(JSON.stringify(made)))
        expect(parseDesign(design).ok).toBe(true)
      }),
      { seed: SEED, numRuns: 100 },
    )
  })

  it.each<[string, unknown]>([
    ['format', { ...file, format: 'leadline/design' }],
    ['total', { ...file, total: 1.5 }],
    ['date', { ...file, date: '2026-02-30' }],
    ['lines[0].amount', { ...file, lines: [{ ...file.lines[0], amount: 'much' }] }],
    ['design.site', { ...file, design: { ...demoDesign, site: 5 } }],
  ])('that is wrong at %s is told so', (path, input) => {
    const parsed = parseQuoteFile(input)
    expect(parsed.ok ? [] : parsed.issues.map((one) => one.path)).toContain(path)
  })

  it('that is none does not throw', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (input) => {
        expect(parseQuoteFile(input).ok).toBe(false)
      }),
      { seed: SEED, numRuns: 300 },
    )
    expect(parseQuoteText('{').ok).toBe(false)
    expect(parseQuoteText('{}').ok).toBe(false)
    expect(parseQuoteText(JSON.stringify({ ...file, total: 1.5 })).ok).toBe(false)
  })
})

describe('what a quote is asked for with', () => {
  it.each<[unknown]>([
    [DAY],
    [{ ...DAY, until: '2026-03-01', services: [{ code: 'hours', quantity: 2.5 }], discount: { share: 0.1 } }],
    [
      {
        ...DAY,
        discount: null,
        fetched: true,
        untaxed: false,
        other: [{ name: 'x', quantity: 1, price: -5 }],
      },
    ],
    [{ ...DAY, discount: { amount: 100 } }],
  ])('is taken: %j', (asked) => {
    const parsed = parseAsked(asked)
    expect(parsed.ok && parsed.value).toEqual(asked)
  })

  it.each<[unknown]>([
    [null],
    [[]],
    [{}],
    [{ date: 'soon' }],
    [{ ...DAY, until: '2026-02-28' }],
    [{ ...DAY, discount: { share: 1.1 } }],
    [{ ...DAY, discount: { share: 0.1, amount: 5 } }],
    [{ ...DAY, discount: { amount: -5 } }],
    [{ ...DAY, services: [{ code: 'hours', quantity: -1 }] }],
    [{ ...DAY, services: [{ code: 'hours', quantity: Number.NaN }] }],
    [{ ...DAY, other: [{ name: 'x', quantity: 1, price: 0.5 }] }],
  ])('is refused: %j', (asked) => {
    expect(parseAsked(asked).ok).toBe(false)
  })
})

describe('what is too much', () => {
  const long = (n: number): string => 'x'.repeat(n)
  const line = file.lines[0]!
  const withLine = (more: object) => ({ ...file, lines: [{ ...line, ...more }] })
  const taxed = (more: object) => ({
    ...file,
    tax: { name: 'Tax', share: 0, taxable: 0, amount: 0, ...more },
  })
  // The last that is taken, and the first that is not.
  it.each<[string, object, object]>([
    ['kind', withLine({ kind: long(40) }), withLine({ kind: long(41) })],
    ['code', withLine({ code: long(60) }), withLine({ code: long(61) })],
    ['name', withLine({ name: long(400) }), withLine({ name: long(401) })],
    ['quantity', withLine({ quantity: 1e9 }), withLine({ quantity: 1e9 + 1 })],
    ['no quantity', withLine({ quantity: 0 }), withLine({ quantity: -0.001 })],
    ['unit price', withLine({ unitPrice: 1e8 }), withLine({ unitPrice: 1e8 + 1 })],
    ['unit price off', withLine({ unitPrice: -1e8 }), withLine({ unitPrice: -1e8 - 1 })],
    ['amount', withLine({ amount: 4e15 }), withLine({ amount: 4e15 + 1 })],
    ['amount off', withLine({ amount: -4e15 }), withLine({ amount: -4e15 - 1 })],
    ['lines', { ...file, lines: Array(5000).fill(line) }, { ...file, lines: Array(5001).fill(line) }],
    ['name of the tax', taxed({ name: long(120) }), taxed({ name: long(121) })],
    ['tax', taxed({ share: 1 }), taxed({ share: 1.01 })],
    ['no tax', taxed({ share: 0 }), taxed({ share: -0.01 })],
    ['version', file, { ...file, version: 2 }],
    ['currency', { ...file, currency: 'EUR' }, { ...file, currency: 'EURO' }],
  ])('of a file: %s', (_, most, more) => {
    expect(parseQuoteFile(most).ok).toBe(true)
    expect(parseQuoteFile(more).ok).toBe(false)
  })

  const other = (more: object) => ({ ...DAY, other: [{ name: 'x', quantity: 1, price: 1, ...more }] })
  const services = (n: number, code = 'hours') => ({ ...DAY, services: Array(n).fill({ code }) })
  it.each<[string, object, object]>([
    ['services', services(100), services(101)],
    ['code', services(1, long(60)), services(1, long(61))],
    [
      'other',
      { ...DAY, other: Array(100).fill(other({}).other[0]) },
      { ...DAY, other: Array(101).fill(other({}).other[0]) },
    ],
    ['name', other({ name: long(200) }), other({ name: long(201) })],
    ['discount', { ...DAY, discount: { share: 1 } }, { ...DAY, discount: { share: 1.001 } }],
    ['no discount', { ...DAY, discount: { amount: 0 } }, { ...DAY, discount: { amount: -1 } }],
    ['days', { ...DAY, until: DAY.date }, { ...DAY, until: '2026-02-28' }],
  ])('of what is asked: %s', (_, most, more) => {
    expect(parseAsked(most).ok).toBe(true)
    expect(parseAsked(more).ok).toBe(false)
  })

  it('is told where and what was expected', () => {
    const issues = (input: unknown) => {
      const parsed = parseAsked(input)
      return parsed.ok ? [] : parsed.issues.map(({ path, message }) => `${path}: ${message}`)
    }
    expect(issues(null)).toHaveLength(1)
    expect(issues([])[0]).toMatch(/what a quote is asked for with/)
    expect(issues('x')[0]).toMatch(/what a quote is asked for with/)
    expect(issues({ ...DAY, until: '2026-02-28' })).toEqual([
      expect.stringMatching(/^until: .*2026-03-01 or later/),
    ])
    const design = parseQuoteFile({ ...file, design: 5 })
    expect(design.ok ? [] : design.issues.map(({ path }) => path)).toEqual(['design'])
  })
})
