/**
 * How surely each leg's length fits.
 *
 * A leg fits if, on the bed as it truly is, it reaches the deck with what must stay in reserve: what the water washes out, what its pad sinks
 * in, what the deck must go up for the lake's high level, and what the Design asks for besides. The shop's least reserve and the part for the
 * soundings are there to be used up by them. One that comes out longer than it need be is set all the same and stands higher over the deck
 * (`leg-tall-above-deck`): it fits. So the bed may lie lower than it is taken to be by `room`; how far it does is nearly normal, with the
 * standard error of the bed there, and the chance is that of a normal deviate below room / error.
 */
import type { Kit } from '../kit.ts'
import { aboveDeck, mustStay, type PlacedLeg } from '../parts/legs.ts'
import type { Errors, Known } from '../site/error.ts'
import { varianceIn } from './between.ts'
import { normalBelow } from './normal.ts'

export interface Chance {
  readonly leg: PlacedLeg
  /** What must stay in reserve, m. */
  readonly stays: number
  /** How much lower than it is taken to be the bed may lie, m; negative where the length is too short by that. */
  readonly room: number
  /** Standard error of the bed there, m. */
  readonly error: number
  readonly chance: number
  /** Null on top of a wall. */
  readonly known: Known | null
}

/** Of every leg that has a length. */
export function chancesOf(kit: Kit, errors: Errors): Chance[] {
  return kit.legs.flatMap((leg) => {
    const above = aboveDeck(leg, kit)
    if (above === null) return []
    const stays = mustStay(leg, kit)
    const known = errors.known(leg.x, leg.y)
    const error = known ? Math.sqrt(varianceIn(errors, known)) : errors.sounding
    const room = above - stays
    return [{ leg, stays, room, error, chance: chanceOf(room, error), known }]
  })
}

/** With no error it is known. The micrometer is what every length carries. */
export const chanceOf = (room: number, error: number): number =>
  error > 0 ? normalBelow((room + 1e-6) / error) : room >= -1e-6 ? 1 : 0
