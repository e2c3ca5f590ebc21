/** Undo and redo of one design: bounded, one step a gesture. Plain data, no store, no DOM. */
import type { Design } from '../../rules/index.ts'

/** Most steps that can be taken back. */
export const MOST_STEPS = 100

export interface History {
  readonly past: readonly Design[]
  readonly future: readonly Design[]
  /** Name of the gesture that is going on: its edits are one step. */
  readonly gesture: string | null
}

export const emptyHistory: History = { past: [], future: [], gesture: null }

/** `before` becomes a step back, unless the edit goes on with the gesture that has already made one. */
export function remember(history: History, before: Design, gesture: string | null): History {
  if (gesture !== null && gesture === history.gesture) return { ...history, future: [] }
  return { past: [...history.past, before].slice(-MOST_STEPS), future: [], gesture }
}

/** Closes the gesture. Where it came back to what was before it, there is no step: `same` tells. */
export function closeGesture(
  history: History,
  now: Design,
  same: (a: Design, b: Design) => boolean,
): History {
  if (history.gesture === null) return history
  const before = history.past.at(-1)
  const past = before && same(before, now) ? history.past.slice(0, -1) : history.past
  return { past, future: history.future, gesture: null }
}

export function stepBack(history: History, now: Design): { history: History; design: Design } | null {
  const design = history.past.at(-1)
  if (!design) return null
  return {
    history: { past: history.past.slice(0, -1), future: [...history.future, now], gesture: null },
    design,
  }
}

export function stepForward(history: History, now: Design): { history: History; design: Design } | null {
  const design = history.future.at(-1)
  if (!design) return null
  return {
    history: { past: [...history.past, now], future: history.future.slice(0, -1), gesture: null },
    design,
  }
}
