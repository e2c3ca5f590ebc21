import { type Check, COMMON, meters } from './check.ts'
import { reachOf } from './reach.ts'

/**
 * So far the ground was measured all the same, m: a step, or half of one. Dock and ramp are laid out in steps of the catalog's, so that
 * one on the very place that was measured may end a little landward of it.
 */
const STEP = 0.15

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
    return reach.x0 < Math.min(first, bed.firstX) - STEP - 1e-6 ||
      (reach.x0 < -1e-6 && first > reach.x0 + STEP + 1e-6)
      ? [{ parts: [], values: { first: meters(first), reach: meters(reach.x0) } }]
      : []
  },
}
