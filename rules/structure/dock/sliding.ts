/**
 * What pushes feet along the bed, and what holds them.
 *
 * Two questions, two frictions, each the one that is safe for it: does the dock slide (the low one that codes count on), and does it
 * hold its feet so well that it goes over instead (the high one that a rough bed may have). A stronger wind never answers the
 * second more mildly: it is asked at the push under which the feet would begin to slide, not beyond it.
 *
 * A lean is no push: what an out-of-plumb leg pushes at its top it pushes back at its foot. The friction of a ramp's shore end is left out.
 */
import { sectionProperties } from '../../catalog/section-properties.ts'
import { footingAt } from '../../site/footing.ts'
import { grip, slidingResistance } from '../strength/index.ts'
import type { DockFrame } from './frame.ts'

/** Leaning legs: what each carries (N, pressed positive) and the lean along x and y (m/m). */
export interface Lean {
  readonly axial: Float64Array
  readonly x: number
  readonly y: number
}

export interface Hold {
  /** Sideways on the bed, N. */
  readonly push: number
  /** What resists, N. */
  readonly holds: number
}

export type Friction = 'low' | 'high'

export interface Sliding {
  /** Of some feet together, by their index. */
  of(feet: readonly number[], forces: ArrayLike<number>, lean: Lean, friction: Friction): Hold
  /** Of the whole dock with its posts. */
  whole(forces: ArrayLike<number>, lean: Lean, friction: Friction): Hold
}

const RESISTANCE = { low: slidingResistance, high: grip } as const

export function sliding({ kit, legs, slot, posts }: DockFrame): Sliding {
  const bottoms = legs.map(({ leg }) => footingAt(kit.bed, leg.x, leg.y))
  const areas = legs.map(({ leg }) => leg.pad.plate.length * leg.pad.plate.width)
  // What stands in the bottom resists too: the tube, as deep as its pad sinks in.
  const sunk = legs.map(
    ({ leg }, i) =>
      sectionProperties(kit.shop.catalog.stock[leg.stock!.stock]!).width * leg.pad.sinkage[bottoms[i]!],
  )
  const at = legs.map(({ members }) => slot[members[0]!]! * 12)
  const postAt = posts.map(({ member }) => slot[member]! * 12)
  const posted = posts.reduce((sum, { holds }) => sum + holds, 0)
  const all = legs.map((_, i) => i)

  /** Feet that pull, of a dock that tips, take of what the others hold. */
  const sum = (feet: readonly number[], forces: ArrayLike<number>, lean: Lean, friction: Friction) => {
    let holds = 0
    let up = 0
    let down = 0
    let x = 0
    let y = 0
    for (const foot of feet) {
      const press = forces[at[foot]!]!
      if (press > 0) down += press
      else up -= press
      holds += RESISTANCE[friction](bottoms[foot]!, press, areas[foot]!, sunk[foot]!)
      const pressed = Math.max(lean.axial[foot]!, 0)
      x += forces[at[foot]! + 1]! + pressed * lean.x
      y += forces[at[foot]! + 2]! + pressed * lean.y
    }
    return { x, y, holds: down > 0 ? holds * Math.max(0, 1 - up / down) : holds }
  }
  return {
    of(feet, forces, lean, friction) {
      const { x, y, holds } = sum(feet, forces, lean, friction)
      return { push: Math.hypot(x, y), holds }
    },
    whole(forces, lean, friction) {
      let { x, y, holds } = sum(all, forces, lean, friction)
      // A post stands as a leg does: its own second and third axes are the dock's x and y.
      for (const post of postAt) {
        x += forces[post + 1]!
        y += forces[post + 2]!
      }
      return { push: Math.hypot(x, y), holds: holds + posted }
    },
  }
}
