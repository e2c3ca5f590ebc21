import { lowLevel, underKeel } from '../clearance/keel.ts'
import { LIMITS } from '../design/index.ts'
import { type Berth, END_BOAT, lying } from '../layout/berth.ts'
import type { PlacedSection } from '../layout/index.ts'
import { moved } from './boat-places.ts'
import { type Check, type Judged, meters, number, remedy, replace } from './check.ts'

/** So many sections more are tried. */
const MOST_MORE = 12

/** At the low level a boat reaches to the bottom somewhere at its place. */
export const boatAground: Check = {
  code: 'boat-aground',
  severity: 'warn',
  basis: "Depth at the boat's place at the low level, against how far it reaches down",
  find(kit) {
    const low = lowLevel(kit.design.site.levels)
    return lying(kit).flatMap((berth) => {
      const { draught } = berth.boat
      const under = underKeel(berth, kit.bed, low)
      if (under >= -1e-6) return []
      return [
        {
          parts: [berth.section.id],
          values: {
            depth: meters(Math.max(0, under + draught)),
            draught: meters(draught),
            short: meters(-under),
          },
          remedy: berth.id === END_BOAT ? longer(kit, berth, low) : moved(kit, berth.id),
        },
      ]
    })
  },
}

/** A straight dock can be made longer; of other shapes the boat's place is not its end alone. */
function longer({ design, shop, bed }: Judged, berth: Berth<PlacedSection>, low: number) {
  const { plan, sections, head } = design.dock
  if (plan || sections === undefined || (head && head.shape !== 'straight')) return null
  const pitch = berth.section.frame.length + shop.rules.jointGap
  for (let n = 1; n <= MOST_MORE && sections + n <= LIMITS.sections; n++)
    if (underKeel(berth, bed, low, n * pitch) >= 0)
      return remedy('more-sections', [replace('/dock/sections', sections + n)], { sections: number(n) })
  return null
}
