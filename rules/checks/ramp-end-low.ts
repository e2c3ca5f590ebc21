import type { Kit } from '../kit.ts'
import { atLeast } from '../numbers.ts'
import { type Check, COMMON, meters } from './check.ts'
import { startByRule } from './start-by-rule.ts'

/** Of the ground under the ramp's end over the high level, m; null without a ramp that rests. */
const overHigh = ({ ramp, design }: Kit): number | null =>
  ramp?.contact ? ramp.contact.z - design.site.levels.high : null

/** The ramp comes down on ground that the high level reaches or nearly reaches. */
export const rampEndLow: Check = {
  code: 'ramp-end-low',
  severity: 'warn',
  basis: COMMON,
  find(kit) {
    const over = overHigh(kit)
    const least = kit.shop.rules.startMargin
    if (over === null || atLeast(over, least)) return []
    return [
      {
        parts: [kit.layout.ramp!.id],
        values: { ground: meters(kit.ramp!.contact!.z), over: meters(over), least: meters(least) },
        remedy: startByRule(kit, (other) => atLeast(overHigh(other) ?? Number.NEGATIVE_INFINITY, least)),
      },
    ]
  },
}
