/** Quotes against sums worked out by hand. */
import { describe, expect, it } from 'vitest'
import { demoCatalog, demoDesign } from '../../../rules/index.ts'
import { type QuoteAsked, quote, quoteRows } from '../../../rules/papers.ts'
import { metricCatalog } from '../../support/catalogs.ts'
import { placedDock as dockOf } from '../../support/placed-dock.ts'

const DAY = { date: '2026-03-01' } as const

describe('the demo dock’s quote', () => {
  const dock = dockOf(demoDesign, demoCatalog)
  const asked: QuoteAsked = {
    ...DAY,
    services: [{ code: 'delivery' }, { code: 'set-up' }, { code: 'hours', quantity: 1.5 }],
    discount: { share: 0.05 },
  }
  const made = quote(dock, demoDesign, demoCatalog, asked)

  it('is the one worked out by hand', () => {
    // frames    5 x 38900                                                          = 194500
    // legs      2 x (6950 + 8300 + 9650 + 11000 + 12350) = 96500; pads 10 x 2400   = 120500
    // bracing   2 x 3900 + 4700 = 12500; clamps 6 x 1250 = 7500                    =  20000
    // joints    brackets 3 joints x 2 x 2150 = 12900; bar 5400; pins 2 x 1300      =  20900
    // decking   panels 10 x 14900; clips 20 x 240; leg caps 10 x 280; sleeve caps 10 x 260 = 159200
    // hardware  20 x 180 + 10 x 140 + 12 x 110 + 3 x 140 + 2 x 130 + 6 x 130       =   7780
    // options   bumpers 4 x 3400; posts 2 x 9100; augers 2 x 5900; clamps 4 x 2300 =  52800
    //                                                                   goods      = 575680
    // services  delivery 18500; set-up 5 x 9500 = 47500; hours 1.5 x 7800 = 11700  =  77700
    // freight   440 kg, longest 3.05 m: the band up to 800 kg                      =  44900
    expect(made.groups).toEqual([
      { group: 'frames', amount: 194_500 },
      { group: 'legs', amount: 120_500 },
      { group: 'bracing', amount: 20_000 },
      { group: 'joints', amount: 20_900 },
      { group: 'decking', amount: 159_200 },
      { group: 'hardware', amount: 7780 },
      { group: 'options', amount: 52_800 },
      { group: 'services', amount: 77_700 },
      { group: 'freight', amount: 44_900 },
    ])
    expect(made.goods).toBe(575_680)
    // discount  5 % of 575680 = 28784
    expect(made.discount).toEqual({ amount: -28_784, share: 0.05 })
    // net       575680 + 77700 + 44900 - 28784 = 669496
    expect(made.net).toBe(669_496)
    // taxed     575680 - 28784 + 47500 + 11700 (delivery and freight are not) = 606096; 5.5 % = 33335.28
    expect(made.tax).toEqual({ name: 'Sales tax', share: 0.055, taxable: 606_096, amount: 33_335 })
    // total     669496 + 33335 = 702831
    expect(made.total).toBe(702_831)
    expect(made.until).toBe('2026-03-31')
    expect(made.freight).toMatchObject({ by: 'band', price: 44_900 })
    expect(made.terms).toEqual(demoCatalog.quote!.terms)
    expect(made.unknown).toEqual([])
  })

  it('takes an amount off, never more than the goods cost, and none where none is asked for', () => {
    const of = (discount: QuoteAsked['discount'] | undefined): number =>
      quote(dock, demoDesign, demoCatalog, { ...DAY, ...(discount !== undefined && { discount }) }).discount
        .amount
    expect(of({ amount: 12_345 })).toBe(-12_345)
    expect(of({ amount: 999_999_999 })).toBe(-575_680)
    expect(of({ share: 0 })).toBe(0)
    expect(of(null)).toBe(0)
    expect(of(undefined)).toBe(0)
    expect(Object.is(of(null), -0)).toBe(false)
  })

  it('is without freight where the customer fetches, without tax where there is none, and says what it does not know', () => {
    const other = quote(dock, demoDesign, demoCatalog, {
      ...DAY,
      until: '2026-12-24',
      fetched: true,
      untaxed: true,
      services: [{ code: 'polish' }, { code: 'take-out', quantity: 2 }],
      other: [{ name: '=old dock, taken back', quantity: 1, price: -25_000, taxed: false }],
    })
    expect(other.freight.by).toBe('fetched')
    expect(other.tax).toBeNull()
    expect(other.unknown).toEqual(['polish'])
    expect(other.until).toBe('2026-12-24')
    // 575680 + 2 x 8500 - 25000 = 567680
    expect(other.total).toBe(567_680)
  })

  it('asks for freight, and leaves it out of the total, where no band holds it', () => {
    const narrow = {
      ...demoCatalog,
      quote: { ...demoCatalog.quote, freight: [{ mass: 2000, longest: 2, price: 1 }] },
    }
    const open = quote(dock, demoDesign, narrow, DAY)
    expect(open.freight).toMatchObject({ by: 'none', price: null, longest: 3.048 })
    expect(open.lines.some(({ group }) => group === 'freight')).toBe(false)
  })

  it('as rows ends with the sum of all rows before', () => {
    const rows = quoteRows(made)
    const last = rows.pop()!
    expect(rows.reduce((sum, { amount }) => sum + Number(amount), 0)).toBe(last.amount)
    expect(last.amount).toBe(made.total)
  })
})

describe('a quote of another shop', () => {
  it('goes by its discount, its tax on everything, its hours in quarters', () => {
    const design = {
      ...demoDesign,
      dock: { ...demoDesign.dock, frame: metricCatalog.frames[0]!.code, extras: {} },
    }
    const dock = dockOf(design, metricCatalog)
    const made = quote(dock, design, metricCatalog, {
      ...DAY,
      services: [{ code: 'AUFBAU', quantity: 2.25 }, { code: 'LAGER' }],
    })
    const goods = dock.totals.price
    // 2.25 x 6450 = 14512.5, up to 14513; 5 sections x 3333 = 16665
    expect(made.lines.filter(({ group }) => group === 'services').map(({ amount }) => amount)).toEqual([
      14_513, 16_665,
    ])
    const off = -Math.round(goods * 0.03)
    expect(made.discount.amount).toBe(off)
    const taxable = goods + 14_513 + 16_665 + 32_000 + off
    expect(made.tax).toEqual({
      name: 'Umsatzsteuer',
      share: 0.19,
      taxable,
      amount: Math.round(taxable * 0.19),
    })
    expect(made.until).toBe('2026-03-15')
  })

  it('that states nothing of quotes is the parts list and no more', () => {
    const { quote: _rules, services: _services, packing: _packing, ...silent } = demoCatalog
    const dock = dockOf(demoDesign, silent)
    const made = quote(dock, demoDesign, silent, DAY)
    expect(made).toMatchObject({
      total: dock.totals.price,
      tax: null,
      until: null,
      terms: [],
      freight: { by: 'absent' },
    })
  })
})
