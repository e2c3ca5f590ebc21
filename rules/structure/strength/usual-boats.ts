/** Ordinary boats, loaded, in figures of our own that part one kind from the next. Typed ones are better. */
import { EXACT } from '../../words/figures.ts'

const { foot, inch, pound } = EXACT

/** m, kg */
export interface BoatFigures {
  readonly length: number
  /** Greatest width. */
  readonly beam: number
  /** Of its side over the water. */
  readonly height: number
  readonly draught: number
  readonly mass: number
}

const boatOf = (feet: number, wide: number, side: number, down: number, pounds: number): BoatFigures => ({
  length: feet * foot,
  beam: wide * inch,
  height: side * inch,
  draught: down * inch,
  mass: pounds * pound,
})

/** Of the length that is most common. */
export const USUAL_BOATS = {
  fishing: boatOf(14, 64, 18, 10, 700),
  runabout: boatOf(18, 92, 30, 18, 2600),
  pontoon: boatOf(22, 102, 28, 16, 3300),
} as const

export type UsualBoat = keyof typeof USUAL_BOATS

/** How long a kind is offered, m. */
export const USUAL_LENGTHS: Readonly<Record<UsualBoat, readonly [least: number, most: number]>> = {
  fishing: [10 * foot, 20 * foot],
  runabout: [14 * foot, 28 * foot],
  pontoon: [16 * foot, 30 * foot],
}

/**
 * How the usual figures go with the length (common practice, no published source): a beam, a side and a draught as its root; a mass as its square, for a
 * longer boat is wider or deeper laden too, but seldom both. A pontoon boat keeps its tubes and the width that a trailer may have: beam, side and draught stay, and the mass goes as the length.
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
    beam: usual.beam * longer ** side,
    height: usual.height * longer ** side,
    draught: usual.draught * longer ** side,
    mass: usual.mass * longer ** mass,
  }
}

const FIGURES = ['length', 'height', 'draught', 'mass', 'beam'] as const

type Told = Omit<BoatFigures, 'beam'> & { readonly beam?: number | undefined }

/** A Design keeps six decimals; a beam that nobody has told is none of its own. */
export const alikeBoats = (usual: BoatFigures, boat: Told): boolean =>
  FIGURES.every((key) => Math.abs(usual[key] - (boat[key] ?? usual[key])) < 1e-5)

/** What it is called, else which usual boat it is by its figures: older Designs call it nothing. */
export const boatKindOf = (boat: Told & { readonly kind?: UsualBoat | undefined }): UsualBoat | 'own' =>
  boat.kind ??
  (Object.keys(USUAL_BOATS) as UsualBoat[]).find((kind) => alikeBoats(USUAL_BOATS[kind], boat)) ??
  'own'
