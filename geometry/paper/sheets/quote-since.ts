/** What changed since the last quote, on the quote: the sums, the lines, and why legs are others now. */
import { assessKit, type Catalog, type Dock, deriveKit, formatMoney } from '../../../rules/index.ts'
import type { Quote } from '../../../rules/papers/quote.ts'
import { quoteChanges } from '../../../rules/papers/quote-changes.ts'
import type { QuoteFile } from '../../../rules/papers/quote-file.ts'
import { sentence } from '../../../rules/papers/saying.ts'
import { paperWords } from '../../../rules/words/papers.ts'
import { sheetWords } from '../../../rules/words/sheets.ts'
import { list, paragraph, subheading } from '../blocks.ts'
import type { Block } from '../flow.ts'
import type { PaperOptions } from '../options.ts'
import { GRAY, SIZE } from '../style.ts'
import { type Column, table } from '../table.ts'

export function sinceBlocks(
  since: QuoteFile,
  now: { readonly dock: Dock; readonly quote: Quote },
  catalog: Catalog,
  { lang, units }: PaperOptions,
  width: number,
): Block[] {
  const say = paperWords(lang, units)
  const t = sheetWords(lang, units)
  const money = (minor: number): string =>
    `${minor > 0 ? '+' : ''}${formatMoney(minor, now.quote.currency, lang)}`
  // The older design, by the rules of today: what is another leg now is so by the design.
  const before = { dock: assessKit(deriveKit(since.design, catalog)), quote: since }
  const changes = quoteChanges(before, now)
  const title = subheading(say('quote-changes', { date: changes.since }), width)
  if (!changes.comparable)
    return [title, ...paragraph(t('since-currency', { currency: since.currency }), width, { ink: GRAY })]
  const { sums, lines, legs, total } = changes
  const columns: Column[] = [
    { title: t('quote-line'), flex: true },
    { title: t('since-before'), align: 'end' },
    { title: t('since-now'), align: 'end' },
    { title: t('since-change'), align: 'end' },
  ]
  const rows = [
    ...lines.map(({ name, quantity, amount }) => [
      name,
      String(quantity.before),
      String(quantity.after),
      money(amount),
    ]),
    ...(
      [
        ['change-discount', sums.discount],
        ['change-tax', sums.tax],
      ] as const
    ).flatMap(([key, amount]) => (amount === 0 ? [] : [[say(key), '', '', money(amount)]])),
    [
      say('quote-total'),
      formatMoney(total.before, now.quote.currency, lang),
      formatMoney(total.after, now.quote.currency, lang),
      money(total.after - total.before),
    ],
  ]
  return [
    title,
    ...table(columns, rows, width),
    ...(legs.length > 0
      ? list(
          legs.map(({ say: leg, why }) =>
            [sentence(leg, say), ...why.map((term) => sentence(term.say, say))].join('; '),
          ),
          width,
          'dot',
          { size: SIZE.small },
        )
      : []),
  ]
}
