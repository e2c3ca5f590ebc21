/**
 * The solver against an independent program, CalculiX (Debian package calculix-ccx): by its stored results;
 * run anew by `npm run test:deep` where `ccx` is installed.
 *
 * Like with like: CalculiX's beams are made of solids and give in shear, which ours do not. Displacements to 0.1 %
 * where members are so thin that shear does not show, to 0.5 % elsewhere; buckling to 1 %.
 */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { buckling, solveFrame } from '../../../../rules/structure/index.ts'
import { CALCULIX_FRAMES, type CalculixFrame, frameModel, pressing } from './frames.ts'
import { bucklingWithMoments } from './moments.ts'
import { ccxRunNow, readDisplacements, readFactor, runCcx } from './run-ccx.ts'
import { DECKS, RESULTS, type StoredResults } from './stored.ts'
import { type Step, writeInp } from './write-inp.ts'

const stored: StoredResults = JSON.parse(readFileSync(RESULTS, 'utf8'))
const version = ccxRunNow()
const used =
  version === undefined ? `stored results of ${stored.program}` : `calculix-ccx ${version}, run now`
const SLOW = 60_000

beforeAll(() => {
  process.stdout.write(`compared with ${used}\n`)
})

const displacementsOf = (frame: CalculixFrame): readonly (readonly number[])[] =>
  version === undefined
    ? stored.frames[frame.name]!.displacements
    : readDisplacements(runCcx(writeInp(frame, 'static')), frame.nodes.length)

const factorOf = (frame: CalculixFrame, step: Exclude<Step, 'static'>): number =>
  version === undefined
    ? stored.frames[frame.name]!.factors[step]!
    : readFactor(runCcx(writeInp(frame, step)))

/** The largest difference, as a part of the largest movement in the frame. */
function apart(a: readonly (readonly number[])[], b: readonly (readonly number[])[]): number {
  const size = Math.max(...b.flat().map(Math.abs))
  return Math.max(...b.flatMap((row, i) => row.map((value, k) => Math.abs(value - a[i]![k]!)))) / size
}

describe(`displacements of frames and CalculiX's (${used})`, () => {
  it('are compared on 20 frames or more', () => {
    expect(CALCULIX_FRAMES.length).toBeGreaterThanOrEqual(20)
    expect(new Set(CALCULIX_FRAMES.map(({ name }) => name)).size).toBe(CALCULIX_FRAMES.length)
  })

  for (const frame of CALCULIX_FRAMES) {
    const within = frame.slender ? 1e-3 : 5e-3
    const title = `agree to ${within * 100} %: ${frame.name}`
    it(title, { timeout: SLOW }, () => {
      const { displacements } = solveFrame(frameModel(frame))
      expect(apart(displacements, displacementsOf(frame))).toBeLessThanOrEqual(within)
    })
  }
})

describe(`buckling of pressed frames and CalculiX's (${used})`, () => {
  for (const frame of CALCULIX_FRAMES.filter(({ buckles }) => buckles === 'pressed'))
    it(`agrees to 1 %: ${frame.name}`, { timeout: SLOW }, () => {
      const model = { ...frameModel(frame), loads: pressing(frame) }
      expect(Math.abs(buckling(model) / factorOf(frame, 'buckle') - 1)).toBeLessThanOrEqual(0.01)
    })
})

describe(`buckling of frames bent as well as pressed, the moments' part added, and CalculiX's (${used})`, () => {
  for (const frame of CALCULIX_FRAMES.filter(({ buckles }) => buckles !== 'no'))
    it(`agrees to 1 %: ${frame.name}`, { timeout: SLOW }, () => {
      const factor = bucklingWithMoments(frameModel(frame))
      expect(Math.abs(factor / factorOf(frame, 'buckle-all') - 1)).toBeLessThanOrEqual(0.01)
    })
})

describe('stored results of CalculiX', () => {
  it('belong to the decks that are written now', () => {
    for (const frame of CALCULIX_FRAMES)
      for (const step of ['static', ...Object.keys(stored.frames[frame.name]!.factors)] as Step[])
        expect(readFileSync(join(DECKS, `${frame.name}.${step}.inp`), 'utf8')).toBe(writeInp(frame, step))
  })

  it.skipIf(version === undefined)(
    `are what it gives when run now (${used})`,
    () => {
      for (const frame of CALCULIX_FRAMES.slice(0, 6)) {
        const { displacements, factors } = stored.frames[frame.name]!
        expect(apart(displacements, displacementsOf(frame))).toBeLessThanOrEqual(1e-4)
        if (factors.buckle)
          expect(Math.abs(factors.buckle / factorOf(frame, 'buckle') - 1)).toBeLessThanOrEqual(1e-3)
      }
    },
    SLOW,
  )
})
