import { PUSH } from '../../structure/dock/basic-loads.ts'
import { swayWord } from '../../structure/strength/index.ts'
import { millimeters } from '../check.ts'
import { type StructureCheck, SWAY } from './judged.ts'

/** One will feel it move, and no more than that. */
export const swayFelt: StructureCheck = {
  code: 'sway-felt',
  severity: 'note',
  basis: SWAY,
  find: ({ structure }) =>
    swayWord(structure.sway, PUSH) === 'felt'
      ? [
          {
            parts: [],
            values: {
              sway: millimeters(structure.sway),
              across: millimeters(structure.swayAcross),
              along: millimeters(structure.swayAlong),
            },
          },
        ]
      : [],
}
