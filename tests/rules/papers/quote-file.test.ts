/** A quote's file comes back as it was; what is no such file is told with its path, and nothing throws. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assessKit, demoCatalog, demoDesign, deriveKit, parseDesign } from '../../../rules/index.ts'
import {
  parseAsked,
  parseQuoteFile,
  parseQuoteText,
  quote,
  quoteChanges,
  quoteFile,
} from '../../../rules/papers.ts'
import { anyCase } from '../../support/arbitraries.ts'

const SEED = Number(process.env.LEADLINE_SEED ?? 51_006)
const DAY = { date: '2026-03-01' } as const
const dock = assessKit(deriveKit(demoDesign, demoCatalog))
const file = quoteFile(quote(dock, demoDesign, demoCatalog, DAY), demoDesign)

describe('a quote’s file', () => {
  it('is what the next quote is compared with', () => {
    const parsed = parseQuoteText(JSON.stringify(file))
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
    const { design: was, ...before } = parsed.value
    const old = assessKit(deriveKit(was, demoCatalog))
    const higher = { ...demoDesign, dock: { ...demoDesign.dock, sections: 6 } }
    const now = assessKit(deriveKit(higher, demoCatalog))
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
        const made = quoteFile(quote(assessKit(deriveKit(design, catalog)), design, catalog, DAY), design)
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
