/**
 * A quote: what the dock costs, line by line, in whole minor units of the catalog's currency. It is the shop's: what is taken off, done
 * besides, or left untaxed is the shop's to say. An estimate is anyone's: the catalog's prices with its own usual discount, tax and
 * freight, and nothing to choose, so that nobody makes a cheaper one in the shop's name.
 *
 * Rounding, ours and stated on the paper: each line is unit price × quantity, rounded to a whole minor unit, halves away from zero. A
 * discount is off the sum of parts and options, rounded once. Tax is worked out once, on the sum of what is taxed, less the discount
 * where parts are taxed. Shares count to a millionth, quantities to a thousandth, and sums are of whole numbers. Where the shop rounds its
 * totals, that is done last, told as a line of its own, and not taxed.
 */
import type { Catalog, Service } from '../catalog/index.ts'
import type { Design } from '../design/index.ts'
import type { Dock, Fingerprint, PartRow } from '../dock.ts'
import { newParts } from '../existing/new-parts.ts'
import { digestOf } from '../fingerprint.ts'
import { factsOf, type PartGroup, type PartKind } from '../part-kinds.ts'
import { stopsOf } from '../stops.ts'
import { cartons } from './cartons.ts'
import { daysAfter } from './day.ts'
import { millionthsOf, productOf, roundedTo, shareOf, thousandthsOf } from './money.ts'
import { sectionsInOrder } from './order.ts'

export type QuoteGroup = PartGroup | 'owned' | 'services' | 'freight' | 'other'

/** What an estimate is asked for with: nothing that a price hangs on. */
export interface EstimateAsked {
  /** `YYYY-MM-DD`; given, never the clock's. */
  readonly date: string
}

/** What a quote is asked for with, by the shop. */
export interface QuoteAsked extends EstimateAsked {
  /** Last day that it holds; where absent the catalog's days after `date`. */
  readonly until?: string
  /** Services of the catalog; without a quantity one for the job, or the dock's number of sections, or one hour. */
  readonly services?: readonly { readonly code: string; readonly quantity?: number }[]
  /** Off parts and options: a share of 1, or an amount in minor units. `null`: none; where absent the catalog's. */
  readonly discount?: { readonly share: number } | { readonly amount: number } | null
  /** The customer fetches: no freight. */
  readonly fetched?: boolean
  /** Free of tax (the customer's status, not ours to judge). */
  readonly untaxed?: boolean
  /** Further lines by hand; `price` of one, in minor units, below nothing for what is taken off. */
  readonly other?: readonly {
    readonly name: string
    readonly quantity: number
    readonly price: number
    readonly taxed?: boolean
  }[]
}

export interface QuoteLine {
  readonly group: QuoteGroup
  /** Of parts. */
  readonly kind: PartKind | null
  readonly code: string | null
  /** Of the one line of freight `freight`: a view says it in words, with `Quote.freight`. */
  readonly name: string
  readonly quantity: number
  /** Sent along with it. */
  readonly spares: number
  /** Spares are charged for. */
  readonly sparesPriced: boolean
  /** What one is: `piece`, or the service's `job`, `section`, `hour`. */
  readonly per: 'piece' | Service['per']
  readonly unitPrice: number
  readonly amount: number
  readonly taxed: boolean
}

export interface QuoteFreight {
  /** kg, with spares, and m. */
  readonly mass: number
  readonly longest: number
  /**
   * `band`: a line of the quote. `none`: no band holds it: to be asked for, and not in the total. `zone`: so it is, for freight goes by
   * where it is brought to, and that has not been said. `fetched`, `absent`: no freight.
   */
  readonly by: 'band' | 'none' | 'zone' | 'fetched' | 'absent'
  readonly price: number | null
  /** Where it is brought to; absent where no zone was chosen of those that the shop has. */
  readonly zone?: { readonly code: string; readonly name: string }
}

