/** What a quote's total is made of: its parts by group, or each of them; what else is done; sums. */

import type { QuoteLine } from '../../rules/papers/quote.ts'
import { type Language, listOf } from '../../rules/words/language.ts'
import { band, keyValues, subheading } from '../paper/blocks.ts'
import { type Block, block } from '../paper/flow.ts'
import { type Column, table, tableHead } from '../paper/table.ts'
import { isBinding, type Priced } from './priced.ts'
import { freightLine } from './quote-front.ts'

/** A row a group of parts, and one for all else that is charged. */
export function groupTable(priced: Priced): Block[] {
  const { made, reader, width, t, lines: priceOfEach } = priced
  const columns: Column[] = [
    { title: t('quote-line'), bold: true },
    { title: '', flex: true },
    ...(priceOfEach ? [{ title: t('quote-amount'), align: 'end' } as const] : []),
  ]
  const money = (amount: number): string[] => (priceOfEach ? [priced.money(amount)] : [])
  const rows = made.groups.flatMap(({ group, amount }): string[][] => {
    const lines = made.lines.filter((line) => line.group === group)
    const own = lines.every(({ kind }) => kind === null)
    const said = (line: QuoteLine): string =>
      line.per === 'piece' || group === 'freight'
        ? lineName(line, priced)
        : t('named-so', { what: lineName(line, priced), said: `${line.quantity} ${t(`per-${line.per}`)}` })
    if (own && group !== 'owned')
      return lines.map((line, i) => [i === 0 ? t(`quote-${group}`) : '', said(line), ...money(line.amount)])
    const value = lines.reduce((sum, { quantity }) => sum + quantity, 0)
    const what =
      group === 'hardware'
        ? t('quote-bolts', { count: { value, unit: 'count' } })
        : contents(lines, reader.language)
    return [[t(`quote-${group}`), what, ...money(amount)]]
  })
  return [subheading(t('quote-made-of'), width), ...table(columns, rows, width)]
}

const contents = (lines: readonly QuoteLine[], language: Language): string =>
  listOf(
    lines.map(({ quantity, name }) => `${quantity} × ${name}`),
    language,
  )

/** A table a group, under a band with the group's amount; their columns stand under each other. */
export function lineTables(priced: Priced): Block[] {
  const { made, width, t, money } = priced
  const columns: Column[] = [
    { title: t('count'), align: 'end' },
    { title: t('quote-line'), flex: true },
    { title: t('quote-each'), align: 'end' },
    { title: t('quote-amount'), align: 'end' },
  ]
  const row = (line: QuoteLine): string[] => [
    line.per === 'piece' ? String(line.quantity) : `${line.quantity} ${t(`per-${line.per}`)}`,
    lineName(line, priced),
    money(line.unitPrice),
    money(line.amount),
  ]
  const rows = made.lines.map(row)
  const top = tableHead(columns, rows, width)
  return made.groups.flatMap(({ group, amount }): Block[] => {
    const lines = made.lines.filter((line) => line.group === group)
    const name = t(`quote-${group}`)
    return lines.length > 0
      ? [
          band(name, money(amount), width, { head: top, name }),
          ...table(columns, lines.map(row), width, { like: rows, head: top }),
        ]
      : []
  })
}

function lineName({ group, name, spares, sparesPriced }: QuoteLine, priced: Priced): string {
  const { t } = priced
  const what = group === 'freight' ? freightLine(priced) : name
  if (spares === 0) return what
  const count = { value: spares, unit: 'count' }
  return `${what} (${t(sparesPriced ? 'quote-spares-charged' : 'quote-spares', { count })})`
}

/** Sums at the right, the total last and strong; one block, which is not cut. */
export function sums(priced: Priced): Block[] {
  const { made, width, t, money } = priced
  const wide = width / 2
  const { discount, rounding, tax } = made
  const all = [
    { label: t('quote-goods'), value: money(made.goods) },
    ...(discount.amount !== 0
      ? [
          {
            label:
              discount.share === null
                ? t('quote-discount')
                : t('quote-discount-share', { share: { value: discount.share, unit: 'share' } }),
            value: money(discount.amount),
          },
        ]
      : []),
    { label: t('quote-net'), value: money(made.net) },
    ...(tax
      ? [
          { label: t('quote-taxable'), value: money(tax.taxable) },
          {
            label: t('quote-tax', { name: tax.name, share: { value: tax.share, unit: 'share-fine' } }),
            value: money(tax.amount),
          },
        ]
      : []),
    ...(rounding && rounding.amount !== 0
      ? [{ label: t('quote-rounded'), value: money(rounding.amount) }]
      : []),
    {
      label: t(isBinding(priced) ? 'quote-total' : 'estimate-total'),
      value: money(made.total),
      strong: true,
    },
  ]
  return keyValues(all, wide).map((one, i) => ({
    ...block(one.height, (x, y) => one.marks(x + width - wide, y)),
    before: i === 0 ? 5 : 0,
    keep: true,
  }))
}
