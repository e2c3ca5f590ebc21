import { type Check, COMMON, meters } from './check.ts'
import { raiseDeck } from './deck-remedy.ts'

/** The deck is over the high level, by less than the shop wants. */
export const deckNearLevel: Check = {
  code: 'deck-near-level',
  severity: 'warn',
  basis: COMMON,
  find(kit) {
    const { deckHeight } = kit.design.dock
    const { high } = kit.design.site.levels
    const over = deckHeight - high
    const least = kit.shop.rules.deckOverHigh
    return over >= 1e-6 && over < least - 1e-6
      ? [{ parts: [], values: { over: meters(over), least: meters(least) }, remedy: raiseDeck(kit) }]
      : []
  },
}
