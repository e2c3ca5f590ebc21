import type { Shop } from '../catalog-index.ts'
import type { Kit } from '../kit.ts'
import { atLeast } from '../numbers.ts'
import { padHeight } from '../parts/bodies.ts'
import { type PlacedLeg, setHeightOf } from '../parts/legs.ts'
import { type Check, meters, names, worst } from './check.ts'
import { startByRule } from './start-by-rule.ts'

/** Deck surface to the sleeve's lower end, and the pad under it. */
const leastSetHeight = (leg: PlacedLeg, shop: Shop): number =>
  shop.shape(leg.section.frame).lowest + padHeight(leg.pad)

const shortLegs = (kit: Kit): PlacedLeg[] =>
  kit.legs.filter((leg) => !atLeast(setHeightOf(leg, kit), leastSetHeight(leg, kit.shop)))

/** So little water and air under the deck that a foot pad would have to stand inside the frame. */
export const legBelowFrame: Check = {
  code: 'leg-below-frame',
  severity: 'stop',
  basis: 'Geometry',
  find(kit) {
    const short = shortLegs(kit)
    if (short.length === 0) return []
    const shortest = worst(short, (leg) => -setHeightOf(leg, kit))
    return [
      {
        parts: short.map((leg) => leg.id),
        values: {
          legs: names(short.map((leg) => leg.id)),
          height: meters(setHeightOf(shortest, kit)),
          least: meters(leastSetHeight(shortest, kit.shop)),
        },
        remedy: startByRule(kit, (other) => shortLegs(other).length === 0),
      },
    ]
  },
}
