/** Totals rounded as the shop rounds them, and freight by where a dock goes, against sums worked out by hand. */
import { describe, expect, it } from 'vitest'
import {
  type Catalog,
  type Design,
  demoCatalog,
  demoDesign,
  parseCatalog,
  parseDesign,
} from '../../../rules/index.ts'
import { roundedTo } from '../../../rules/papers/money.ts'
import { estimate, quote, quoteFile, quoteRows, verifyQuote } from '../../../rules/papers.ts'
import { priceOf } from '../../../src/panel/price.ts'
import { placedDock as dockOf } from '../../support/placed-dock.ts'

const DAY = { date: '2026-03-01' } as const
const ZONES = [
  { code: 'near', name: 'To 30 miles', price: 9500 },
  { code: 'far', name: 'To 75 miles', price: 17_500 },
]
type Terms = NonNullable<Catalog['quote']>
const shop = (quote: Terms): Catalog => ({ ...demoCatalog, quote })
const to = (zone: string): Design => ({ ...demoDesign, job: { zone } })
const made = (catalog: Catalog, design: Design = demoDesign) =>
  quote(dockOf(design, catalog), design, catalog, DAY)
const { freight, ...noBands } = demoCatalog.quote!

describe('a total that is rounded', () => {
  // Goods 575680, freight 44900, tax 5.5 % of 575680 = 31662.4: 31662; together 652242 (as in quote.test.ts, without services).
  it.each([
    [undefined, 652_242],
    [5, 652_240],
    [100, 652_200],
    [500, 652_000],
    [1000, 652_000],
    [10_000, 650_000],
  ])('to %s cents is %s', (round, total) => {
    const one = made(shop({ ...demoCatalog.quote, ...(round !== undefined && { round }) }))
    expect(one.total).toBe(total)
    expect(one.rounding).toEqual(round === undefined ? undefined : { to: round, amount: total - 652_242 })
    // Tax is on the goods as they are.
    expect(one.tax!.amount).toBe(31_662)
    const rows = quoteRows(one).map(({ amount }) => Number(amount))
    expect(rows.slice(0, -1).reduce((sum, amount) => sum + amount, 0)).toBe(rows.at(-1))
  })

  it('is the price on the screen where nothing is added to it, and is made of that where something is', () => {
    // Goods alone: 575680.
    const bare = shop({ round: 1000 })
    expect(priceOf(dockOf(demoDesign, bare), bare)).toEqual({
      amount: 576_000,
      off: 0,
      newOnly: false,
      plus: null,
    })
    expect(made(bare).total).toBe(576_000)
    const taxed = shop({ ...demoCatalog.quote, round: 1000 })
    expect(priceOf(dockOf(demoDesign, taxed), taxed)).toMatchObject({ amount: 575_680, plus: 'both' })
  })

  it.each([
    [50, 100, 100],
    [-50, 100, -100],
    [49, 100, 0],
    [249, 500, 0],
    [250, 500, 500],
    [7, undefined, 7],
  ])('%s to %s is %s', (amount, step, rounded) => {
    expect(roundedTo(amount, step)).toBe(rounded)
  })
})

describe('freight by zone', () => {
  it('is the zone’s price, of a shop that goes by nothing else', () => {
    const catalog = shop({ ...noBands, zones: ZONES })
    // 575680 + 17500 + 31662.
    const far = made(catalog, to('far'))
    expect(far.freight).toMatchObject({
      by: 'band',
      price: 17_500,
      zone: { code: 'far', name: 'To 75 miles' },
    })
    expect(far.total).toBe(624_842)
    expect(made(catalog, to('near')).total).toBe(616_842)
  })

  it('comes over the band that holds the dock', () => {
    // 44900 + 9500.
    expect(made(shop({ ...demoCatalog.quote, zones: ZONES }), to('near')).freight.price).toBe(54_400)
    // No band: on request, wherever it goes.
    const none = shop({ ...noBands, freight: [{ mass: 1, longest: 1, price: 1 }], zones: ZONES })
    expect(made(none, to('near')).freight).toMatchObject({ by: 'none', price: null })
  })

  it.each([undefined, 'elsewhere'])('is to be asked for where it goes to %s', (zone) => {
    const design = zone === undefined ? demoDesign : to(zone)
    const one = made(shop({ ...noBands, zones: ZONES }), design)
    expect(one.freight).toMatchObject({ by: 'zone', price: null })
    expect(one.freight).not.toHaveProperty('zone')
    // 575680 + 31662.
    expect(one.total).toBe(607_342)
    expect(priceOf(dockOf(design, demoCatalog), shop({ ...noBands, zones: ZONES }))!.plus).toBe('both')
  })

  it('is told where a quote’s file was made to say another, and is in its check code', () => {
    const catalog = shop({ ...noBands, zones: ZONES })
    const file = quoteFile(made(catalog, to('far')), to('far'))
    expect(verifyQuote(file, catalog)).toEqual([])
    const paths = verifyQuote({ ...file, design: to('near') }, catalog).map(({ path }) => path)
    expect(paths).toEqual(expect.arrayContaining(['priced.zone', 'total']))
    const same = shop({ ...noBands, zones: ZONES.map((zone) => ({ ...zone, price: 0 })) })
    expect(made(same, to('near')).check).not.toBe(made(same, to('far')).check)
    // Where it goes changes nothing about the dock.
    expect(dockOf(to('near'), catalog).fingerprint).toEqual(dockOf(to('far'), catalog).fingerprint)
  })

  it('is in an estimate as in a quote', () => {
    const catalog = shop({ ...noBands, zones: ZONES, round: 500 })
    const design = to('far')
    expect(estimate(dockOf(design, catalog), design, catalog, DAY).total).toBe(625_000)
    expect(made(catalog, design).total).toBe(625_000)
  })

  it('has codes that differ, and a design names one', () => {
    const twice = shop({ zones: [ZONES[0]!, ZONES[0]!] })
    expect(parseCatalog(twice)).toMatchObject({ ok: false, issues: [{ path: 'quote.zones[1].code' }] })
    expect(parseDesign(to('far'))).toMatchObject({ ok: true, value: { job: { zone: 'far' } } })
  })
})

it('nothing of this is in a quote of a catalog without it', () => {
  const one = made(demoCatalog)
  expect(Object.keys(one)).not.toContain('rounding')
  expect(Object.keys(one.priced)).not.toContain('zone')
  expect(freight).toHaveLength(4)
})
