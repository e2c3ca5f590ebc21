import { millimeters, share, text } from '../check.ts'
import { OURS, type StructureCheck } from './judged.ts'

/** With one foot a little lower than it should be another leg carries more than its tube may. */
export const footLow: StructureCheck = {
  code: 'foot-low',
  severity: 'warn',
  basis: `The worst of the feet that carry most set 20 mm low, under a full deck; Aluminum Design Manual 2020, Part I. ${OURS}: how much lower`,
  find({ structure: { uneven } }) {
    if (!uneven || uneven.use <= 1) return []
    const { low, leg, use, by } = uneven
    return [
      { parts: [leg, low], values: { low: text(low), leg: text(leg), use: share(use), by: millimeters(by) } },
    ]
  },
}
