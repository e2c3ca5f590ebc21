/** Quotes against sums worked out by hand, and against the parts list on random docks. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Catalog, demoCatalog, demoDesign } from '../../../rules/index.ts'
import { productOf, shareOf } from '../../../rules/papers/money.ts'
import {
  daysAfter,
  isDay,
  paperWords,
  type QuoteAsked,
  quote,
  quoteChanges,
  quoteRows,
  sentence,
} from '../../../rules/papers.ts'
import { anyCase } from '../../support/arbitraries.ts'
import { deriveAtOnce } from '../../support/at-once.ts'
import { metricCatalog } from '../../support/catalogs.ts'
import { runs } from '../../support/runs.ts'

const SEED = Number(process.env.LEADLINE_SEED ?? 51_003)
const RUNS = runs(150)

const DAY = { date: '2026-03-01' } as const

describe('money', () => {
  it.each([
    [333, 0.5, 167], // 166.5, half away from zero
    [-333, 0.5, -167],
    [1, 0.499, 0],
    [1005, 1.005, 1010], // 1010.025
    [7800, 2.25, 17_550],
    [6450, 2.25, 14_513], // 14512.5
    [99_999_999, 20, 1_999_999_980],
    [0, 3, 0],
  ])('%i for one, %d of them: %i', (price, quantity, amount) => {
    expect(productOf(price, quantity)).toBe(amount)
  })

  it.each([
    [100, 0.285, 29], // 28.5; in binary 28.499999999999996
    [50, 0.01, 1], // 0.5
    [-50, 0.01, -1],
    [49, 0.01, 0],
    [587_670, 0.055, 32_322], // 32321.85
    [100_000_000_000, 0.190001, 19_000_100_000],
  ])('%i, a share of %d: %i', (amount, share, part) => {
    expect(shareOf(amount, share)).toBe(part)
    expect(Object.is(shareOf(amount, share), -0)).toBe(false)
  })
})

describe('days', () => {
  it.each([
    ['2026-02-15', 14, '2026-03-01'],
    ['2028-02-15', 14, '2028-02-29'],
    ['2026-12-31', 1, '2027-01-01'],
    ['2026-03-01', 30, '2026-03-31'],
  ])('%s and %i more: %s', (day, more, then) => expect(daysAfter(day, more)).toBe(then))

  it('are days only where the calendar has them', () => {
    expect(['2026-06-30', '2028-02-29'].every(isDay)).toBe(true)
    expect(['2026-06-31', '2026-02-29', '2026-6-1', 'soon', ''].some(isDay)).toBe(false)
  })
})

describe('the demo dock’s quote', () => {
  const dock = deriveAtOnce(demoDesign, demoCatalog)
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
    const dock = deriveAtOnce(design, metricCatalog)
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
    const dock = deriveAtOnce(demoDesign, silent)
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

describe(`every quote (seed ${SEED}, ${RUNS} docks)`, () => {
  const asked = fc.record(
    {
      date: fc.constant(DAY.date),
      services: fc.array(
        fc.record(
          {
            code: fc.constantFrom('delivery', 'set-up', 'hours', 'AUFBAU', 'LAGER', 'nothing'),
            quantity: fc.integer({ min: 0, max: 4000 }).map((n) => n / 100),
          },
          { requiredKeys: ['code'] },
        ),
        { maxLength: 3 },
      ),
      discount: fc.oneof(
        fc.constant(null),
        fc.integer({ min: 0, max: 1000 }).map((n) => ({ share: n / 1000 })),
        fc.integer({ min: 0, max: 400_000 }).map((amount) => ({ amount })),
      ),
      fetched: fc.boolean(),
      untaxed: fc.boolean(),
    },
    { requiredKeys: ['date'] },
  )

  it('adds up in whole minor units, by another way than the engine’s', () => {
    fc.assert(
      fc.property(anyCase, asked, ({ design, catalog }, ask) => {
        const dock = deriveAtOnce(design, catalog)
        const made = quote(dock, design, catalog, ask as QuoteAsked)
        const whole = [made.net, made.total, made.discount.amount, ...made.lines.map(({ amount }) => amount)]
        expect(whole.every(Number.isSafeInteger)).toBe(true)
        // The goods are the parts list, spares in it where the shop charges for them.
        expect(made.goods).toBe(dock.totals.price)
        const parts = made.lines.filter(({ kind }) => kind !== null)
        expect(parts.map(({ code, quantity, amount }) => `${code} ${quantity} ${amount}`).sort()).toEqual(
          dock.parts.map(({ code, quantity, price }) => `${code} ${quantity} ${price}`).sort(),
        )
        // Halves away from zero, told by the decimal text: half a unit more, cut off.
        for (const { unitPrice, quantity, amount, group } of made.lines)
          if (group === 'services')
            expect(amount).toBe(Math.floor((unitPrice * Math.round(quantity * 1000)) / 1000 + 0.5))
        const sum = made.lines.reduce((total, { amount }) => total + amount, 0)
        expect(made.net).toBe(sum + made.discount.amount)
        expect(made.total - made.net).toBe(made.tax?.amount ?? 0)
        expect(-made.discount.amount).toBeLessThanOrEqual(Math.max(0, made.goods))
        if (made.tax)
          expect(Math.abs(made.tax.amount - made.tax.taxable * made.tax.share)).toBeLessThanOrEqual(
            0.5 + 1e-6,
          )
      }),
      { seed: SEED, numRuns: RUNS },
    )
  })

  it('tells every change since another one, and the changes are the difference of the totals', () => {
    fc.assert(
      fc.property(
        anyCase,
        fc.integer({ min: -300, max: 600 }),
        asked,
        asked,
        ({ design, catalog }, mm, one, two) => {
          const deckHeight = design.dock.deckHeight + mm / 1000
          const raised = { ...design, dock: { ...design.dock, deckHeight } }
          const [old, now] = [deriveAtOnce(design, catalog), deriveAtOnce(raised, catalog)]
          const before = { dock: old, quote: quote(old, design, catalog, one as QuoteAsked) }
          const after = { dock: now, quote: quote(now, raised, catalog, two as QuoteAsked) }
          const { sums, lines, legs, total } = quoteChanges(before, after)
          expect(Object.values(sums).reduce((sum, part) => sum + part, 0)).toBe(total.after - total.before)
          expect(sums.prices).toBe(0)
          for (const line of lines) expect(line.forQuantity + line.forPrice).toBe(line.amount)
          // Legs that are others now say why: the deck is higher or lower, or the ground under them is another.
          for (const leg of legs)
            if (leg.is === 'other')
              expect(leg.why.map(({ key }) => key)).toSatisfy((keys: string[]) =>
                keys.some((key) => ['deck', 'bed'].includes(key)),
              )
          expect(quoteChanges(before, before)).toMatchObject({ lines: [], legs: [], parts: [] })
        },
      ),
      { seed: SEED + 1, numRuns: Math.ceil(RUNS / 3) },
    )
  })
})

describe('what changed', () => {
  const dock = deriveAtOnce(demoDesign, demoCatalog)
  const before = { dock, quote: quote(dock, demoDesign, demoCatalog, DAY) }

  it('with a deck 25 cm higher: longer legs, each with the deck as the reason', () => {
    const higher = { ...demoDesign, dock: { ...demoDesign.dock, deckHeight: 0.7, start: dock.start } }
    const now = deriveAtOnce(higher, demoCatalog)
    const { legs, sums, parts } = quoteChanges(before, {
      dock: now,
      quote: quote(now, higher, demoCatalog, DAY),
    })
    expect(legs.length).toBeGreaterThan(0)
    for (const leg of legs)
      expect(leg.why).toContainEqual(
        expect.objectContaining({ key: 'deck', unit: 'm', before: 0.45, after: 0.7 }),
      )
    expect(sums.prices).toBe(0)
    expect(parts.some(({ kind }) => kind === 'leg')).toBe(true)
  })

  it('is said in words with its figures', () => {
    const higher = { ...demoDesign, dock: { ...demoDesign.dock, deckHeight: 0.7, start: dock.start } }
    const now = deriveAtOnce(higher, demoCatalog)
    const { legs } = quoteChanges(before, { dock: now, quote: quote(now, higher, demoCatalog, DAY) })
    const words = paperWords('en', 'metric')
    const said = legs.flatMap(({ say, why }) =>
      [say, ...why.map((term) => term.say)].map((one) => sentence(one, words)),
    )
    expect(said).toContain('Deck height 0.70 m (was 0.45 m).')
    expect(said.filter((one) => /[{}]/.test(one))).toEqual([])
    // The second leg of s3: by hand from the start, one size up.
    const byHand = {
      ...demoDesign,
      dock: { ...demoDesign.dock, overrides: { 's3.end.left': { stock: 1.8288 } } },
    }
    const chosen = deriveAtOnce(byHand, demoCatalog)
    const other = quoteChanges(before, { dock: chosen, quote: quote(chosen, byHand, demoCatalog, DAY) })
    expect(
      other.legs.map(({ say, why }) => [sentence(say, words), why.map((term) => sentence(term.say, words))]),
    ).toEqual([['s3.end.left: Leg 5 ft, now Leg 6 ft', ['Chosen by hand now.']]])
  })

  it('with a catalog 10 cents dearer in frames: 5 frames, 50 cents, no parts', () => {
    const frames = demoCatalog.frames.map((frame) => ({ ...frame, price: frame.price + 10 }))
    const dearer = { ...demoCatalog, frames }
    const now = deriveAtOnce(demoDesign, dearer)
    const { sums, parts, lines } = quoteChanges(before, {
      dock: now,
      quote: quote(now, demoDesign, dearer, DAY),
    })
    expect(parts).toEqual([])
    expect(sums).toMatchObject({ parts: 0, prices: 50, services: 0, freight: 0, discount: 0 })
    // 5.5 % of 575730 = 31665.15, of 575680 = 31662.40: 31665 - 31662
    expect(sums.tax).toBe(3)
    expect(lines).toHaveLength(1)
    expect(lines[0]).toMatchObject({
      unitPrice: { before: 38_900, after: 38_910 },
      forPrice: 50,
      forQuantity: 0,
    })
  })

  it('in another currency is not told in amounts', () => {
    const now = { dock, quote: { ...before.quote, currency: 'EUR' } }
    expect(quoteChanges(before, now)).toMatchObject({ comparable: false, lines: [] })
  })
})

describe('lines', () => {
  const dock = deriveAtOnce(demoDesign, demoCatalog)
  const of = (asked: Partial<QuoteAsked>, catalog: Catalog = demoCatalog) =>
    quote(dock, demoDesign, catalog, { ...DAY, ...asked })

  it('stand in the order of their groups, parts in the order of the parts list within each', () => {
    const { lines } = of({
      services: [{ code: 'hours' }],
      other: [{ name: 'Paint', quantity: 1, price: 5 }],
    })
    const order = [
      'frames',
      'legs',
      'bracing',
      'joints',
      'decking',
      'hardware',
      'options',
      'services',
      'other',
      'freight',
    ]
    const groups = lines.map(({ group }) => group as string)
    expect(new Set(groups)).toEqual(new Set(order))
    expect(groups).toEqual([...groups].sort((a, b) => order.indexOf(a) - order.indexOf(b)))
    for (const group of order.slice(0, 7)) {
      const here = lines.filter((line) => line.group === group).map(({ kind, code }) => `${kind} ${code}`)
      const list = dock.parts.map(({ kind, code }) => `${kind} ${code}`)
      expect(here).toEqual([...here].sort((a, b) => list.indexOf(a) - list.indexOf(b)))
    }
  })

  it('by hand are taxed unless said otherwise, services where the catalog says so, freight where its rules do', () => {
    // 5.5 % of 10,000 more: 550.
    const tax = (asked: Partial<QuoteAsked>, catalog?: Catalog): number => of(asked, catalog).tax!.amount
    const none = tax({})
    const other = (taxed?: boolean) => ({
      other: [{ name: 'Paint', quantity: 2, price: 5000, ...(taxed !== undefined && { taxed }) }],
    })
    expect([tax(other()), tax(other(true)), tax(other(false))].map((now) => now - none)).toEqual([
      550, 550, 0,
    ])
    // Set-up is taxed, delivery is not: 5 x 9500 = 47,500, of which 5.5 % are 2612.5; with the goods' 31,662.4 together 34,274.9.
    expect([
      none,
      tax({ services: [{ code: 'delivery' }] }),
      tax({ services: [{ code: 'set-up' }] }),
    ]).toEqual([31_662, 31_662, 34_275])
    // Freight of 44,900: 5.5 % are 2469.5; 34,131.9 together.
    const rules = demoCatalog.quote!
    const taxed = { ...demoCatalog, quote: { ...rules, tax: { ...rules.tax!, freight: true } } }
    expect(tax({}, taxed)).toBe(34_132)
    expect(tax({ fetched: true }, taxed)).toBe(none)
    // Where its rules say nothing of freight that is free of tax.
    const { freight: _freight, ...silent } = rules.tax!
    expect(tax({}, { ...demoCatalog, quote: { ...rules, tax: silent } })).toBe(none)
    // Of goods that are free of tax nothing is taken off either.
    const free = { ...demoCatalog, quote: { ...rules, tax: { ...rules.tax!, goods: false } } }
    expect(of({ discount: { share: 0.5 }, ...other() }, free).tax).toMatchObject({
      taxable: 10_000,
      amount: 550,
    })
  })

  it('that are no parts have no spares', () => {
    const { lines } = of({ services: [{ code: 'hours' }], other: [{ name: 'Paint', quantity: 1, price: 5 }] })
    const free = lines.filter(({ kind }) => kind === null)
    expect(free).toHaveLength(3)
    for (const line of free) expect(line).toMatchObject({ spares: 0, sparesPriced: false })
  })

  it('of freight go by the first band that holds mass and length, at its edge too', () => {
    const { mass, longest } = of({}).freight
    const by = (...freight: { mass: number; longest: number; price: number }[]) =>
      of({}, { ...demoCatalog, quote: { ...demoCatalog.quote, freight } }).freight
    expect(by({ mass, longest, price: 7 })).toEqual({ mass, longest, by: 'band', price: 7 })
    expect(by({ mass: mass - 0.001, longest, price: 7 }, { mass, longest, price: 9 })).toMatchObject({
      price: 9,
    })
    expect(by({ mass, longest: longest - 0.001, price: 7 })).toMatchObject({ by: 'none', price: null })
  })

  it('hold a day as asked, or the catalog’s days; the discount is the catalog’s where none is asked', () => {
    expect(of({ until: '2026-04-05' }).until).toBe('2026-04-05')
    const usual = { ...demoCatalog, quote: { ...demoCatalog.quote, discount: 0.1, days: 2 } }
    expect(of({}, usual)).toMatchObject({ until: '2026-03-03', discount: { amount: -57_568, share: 0.1 } })
    expect(of({ discount: null }, usual).discount).toEqual({ amount: 0, share: null })
    expect(of({ discount: { amount: 99.6 } }, usual).discount).toEqual({ amount: -100, share: null })
  })

  it('are told with who asked, and with what forbids building', () => {
    const design = { ...demoDesign, job: { customer: 'A. Reed', order: '17' } }
    expect(quote(dock, design, demoCatalog, DAY)).toMatchObject({
      customer: 'A. Reed',
      order: '17',
      stops: 0,
    })
    expect(of({})).toMatchObject({ customer: '', order: '' })
    const low = { ...demoDesign, dock: { ...demoDesign.dock, deckHeight: 0.2 } }
    const stopped = deriveAtOnce(low, demoCatalog)
    const stops = stopped.findings.filter(({ severity }) => severity === 'stop').length
    expect(stops).toBeGreaterThan(0)
    expect(quote(stopped, low, demoCatalog, DAY).stops).toBe(stops)
  })

  it('of tie plates are joints, unless the shop sells them as an extra', () => {
    const wide = {
      ...demoDesign,
      dock: { ...demoDesign.dock, extras: { cleat: 2 }, head: { shape: 'wide' as const, sections: 2 } },
    }
    const groups = (catalog: Catalog) => {
      const tied = deriveAtOnce(wide, catalog)
      return Object.fromEntries(
        quote(tied, wide, catalog, DAY)
          .lines.filter(({ kind }) => kind === 'accessory')
          .map(({ code, group }) => [code, group]),
      )
    }
    const tie = demoCatalog.tie.code
    const told = groups(demoCatalog)
    expect(told[tie]).toBe('joints')
    expect(Object.keys(told).length).toBeGreaterThan(1)
    for (const [code, group] of Object.entries(told)) if (code !== tie) expect(group).toBe('options')
    const extra = structuredClone(demoCatalog.extras.find(({ code }) => code === 'cleat')!)
    const sold = {
      ...extra,
      code: 'plates',
      parts: [...extra.parts, { ...extra.parts[0]!, code: tie, kind: 'accessory' as const }],
    }
    expect(groups({ ...demoCatalog, extras: [...demoCatalog.extras, sold as typeof extra] })[tie]).toBe(
      'options',
    )
  })

  it('of freight are none for a dock of nothing', () => {
    const nothing = { ...demoDesign, dock: { ...demoDesign.dock, frame: 'no-such', extras: {} } }
    const empty = quote(deriveAtOnce(nothing, demoCatalog), nothing, demoCatalog, DAY)
    expect(empty).toMatchObject({ total: 0, lines: [], freight: { mass: 0, by: 'absent', price: null } })
  })
})
