/**
 * Docks that do not stand under all of a push: the part of it that they just stand, and those that do not go over for all that.
 *
 * What their parts carry is told of the part that they just stand, whatever the push: with what holds them gone there is no other answer.
 *
 * Docks that do not stand under a load as if it stayed, and do not go over for all that: their feet slide first, or the load is over in a
 * moment and has too little energy.
 *
 * Both are asked of the load under which the dock just stands, not of the whole of it: so more of the same load is never the milder case.
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

/** Halvings in which the largest part of a push is found that a dock just stands: to a thirty-second of it. */
const STOOD = 5

/** Forces with what is let go, under the largest part of the push that the dock stands; null where it stands none of it. */
export function justStood(pushed: Pushed): Float64Array | null {
  const { touching } = pushed
  const falls = (part: number): boolean => !letGo(touching, under(pushed, part)).stands
  const part = leastPart(falls, STOOD) - 1 / 2 ** STOOD
  const forces = under(pushed, part)
  return letGo(touching, forces).stands ? forces : null
}

export const isSpared = (frame: DockFrame, { energy, force }: Combination, pushed: Pushed): boolean =>
  slidesBefore(pushed) ||
  (energy !== undefined && force !== undefined && isTooWeak(frame, energy, force, pushed))

/** Halvings in which a part of the push is found. */
const HALVINGS = 12

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

/** Even on a bed that grips well. */
function slidesBefore(pushed: Pushed): boolean {
  const { rubbing, lean, touching } = pushed
  const slides = (part: number): boolean => {
    const { push, holds } = rubbing.whole(under(pushed, part), lean, 'high')
    return push > holds
  }
  if (!slides(1)) return false
  return letGo(touching, under(pushed, leastPart(slides, HALVINGS))).stands
}

/**
 * While a foot comes up by what counts as gone over, the deck goes sideways by that times height over spacing, and what resists falls from
 * the push that it just stands to nothing: half of it, on the side of less, is what the load would have to give.
 */
function isTooWeak(frame: DockFrame, energy: number, force: number, pushed: Pushed): boolean {
  const stands = leastPart((part) => !letGo(pushed.touching, under(pushed, part)).stands, 7) * force
  const { design, layout, legs, shop } = frame.kit
  const across = Math.min(...layout.placed.map((p) => p.frame.width - 2 * shop.catalog.sleeve.across))
  const high = legs.reduce(
    (least, { bed }) => Math.min(least, design.dock.deckHeight - bed),
    Number.POSITIVE_INFINITY,
  )
  return energy < (stands * TIPPED * high) / across / 2
}
