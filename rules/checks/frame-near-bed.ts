import type { Kit } from '../kit.ts'
import { type Check, COMMON, meters, names, worst } from './check.ts'
import { clearancesUnder, type Under } from './clearance-under.ts'
import { startByRule } from './start-by-rule.ts'

const nearFrames = (kit: Kit): Under[] =>
  clearancesUnder(kit).filter(({ clear }) => clear >= -1e-6 && clear < kit.shop.rules.frameToBed - 1e-6)

/** A frame clears the bed, by less than the shop wants. */
export const frameNearBed: Check = {
  code: 'frame-near-bed',
  severity: 'warn',
  basis: COMMON,
  find(kit) {
    const near = nearFrames(kit)
    if (near.length === 0) return []
    const ids = near.map(({ id }) => id)
    return [
      {
        parts: ids,
        values: {
          sections: names(ids),
          clear: meters(worst(near, ({ clear }) => -clear).clear),
          least: meters(kit.shop.rules.frameToBed),
        },
        remedy: startByRule(kit, (other) => nearFrames(other).length === 0),
      },
    ]
  },
}
