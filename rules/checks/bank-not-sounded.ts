import { type Check, COMMON, meters } from './check.ts'
import { reachOf } from './reach.ts'

/** The dock reaches landward of what was measured: the bank is taken to go on as it began. */
export const bankNotSounded: Check = {
  code: 'bank-not-sounded',
  severity: 'note',
  basis: COMMON,
  find(kit) {
    const { bed, design } = kit
    const reach = reachOf(kit)
    if (!reach || design.site.shore?.kind === 'wall') return []
    const first = design.site.soundings.reduce(
      (low, s) => Math.min(low, s.distance),
      Number.POSITIVE_INFINITY,
    )
    return reach.x0 < Math.min(first, bed.firstX) - 1e-6 || (reach.x0 < -1e-6 && first > reach.x0 + 1e-6)
      ? [{ parts: [], values: { first: meters(first), reach: meters(reach.x0) } }]
      : []
  },
}
