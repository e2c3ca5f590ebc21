import type { Kit } from '../kit.ts'
import { atMost } from '../numbers.ts'
import { type Check, SHOP, slope } from './check.ts'
import { startByRule } from './start-by-rule.ts'

/** Of the ramp's deck, either way, rise over run; null without a ramp that rests. */
export const rampSlope = ({ ramp }: Kit): number | null =>
  ramp?.contact ? Math.abs(Math.tan(ramp.contact.tilt)) : null

/** The ramp is steeper than the shop allows. */
export const rampTooSteep: Check = {
  code: 'ramp-too-steep',
  severity: 'stop',
  basis: SHOP,
  find(kit) {
    const steep = rampSlope(kit)
    const most = kit.shop.rules.rampSlopeMax
    if (steep === null || atMost(steep, most)) return []
    return [
      {
        parts: [kit.layout.ramp!.id],
        values: { slope: slope(steep), most: slope(most) },
        remedy: startByRule(kit, (other) => atMost(rampSlope(other) ?? Number.POSITIVE_INFINITY, most)),
      },
    ]
  },
}
