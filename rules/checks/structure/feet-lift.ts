import { loadCase, number } from '../check.ts'
import { COMBINED, morePosts, type StructureCheck } from './judged.ts'

/** In some case a foot comes off the bed: the dock stands on the others. */
export const feetLift: StructureCheck = {
  code: 'feet-lift',
  severity: 'note',
  basis: COMBINED,
  find({ kit, structure }) {
    const up = structure.feet.filter((foot) => foot.lifts)
    if (up.length === 0 || !structure.stands) return []
    return [
      {
        parts: up.map((foot) => foot.leg),
        values: { feet: number(up.length), case: loadCase(up[0]!.liftCase!) },
        remedy: morePosts(kit),
      },
    ]
  },
}
