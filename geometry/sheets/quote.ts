/**
 * The quote: lines by group, what is taken off, tax, freightotal; how long it holds, on which terms; the dock that it is for. The estimate:
 * the same lines at the catalog's prices, without what binds the shop.
 */

import { type Dock, formatLength, formatMass, moneyIn, type Reader } from '../../rules/index.ts'
import { footprintOfAll } from '../../rules/layout/footprint.ts'
import {
  type Estimate,
  estimate,
  type Quote,
  type QuoteAsked,
  type QuoteLine,
  quote,
} from '../../rules/papers/quote.ts'
import type { QuoteFile } from '../../rules/papers/quote-file.ts'
import { sinceSaid } from '../../rules/papers/quote-since.ts'
import { inFours } from '../../rules/words/check-code-text.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import { PAPERS, type PaperWords } from '../../rules/words/papers.ts'
import { planPicture, wholePicture } from '../drawing/picture.ts'
import { band, figure, keyValues, list, paragraph, subheading, writeOn } from '../paper/blocks.ts'
import { documentOf, head, widthOf } from '../paper/document.ts'
import { type Block, block, type Flow } from '../paper/flow.ts'
import type { Paper } from '../paper/marks.ts'
import type { PaperOf } from '../paper/paper-of.ts'
import { GRAY, SIZE } from '../paper/style.ts'
import { type Column, table, tableHead } from '../paper/table.ts'
import { sinceBlocks } from './quote-since.ts'

export type QuoteWanted = Omit<QuoteAsked, 'date'> & {
  /** The last quote: what is another now is told. */
  readonly since?: QuoteFile
}

export function quotePaper(of: PaperOf, { since, ...asked }: QuoteWanted = {}): Paper {
  const { dock, design, catalog, options } = of
  return pricedPaper(of, quote(dock, design, catalog, { ...asked, date: options.date }), since)
}

export function estimatePaper(of: PaperOf): Paper {
  const { dock, design, catalog, options } = of
  return pricedPaper(of, estimate(dock, design, catalog, { date: options.date }))
}

/** What every part of the paper is written with. */
interface Priced {
  readonly made: Quote | Estimate
  readonly reader: Reader
  /** Between the margins, mm. */
  readonly width: number
  readonly t: PaperWords
  readonly money: (minor: number) => string
}

function pricedPaper(bare: PaperOf, made: Quote | Estimate, since?: QuoteFile): Paper {
  const { dock, catalog, options } = bare
  const priced: Priced = {
    made,
    reader: options,
    width: widthOf(options),
    t: wordsOf(PAPERS, options),
    money: moneyIn(made.currency, options.language),
  }
  const { t, width } = priced
  const binds = made.format === 'leadline/quote'
  const kind = binds ? 'quote' : 'estimate'
  const of: PaperOf = {
    ...bare,
    check: { name: t(`check-${kind}`), dockName: t('check-dock'), code: inFours(made.check) },
  }
  const flow: Flow = [
    ...head(t(kind), of, options, catalog),
    ...(binds ? [] : paragraph(t('estimate-lead'), width, { weight: 'bold' })),
    ...pictures(of, width),
    ...lineTables(priced),
    ...sums(priced).map((one, i) => (i === 0 ? { ...one, before: 5 } : one)),
    ...conditions(priced),
    ...paragraph(`${t('quote-rounding')} ${t('check-what', { name: t(`check-${kind}`) })}`, width, {
      size: SIZE.small,
      ink: GRAY,
    }),
    ...(since ? sinceBlocks(sinceSaid(since, { dock, quote: made }, catalog, options), width) : []),
    ...terms(priced),
    ...(binds ? [writeOn([t('agreed'), t('for-shop')], width, 14)] : []),
  ]
  return documentOf(t(kind), flow, catalog, options, of)
}

/** The dock in perspective and from above. */
function pictures(drawn: PaperOf, width: number): Block[] {
  const whole = wholePicture(drawn, width)
  if (!whole) return []
  const height = planHeight(drawn.dock)
  const plan = planPicture(drawn, [], { x0: 0, y0: 0, x1: width, y1: height })
  return [figure(whole, width), { ...figure({ marks: plan, width, height }, width), before: 1 }]
}

/** Height of the dock from above, mm: more for one that reaches sideways. */
function planHeight({ sections }: Dock): number {
  const around = footprintOfAll(sections)
  if (!around) return 0
  return Math.min(76, Math.max(42, (130 * (around.y1 - around.y0)) / (around.x1 - around.x0)))
}

/** A table a group, under a band with the group's amount; their columns stand under each other. */
function lineTables(priced: Priced): Block[] {
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

function lineName({ group, name, spares, sparesPriced }: QuoteLine, { made, reader, t }: Priced): string {
  const what = group === 'freight' ? t('quote-freight-line', freightFigures(made, reader)) : name
  if (spares === 0) return what
  const count = { value: spares, unit: 'count' }
  return `${what} (${t(sparesPriced ? 'quote-spares-charged' : 'quote-spares', { count })})`
}

const freightFigures = ({ freight }: Quote | Estimate, reader: Reader) => ({
  mass: formatMass(freight.mass, reader),
  longest: formatLength(freight.longest, reader),
})

/** Sums at the right, the total last and strong; one block, which is not cut. */
function sums({ made, width, t, money }: Priced): Block[] {
  const wide = width / 2
  const { discount, tax } = made
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
    {
      label: t(made.format === 'leadline/quote' ? 'quote-total' : 'estimate-total'),
      value: money(made.total),
      strong: true,
    },
  ]
  return keyValues(all, wide).map((one) => ({
    ...block(one.height, (x, y) => one.marks(x + width - wide, y)),
    keep: true,
  }))
}

/** That freight is yet to be asked for, and how long the quote holds. */
const conditions = ({ made, reader, width, t }: Priced): Block[] => [
  ...(made.freight.by === 'none'
    ? paragraph(t('quote-freight-ask', freightFigures(made, reader)), width, { before: 3 })
    : []),
  ...(made.until
    ? paragraph(t('quote-until', { date: made.until }), width, { before: 3, weight: 'bold' })
    : []),
]

/** The signatures never stand without them. */
const terms = ({ made, width, t }: Priced): Block[] =>
  made.terms.length > 0
    ? [
        subheading(t('quote-terms'), width),
        ...list(made.terms, width, 'dot', { size: SIZE.small }).map((one) => ({ ...one, keep: true })),
      ]
    : []
