import { areaOver, limitsOf } from '../limits/limits.ts'
import { type Check, squareMeters } from './check.ts'
import { shorter } from './limit-way-back.ts'

/** More deck is over the water than was said to be allowed. */
export const limitArea: Check = {
  code: 'limit-area',
  severity: 'warn',
  basis: 'A limit of the design or the shop, not of law',
  find(kit) {
    const most = limitsOf(kit.design, kit.shop.catalog).area
    const { placed } = kit.layout
    const area = areaOver(placed)
    if (most === undefined || area <= most + 1e-6) return []
    const run = placed.find(({ role }) => role !== 'ramp')!
    const pitch = run.frame.length + kit.shop.rules.jointGap
    return [
      {
        parts: [],
        values: { area: squareMeters(area), most: squareMeters(most) },
        // Of the run that is left out all stood over the water, near enough for what is tried before it is offered.
        remedy: shorter(
          kit,
          (back) => area - (back / pitch) * run.frame.length * run.frame.width <= most + 1e-6,
        ),
      },
    ]
  },
}
