import { newtonMeters } from '../check.ts'
import { BUCKLING, OURS, type StructureCheck } from './judged.ts'

/** With its sleeves half or twice as firm as stated another verdict would stand: no standard gives that figure. */
export const sleevesDecide: StructureCheck = {
  code: 'sleeves-decide',
  severity: 'note',
  basis: `Solved again with sleeves half and twice as firm. ${OURS}`,
  find({ structure }) {
    const { buckling, sleeves, legs, sleeve } = structure
    const verdict = (factor: number | null, use: number | null): boolean =>
      (factor === null || factor >= BUCKLING.stop) && use !== null && use <= 1
    const use = legs.length === 0 ? null : legs.reduce((most, leg) => Math.max(most, leg.use), 0)
    const now = verdict(buckling, use)
    const other = sleeves.filter((s) => verdict(s.buckling, s.legUse) !== now)
    if (other.length === 0) return []
    return [
      {
        parts: [],
        values: {
          sleeve: newtonMeters(sleeve.stiffness),
          parts: { value: other.map((s) => s.part), unit: 'factor' },
        },
      },
    ]
  },
}
