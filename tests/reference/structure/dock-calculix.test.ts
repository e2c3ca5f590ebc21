/**
 * The whole frame of the demo dock, with its braces and without, against CalculiX (Debian package calculix-ccx): by its stored
 * results, run anew by `npm run test:deep` where `ccx` is installed.
 *
 * Like with like (see dock-calculix/demo.ts): CalculiX's beams give in shear, ours do not. At its own size that is up to 1.5 % of the
 * largest movement between the stocky braced legs (0.24 % without braces): movements to 1.6 %, reactions to 0.2 %. Four times as large with
 * the same bars, so that shear does not show: movements to 0.15 %. Buckling to 0.5 % either way.
 */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { buckling, solveFrame } from '../../../rules/structure/index.ts'
import { frameModel, pressing } from './calculix/frames.ts'
import { ccxRunNow } from './calculix/run-ccx.ts'
import {
  buckleDeck,
  DEMO_FRAMES,
  deckOf,
  RESULTS,
  type Result,
  type Results,
  runFrame,
  staticDeck,
} from './dock-calculix/results.ts'

const stored: Results = JSON.parse(readFileSync(RESULTS, 'utf8'))
const version = ccxRunNow()
const used =
  version === undefined ? `stored results of ${stored.program}` : `calculix-ccx ${version}, run now`
const SLOW = 120_000

describe(`the demo dock's frame and CalculiX's (${used})`, () => {
  for (const frame of DEMO_FRAMES)
    it(`agree: ${frame.name}`, { timeout: SLOW }, () => {
      const theirs: Result = version === undefined ? stored.frames[frame.name]! : runFrame(frame)
      const model = frameModel(frame)
      const ours = solveFrame(model)
      const size = Math.max(...theirs.displacements.flat().map(Math.abs))
      theirs.displacements.forEach((row, node) => {
        for (let k = 0; k < 3; k++)
          expect(Math.abs(ours.displacements[node]![k]! - row[k]!) / size).toBeLessThanOrEqual(
            frame.slender ? 1.5e-3 : 1.6e-2,
          )
      })
      const reactions = Object.entries(theirs.reactions)
      expect(reactions.length).toBe(12)
      const most = Math.max(...reactions.flatMap(([, row]) => row).map(Math.abs))
      for (const [node, row] of reactions)
        for (let k = 0; k < 3; k++)
          expect(Math.abs(ours.reactions[Number(node)]![k]! - row[k]!) / most).toBeLessThanOrEqual(2e-3)
      const factor = buckling({ ...model, loads: pressing(frame) })
      expect(Math.abs(factor / theirs.factor - 1)).toBeLessThanOrEqual(5e-3)
    })

  it('is stored with the decks that are written now', () => {
    for (const frame of DEMO_FRAMES) {
      expect(readFileSync(deckOf(frame, 'static'), 'utf8')).toBe(staticDeck(frame))
      expect(readFileSync(deckOf(frame, 'buckle'), 'utf8')).toBe(buckleDeck(frame))
    }
  })
})
