/** What changed between two quotes, on lines written down by hand, and how it is said. */
import { describe, expect, it } from 'vitest'
import { type Design, demoCatalog, demoDesign, ENGLISH } from '../../../rules/index.ts'
import type { QuoteLine } from '../../../rules/papers/quote.ts'
import { sinceSaid } from '../../../rules/papers/quote-since.ts'
import { type Quote, quote, quoteChanges, quoteFile } from '../../../rules/papers.ts'
import { deriveAtOnce } from '../../support/at-once.ts'

const dockOf = (design: Design) => deriveAtOnce(design, demoCatalog)
const dock = dockOf(demoDesign)
const empty = quote(dock, demoDesign, demoCatalog, { date: '2026-03-01' })

const line = (more: Partial<QuoteLine>): QuoteLine => ({
  group: 'frames',
  kind: 'frame',
  code: '4x8',
  name: 'Frame 4 x 8 ft',
  quantity: 1,
  spares: 0,
  sparesPriced: false,
  per: 'piece',
  unitPrice: 1000,
  amount: 1000,
  taxed: true,
  ...more,
})
const byHand = (name: string, quantity: number, unitPrice: number): QuoteLine =>
  line({ group: 'other', kind: null, code: null, name, quantity, unitPrice, amount: quantity * unitPrice })

const changes = (old: Partial<Quote>, now: Partial<Quote>) =>
  quoteChanges({ dock, quote: { ...empty, ...old } }, { dock, quote: { ...empty, ...now } })
const lines = (old: readonly QuoteLine[], now: readonly QuoteLine[]) =>
  changes({ lines: old }, { lines: now })

describe('changed lines', () => {
  it('are more or fewer at the old price, and the rest is for the price', () => {
    // 2 at 1000, then 5 at 1100: 5500 − 2000 = 3500; three more at 1000 are 3000, the price is the rest.
    const { lines: told, sums } = lines(
      [line({ quantity: 2, amount: 2000 })],
      [line({ quantity: 5, unitPrice: 1100, amount: 5500 })],
    )
    expect(told).toEqual([
      {
        group: 'frames',
        kind: 'frame',
        code: '4x8',
        name: 'Frame 4 x 8 ft',
        quantity: { before: 2, after: 5 },
        unitPrice: { before: 1000, after: 1100 },
        amount: 3500,
        forQuantity: 3000,
        forPrice: 500,
      },
    ])
    expect(sums).toMatchObject({ parts: 3000, prices: 500 })
  })

  it('that are new are at their own price, that are gone at the one they had', () => {
    const one = [line({ quantity: 3, amount: 3000 })]
    expect(lines([], one).lines).toMatchObject([
      {
        quantity: { before: 0, after: 3 },
        unitPrice: { before: null, after: 1000 },
        amount: 3000,
        forQuantity: 3000,
        forPrice: 0,
      },
    ])
    expect(lines(one, []).lines).toMatchObject([
      {
        quantity: { before: 3, after: 0 },
        unitPrice: { before: 1000, after: null },
        amount: -3000,
        forQuantity: -3000,
        forPrice: 0,
      },
    ])
  })

  it('count spares as charged where the shop charges for them, and only there', () => {
    const with4 = (sparesPriced: boolean, quantity: number) =>
      line({ quantity, spares: 4, sparesPriced, amount: (quantity + (sparesPriced ? 4 : 0)) * 1000 })
    // 10 and 4 spares instead of 10 without any: 4000 more, all of it for the quantity.
    expect(lines([line({ quantity: 10, amount: 10_000 })], [with4(true, 10)]).lines).toMatchObject([
      { quantity: { before: 10, after: 10 }, amount: 4000, forQuantity: 4000, forPrice: 0 },
    ])
    expect(lines([line({ quantity: 10, amount: 10_000 })], [with4(false, 10)]).lines).toEqual([])
  })

  it('of what was written twice by hand are one, told apart by their names', () => {
    // 1 and 2 at 500, then one: two fewer at 500.
    const told = lines(
      [byHand('Plank', 1, 500), byHand('Rope', 1, 90), byHand('Plank', 2, 500)],
      [byHand('Plank', 1, 500), byHand('Rope', 1, 90)],
    )
    expect(told.lines).toMatchObject([
      { name: 'Plank', quantity: { before: 3, after: 1 }, amount: -1000, forQuantity: -1000, forPrice: 0 },
    ])
    expect(told.sums).toEqual({
      parts: 0,
      prices: 0,
      services: 0,
      other: -1000,
      freight: 0,
      discount: 0,
      tax: 0,
      rounding: 0,
    })
  })

  it('are told where only the price of one is another, at the same amount', () => {
    expect(
      lines([line({ quantity: 0, amount: 0 })], [line({ quantity: 0, unitPrice: 7, amount: 0 })]).lines,
    ).toHaveLength(1)
    expect(lines([line({})], [line({})]).lines).toEqual([])
  })

  it('are summed by what they are for', () => {
    const more = (group: QuoteLine['group'], amount: number) =>
      line({ group, kind: null, code: group, unitPrice: amount, amount })
    const told = changes(
      { lines: [], discount: { amount: -100, share: null }, tax: null, total: 10 },
      {
        lines: [more('services', 20), more('other', 300), more('freight', 4000)],
        discount: { amount: -150, share: null },
        tax: { name: 'Tax', share: 0.1, taxable: 70, amount: 7 },
        total: 4277,
      },
    )
    expect(told.sums).toEqual({
      parts: 0,
      prices: 0,
      services: 20,
      other: 300,
      freight: 4000,
      discount: -50,
      tax: 7,
      rounding: 0,
    })
    expect(told.total).toEqual({ before: 10, after: 4277 })
  })

  it('in another currency are none, and no sum is told', () => {
    const told = changes(
      { currency: 'EUR', lines: [line({})], discount: { amount: -5, share: null } },
      { lines: [line({ amount: 9 })] },
    )
    expect(told).toMatchObject({ comparable: false, lines: [] })
    expect(Object.values(told.sums).every((sum) => sum === 0)).toBe(true)
    expect(changes({}, {}).comparable).toBe(true)
  })
})

