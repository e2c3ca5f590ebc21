import { atLeast } from '../numbers.ts'
import { type Check, COMMON, meters, startByRule } from './check.ts'

/** The ramp comes down on ground that the high level reaches or nearly reaches. */
export const rampEndLow: Check = {
  code: 'ramp-end-low',
  severity: 'warn',
  basis: COMMON,
  find(kit) {
    const { ramp, design, shop } = kit
    if (!ramp?.contact) return []
    const over = ramp.contact.z - design.site.levels.high
    const least = shop.rules.startMargin
    return atLeast(over, least)
      ? []
      : [
          {
            parts: [kit.layout.ramp!.id],
            values: { ground: meters(ramp.contact.z), over: meters(over), least: meters(least) },
            remedy: startByRule(kit),
          },
        ]
  },
}
