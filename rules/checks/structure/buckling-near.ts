import { factor } from '../check.ts'
import { BUCKLING, braceAlongToo, longestLegs, morePosts, OURS, type StructureCheck } from './judged.ts'

/** Not far from leaning over under what it is to carry. */
export const bucklingNear: StructureCheck = {
  code: 'buckling-near',
  severity: 'note',
  basis: `Linear buckling of the whole frame under dead load and people; told under ${BUCKLING.note}. ${OURS}`,
  find: ({ kit, structure: { buckling } }) =>
    buckling !== null && buckling >= BUCKLING.stop && buckling < BUCKLING.note
      ? [
          {
            parts: longestLegs(kit),
            values: { factor: factor(buckling), least: factor(BUCKLING.note) },
            remedy: braceAlongToo(kit) ?? morePosts(kit),
          },
        ]
      : [],
}
