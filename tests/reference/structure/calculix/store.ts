/**
 * Runs all frames through the CalculiX that is installed and stores decks and results, for machines without it:
 * `npx tsx tests/reference/structure/calculix/store.ts`
 */
import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { CALCULIX_FRAMES } from './frames.ts'
import { ccxVersion, readDisplacements, readFactor, runCcx } from './run-ccx.ts'
import { DECKS, RESULTS, type StoredResult, type StoredResults } from './stored.ts'
import { STEPS, type Step, writeInp } from './write-inp.ts'

const version = ccxVersion()
if (version === undefined) throw new Error('ccx is not installed (Debian: apt-get install calculix-ccx)')
mkdirSync(DECKS, { recursive: true })
const frames: Record<string, StoredResult> = {}
for (const frame of CALCULIX_FRAMES) {
  const run = (step: Step): string => {
    const deck = writeInp(frame, step)
    writeFileSync(join(DECKS, `${frame.name}.${step}.inp`), deck)
    return runCcx(deck)
  }
  const steps = STEPS.filter(
    (step) =>
      step === 'static' || frame.buckles === 'pressed' || (frame.buckles === 'bent' && step === 'buckle-all'),
  )
  const displacements = readDisplacements(run('static'), frame.nodes.length)
  const factors = steps.flatMap((step) => (step === 'static' ? [] : [[step, readFactor(run(step))] as const]))
  frames[frame.name] = { displacements, factors: Object.fromEntries(factors) }
}
const results: StoredResults = { program: `calculix-ccx ${version}`, frames }
writeFileSync(RESULTS, `${JSON.stringify(results, null, 1)}\n`)
