/** The verdict by hand: which findings are to be fixed, what cannot be built, and what is said before all is found. */
import { describe, expect, it } from 'vitest'
import { demoCatalog, type Finding } from '../../rules/index.ts'
import { priceOf } from '../../src/panel/price.ts'
import { standingOf, verdictOf } from '../../src/panel/verdict.ts'
import { createLeadlineStore } from '../../src/state/store.ts'

const REMEDY = { key: 'raise-deck', values: {}, patch: [] }
const found = (code: string, severity: Finding['severity'], remedy: Finding['remedy'] = null): Finding => ({
  ...{ code, severity, remedy, parts: [], values: {}, text: '', basis: '' },
})
const stop = found('leg-overloaded', 'stop')
const mended = found('deck-under-level', 'stop', REMEDY)
const over = found('goes-over', 'warn')
const few = found('soundings-few', 'warn')
const note = found('lift-heavy', 'note')

describe('a dock of which all is known', () => {
  it.each([
    ['nothing', [], 'can', 0, 0],
    ['a note', [note], 'can', 0, 0],
    ['too few depths', [few, note], 'can', 0, 1],
    ['a shore that was not told of', [found('site-assumed', 'warn')], 'can', 0, 1],
    ['something over, without a remedy', [over, few], 'fix', 1, 1],
    ['a stop that a remedy helps, and a warning', [mended, over], 'fix', 2, 0],
    ['a stop that none helps, and one that a remedy does', [stop, mended], 'fix', 2, 0],
    [
      'stops that no remedy helps, and a warning that one does',
      [stop, { ...over, remedy: REMEDY }],
      'cannot',
      2,
      0,
    ],
    ['a stop about the depths', [found('soundings-none', 'stop')], 'cannot', 1, 0],
  ] as const)('with %s', (_, findings, standing, fix, measure) => {
    const verdict = verdictOf({ findings })
    expect([verdict.standing, verdict.toFix.length, verdict.toMeasure.length]).toEqual([
      standing,
      fix,
      measure,
    ])
  })
})

describe('a dock of which not all is known', () => {
  const { dock } = createLeadlineStore().getState()
  const structure = {} as NonNullable<typeof dock.structure>
  const at = (findings: readonly Finding[], more: object) =>
    standingOf({ dock: { ...dock, structure, findings }, status: 'deep', stale: false, ...more }).standing
  it.each(['placed', 'quick'] as const)(
    '%s: nothing good is said before the end, a stop at once',
    (status) => {
      expect(at([], { status })).toBe('checking')
      expect(at([over], { status })).toBe('checking')
      expect(at([stop], { status })).toBe('fix')
    },
  )
  it('is not judged where the structure could not be worked out, or nothing answers', () => {
    const unknown = { dock: { ...dock, structure: null, findings: [over] } }
    expect(at([], unknown)).toBe('unknown')
    expect(at([], { status: 'unavailable' })).toBe('unknown')
    expect(at([stop], { status: 'unavailable' })).toBe('fix')
    expect(at([], { status: 'placing', stale: true })).toBe('placing')
    expect(at([], { status: 'unavailable', stale: true })).toBe('unknown')
  })
})

describe('the price', () => {
  const totals = { mass: 1, price: 100_010, currency: 'USD', heaviestLift: 1, heaviestSection: 's1' }
  const tax = { name: 'Tax', share: 0.05, goods: true, freight: false }
  const freight = [{ mass: 1000, longest: 4, price: 100 }]
  it.each([
    [undefined, 100_010, 0, null],
    [{ tax }, 100_010, 0, 'tax'],
    [{ freight }, 100_010, 0, 'delivery'],
    [{ tax, freight, discount: 0.125 }, 87_509, 12_501, 'both'],
  ] as const)('with the shop’s %j', (quote, amount, off, plus) => {
    expect(priceOf({ totals, existing: null, findings: [over] }, { quote: quote as never })).toEqual({
      amount,
      off,
      newOnly: false,
      plus,
    })
  })
  it('is of what is new alone where something is there already', () => {
    const existing = { used: [], left: [], new: [], mass: 1, price: 40_000 }
    expect(
      priceOf({ totals, existing, findings: [over] }, { quote: { discount: 0.1 } as never }),
    ).toMatchObject({ amount: 36_000, off: 4_000, newOnly: true })
  })
  it('is none where the dock must not be built, whether or not a remedy helps', () => {
    for (const one of [stop, mended])
      expect(priceOf({ totals, existing: null, findings: [one] }, demoCatalog)).toBe(null)
  })
})
