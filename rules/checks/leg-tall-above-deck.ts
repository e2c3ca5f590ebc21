import { atMost } from '../numbers.ts'
import { aboveDeck } from '../parts/legs.ts'
import { type Check, COMMON, meters, names, worst } from './check.ts'

/** Legs that stand far over the deck: in the way of people and boats. */
export const legTallAboveDeck: Check = {
  code: 'leg-tall-above-deck',
  severity: 'note',
  basis: COMMON,
  find(kit) {
    const most = kit.shop.rules.aboveDeckMax
    const tall = kit.legs.filter((leg) => !atMost(aboveDeck(leg, kit) ?? 0, most))
    if (tall.length === 0) return []
    const above = aboveDeck(
      worst(tall, (leg) => aboveDeck(leg, kit)!),
      kit,
    )!
    return [
      {
        parts: tall.map((leg) => leg.id),
        values: { legs: names(tall.map((leg) => leg.id)), above: meters(above), most: meters(most) },
      },
    ]
  },
}