/** What was asked for that the price hangs on, each in one form: the same terms are the same data. */
export interface PriceTerms {
  /** By code, with their quantities in thousandths. */
  readonly services: readonly { readonly code: string; readonly thousandths: number }[]
  /** A share in millionths, or an amount in minor units as it was taken off; null for none. */
  readonly discount: { readonly millionths: number } | { readonly amount: number } | null
  readonly fetched: boolean
  readonly untaxed: boolean
  /** Where it is brought to; absent where freight does not go by that. */
  readonly zone?: string
  readonly other: readonly {
    readonly name: string
    readonly thousandths: number
    readonly price: number
    readonly taxed: boolean
  }[]
}

/** What quotes and estimates have alike. */
export interface Priced {
  readonly version: 1
  readonly name: string
  readonly customer: string
  readonly order: string
  readonly date: string
  /** Last day that it holds; null where neither asked nor catalog say. */
  readonly until: string | null
  readonly catalog: { readonly id: string; readonly name: string; readonly edition: string }
  /** The dock's alone. */
  readonly fingerprint: Fingerprint
  readonly priced: PriceTerms
  /** Check code of the paper: of the dock, what is `priced`, the total, and whether it is a quote or an estimate. */
  readonly check: string
  readonly currency: string
  readonly lines: readonly QuoteLine[]
  readonly groups: readonly { readonly group: QuoteGroup; readonly amount: number }[]
  /** Parts and options together, before the discount. */
  readonly goods: number
  /** 0 or less; its share where it was asked for as one. */
  readonly discount: { readonly amount: number; readonly share: number | null }
  /** All lines less the discount. */
  readonly net: number
  readonly tax: {
    readonly name: string
    readonly share: number
    readonly taxable: number
    readonly amount: number
  } | null
  /** What rounding adds to all that or takes off it, where the shop rounds its totals. */
  readonly rounding?: { readonly to: number; readonly amount: number }
  readonly total: number
  readonly freight: QuoteFreight
  readonly terms: readonly string[]
  /** Services asked for that the catalog has not: nothing is charged for them. */
  readonly unknown: readonly string[]
  /** Findings that forbid building the dock. */
  readonly stops: number
}

export interface Quote extends Priced {
  readonly format: 'leadline/quote'
}

/** Without a last day and without terms: it binds nobody. */
export interface Estimate extends Priced {
  readonly format: 'leadline/estimate'
  readonly until: null
}

/** The order of a quote's groups. */
export const GROUPS: readonly QuoteGroup[] = [
  'frames',
  'legs',
  'bracing',
  'joints',
  'decking',
  'hardware',
  'options',
  'owned',
  'services',
  'other',
  'freight',
]

export const quote = (dock: Dock, design: Design, catalog: Catalog, asked: QuoteAsked): Quote =>
  priced('leadline/quote', dock, design, catalog, asked, {
    until:
      asked.until ?? (catalog.quote?.days === undefined ? null : daysAfter(asked.date, catalog.quote.days)),
    terms: catalog.quote?.terms ?? [],
  })

/** Of what it is asked for with, the date alone is read: whatever else a caller hands in changes nothing. */
export const estimate = (dock: Dock, design: Design, catalog: Catalog, { date }: EstimateAsked): Estimate =>
  priced('leadline/estimate', dock, design, catalog, { date }, { until: null, terms: [] })

