import { loadCase, number } from '../check.ts'
import { COMBINED, holdIn, inWeather, morePosts, type StructureCheck } from './judged.ts'

/** In the wind and waves of its site the dock goes over, light as it is: posts hold it, or it comes out before such a day. */
export const goesOver: StructureCheck = {
  code: 'goes-over',
  severity: 'warn',
  basis: COMBINED,
  find({ kit, structure }) {
    const cases = structure.falls.filter(inWeather)
    return cases.length === 0
      ? []
      : [
          {
            parts: [],
            values: { case: loadCase(cases[0]!), cases: number(cases.length), hold: holdIn(kit) },
            remedy: morePosts(kit),
          },
        ]
  },
}
