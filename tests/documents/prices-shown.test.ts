/** What customers are shown of prices is the shop's to say: of every paper, table and file that they get, none tells more. */
import { describe, expect, it } from 'vitest'
import type { Sheet } from '../../geometry/paper/marks.ts'
import { paperFrom } from '../../geometry/paper/paper-of.ts'
import { estimatePaper, quotePaper } from '../../geometry/sheets/quote.ts'
import { type Catalog, demoCatalog, demoDesign, english, moneyIn, projectOf } from '../../rules/index.ts'
import { pricesFor } from '../../rules/papers/prices-shown.ts'
import { estimate, type QuoteAsked, quote } from '../../rules/papers.ts'
import { type Asked, type Figures, type What, writeFile } from '../../src/documents/files/write-file.ts'
import { placedDock } from '../support/placed-dock.ts'

const DATE = '2026-05-01'
const GRADES = ['none', 'total', 'lines'] as const
type Grade = (typeof GRADES)[number]
const shopOf = (prices: Grade | undefined): Catalog => ({
  ...demoCatalog,
  shop: { ...demoCatalog.shop, ...(prices && { prices }) },
})
const options = { ...english('imperial'), size: 'letter' as const, date: DATE, by: '' }
const dock = placedDock(demoDesign, demoCatalog)

const write = async (
  format: 'csv' | 'json',
  what: What | Figures,
  prices: Grade | undefined,
  audience: Asked['audience'] = 'customer',
): Promise<string> =>
  new TextDecoder().decode(
    await writeFile(
      format,
      { what, audience, dock, design: demoDesign, catalog: shopOf(prices), options },
      () => {
        throw new Error('no fonts are asked for')
      },
    ),
  )

/** Cells of the columns that hold money, row by row. */
function moneyOf(csv: string): { readonly group: string; readonly cells: readonly string[] }[] {
  const [head, ...rows] = csv
    .trim()
    .split(/\r?\n/)
    .map((row) => row.match(/("([^"]|"")*"|[^,]*)(,|$)/g)!.map((cell) => cell.replace(/,$/, '')))
  const at = ['unit_price', 'price', 'amount'].flatMap((name) => {
    const k = head!.indexOf(name)
    return k < 0 ? [] : [k]
  })
  return rows.map((cells) => ({ group: cells[0]!, cells: at.map((k) => cells[k] ?? '') }))
}

it.each([
  ['customer', undefined, 'lines'],
  ['customer', 'total', 'total'],
  ['customer', 'none', 'none'],
  ['shop', 'none', 'lines'],
  ['crew', 'lines', 'none'],
] as const)('a %s of a shop that says %s is shown %s', (audience, prices, shown) => {
  expect(pricesFor(shopOf(prices), audience)).toBe(shown)
})

describe('a table for a customer', () => {
  it('has all prices where the shop says nothing, as ever', async () => {
    expect(await write('csv', 'estimate', undefined)).toBe(await write('csv', 'estimate', 'lines'))
    const rows = moneyOf(await write('csv', 'list', undefined))
    expect(rows.length).toBeGreaterThan(10)
    expect(rows.every(({ cells }) => cells.every((cell) => Number(cell) >= 0 && cell !== ''))).toBe(true)
  })

  it('has totals alone where the shop says so', async () => {
    const rows = moneyOf(await write('csv', 'estimate', 'total'))
    const priced = rows.filter(({ cells }) => cells.some((cell) => cell !== ''))
    expect(priced.map(({ group }) => group)).toEqual(['tax', 'total'])
    const made = estimate(dock, demoDesign, demoCatalog, { date: DATE })
    expect(priced.at(-1)!.cells.at(-1)).toBe(String(made.total / 100))
    expect(
      moneyOf(await write('csv', 'list', 'total'))
        .flatMap(({ cells }) => cells)
        .join(''),
    ).toBe('')
    const json = JSON.parse(await write('json', 'estimate', 'total'))
    expect(json.total).toBe(made.total)
    expect(json.lines).toHaveLength(made.lines.length)
    expect(JSON.stringify([json.lines, json.groups, json.freight])).not.toMatch(
      /"(?:unitPrice|price|amount)"/,
    )
    const list = JSON.parse(await write('json', 'list', 'total'))
    expect(list.totals.price).toBe(dock.totals.price)
    expect(JSON.stringify(list.groups)).not.toMatch(/rice"/)
  })

  it('is not to be had where the shop shows none, and the shop has it all the same', async () => {
    for (const what of ['estimate', 'list'] as const)
      await expect(write('csv', what, 'none')).rejects.toThrow('a shop that shows no prices')
    expect(await write('csv', 'packing', 'none')).not.toBe('')
    expect(await write('csv', 'quote', 'none', 'shop')).toBe(await write('csv', 'quote', 'lines', 'shop'))
  })
})

describe('a paper', () => {
  const asked: Omit<QuoteAsked, 'date'> = { services: [{ code: 'delivery' }], discount: { share: 0.05 } }
  const usd = moneyIn('USD', options.language)
  const amountsOn = (sheets: readonly Sheet[]): Set<string> =>
    new Set(
      sheets.flatMap(({ marks }) =>
        marks.flatMap((mark) => (mark.kind === 'text' ? (mark.text.match(/-?\$[\d,]+\.\d\d/g) ?? []) : [])),
      ),
    )
  const of = (prices: Grade) => paperFrom(projectOf(demoDesign, shopOf(prices), dock), options)
  const sheets = (paper: 'quote' | 'estimate', prices: Grade): readonly Sheet[] =>
    (paper === 'quote' ? quotePaper(of(prices), asked) : estimatePaper(of(prices))).sheets

  it.each(['quote', 'estimate'] as const)('with totals alone tells no part’s price: %s', (paper) => {
    const made =
      paper === 'quote'
        ? quote(dock, demoDesign, demoCatalog, { ...asked, date: DATE })
        : estimate(dock, demoDesign, demoCatalog, { date: DATE })
    const lines = made.lines.map(({ amount }) => usd(amount))
    const sums = [made.goods, made.discount.amount, made.net, made.tax!.taxable, made.tax!.amount, made.total]
    const known = new Set([...sums, Math.round(made.total / 2)].map(usd))
    const told = [...amountsOn(sheets(paper, 'total'))]
    expect(told).toContain(usd(made.total))
    expect(told.filter((amount) => !known.has(amount))).toEqual([])
    // With lines there are some.
    expect(
      [...amountsOn(sheets(paper, 'lines'))].filter((amount) => lines.includes(amount)).length,
    ).toBeGreaterThan(1)
  })

  it('of a shop that shows customers none is a quote with its total: it is the answer to them', () => {
    expect(amountsOn(sheets('quote', 'none'))).toEqual(amountsOn(sheets('quote', 'total')))
  })

  it('has each part with its price where that is asked for by name', () => {
    const each = quotePaper(of('total'), { ...asked, each: true }).sheets
    expect(amountsOn(each).size).toBeGreaterThan(amountsOn(sheets('quote', 'total')).size + 10)
  })
})
