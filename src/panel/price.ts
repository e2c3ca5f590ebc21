/**
 * The one price that is shown: the parts by the catalog that are not there already, less the discount that the catalog gives everyone. The estimate and the quote begin
 * with the same amount, and what they add to it is named here. Where they add nothing it is their total, rounded as the shop rounds that; what a
 * total is made of is not rounded.
 */

import { newPrice } from '../../rules/existing/new-parts.ts'
import type { Catalog, Dock } from '../../rules/index.ts'
import { roundedTo, shareOf } from '../../rules/papers/money.ts'
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
  const less = price - offIn(price, quote)
  return addedTo(quote) === null ? roundedTo(less, quote?.round) : less
}

function addedTo(quote: Catalog['quote']): Price['plus'] {
  const tax = quote?.tax !== undefined
  const delivery = quote?.freight !== undefined || quote?.zones !== undefined
  return tax && delivery ? 'both' : tax ? 'tax' : delivery ? 'delivery' : null
}

/** What is taken off for everyone, minor units, 0 or more. */
const offIn = (price: number, quote: Catalog['quote']): number =>
  Math.max(0, shareOf(price, quote?.discount ?? 0))

/** Null where the dock must not be built: what its parts cost is no price of a dock. */
export function priceOf(
  dock: Pick<Dock, 'existing' | 'findings' | 'totals'>,
  { quote }: Pick<Catalog, 'quote'>,
): Price | null {
  if (!hasPrice(dock)) return null
  return {
    amount: amountOf(dock, { quote }),
    off: offIn(newPrice(dock), quote),
    newOnly: dock.existing !== null,
    plus: addedTo(quote),
  }
}
