/** The lines of a quote: their order, their tax, their freight, their days. */
import { describe, expect, it } from 'vitest'
import { type Catalog, demoCatalog, demoDesign } from '../../../rules/index.ts'
import { type QuoteAsked, quote } from '../../../rules/papers.ts'
import { placedDock as dockOf } from '../../support/placed-dock.ts'

const DAY = { date: '2026-03-01' } as const

describe('lines', () => {
  const dock = dockOf(demoDesign, demoCatalog)
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
    const stopped = dockOf(low, demoCatalog)
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
      const tied = dockOf(wide, catalog)
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
    const empty = quote(dockOf(nothing, demoCatalog), nothing, demoCatalog, DAY)
    expect(empty).toMatchObject({ total: 0, lines: [], freight: { mass: 0, by: 'absent', price: null } })
  })
})
