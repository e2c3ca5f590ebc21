import { factor } from '../check.ts'
import { BUCKLING, braceAlongToo, longestLegs, morePosts, type StructureCheck } from './judged.ts'

/** The whole dock would lean over under little more than what it is to carry. */
export const buckles: StructureCheck = {
  code: 'buckles',
  severity: 'stop',
  basis: `Linear buckling of the whole frame under dead load and people; at least ${BUCKLING.stop}, 1.6/0.8 of Aluminum Design Manual 2020 chapter C`,
  find: ({ kit, structure: { buckling } }) =>
    buckling !== null && buckling < BUCKLING.stop
      ? [
          {
            parts: longestLegs(kit),
            values: { factor: factor(buckling), least: factor(BUCKLING.stop) },
            remedy: braceAlongToo(kit) ?? morePosts(kit),
          },
        ]
      : [],
}
