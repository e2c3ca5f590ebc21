import { type Check, COMMON, meters } from './check.ts'

/** Legs stand beyond what was sounded, so their bed is a guess. */
export const soundingsPassed: Check = {
  code: 'soundings-passed',
  severity: 'warn',
  basis: COMMON,
  find({ legs, bed }) {
    const past = legs.filter((leg) =>
      bed.mode === 'line' ? leg.x > bed.lastX + 1e-6 : !bed.measured(leg.x, leg.y) && leg.x > bed.firstX,
    )
    if (past.length === 0) return []
    const far = past.reduce((most, leg) => Math.max(most, leg.x), 0)
    return [{ parts: past.map((leg) => leg.id), values: { last: meters(bed.lastX), reach: meters(far) } }]
  },
}
