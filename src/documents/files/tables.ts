/** Packing list, cartons and quote as CSV and as JSON, for page and terminal alike. */
import { type Catalog, type Design, type Dock, type PackingList, packingList } from '../../../rules/index.ts'
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
}

/** The packing list row by row: SI units, minor units of money. */
export function listRows(list: PackingList): Row[] {
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

export function tableCsv(table: Table, { dock, design, catalog, asked }: TableOf): string {
  switch (table) {
    case 'list':
      return csvOf(listRows(packingList(dock, catalog)))
    case 'cartons':
      return csvOf(cartonRows(cartons(dock, catalog)))
    case 'quote':
      return csvOf(quoteRows(quote(dock, design, catalog, asked)))
    case 'estimate':
      return csvOf(quoteRows(estimate(dock, design, catalog, asked)))
  }
}

/** A quote's has its design with it: the next quote is compared with that. */
export function tableJson(table: Table, { dock, design, catalog, asked }: TableOf): string {
  const data =
    table === 'list'
      ? packingList(dock, catalog)
      : table === 'cartons'
        ? cartons(dock, catalog)
        : quoteFile((table === 'quote' ? quote : estimate)(dock, design, catalog, asked), design)
  return jsonText(data)
}
