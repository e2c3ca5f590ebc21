import { type Check, COMMON, meters } from './check.ts'
import { raiseDeck } from './deck-remedy.ts'

/** The deck lies under the lake's high level. */
export const deckUnderLevel: Check = {
  code: 'deck-under-level',
  severity: 'stop',
  basis: COMMON,
  find(kit) {
    const { deckHeight } = kit.design.dock
    const { high } = kit.design.site.levels
    return deckHeight < high + 1e-6
      ? [{ parts: [], values: { deck: meters(deckHeight), high: meters(high) }, remedy: raiseDeck(kit) }]
      : []
  },
}
