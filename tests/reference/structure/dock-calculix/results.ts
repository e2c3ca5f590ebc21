/** The demo dock's frames in CalculiX: decks, what they give, and where that is stored for machines without it. */
import { fileURLToPath } from 'node:url'
import type { CalculixFrame } from '../calculix/frames.ts'
import { readDisplacements, readFactor, runCcx } from '../calculix/run-ccx.ts'
import { writeInp } from '../calculix/write-inp.ts'
import { demoFrame } from './demo.ts'

export const DEMO_FRAMES: readonly CalculixFrame[] = [
  demoFrame(true, 1),
  demoFrame(false, 1),
  demoFrame(true, 4),
  demoFrame(false, 4),
]

export const RESULTS = fileURLToPath(new URL('results.json', import.meta.url))
export const deckOf = ({ name }: CalculixFrame, step: 'static' | 'buckle'): string =>
  fileURLToPath(new URL(`${name}.${step}.inp`, import.meta.url))

export interface Result {
  /** For each node x, y, z, m. */
  readonly displacements: readonly (readonly number[])[]
  /** For each node that is held, by its index: what the ground does to it, N. */
  readonly reactions: Readonly<Record<number, readonly number[]>>
  readonly factor: number
}
export interface Results {
  readonly program: string
  readonly frames: Readonly<Record<string, Result>>
}

const held = ({ nodes }: CalculixFrame): number[] => nodes.flatMap((node, i) => (node.fixed ? [i] : []))

/** The deck of `writeInp` that prints what the ground does as well. */
export const staticDeck = (frame: CalculixFrame): string =>
  writeInp(frame, 'static')
    .replace(
      '*NSET, NSET=JOINTS',
      `*NSET, NSET=HELD\n${held(frame)
        .map((i) => i + 1)
        .join(',\n')}\n*NSET, NSET=JOINTS`,
    )
    .replace('*NODE PRINT, NSET=JOINTS\nU', '*NODE PRINT, NSET=JOINTS\nU\n*NODE PRINT, NSET=HELD\nRF')

export const buckleDeck = (frame: CalculixFrame): string => writeInp(frame, 'buckle')

export function runFrame(frame: CalculixFrame): Result {
  const dat = runCcx(staticDeck(frame))
  const at = dat.indexOf('forces (')
  return {
    displacements: readDisplacements(dat.slice(0, at), frame.nodes.length),
    reactions: readReactions(dat.slice(at), frame),
    factor: readFactor(runCcx(buckleDeck(frame))),
  }
}

/** CalculiX prints a support's force with the loads on its node added: they are taken off. */
function readReactions(dat: string, frame: CalculixFrame): Record<number, readonly number[]> {
  const found: Record<number, readonly number[]> = {}
  for (const line of dat.split('\n')) {
    const [number, ...values] = line.trim().split(/\s+/).map(Number)
    const node = number! - 1
    if (values.length !== 3 || !values.every(Number.isFinite) || !frame.nodes[node]?.fixed) continue
    const loads = frame.loads.filter((load) => load.node === node)
    found[node] = values.map((value, k) => loads.reduce((sum, { force }) => sum - force[k]!, value))
  }
  return found
}
