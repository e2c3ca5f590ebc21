/**
 * The quote. First page: what a customer decides by. Then what the total is made of, what was found about the dock, what is another since the
 * last quote, the terms, and where it is signed, with the check codes of what is accepted. An annex has each part with its price, where the
 * shop wants one. The estimate: the same at the catalog's prices, without what binds the shop.
 */

import { type Catalog, moneyIn } from '../../rules/index.ts'
import { pricesFor } from '../../rules/papers/prices-shown.ts'
import { type Estimate, estimate, type Quote, type QuoteAsked, quote } from '../../rules/papers/quote.ts'
import type { QuoteFile } from '../../rules/papers/quote-file.ts'
import { depositOf } from '../../rules/papers/quote-included.ts'
import { sinceSaid } from '../../rules/papers/quote-since.ts'
import { isForbidden } from '../../rules/stops.ts'
import { inFours } from '../../rules/words/check-code-text.ts'
import { dayIn } from '../../rules/words/days.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import { PAPERS } from '../../rules/words/papers.ts'
import { heading, list, paragraph, subheading, writeOn } from '../paper/blocks.ts'
import { codeOf, documentOf, head, widthOf } from '../paper/document.ts'
import { type Block, BREAK, type Flow, together } from '../paper/flow.ts'
import { letterhead } from '../paper/letterhead.ts'
import type { Paper } from '../paper/marks.ts'
import type { PaperOf } from '../paper/paper-of.ts'
import { GRAY, SIZE } from '../paper/style.ts'
import { boatBlocks } from './boats.ts'
import { foundBlocks } from './found.ts'
import { isBinding, type Priced } from './priced.ts'
import { dockPicture, drawnPictures, freightOpen, inShort, whatItIs } from './quote-front.ts'
import { groupTable, lineTables, sums } from './quote-price.ts'
import { sinceBlocks } from './quote-since.ts'

export type QuoteWanted = Omit<QuoteAsked, 'date'> & {
  /** The last quote: what is another now is told. */
  readonly since?: QuoteFile
  /** What is another, in a few words: told first. */
  readonly headline?: string
  /** Each part with its price, as an annex; where absent as the catalog says. */
  readonly each?: boolean
}
type Told = Pick<QuoteWanted, 'since' | 'headline' | 'each'>

/** A quote is the shop's answer: it has a total whatever its page shows, and lines where customers are shown lines. */
const showsLines = (catalog: Catalog): boolean => pricesFor(catalog, 'customer') === 'lines'

export function quotePaper(of: PaperOf, { since, headline, each, ...asked }: QuoteWanted = {}): Paper {
  const { dock, design, catalog, options } = of
  const made = quote(dock, design, catalog, { ...asked, date: options.date })
  return pricedPaper(of, made, {
    ...(since && { since }),
    ...(headline !== undefined && { headline }),
    each: each ?? (showsLines(catalog) && (catalog.shop?.each ?? false)),
  })
}

export function estimatePaper(of: PaperOf): Paper {
  const { dock, design, catalog, options } = of
  return pricedPaper(of, estimate(dock, design, catalog, { date: options.date }), {})
}

function pricedPaper(bare: PaperOf, made: Quote | Estimate, told: Told): Paper {
  const { dock, catalog, options } = bare
  const priced: Priced = {
    made,
    reader: options,
    width: widthOf(options),
    t: wordsOf(PAPERS, options),
    money: moneyIn(made.currency, options.language),
    lines: told.each === true || showsLines(catalog),
  }
  const { t, width } = priced
  const binds = isBinding(priced)
  const kind = binds ? 'quote' : 'estimate'
  const of: PaperOf = {
    ...bare,
    check: { name: t(`check-${kind}`), dockName: t('check-dock'), code: inFours(made.check) },
  }
  const [shop, ...title] = head(t(kind), of, options, catalog)
  const flow: Flow = isForbidden(dock)
    ? [
        ...[shop!, ...title],
        ...drawnPictures(of, width),
        ...boatBlocks(of, width),
        ...paragraph(t('forbidden-quote'), width, { weight: 'bold', before: 4 }),
        ...foundBlocks(of, width),
      ]
    : [
        ...letterhead(of, width),
        ...title,
        ...(binds ? [] : paragraph(t('estimate-lead'), width, { weight: 'bold' })),
        ...whatItIs(of, priced),
        ...changesLead(told, priced),
        ...dockPicture(of, priced),
        ...inShort(of, priced),
        ...boatBlocks(of, width),
        BREAK,
        ...offer(of, priced, told),
        ...(told.each ? ([BREAK, ...annex(priced)] as const) : []),
      ]
  return documentOf(t(kind), flow, catalog, options, of)
}

