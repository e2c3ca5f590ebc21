/**
 * What a push can do to a dock at the most.
 *
 * Feet are held sideways where forces are worked out. A bed that grips well holds them up to a limit; beyond it the dock slides, and no part
 * carries more for being pushed harder. A dock that does not stand under all of a push carries what it does under the part of it that
 * it just stands. And not every dock that does not stand goes over: its feet slide first, or the push is over in a moment and has too
 * little energy.
 *
 * All of this is asked of parts of the push, not of the whole of it: so more of the same push is never the milder case.
 */
import type { Combination } from './combinations.ts'
import type { Touch } from './contacts.ts'
import type { DockFrame } from './frame.ts'
import { letGo, TIPPED } from './lift-off.ts'
import type { Lean, Sliding } from './sliding.ts'

export interface Pushed {
  readonly touching: Touch
  readonly rubbing: Sliding
  /** Forces with all contacts closed: of what is there without the push, and of the push. */
  readonly still: Float64Array
  readonly grown: Float64Array
  readonly lean: Lean
}

export interface Outcome {
  /** It does not stand, and does not go over for all that. */
  readonly spared: boolean
  /** What parts carry, contacts let go. */
  readonly carried: Float64Array
}

/** Whether a push is more than a bed that grips well holds. */
export function isPushedOff(rubbing: Sliding, closed: Float64Array, lean: Lean): boolean {
  const { push, holds } = rubbing.whole(closed, lean, 'high')
  return push > holds
}

/**
 * Of a dock that does not stand under a push, or is pushed off.
 *
 * @param forces of all of the push, contacts let go
 * @param fine whether the part that it just stands is looked for, which takes several times as long; else it is told of all of the push
 */
export function underPush(
  frame: DockFrame,
  { energy, force }: Combination,
  stands: boolean,
  forces: Float64Array,
  pushed: Pushed,
  fine: boolean,
): Outcome {
  const slid = slidingPart(pushed)
  if (slid < 1) {
    const carried = under(pushed, slid)
    if (letGo(pushed.touching, carried).stands) return { spared: !stands, carried }
  }
  if (stands) return { spared: false, carried: forces }
  const carried = (fine && justStood(pushed)) || forces
  const brief = energy !== undefined && force !== undefined && isTooWeak(frame, energy, force, pushed)
  return { spared: !stands && brief, carried }
}

/** Halvings in which a part of the push is found that is cheap to ask of, and one that is not: to a thirty-second. */
const FINE = 8
const COARSE = 5

/** The least part of the push, between 0 and 1, under which something is so; it is so under all of it. */
function leastPart(is: (part: number) => boolean, halvings: number): number {
  let low = 0
  let high = 1
  for (let i = 0; i < halvings; i++) {
    const middle = (low + high) / 2
    if (is(middle)) high = middle
    else low = middle
  }
  return high
}

const under = ({ still, grown }: Pushed, part: number): Float64Array =>
  still.map((value, i) => value + part * grown[i]!)

/** From which part on the dock slides on a bed that grips well; 1 where it does not. */
function slidingPart(pushed: Pushed): number {
  const { still, grown, rubbing, lean } = pushed
  const at = new Float64Array(still.length)
  const slides = (part: number): boolean => {
    for (let i = 0; i < at.length; i++) at[i] = still[i]! + part * grown[i]!
    return isPushedOff(rubbing, at, lean)
  }
  return slides(1) ? leastPart(slides, FINE) : 1
}

/** Forces under the largest part of the push that the dock stands; null where it stands none of it. */
function justStood(pushed: Pushed): Float64Array | null {
  const { touching } = pushed
  const falls = (part: number): boolean => !letGo(touching, under(pushed, part)).stands
  const forces = under(pushed, leastPart(falls, COARSE) - 1 / 2 ** COARSE)
  return letGo(touching, forces).stands ? forces : null
}

/**
 * While a foot comes up by what counts as gone over, the deck goes sideways by that times height over spacing, and what resists falls from
 * the push that it just stands to nothing: half of it, on the side of less, is what the load would have to give.
 */
function isTooWeak(frame: DockFrame, energy: number, force: number, pushed: Pushed): boolean {
  const falls = (part: number): boolean => !letGo(pushed.touching, under(pushed, part)).stands
  const stands = leastPart(falls, COARSE) * force
  const { design, layout, legs, shop } = frame.kit
  const across = Math.min(...layout.placed.map((p) => p.frame.width - 2 * shop.catalog.sleeve.across))
  const high = legs.reduce(
    (least, { bed }) => Math.min(least, design.dock.deckHeight - bed),
    Number.POSITIVE_INFINITY,
  )
  return energy < (stands * TIPPED * high) / across / 2
}
