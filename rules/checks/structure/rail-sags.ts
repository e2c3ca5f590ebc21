import { sagLimit } from '../../structure/strength/index.ts'
import { millimeters, text, worst } from '../check.ts'
import type { StructureCheck } from './judged.ts'

/** The deck sags under people by more than floors may. */
export const railSags: StructureCheck = {
  code: 'rail-sags',
  severity: 'warn',
  basis: 'International Building Code 2018 table 1604.3, span/360 under live load: our choice for a dock',
  find({ structure }) {
    const over = structure.rails.filter((rail) => rail.deflection > sagLimit(rail.span, 'live'))
    if (over.length === 0) return []
    const most = worst(over, (rail) => rail.deflection / rail.span)
    return [
      {
        parts: over.map((rail) => rail.section),
        values: {
          section: text(most.section),
          sag: millimeters(most.deflection),
          limit: millimeters(sagLimit(most.span, 'live')),
        },
      },
    ]
  },
}
