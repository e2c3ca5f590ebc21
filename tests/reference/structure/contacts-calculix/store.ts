/** Runs the touching frames through the CalculiX that is installed and stores decks and results: `npx tsx tests/reference/structure/contacts-calculix/store.ts` */
import { writeFileSync } from 'node:fs'
import { ccxVersion } from '../calculix/run-ccx.ts'
import { TOUCHING } from './frames.ts'
import { contactDeck, deckOf, RESULTS, type Results, runTouching } from './results.ts'

const version = ccxVersion()
if (version === undefined) throw new Error('ccx is not installed (Debian: apt-get install calculix-ccx)')
const frames = Object.fromEntries(
  TOUCHING.map((frame) => {
    writeFileSync(deckOf(frame), contactDeck(frame))
    return [frame.name, runTouching(frame)]
  }),
)
const results: Results = { program: `calculix-ccx ${version}`, frames }
writeFileSync(RESULTS, `${JSON.stringify(results, null, 2)}\n`)
