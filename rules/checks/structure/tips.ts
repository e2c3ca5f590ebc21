import { loadCase } from '../check.ts'
import { againstPush, byPush, COMBINED, type StructureCheck } from './judged.ts'

/** A hard shove or a boat that comes in tips the dock before it slides: it is light for its height. */
export const tips: StructureCheck = {
  code: 'tips',
  severity: 'warn',
  basis: COMBINED,
  find({ kit, structure }) {
    const [first] = structure.falls.filter(byPush)
    return first === undefined
      ? []
      : [{ parts: [], values: { case: loadCase(first) }, remedy: againstPush(kit, first) }]
  },
}
