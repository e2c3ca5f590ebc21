/** What changed since the last quote, in words: printed on the quote, and read back to the customer from the screen. */

import { assessKit } from '../assess-kit.ts'
import type { Catalog } from '../catalog/index.ts'
import type { Dock } from '../dock.ts'
import { deriveKit } from '../kit.ts'
import { dayIn } from '../words/days.ts'
import { moneyIn } from '../words/figures.ts'
import { inDigits, type Reader } from '../words/language.ts'
import { wordsOf } from '../words/messages.ts'
import { PAPERS } from '../words/papers.ts'
import { pricesFor } from './prices-shown.ts'
import type { Estimate, Quote } from './quote.ts'
import { quoteChanges } from './quote-changes.ts'
import type { QuoteFile } from './quote-file.ts'
import { sentence } from './saying.ts'

export interface Since {
  readonly title: string
  /** Line, count before, count now, change in money. */
  readonly columns: readonly [string, string, string, string]
  /** Changed lines, then what else the total changed by. None where nothing can be compared. */
  readonly rows: readonly (readonly [string, string, string, string])[]
  /** Its name, before, now, change: all money. Null where nothing can be compared. */
  readonly total: readonly [string, string, string, string] | null
  /** A leg each that is another now, and why. */
  readonly legs: readonly string[]
  /** Said instead where the two are in different currencies. */
  readonly note: string | null
}

/**
 * Does the shop's quote hold terms that no estimate has? Those of a catalog's own are in both. An older file that does not say what it was
 * priced by is told by its lines.
 */
export function ownTerms({ priced, discount, lines, tax }: QuoteFile, catalog: Catalog): boolean {
  const usual = catalog.quote?.discount ?? 0
  const share = discount.share ?? (discount.amount === 0 ? 0 : null)
  return (
    share !== usual ||
    priced?.fetched === true ||
    (tax === null && catalog.quote?.tax !== undefined) ||
    lines.some(({ group }) => group === 'services' || group === 'other')
  )
}

/** The older design is derived by today's catalog: what is another leg now is so by the design. */
export function sinceSaid(
  since: QuoteFile,
  now: { readonly dock: Dock; readonly quote: Quote | Estimate },
  catalog: Catalog,
  reader: Reader,
): Since {
  const t = wordsOf(PAPERS, reader)
  const { currency } = now.quote
  const money = moneyIn(currency, reader.language)
  const plain = (count: number): string => inDigits(String(count), reader.language)
  const change = (minor: number): string => `${minor > 0 ? '+' : ''}${money(minor)}`
  const before = { dock: assessKit(deriveKit(since.design, catalog)), quote: since }
  const { since: date, comparable, lines, sums, legs, total } = quoteChanges(before, now)
  const said = {
    title: t('quote-changes', { date: dayIn(date, reader.language) }),
    columns: [t('quote-line'), t('since-before'), t('since-now'), t('since-change')],
  } as const
  if (!comparable)
    return {
      ...said,
      rows: [],
      total: null,
      legs: [],
      note: t('since-currency', { currency: since.currency }),
    }
  // On a quote there are lines where customers are shown lines.
  const told = pricesFor(catalog, 'customer') === 'lines'
  const others = [
    ['change-discount', sums.discount],
    ['change-tax', sums.tax],
    ['change-rounding', sums.rounding],
  ] as const
  return {
    ...said,
    rows: [
      ...lines.map(
        ({ group, name, quantity, amount }) =>
          [
            group === 'freight' ? t('change-freight') : name,
            plain(quantity.before),
            plain(quantity.after),
            told ? change(amount) : '',
          ] as const,
      ),
      ...others.flatMap(([key, amount]) => (amount === 0 ? [] : [[t(key), '', '', change(amount)] as const])),
    ],
    total: [t('quote-total'), money(total.before), money(total.after), change(total.after - total.before)],
    legs: legs.map(({ say: leg, why }) =>
      [sentence(leg, t), ...why.map((term) => sentence(term.say, t))].join('; '),
    ),
    note: null,
  }
}
