import { atLeast } from '../numbers.ts'
import { type Check, COMMON, meters } from './check.ts'
import { startByRule } from './start-by-rule.ts'

/** The ramp lies on a wall by so little that a nudge takes it off. */
export const rampBearingShort: Check = {
  code: 'ramp-bearing-short',
  severity: 'stop',
  basis: COMMON,
  find(kit) {
    const least = kit.shop.rules.rampBearing
    if (!kit.ramp?.contact || atLeast(kit.ramp.bearing, least)) return []
    return [
      {
        parts: [kit.layout.ramp!.id],
        values: { bearing: meters(Math.max(0, kit.ramp.bearing)), least: meters(least) },
        remedy: startByRule(kit, (other) => atLeast(other.ramp?.bearing ?? 0, least)),
      },
    ]
  },
}
