import type { Remedy } from '../dock.ts'
import type { Kit } from '../kit.ts'
import { quantize } from '../numbers.ts'
import { meters, remedy, replace } from './check.ts'

/** The deck at the shop's least height over the high level, to the next whole centimeter up. */
export function raiseDeck({ design, shop }: Kit): Remedy {
  const height = quantize(Math.ceil((design.site.levels.high + shop.rules.deckOverHigh) * 100 - 1e-6) / 100)
  return remedy('raise-deck', [replace('/dock/deckHeight', height)], { height: meters(height) })
}
