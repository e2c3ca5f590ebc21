/**
 * The one price that is shown: the parts by the catalog, less the discount that the catalog gives everyone. The estimate and the quote begin
 * with the same amount, and what they add to it is named here.
 */
import type { Catalog, Dock } from '../../rules/index.ts'
import { shareOf } from '../../rules/papers/money.ts'
import { hasPrice } from './verdict.ts'

export interface Price {
  /** Minor units of the catalog's currency. */
  readonly amount: number
  /** What is taken off in it, minor units, 0 or more. */
  readonly off: number
  /** What the shop adds: nothing, tax, delivery or both. */
  readonly plus: 'tax' | 'delivery' | 'both' | null
}

/** What the parts come to, minor units, less what is taken off for everyone. */
export const amountOf = ({ price }: Dock['totals'], { quote }: Pick<Catalog, 'quote'>): number =>
  price - Math.max(0, shareOf(price, quote?.discount ?? 0))

/** Null where the dock must not be built: what its parts cost is no price of a dock. */
export function priceOf(
  dock: Pick<Dock, 'findings' | 'totals'>,
  { quote }: Pick<Catalog, 'quote'>,
): Price | null {
  if (!hasPrice(dock)) return null
  const amount = amountOf(dock.totals, { quote })
  const [tax, delivery] = [quote?.tax !== undefined, quote?.freight !== undefined]
  return {
    amount,
    off: dock.totals.price - amount,
    plus: tax && delivery ? 'both' : tax ? 'tax' : delivery ? 'delivery' : null,
  }
}
