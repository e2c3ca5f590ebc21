import { type Design, EXACT, type Issue } from '../../rules/index.ts'
import { useLeadline } from '../state/store.ts'
import { grown } from './shore.ts'

/** Takes an answer: the dock grows with it, in one step of undo. */
export function useAnswer(): (change: (design: Design) => Design) => readonly Issue[] {
  const edit = useLeadline((s) => s.edit)
  const catalog = useLeadline((s) => s.catalog)
  return (change) => edit((d) => grown(change(d), catalog, d))
}

const FOOT = EXACT.foot
/** Likely answers and steps in the figures that people have, m. */
export const FIGURES = {
  imperial: {
    near: [1, 2, 3, 4, 5].map((n) => n * FOOT),
    far: [2, 3, 4, 5, 6].map((n) => n * FOOT),
    levels: [0.25, 0.5, 1, 2].map((n) => n * FOOT),
    bank: { level: 0, low: FOOT, steps: 3 * FOOT },
    distance: 5 * FOOT,
    depth: FOOT,
    level: 0.25 * FOOT,
  },
  metric: {
    near: [0.5, 1, 1.5, 2],
    far: [0.5, 1, 1.5, 2, 2.5],
    levels: [0.1, 0.2, 0.3, 0.6],
    bank: { level: 0, low: 0.3, steps: 1 },
    distance: 1,
    depth: 0.5,
    level: 0.1,
  },
} as const
