import { atMost } from '../numbers.ts'
import { type Check, COMMON, meters } from './check.ts'
import { reachOf } from './reach.ts'

/** Soundings so far apart, under the dock, that the bed between them is a guess. */
export const soundingsFarApart: Check = {
  code: 'soundings-far-apart',
  severity: 'warn',
  basis: COMMON,
  find(kit) {
    const reach = reachOf(kit)
    if (!reach) return []
    const most = kit.shop.rules.soundingsGap
    const xs = [...new Set([0, ...kit.design.site.soundings.map((s) => s.distance)])].sort((a, b) => a - b)
    let worst = 0
    let from = 0
    for (let i = 0; i + 1 < xs.length; i++) {
      const [a, b] = [xs[i]!, xs[i + 1]!]
      if (b <= reach.x0 || a >= reach.x1) continue
      if (b - a > worst) {
        worst = b - a
        from = a
      }
    }
    return atMost(worst, most)
      ? []
      : [
          {
            parts: [],
            values: { from: meters(from), to: meters(from + worst), gap: meters(worst), most: meters(most) },
          },
        ]
  },
}
