import { deckUp } from '../deck-step.ts'
import { type Check, meters, remedy, replace } from './check.ts'
import { WAVES } from './wave-words.ts'

/** At the high level the highest tenth of the waves run over the deck: nobody on it then, and no boat at it. */
export const deckAwash: Check = {
  code: 'deck-awash',
  severity: 'warn',
  basis: WAVES,
  find({ waves, design }) {
    if (!waves) return []
    const high = Math.max(0, design.site.levels.high)
    const over = high + waves.crestHigh - design.dock.deckHeight
    if (over <= 1e-6) return []
    const height = deckUp(waves.recommendedAllSeason)
    return [
      {
        parts: [],
        values: { over: meters(over), high: meters(high) },
        remedy: remedy('raise-deck', [replace('/dock/deckHeight', height)], { height: meters(height) }),
      },
    ]
  },
}
