import { footprint } from '../layout/index.ts'
import { limitsOf } from '../limits/limits.ts'
import { type Check, type Judged, meters, share } from './check.ts'
import { shorter } from './limit-way-back.ts'

/** How far out it reaches from the water's edge, m; and the sections that do. */
function farthest({ layout }: Judged): { reach: number; parts: string[] } {
  const ends = layout.placed.map((p) => ({ id: p.id, x1: footprint(p).x1 }))
  const reach = Math.max(0, ...ends.map(({ x1 }) => x1))
  return { reach, parts: ends.filter(({ x1 }) => x1 > reach - 1e-6).map(({ id }) => id) }
}

/** It reaches out farther than was said to be allowed. */
export const limitReach: Check = {
  code: 'limit-reach',
  severity: 'warn',
  basis: 'A limit of the design or the shop, not of law',
  find(kit) {
    const most = limitsOf(kit.design, kit.shop.catalog).reach
    const { reach, parts } = farthest(kit)
    if (most === undefined || reach <= most + 1e-6) return []
    return [
      {
        parts,
        values: { reach: meters(reach), most: meters(most), by: meters(reach - most) },
        remedy: shorter(kit, (back) => reach - back <= most + 1e-6),
      },
    ]
  },
}

/** It takes more of the water's width than was said to be allowed. */
export const limitShare: Check = {
  code: 'limit-share',
  severity: 'warn',
  basis: 'A limit of the design or the shop, not of law',
  find(kit) {
    const part = limitsOf(kit.design, kit.shop.catalog).share
    const { waterWidth } = kit.design.site
    if (part === undefined || waterWidth === undefined) return []
    const { reach, parts } = farthest(kit)
    const most = part * waterWidth
    if (reach <= most + 1e-6) return []
    return [
      {
        parts,
        values: { reach: meters(reach), most: meters(most), part: share(part), width: meters(waterWidth) },
        remedy: shorter(kit, (back) => reach - back <= most + 1e-6),
      },
    ]
  },
}
