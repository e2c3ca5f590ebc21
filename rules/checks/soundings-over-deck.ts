import { atMost } from '../numbers.ts'
import { type Check, COMMON, meters, number, worst } from './check.ts'
import { reachOf } from './reach.ts'

/** A sounding out from the water's edge that is higher than the deck: most likely a height was taken for a depth. */
export const soundingsOverDeck: Check = {
  code: 'soundings-over-deck',
  severity: 'warn',
  basis: COMMON,
  find(kit) {
    const { site, dock } = kit.design
    const reach = reachOf(kit)
    const high = site.soundings.filter(
      (s) => reach && s.distance > 0 && s.distance <= reach.x1 && !atMost(0 - s.depth, dock.deckHeight),
    )
    if (high.length === 0) return []
    const { distance, offset, depth } = worst(high, (s) => 0 - s.depth)
    return [
      {
        parts: [],
        values: {
          count: number(high.length),
          x: meters(distance),
          y: meters(offset),
          height: meters(0 - depth),
          deck: meters(dock.deckHeight),
        },
      },
    ]
  },
}
