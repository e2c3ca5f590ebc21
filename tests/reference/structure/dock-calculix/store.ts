/** Runs the demo dock's frames through the CalculiX that is installed and stores decks and results: `npx tsx tests/reference/structure/dock-calculix/store.ts` */
import { writeFileSync } from 'node:fs'
import { ccxVersion } from '../calculix/run-ccx.ts'
import { buckleDeck, DEMO_FRAMES, deckOf, RESULTS, type Results, runFrame, staticDeck } from './results.ts'

const version = ccxVersion()
if (version === undefined) throw new Error('ccx is not installed (Debian: apt-get install calculix-ccx)')
const frames = Object.fromEntries(
  DEMO_FRAMES.map((frame) => {
    writeFileSync(deckOf(frame, 'static'), staticDeck(frame))
    writeFileSync(deckOf(frame, 'buckle'), buckleDeck(frame))
    return [frame.name, runFrame(frame)]
  }),
)
const results: Results = { program: `calculix-ccx ${version}`, frames }
writeFileSync(RESULTS, `${JSON.stringify(results, null, 1)}\n`)
