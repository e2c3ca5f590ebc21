import { deckUp } from '../deck-step.ts'
import type { Remedy } from '../dock.ts'
import type { Kit } from '../kit.ts'
import { meters, remedy, replace } from './check.ts'

/** The deck at the shop's least height over the high level, to the next height up that is read. */
export function raiseDeck({ design, shop }: Kit): Remedy {
  const height = deckUp(design.site.levels.high + shop.rules.deckOverHigh)
  return remedy('raise-deck', [replace('/dock/deckHeight', height)], { height: meters(height) })
}
