/**
 * The quote: lines by group, what is taken off, tax, freight, total; how long it holds, on which terms; the dock that it is for. The estimate:
 * the same lines at the catalog's prices, without what binds the shop.
 */
import { type Dock, formatLength, formatMass, formatMoney } from '../../../rules/index.ts'
import { footprintOfAll } from '../../../rules/layout/footprint.ts'
import {
  type Estimate,
  estimate,
  type Quote,
  type QuoteAsked,
  type QuoteLine,
  quote,
} from '../../../rules/papers/quote.ts'
import type { QuoteFile } from '../../../rules/papers/quote-file.ts'
import { sinceSaid } from '../../../rules/papers/quote-since.ts'
import { inFours } from '../../../rules/words/fours.ts'
import { paperWords } from '../../../rules/words/papers.ts'
import { sheetWords } from '../../../rules/words/sheets.ts'
import { planPicture, wholePicture } from '../../drawing/picture.ts'
import { band, figure, keyValues, list, paragraph, subheading, writeOn } from '../blocks.ts'
import { documentOf, head, widthOf } from '../document.ts'
import { type Block, block, type Flow } from '../flow.ts'
import type { Paper } from '../marks.ts'
import type { PaperOf } from '../paper-of.ts'
import { GRAY, SIZE } from '../style.ts'
import { type Column, table, tableHead } from '../table.ts'
import { sinceBlocks } from './quote-since.ts'

export type QuoteWanted = Omit<QuoteAsked, 'date'> & {
  /** The last quote: what is another now is told. */
  readonly since?: QuoteFile
}

/** Height of the dock from above, mm: more for one that reaches sideways. */
function planHeight({ sections }: Dock): number {
  const covered = footprintOfAll(sections)
  if (!covered) return 0
  const { x0, x1, y0, y1 } = covered
  return Math.min(76, Math.max(42, (130 * (y1 - y0)) / (x1 - x0)))
}

export function quotePaper(of: PaperOf, { since, ...asked }: QuoteWanted = {}): Paper {
  const { dock, design, catalog, options } = of
  return pricedPaper(of, quote(dock, design, catalog, { ...asked, date: options.date }), since)
}

export function estimatePaper(of: PaperOf): Paper {
  const { dock, design, catalog, options } = of
  return pricedPaper(of, estimate(dock, design, catalog, { date: options.date }))
}

function pricedPaper(bare: PaperOf, made: Quote | Estimate, since?: QuoteFile): Paper {
  const { dock, catalog, options } = bare
  const { units, lang } = options
  const t = sheetWords(lang, units)
  const say = paperWords(lang, units)
  const width = widthOf(options)
  const binds = made.format === 'leadline/quote'
  const kind = binds ? 'quote' : 'estimate'
  const of: PaperOf = {
    ...bare,
    check: { name: say(`check-${kind}`), dockName: say('check-dock'), code: inFours(made.check) },
  }
  const money = (minor: number): string => formatMoney(minor, made.currency, lang)
  const columns: Column[] = [
    { title: t('count'), align: 'end' },
    { title: t('quote-line'), flex: true },
    { title: t('quote-each'), align: 'end' },
    { title: t('quote-amount'), align: 'end' },
  ]
  const row = (line: QuoteLine): string[] => [
    line.per === 'piece' ? String(line.quantity) : `${line.quantity} ${t(`per-${line.per}`)}`,
    [
      line.group === 'freight'
        ? say('quote-freight-line', {
            mass: formatMass(made.freight.mass, units),
            longest: formatLength(made.freight.longest, units),
          })
        : line.name,
      line.spares > 0
        ? `(${say(line.sparesPriced ? 'quote-spares-charged' : 'quote-spares', { count: { value: line.spares, unit: 'count' } })})`
        : '',
    ]
      .filter(Boolean)
      .join(' '),
    money(line.unitPrice),
    money(line.amount),
  ]
  const picture = wholePicture(of, width)
  const rows = made.lines.map(row)
  const top = tableHead(columns, rows, width)
  const high = planHeight(dock)
  const plan = planPicture(of, [], { x0: 0, y0: 0, x1: width, y1: high })
  const flow: Flow = [
    ...head(say(kind), of, options, catalog),
    ...(binds ? [] : paragraph(say('estimate-lead'), width, { weight: 'bold' })),
    ...(picture
      ? [figure(picture, width), { ...figure({ marks: plan, width, height: high }, width), before: 1 }]
      : []),
    ...made.groups.flatMap(({ group, amount }): Block[] => {
      const lines = made.lines.filter((line) => line.group === group)
      return lines.length > 0
        ? [
            band(say(`quote-${group}`), money(amount), width, { head: top, name: say(`quote-${group}`) }),
            ...table(columns, lines.map(row), width, { like: rows, head: top }),
          ]
        : []
    }),
    ...sums(made, say, money, width).map((one, i) => (i === 0 ? { ...one, before: 5 } : one)),
    ...(made.freight.by === 'none'
      ? paragraph(
          say('quote-freight-ask', {
            mass: formatMass(made.freight.mass, units),
            longest: formatLength(made.freight.longest, units),
          }),
          width,
          { before: 3 },
        )
      : []),
    ...(made.until
      ? paragraph(say('quote-until', { date: made.until }), width, { before: 3, weight: 'bold' })
      : []),
    ...paragraph(`${say('quote-rounding')} ${say('check-what', { name: say(`check-${kind}`) })}`, width, {
      size: SIZE.small,
      ink: GRAY,
    }),
    ...(since ? sinceBlocks(sinceSaid(since, { dock, quote: made }, catalog, options), width) : []),
    ...(made.terms.length > 0
      ? [
          subheading(say('quote-terms'), width),
          // The signatures never stand without the terms.
          ...list(made.terms, width, 'dot', { size: SIZE.small }).map((one) => ({ ...one, keep: true })),
        ]
      : []),
    ...(binds ? [writeOn([t('agreed'), t('for-shop')], width, 14)] : []),
  ]
  return documentOf(say(kind), flow, catalog, options, of)
}

/** Sums at the right, the total last and strong; one block, which is not cut. */
function sums(
  made: Quote | Estimate,
  say: ReturnType<typeof paperWords>,
  money: (minor: number) => string,
  width: number,
): Block[] {
  const wide = width / 2
  const { discount, tax } = made
  const all = [
    { label: say('quote-goods'), value: money(made.goods) },
    ...(discount.amount !== 0
      ? [
          {
            label:
              discount.share === null
                ? say('quote-discount')
                : say('quote-discount-share', { share: { value: discount.share, unit: 'share' } }),
            value: money(discount.amount),
          },
        ]
      : []),
    { label: say('quote-net'), value: money(made.net) },
    ...(tax
      ? [
          { label: say('quote-taxable'), value: money(tax.taxable) },
          {
            label: say('quote-tax', { name: tax.name, share: `${Number((tax.share * 100).toFixed(4))} %` }),
            value: money(tax.amount),
          },
        ]
      : []),
    {
      label: say(made.format === 'leadline/quote' ? 'quote-total' : 'estimate-total'),
      value: money(made.total),
      strong: true,
    },
  ]
  return keyValues(all, wide).map((one) => ({
    ...block(one.height, (x, y) => one.marks(x + width - wide, y)),
    keep: true,
  }))
}