function priced<F extends string, U extends string | null>(
  format: F,
  dock: Dock,
  design: Design,
  catalog: Catalog,
  asked: QuoteAsked,
  holds: { readonly until: U; readonly terms: readonly string[] },
): Priced & { readonly format: F; readonly until: U } {
  const rules = catalog.quote ?? {}
  const goodsTaxed = rules.tax?.goods ?? true
  const unknown: string[] = []
  const lines: QuoteLine[] = [
    ...newParts(dock).map((row) => partLine(row, catalog, goodsTaxed)),
    ...ownedLines(dock),
    ...serviceLines(dock, catalog, asked, unknown),
    ...(asked.other ?? []).map(
      ({ name, quantity, price, taxed }): QuoteLine =>
        free('other', name, quantity, price, taxed ?? true, 'piece', null),
    ),
  ]
  const freight = freightOf(dock, design, catalog, asked)
  if (freight.by === 'band')
    lines.push(free('freight', 'freight', 1, freight.price!, rules.tax?.freight ?? false, 'job', null))
  lines.sort((a, b) => GROUPS.indexOf(a.group) - GROUPS.indexOf(b.group))

  const sum = (of: readonly QuoteLine[]): number => of.reduce((total, { amount }) => total + amount, 0)
  const goods = sum(lines.filter(isGoods))
  const discount = discountOf(goods, catalog, asked)
  const net = sum(lines) + discount.amount
  const taxable = sum(lines.filter(({ taxed }) => taxed)) + (goodsTaxed ? discount.amount : 0)
  const tax =
    rules.tax && !asked.untaxed
      ? { name: rules.tax.name, share: rules.tax.share, taxable, amount: shareOf(taxable, rules.tax.share) }
      : null
  const exact = net + (tax?.amount ?? 0)
  const total = roundedTo(exact, rules.round)
  const terms = termsOf(lines, discount, freight, catalog, asked)
  return {
    format,
    version: 1,
    name: dock.name,
    customer: design.job?.customer ?? '',
    order: design.job?.order ?? '',
    date: asked.date,
    until: holds.until,
    catalog: { id: catalog.id, name: catalog.name, edition: catalog.edition },
    fingerprint: dock.fingerprint,
    priced: terms,
    check: digestOf({ paper: format, dock: dock.fingerprint.all, priced: terms, total }),
    currency: catalog.currency,
    lines,
    groups: GROUPS.flatMap((group) => {
      const here = lines.filter((line) => line.group === group)
      return here.length > 0 ? [{ group, amount: sum(here) }] : []
    }),
    goods,
    discount,
    net,
    tax,
    ...(rules.round !== undefined && { rounding: { to: rules.round, amount: total - exact } }),
    total,
    freight,
    terms: holds.terms,
    unknown,
    stops: stopsOf(dock).length,
  }
}

/** A date is none of them: the same price on another day has the same code. */
function termsOf(
  lines: readonly QuoteLine[],
  { amount, share }: Quote['discount'],
  { zone }: QuoteFreight,
  catalog: Catalog,
  { fetched, untaxed, other }: QuoteAsked,
): PriceTerms {
  const sorted = <T>(list: readonly T[]): T[] =>
    list
      .map((one) => [JSON.stringify(one), one] as const)
      .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0))
      .map(([, one]) => one)
  return {
    services: sorted(
      lines
        .filter(({ group }) => group === 'services')
        .map(({ code, quantity }) => ({ code: code!, thousandths: thousandthsOf(quantity) })),
    ),
    discount:
      share !== null
        ? millionthsOf(share) === 0
          ? null
          : { millionths: millionthsOf(share) }
        : amount === 0
          ? null
          : { amount: -amount },
    // Where the catalog has neither, there is nothing to do without.
    fetched: Boolean(fetched && (catalog.quote?.freight || catalog.quote?.zones)),
    ...(zone && { zone: zone.code }),
    untaxed: Boolean(untaxed && catalog.quote?.tax),
    other: sorted(
      (other ?? []).map(({ name, quantity, price, taxed }) => ({
        name,
        thousandths: thousandthsOf(quantity),
        price,
        taxed: taxed ?? true,
      })),
    ),
  }
}

/** The same asked for again, from what was `priced`. */
export const askedAgain = ({ date, until, priced }: Quote): QuoteAsked => ({
  date,
  ...(until !== null && { until }),
  services: priced.services.map(({ code, thousandths }) => ({ code, quantity: thousandths / 1000 })),
  discount:
    priced.discount && 'millionths' in priced.discount
      ? { share: priced.discount.millionths / 1e6 }
      : priced.discount,
  fetched: priced.fetched,
  untaxed: priced.untaxed,
  other: priced.other.map(({ thousandths, ...one }) => ({ ...one, quantity: thousandths / 1000 })),
})

