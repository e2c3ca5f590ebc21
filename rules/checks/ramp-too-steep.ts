import { atMost } from '../numbers.ts'
import { type Check, SHOP, slope, startByRule } from './check.ts'

/** The ramp is steeper than the shop allows. */
export const rampTooSteep: Check = {
  code: 'ramp-too-steep',
  severity: 'stop',
  basis: SHOP,
  find(kit) {
    if (!kit.ramp?.contact) return []
    const steep = Math.abs(Math.tan(kit.ramp.contact.tilt))
    const most = kit.shop.rules.rampSlopeMax
    return atMost(steep, most)
      ? []
      : [{ parts: [kit.layout.ramp!.id], values: { slope: slope(steep), most: slope(most) }, remedy: startByRule(kit) }]
  },
}
