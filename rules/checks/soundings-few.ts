import { atLeast } from '../numbers.ts'
import { type Check, COMMON, number } from './check.ts'

/** Too few soundings under water to lay a dock out from. */
export const soundingsFew: Check = {
  code: 'soundings-few',
  severity: 'warn',
  basis: COMMON,
  find({ design, shop }) {
    const wet = design.site.soundings.filter((s) => s.depth > 0).length
    const least = shop.rules.soundingsMin
    return atLeast(wet, least) ? [] : [{ parts: [], values: { wet: number(wet), least: number(least) } }]
  },
}
