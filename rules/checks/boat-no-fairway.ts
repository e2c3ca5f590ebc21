import { type Berth, lying } from '../layout/berth.ts'
import type { PlacedSection } from '../layout/index.ts'
import { FAIRWAY, lanesOf } from '../layout/room.ts'
import { limitsOf } from '../limits/limits.ts'
import { moved } from './boat-places.ts'
import { type Check, COMMON, key, meters, text } from './check.ts'

/** There is no free water to come in by and leave. */
export const boatNoFairway: Check = {
  code: 'boat-no-fairway',
  severity: 'note',
  basis: COMMON,
  find(kit) {
    const { design, shop, layout, bed } = kit
    const { sides = [] } = limitsOf(design, shop.catalog)
    const ways = (berth: Berth<PlacedSection>) =>
      lanesOf(berth, { placed: layout.placed, site: design.site, bed, sides })
    const free = (berth: Berth<PlacedSection>): boolean => ways(berth).some(({ by }) => by === null)
    return lying(kit).flatMap((berth) => {
      if (free(berth)) return []
      const [first] = ways(berth)
      return [
        {
          parts: [berth.section.id],
          values: {
            section: text(berth.section.id),
            boat: meters(berth.boat.length),
            room: meters(FAIRWAY * berth.boat.length),
            by: key(first!.by!),
          },
          remedy: moved(kit, berth.id, free),
        },
      ]
    })
  },
}
