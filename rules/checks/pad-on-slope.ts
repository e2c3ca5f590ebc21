import type { Kit } from '../kit.ts'
import { atMost } from '../numbers.ts'
import type { PlacedLeg } from '../parts/legs.ts'
import { type Check, COMMON, names, slope, worst } from './check.ts'

/** A foot pad on a bed so steep that it stands on its edge and slides. */
export const padOnSlope: Check = {
  code: 'pad-on-slope',
  severity: 'warn',
  basis: COMMON,
  find(kit) {
    const most = kit.shop.rules.padSlopeMax
    const steep = kit.legs.filter((leg) => !atMost(slopeUnder(leg, kit), most))
    if (steep.length === 0) return []
    const steepest = slopeUnder(
      worst(steep, (leg) => slopeUnder(leg, kit)),
      kit,
    )
    return [
      {
        parts: steep.map((leg) => leg.id),
        values: { legs: names(steep.map((leg) => leg.id)), slope: slope(steepest), most: slope(most) },
      },
    ]
  },
}

/** Slope of the bed across the pad, rise over run. */
function slopeUnder(leg: PlacedLeg, { bed }: Kit): number {
  const a = Math.max(leg.pad.plate.length, leg.pad.plate.width) / 2
  const dx = bed.firmAt(leg.x + a, leg.y) - bed.firmAt(leg.x - a, leg.y)
  const dy = bed.firmAt(leg.x, leg.y + a) - bed.firmAt(leg.x, leg.y - a)
  return Math.hypot(dx, dy) / (2 * a)
}