const isGoods = ({ group }: QuoteLine): boolean => !['owned', 'services', 'freight', 'other'].includes(group)

/** The tie plate is an accessory that joins; other accessories are extras. */
function groupOf({ kind, code }: PartRow, catalog: Catalog): QuoteGroup {
  const extra = catalog.extras.some(({ parts }) =>
    parts.some((part) => part.kind === kind && part.code === code),
  )
  return kind === 'accessory' && code === catalog.tie.code && !extra ? 'joints' : factsOf(kind).group
}

function partLine(row: PartRow, catalog: Catalog, taxed: boolean): QuoteLine {
  const sparesPriced = catalog.spares.priced
  return {
    group: groupOf(row, catalog),
    kind: row.kind,
    code: row.code,
    name: row.name,
    quantity: row.quantity,
    spares: row.spares,
    sparesPriced,
    per: 'piece',
    unitPrice: row.unitPrice,
    amount: productOf(row.unitPrice, row.quantity + (sparesPriced ? row.spares : 0)),
    taxed,
  }
}

/** What the dock uses of what is there already: told, and nothing charged for. */
const ownedLines = ({ existing }: Dock): QuoteLine[] =>
  (existing?.used ?? []).map(({ kind, code, name, quantity }) => ({
    ...free('owned', name, quantity, 0, false, 'piece', code),
    kind,
  }))

const free = (
  group: QuoteGroup,
  name: string,
  quantity: number,
  price: number,
  taxed: boolean,
  per: QuoteLine['per'],
  code: string | null,
): QuoteLine => ({
  group,
  kind: null,
  code,
  name,
  quantity,
  spares: 0,
  sparesPriced: false,
  per,
  unitPrice: price,
  amount: productOf(price, quantity),
  taxed,
})

function serviceLines(dock: Dock, catalog: Catalog, asked: QuoteAsked, unknown: string[]): QuoteLine[] {
  const sections = sectionsInOrder(dock).length
  return (asked.services ?? []).flatMap(({ code, quantity }) => {
    const service = catalog.services?.find((one) => one.code === code)
    if (!service) {
      unknown.push(code)
      return []
    }
    const n = quantity ?? (service.per === 'section' ? sections : 1)
    return [free('services', service.name, n, service.price, service.taxed ?? false, service.per, code)]
  })
}

/** The price of the band that holds it and that of the zone that it goes to; of a shop that has one of both alone, that one's. */
function freightOf(dock: Dock, design: Design, catalog: Catalog, asked: QuoteAsked): QuoteFreight {
  const { mass, longest } = cartons(dock, catalog)
  const { freight: bands, zones } = catalog.quote ?? {}
  const about = { mass, longest, price: null }
  if (asked.fetched) return { ...about, by: 'fetched' }
  if ((!bands && !zones) || mass === 0) return { ...about, by: 'absent' }
  const band = bands?.find((one) => mass <= one.mass + 1e-9 && longest <= one.longest + 1e-6)
  if (bands && !band) return { ...about, by: 'none' }
  const zone = zones?.find(({ code }) => code === design.job?.zone)
  if (zones && !zone) return { ...about, by: 'zone' }
  return {
    ...about,
    by: 'band',
    price: (band?.price ?? 0) + (zone?.price ?? 0),
    ...(zone && { zone: { code: zone.code, name: zone.name } }),
  }
}

/** Never more than there is to take it from. */
function discountOf(goods: number, catalog: Catalog, asked: QuoteAsked): Quote['discount'] {
  const usual = catalog.quote?.discount
  const wanted =
    asked.discount === undefined ? (usual === undefined ? null : { share: usual }) : asked.discount
  if (wanted === null) return { amount: 0, share: null }
  const [amount, share] =
    'share' in wanted ? [shareOf(goods, wanted.share), wanted.share] : [Math.round(wanted.amount), null]
  return { amount: -Math.min(Math.max(0, amount), Math.max(0, goods)) + 0, share }
}
