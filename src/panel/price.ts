/**
 * The one price that is shown: the parts by the catalog that are not there already, less the discount that the catalog gives everyone. The estimate and the quote begin
 * with the same amount, and what they add to it is named here.
 */

import { newPrice } from '../../rules/existing/new-parts.ts'
import type { Catalog, Dock } from '../../rules/index.ts'
import { shareOf } from '../../rules/papers/money.ts'
import { hasPrice } from './verdict.ts'

export interface Price {
  /** Minor units of the catalog's currency. */
  readonly amount: number
  /** What is taken off in it, minor units, 0 or more. */
  readonly off: number
  /** It is of what is new alone: something is there already. */
  readonly newOnly: boolean
  /** What the shop adds: nothing, tax, delivery or both. */
  readonly plus: 'tax' | 'delivery' | 'both' | null
}

/** What the parts come to that are not there already, minor units, less what is taken off for everyone. */
export function amountOf(dock: Pick<Dock, 'existing' | 'totals'>, { quote }: Pick<Catalog, 'quote'>): number {
  const price = newPrice(dock)
  return price - Math.max(0, shareOf(price, quote?.discount ?? 0))
}

/** Null where the dock must not be built: what its parts cost is no price of a dock. */
export function priceOf(
  dock: Pick<Dock, 'existing' | 'findings' | 'totals'>,
  { quote }: Pick<Catalog, 'quote'>,
): Price | null {
  if (!hasPrice(dock)) return null
  const amount = amountOf(dock, { quote })
  const [tax, delivery] = [quote?.tax !== undefined, quote?.freight !== undefined]
  return {
    amount,
    off: newPrice(dock) - amount,
    newOnly: dock.existing !== null,
    plus: tax && delivery ? 'both' : tax ? 'tax' : delivery ? 'delivery' : null,
  }
}
