/** Cartons and quote as flat rows for a spreadsheet: SI units, told in the heads, and minor units of money. */
import type { Packages, PackedItem } from './cartons.ts'
import type { Estimate, Quote } from './quote.ts'

export type Row = Readonly<Record<string, string | number>>

/** A row for each kind of part in each bag and package. */
export function cartonRows({ packages }: Packages): Row[] {
  return packages.flatMap((one) => {
    const row = (item: PackedItem, bag: string): Row => ({
      package: one.number,
      packing: one.kind,
      package_mass_kg: one.mass,
      bag,
      kind: item.kind,
      code: item.code,
      name: item.name,
      quantity: item.quantity,
      spares: item.spares,
      unit_mass_kg: item.unitMass,
      mass_kg: item.mass,
      for: item.of.join(' '),
    })
    return [
      ...one.bags.flatMap((bag) => bag.items.map((item) => row(item, bag.id))),
      ...one.items.map((item) => row(item, '')),
    ]
  })
}

/** Lines, then discount, tax, rounding and total as lines of their own: the sum of `amount` of all but the last is the last. */
export function quoteRows(quote: Quote | Estimate): Row[] {
  const row = (group: string, name: string, amount: number, rest: Row = {}): Row => ({
    group,
    kind: '',
    code: '',
    name,
    quantity: '',
    spares: '',
    per: '',
    unit_price: '',
    ...rest,
    amount,
    currency: quote.currency,
    taxed: rest.taxed ?? '',
  })
  return [
    ...quote.lines.map((line) =>
      row(line.group, line.name, line.amount, {
        kind: line.kind ?? '',
        code: line.code ?? '',
        quantity: line.quantity,
        spares: line.spares,
        per: line.per,
        unit_price: line.unitPrice,
        taxed: line.taxed ? 'yes' : 'no',
      }),
    ),
    ...(quote.discount.amount === 0 ? [] : [row('discount', 'Discount', quote.discount.amount)]),
    ...(quote.tax ? [row('tax', quote.tax.name, quote.tax.amount)] : []),
    ...(quote.rounding?.amount ? [row('rounding', 'Rounding', quote.rounding.amount)] : []),
    row('total', quote.format === 'leadline/quote' ? 'Total' : 'Estimated total', quote.total),
  ]
}
