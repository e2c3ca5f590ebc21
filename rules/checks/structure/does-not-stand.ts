import { loadCase } from '../check.ts'
import {
  braceAgain,
  byPush,
  COMBINED,
  endBefore,
  inWeather,
  morePosts,
  type StructureCheck,
} from './judged.ts'

/** Under its own weight and people no foot bears any more, or none that all bear: the dock goes over. */
export const doesNotStand: StructureCheck = {
  code: 'does-not-stand',
  severity: 'stop',
  basis: COMBINED,
  find({ kit, structure }) {
    const cases = structure.falls.filter((name) => !inWeather(name) && !byPush(name))
    if (cases.length === 0) return []
    const bare = kit.design.dock.bracing?.none?.[0]
    const last = kit.layout.placed.filter((p) => p.role !== 'ramp').at(-1)
    return [
      {
        parts: [],
        values: { case: loadCase(cases[0]!) },
        remedy:
          (bare ? braceAgain(kit, bare) : null) ?? morePosts(kit) ?? (last ? endBefore(kit, last.id) : null),
      },
    ]
  },
}