const changesLead = ({ since, headline }: Told, { reader, t, width }: Priced): readonly Block[] =>
  since && headline
    ? paragraph(
        t('quote-changes-lead', { date: dayIn(since.date, reader.language), what: headline }),
        width,
        {
          weight: 'bold',
          before: 2.4,
        },
      )
    : []

/** What it costs, how long it holds, what was found, on which terms; what is signed. */
function offer(of: PaperOf, priced: Priced, { since }: Told): Block[] {
  const { dock, catalog, options } = of
  const { made, t, width } = priced
  const kind = isBinding(priced) ? 'quote' : 'estimate'
  return [
    ...groupTable(priced),
    ...sums(priced),
    ...conditions(priced),
    ...paragraph(
      `${t(priced.lines ? 'quote-rounding' : 'quote-lines-none')} ${t('check-what', { name: t(`check-${kind}`) })}`,
      width,
      {
        size: SIZE.small,
        ink: GRAY,
      },
    ),
    ...(since ? sinceBlocks(sinceSaid(since, { dock, quote: made }, catalog, options), width) : []),
    ...foundBlocks(of, width),
    ...terms(priced),
    ...(isBinding(priced) ? [acceptance(of, priced)] : []),
  ]
}

/** Freight that is yet to be asked for, and how long the quote holds: with the sums, where they are read again. */
const conditions = (priced: Priced): Block[] => {
  const { made, reader, width, t } = priced
  return [
    ...freightOpen(priced).flatMap((said) => paragraph(said, width, { before: 3 })),
    ...(made.until
      ? paragraph(t('quote-until', { date: dayIn(made.until, reader.language) }), width, {
          before: 3,
          weight: 'bold',
        })
      : []),
  ]
}

/** The signatures never stand without them. */
const terms = ({ made, width, t }: Priced): Block[] =>
  made.terms.length > 0
    ? [
        subheading(t('quote-terms'), width),
        ...list(made.terms, width, 'dot', { size: SIZE.small }).map((one) => ({ ...one, keep: true })),
      ]
    : []

/** What is accepted, by its codes, and who signs; never cut. */
function acceptance({ dock, catalog }: PaperOf, { made, money, t, width }: Priced): Block {
  const deposit = depositOf(made, catalog)
  const said = [
    t('quote-accepted', { total: money(made.total), code: inFours(made.check), dock: codeOf(dock) }),
    ...(deposit === null ? [] : [t('quote-accept-deposit', { amount: money(deposit) })]),
    t('quote-accept-nothing-else'),
  ].join(' ')
  const lines = [t('quote-name'), t('quote-day'), t('quote-signature')]
  return {
    ...together([
      heading(t('quote-accept'), width),
      ...paragraph(said, width, { before: 1.2 }),
      ...[t('agreed'), t('for-shop')].flatMap((who) => [
        ...paragraph(who, width, { size: SIZE.small, weight: 'bold', before: 4 }),
        { ...writeOn(lines, width, 9), before: 0 },
      ]),
    ]),
    before: 6,
    name: t('quote-accept'),
  }
}

const annex = (priced: Priced): Block[] => [
  { ...heading(priced.t('quote-annex'), priced.width), name: priced.t('quote-annex') },
  ...lineTables(priced),
  ...sums(priced),
]
