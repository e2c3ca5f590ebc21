/** Ordinary boats, loaded, in figures of our own that part one kind from the next. Typed ones are better. */
import { EXACT } from '../../words/figures.ts'

const { foot, inch, pound } = EXACT

/** m, kg */
export interface BoatFigures {
  readonly length: number
  /** Of its side over the water. */
  readonly height: number
  readonly draught: number
  readonly mass: number
}

const boatOf = (feet: number, side: number, down: number, pounds: number): BoatFigures => ({
  length: feet * foot,
  height: side * inch,
  draught: down * inch,
  mass: pounds * pound,
})

/** Of the length that is most common. */
export const USUAL_BOATS = {
  fishing: boatOf(14, 18, 10, 700),
  runabout: boatOf(18, 30, 18, 2600),
  pontoon: boatOf(22, 28, 16, 3300),
} as const

export type UsualBoat = keyof typeof USUAL_BOATS

/** How long a kind is offered, m. */
export const USUAL_LENGTHS: Readonly<Record<UsualBoat, readonly [least: number, most: number]>> = {
  fishing: [10 * foot, 20 * foot],
  runabout: [14 * foot, 28 * foot],
  pontoon: [16 * foot, 30 * foot],
}

/**
 * How the usual figures go with the length (common practice, no published source): a side and a draught as its root; a mass as its square, for a
 * longer boat is wider or deeper laden too, but seldom both. A pontoon boat keeps its tubes: side and draught stay, and the mass goes as the length.
 */
const GROWS: Readonly<Record<UsualBoat, { readonly side: number; readonly mass: number }>> = {
  fishing: { side: 0.5, mass: 2 },
  runabout: { side: 0.5, mass: 2 },
  pontoon: { side: 0, mass: 1 },
}

/** @param length m, over 0 */
export function usualBoat(kind: UsualBoat, length: number): BoatFigures {
  const usual = USUAL_BOATS[kind]
  const { side, mass } = GROWS[kind]
  const longer = length / usual.length
  return {
    length,
    height: usual.height * longer ** side,
    draught: usual.draught * longer ** side,
    mass: usual.mass * longer ** mass,
  }
}
