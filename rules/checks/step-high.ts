import { atMost } from '../numbers.ts'
import { type Check, COMMON, meters } from './check.ts'

/** A high step: from the shore onto the ramp, or onto the dock where there is none. */
export const stepHigh: Check = {
  code: 'step-high',
  severity: 'warn',
  basis: COMMON,
  find({ ramp, layout, bed, design, shop, start }) {
    const first = layout.ramp ?? layout.standing
    if (!first) return []
    const step = ramp ? ramp.step : design.dock.deckHeight - bed.bedAt(start.x - 0.01, 0)
    const most = shop.rules.rampStepMax
    return atMost(Math.abs(step), most)
      ? []
      : [{ parts: [first.id], values: { step: meters(step), most: meters(most) } }]
  },
}
