import { clearanceUnder } from './clearance-under.ts'
import { type Check, COMMON, meters, names, startByRule, worst } from './check.ts'

/** A frame clears the bed, by less than the shop wants. */
export const frameNearBed: Check = {
  code: 'frame-near-bed',
  severity: 'warn',
  basis: COMMON,
  find(kit) {
    const least = kit.shop.rules.frameToBed
    const near = kit.layout.placed
      .filter((p) => p.role !== 'ramp')
      .map((p) => ({ id: p.id, clear: clearanceUnder(p, kit) }))
      .filter(({ clear }) => clear >= -1e-6 && clear < least - 1e-6)
    if (near.length === 0) return []
    const nearest = worst(near, ({ clear }) => -clear)
    const ids = near.map(({ id }) => id)
    return [
      {
        parts: ids,
        values: { sections: names(ids), clear: meters(nearest.clear), least: meters(least) },
        remedy: startByRule(kit),
      },
    ]
  },
}
