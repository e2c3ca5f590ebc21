import { lowLevel } from '../clearance/keel.ts'
import { deepest, limitsOf } from '../limits/limits.ts'
import { type Check, meters } from './check.ts'
import { shorter } from './limit-way-back.ts'

/** It reaches out to where the water is deeper than was said to be allowed. */
export const limitDepth: Check = {
  code: 'limit-depth',
  severity: 'warn',
  basis: 'A limit of the design or the shop, not of law',
  find(kit) {
    const { design, shop, layout, bed } = kit
    const most = limitsOf(design, shop.catalog).depth
    if (most === undefined || layout.placed.length === 0) return []
    const low = lowLevel(design.site.levels)
    const depth = deepest(layout.placed, bed, low)
    if (depth <= most + 1e-6) return []
    return [
      {
        parts: layout.placed.filter((p) => deepest([p], bed, low) > most + 1e-6).map(({ id }) => id),
        values: { depth: meters(depth), most: meters(most) },
        remedy: shorter(kit, (back) => deepest(layout.placed, bed, low, back) <= most + 1e-6),
      },
    ]
  },
}
