import { PUSH } from '../../structure/dock/basic-loads.ts'
import { swayWord } from '../../structure/strength/index.ts'
import { millimeters } from '../check.ts'
import { morePosts, type StructureCheck, SWAY } from './judged.ts'

/** The deck moves sideways under people so much that it feels loose. */
export const swaysAcross: StructureCheck = {
  code: 'sways-across',
  severity: 'warn',
  basis: SWAY,
  find: ({ kit, structure }) =>
    swayWord(structure.swayAcross, PUSH) === 'loose'
      ? [
          {
            parts: [],
            values: { sway: millimeters(structure.swayAcross), play: millimeters(structure.playAcross) },
            remedy: morePosts(kit),
          },
        ]
      : [],
}
