/** The one price in words, for every place that shows it, and what is not in it. */
import { useDock, useLeadline } from '../state/store.ts'
import { useWords } from '../ui/use-words.ts'
import { text } from '../words/index.ts'
import { priceOf } from './price.ts'
import { standingOf } from './verdict.ts'

export interface PriceWords {
  /** The amount; or that there is none, in a few words, and in a sentence. */
  readonly short: string
  readonly line: string
  /** What is not in it, and what is taken off; empty where there is nothing to say. */
  readonly plus: string
  readonly known: boolean
}

export function usePrice(): PriceWords {
  const dock = useDock()
  const catalog = useLeadline((s) => s.catalog)
  const status = useLeadline((s) => s.status)
  const stale = useLeadline((s) => s.stale)
  const { t, money } = useWords()
  const price = priceOf(dock, catalog)
  if (!price) {
    const cannot = standingOf({ dock, status, stale }).standing === 'cannot'
    return {
      short: t('price.none'),
      line: t(cannot ? 'price.none-cannot' : 'price.none-fix'),
      plus: '',
      known: false,
    }
  }
  const told = money(price.amount)
  const plus = [
    price.newOnly && t('price.new'),
    price.plus && t(`price.plus-${price.plus}`),
    price.off > 0 && t('price.off', { off: text(money(price.off)) }),
  ]
  return { short: told, line: told, plus: plus.filter(Boolean).join(', '), known: true }
}
