/** Times the solver on frames shaped like long docks. */
import { buckling, type FrameModel, factorFrame } from '../../../rules/structure/index.ts'

export interface FrameTiming {
  /** Milliseconds. */
  readonly median: number
  readonly least: number
}

function timed(runs: number, work: () => void): FrameTiming {
  for (let i = 0; i < Math.ceil(runs / 3); i++) work()
  const times = Array.from({ length: runs }, () => {
    const start = performance.now()
    work()
    return performance.now() - start
  }).sort((a, b) => a - b)
  return { median: times[times.length >> 1]!, least: times[0]! }
}

/** Laying out and factoring, all of it: what a changed dock costs once. */
export const timeFactor = (model: FrameModel, runs: number): FrameTiming =>
  timed(runs, () => factorFrame(model))

/** One load case on a factored frame. */
export function timeCase(model: FrameModel, runs: number): FrameTiming {
  const { solve } = factorFrame(model)
  return timed(runs, () => solve(model.loads))
}

export const timeBuckling = (model: FrameModel, runs: number): FrameTiming =>
  timed(runs, () => buckling(model))
