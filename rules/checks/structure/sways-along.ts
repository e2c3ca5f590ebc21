import { PUSH } from '../../structure/dock/basic-loads.ts'
import { swayWord } from '../../structure/strength/index.ts'
import { millimeters } from '../check.ts'
import { braceAlongToo, morePosts, type StructureCheck, SWAY } from './judged.ts'

/** The dock moves lengthwise so much that it feels loose: only lengthwise braces help there, those across do nothing. */
export const swaysAlong: StructureCheck = {
  code: 'sways-along',
  severity: 'warn',
  basis: SWAY,
  find: ({ kit, structure }) =>
    swayWord(structure.swayAlong, PUSH) === 'loose'
      ? [
          {
            parts: [],
            values: { sway: millimeters(structure.swayAlong), play: millimeters(structure.playAlong) },
            remedy: braceAlongToo(kit) ?? morePosts(kit),
          },
        ]
      : [],
}