describe('since the last quote, in words', () => {
  const file = quoteFile(empty, demoDesign)
  const said = (design: Design, more: Partial<Quote> = {}, was = file) => {
    const now = dockOf(design)
    const made = quote(now, design, demoCatalog, { date: '2026-04-01' })
    return sinceSaid(was, { dock: now, quote: { ...made, ...more } }, demoCatalog, {
      language: ENGLISH,
      units: 'metric',
    })
  }
  const dockWith = (dock: Partial<Design['dock']>): Design => ({
    ...demoDesign,
    dock: { ...demoDesign.dock, ...dock },
  })

  it('each changed line with its counts and money, then discount and tax, then the total', () => {
    // One bumper more at $34.00. Tax of 5.5 % on it: 187 cents.
    const since = said(dockWith({ extras: { bumper: 5, 'anchor-post': 2 } }))
    expect(since.title).toBe('What changed since the quote of Mar 1, 2026')
    expect(since.rows).toEqual([
      [expect.stringContaining('umper'), '4', '5', '+$34.00'],
      ['Tax', '', '', '+$1.87'],
    ])
    expect(since.total!.slice(-1)).toEqual(['+$35.87'])
    expect(since.legs).toEqual([])
    expect(since.note).toBeNull()
    const fewer = said(dockWith({ extras: { bumper: 3, 'anchor-post': 2 } }))
    expect(fewer.rows.map((row) => row[3])).toEqual(['-$34.00', '-$1.87'])
    const off = said(demoDesign, { discount: { amount: -500, share: null } })
    expect(off.rows).toEqual([['Discount', '', '', '-$5.00']])
    const freight = quote(dockOf(demoDesign), demoDesign, demoCatalog, { date: '2026-04-01' }).lines.map(
      (line) => (line.group === 'freight' ? { ...line, amount: line.amount + 4000 } : line),
    )
    expect(said(demoDesign, { lines: freight }).rows).toEqual([['Freight', '1', '1', '+$40.00']])
  })

  it('each leg that is another, new or gone, and why', () => {
    const start = dock.start
    const deeper = said({
      ...dockWith({ start }),
      site: {
        ...demoDesign.site,
        soundings: demoDesign.site.soundings.map((s) => (s.distance === 12 ? { ...s, depth: 1.9 } : s)),
      },
    })
    // The last legs stand 10.79 m out: between 0.9 m at 8 m and 1.4 m at 12 m it was 1.25 m deep, with 1.9 m there 1.60 m.
    // One reason each: the required length that follows from the depth is not said besides.
    expect(deeper.legs.map((leg) => leg.replace(/Leg \d+ ft/g, 'Leg'))).toEqual(
      [9, 10].map((number) => `Leg ${number} (s5): Leg, now Leg; Depth there 1.60 m (was 1.25 m).`),
    )
    const longer = said(dockWith({ start, sections: 6 })).legs
    expect(longer.map((leg) => leg.replace(/Leg \d+ ft.*/, 'Leg'))).toEqual([
      'Leg 11 (s6): new, Leg',
      'Leg 12 (s6): new, Leg',
    ])
    const shorter = said(dockWith({ start, sections: 4 })).legs
    expect(shorter.map((leg) => leg.replace(/Leg \d+ ft.*/, 'Leg'))).toEqual([
      'Leg 9 (s5): no more (Leg',
      'Leg 10 (s5): no more (Leg',
    ])
  })

  it('chosen by hand, and by rule again', () => {
    const chosen = dockWith({ overrides: { 's3.end.left': { stock: 1.8288 } } })
    expect(said(chosen).legs).toEqual(['Leg 5 (s3): Leg 5 ft, now Leg 6 ft; Chosen by hand now.'])
    const was = quoteFile(quote(dockOf(chosen), chosen, demoCatalog, { date: '2026-03-01' }), chosen)
    expect(said(demoDesign, {}, was).legs).toEqual([
      "Leg 5 (s3): Leg 6 ft, now Leg 5 ft; By the shop's rule again, not by hand.",
    ])
  })

  it('nothing where nothing changed, and that amounts cannot be compared in another currency', () => {
    expect(said(demoDesign)).toMatchObject({ rows: [], legs: [], note: null })
    expect(said(demoDesign, { currency: 'EUR' })).toMatchObject({
      rows: [],
      total: null,
      legs: [],
      note: 'The last quote was in USD: amounts cannot be compared.',
    })
  })
})
