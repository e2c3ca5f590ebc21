import { SLIP_SAFETY } from '../../structure/strength/index.ts'
import { loadCase, newtons, text, worst } from '../check.ts'
import { OURS, type StructureCheck } from './judged.ts'

/** A leg is pushed up its sleeve by more than its set bolts are stated to hold, less the safety on a stated slip. */
export const sleeveSlips: StructureCheck = {
  code: 'sleeve-slips',
  severity: 'warn',
  basis: `What the shop measured, over ${SLIP_SAFETY}. ${OURS}`,
  find({ kit, structure }) {
    const { slip } = kit.shop.catalog.sleeve
    if (slip === undefined) return []
    const over = structure.feet.filter((foot) => foot.load > slip / SLIP_SAFETY)
    if (over.length === 0) return []
    const most = worst(over, (foot) => foot.load)
    return [
      {
        parts: over.map((foot) => foot.leg),
        values: {
          leg: text(most.leg),
          load: newtons(most.load),
          slip: newtons(slip),
          case: loadCase(most.case),
        },
      },
    ]
  },
}
