/** Packing list, cartons and quote as CSV and as JSON, for page and terminal alike. */
import { type Catalog, type Design, type Dock, type PackingList, packingList } from '../../../rules/index.ts'
import type { PricesShown } from '../../../rules/papers/prices-shown.ts'
import {
  cartonRows,
  cartons,
  estimate,
  type QuoteAsked,
  quote,
  quoteFile,
  quoteRows,
  type Row,
} from '../../../rules/papers.ts'
import { isForbidden, stopsOf } from '../../../rules/stops.ts'
import { csvOf } from './csv.ts'
import { jsonText } from './visible-text.ts'

export const TABLES = ['list', 'cartons', 'quote', 'estimate'] as const
export type Table = (typeof TABLES)[number]

export interface TableOf {
  readonly dock: Dock
  readonly design: Design
  readonly catalog: Catalog
  /** What the quote is asked for with; others do not ask it. */
  readonly asked: QuoteAsked
  /** What of prices whoever it is for is shown; where absent all, as the shop has it. */
  readonly prices?: PricesShown
}

/** The packing list row by row: SI units, money in minor units. Where something is there already, what is used of it too, and told so. */
export function listRows(list: PackingList): Row[] {
  const packed = packedRows(list)
  if (!list.existing) return packed
  return [
    ...packed.map((row) => ({ ...row, owned: '' })),
    ...list.existing.used.map(
      ({ kind, code, name, quantity }): Row => ({
        bag: '',
        kind,
        code,
        name,
        quantity,
        spares: 0,
        unit_mass_kg: '',
        mass_kg: '',
        unit_price: 0,
        price: 0,
        currency: list.totals.currency,
        wrench: '',
        owned: 'yes',
      }),
    ),
  ]
}

function packedRows(list: PackingList): Row[] {
  return list.groups.flatMap(({ bag, rows }) =>
    rows.map((row) => ({
      bag: bag ?? '',
      kind: row.kind,
      code: row.code,
      name: row.name,
      quantity: row.quantity,
      spares: row.spares,
      unit_mass_kg: row.unitMass,
      mass_kg: row.mass,
      unit_price: row.unitPrice,
      price: row.price,
      currency: list.totals.currency,
      wrench: row.wrench ?? '',
    })),
  )
}

export const tableCsv = (table: Table, of: TableOf): string =>
  csvOf(marked(shownRows(rowsOf(table, of), of.prices), of.dock, of.design.job?.order))

/** Without what rows cost, where that is not shown: sums keep their amounts where totals are. */
const shownRows = (rows: readonly Row[], prices: PricesShown = 'lines'): readonly Row[] =>
  prices === 'lines'
    ? rows
    : rows.map((row) =>
        prices === 'total' && SUMS.has(row.group)
          ? row
          : Object.fromEntries(Object.entries(row).map(([key, value]) => [key, MONEY.has(key) ? '' : value])),
      )

function rowsOf(table: Table, { dock, design, catalog, asked }: TableOf): Row[] {
  switch (table) {
    case 'list':
      return listRows(packingList(dock, catalog))
    case 'cartons':
      return cartonRows(cartons(dock, catalog))
    case 'quote':
      return quoteRows(quote(dock, design, catalog, asked))
    case 'estimate':
      return quoteRows(estimate(dock, design, catalog, asked))
  }
}

const MONEY: ReadonlySet<string> = new Set(['unit_price', 'price', 'amount'])
const SUMS: ReadonlySet<unknown> = new Set(['discount', 'tax', 'rounding', 'total'])

/** Digits after the point of an amount in whole units of the currency (ISO 4217). */
const moneyDigits = (currency: string): number =>
  new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2

/**
 * Every row tells which dock it is of, by its order and check code, and what forbids building that, by the codes of its findings. Money is
 * in whole units of the currency beside it, with decimals. Rows of a dock that is forbidden have no prices, and there are none of sums.
 */
export function marked(
  rows: readonly Row[],
  dock: Pick<Dock, 'findings' | 'fingerprint'>,
  order = '',
): Row[] {
  const forbidden = isForbidden(dock)
  const about = {
    order,
    check_code: dock.fingerprint.all.slice(0, 12),
    do_not_build: [...new Set(stopsOf(dock).map(({ code }) => code))].join(' '),
  }
  return rows
    .filter(({ group }) => !forbidden || !SUMS.has(group))
    .map((row) => ({
      ...Object.fromEntries(
        Object.entries(row).map(([key, value]) => [
          key,
          !MONEY.has(key) || typeof value !== 'number'
            ? value
            : forbidden
              ? ''
              : value / 10 ** moneyDigits(String(row.currency)),
        ]),
      ),
      ...about,
    }))
}

/** A quote's has its design with it: the next quote is compared with that. */
export function tableJson(table: Table, { dock, design, catalog, asked, prices = 'lines' }: TableOf): string {
  const data =
    table === 'list'
      ? packingList(dock, catalog)
      : table === 'cartons'
        ? cartons(dock, catalog)
        : quoteFile((table === 'quote' ? quote : estimate)(dock, design, catalog, asked), design)
  return jsonText(prices === 'lines' ? data : withoutPrices(data, prices))
}

/** What of figures is a part's own price, or a group's. */
const OF_LINES = {
  lists: new Set(['lines', 'groups', 'used', 'freight']),
  money: new Set(['unitPrice', 'price', 'amount']),
}

/** The same data without prices of lines; where none are shown without any. Sums keep theirs. */
function withoutPrices(data: unknown, prices: 'none' | 'total'): unknown {
  const strip = (value: unknown, within: boolean): unknown => {
    if (Array.isArray(value)) return value.map((one) => strip(one, within))
    if (typeof value !== 'object' || value === null) return value
    return Object.fromEntries(
      Object.entries(value).flatMap(([key, one]) =>
        within && OF_LINES.money.has(key) ? [] : [[key, strip(one, within || OF_LINES.lists.has(key))]],
      ),
    )
  }
  return strip(data, prices === 'none')
}
