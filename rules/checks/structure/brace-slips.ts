import { SLIP_SAFETY } from '../../structure/strength/index.ts'
import { loadCase, newtons, share, text, worst } from '../check.ts'
import { againstPush, OURS, type StructureCheck } from './judged.ts'

/** A brace pulls along a leg by more than its clamp is stated to hold, less the safety on a stated slip. */
export const braceSlips: StructureCheck = {
  code: 'brace-slips',
  severity: 'warn',
  basis: `What the shop measured, over ${SLIP_SAFETY}. ${OURS}`,
  find({ kit, structure }) {
    const over = structure.braces.filter((brace) => brace.use > 1 && brace.governs === 'clamp')
    if (over.length === 0) return []
    const most = worst(over, (brace) => brace.use)
    return [
      {
        parts: over.map((brace) => brace.pair),
        values: {
          pair: text(most.pair),
          axial: newtons(Math.abs(most.axial)),
          use: share(most.use),
          case: loadCase(most.case),
        },
        remedy: againstPush(kit, most.case),
      },
    ]
  },
}
