/** What the dock must carry besides itself, as changes of the Design: people on its deck, a boat at its side. */
import type { Design } from '../../rules/index.ts'
import { DECK_LOADS } from '../../rules/structure/strength/loads-published.ts'
import {
  type BoatFigures,
  USUAL_BOATS,
  type UsualBoat,
  usualBoat,
} from '../../rules/structure/strength/usual-boats.ts'

export type Boat = NonNullable<Design['dock']['boat']>

/** The first is what is taken where the Design says nothing. */
export const LOADS = DECK_LOADS

/** Pa */
export const loadOf = ({ dock }: Design): number => dock.load ?? LOADS[0]!.pressure

export function setLoad(design: Design, pressure: number): Design {
  const { load: _, ...dock } = design.dock
  return { ...design, dock: pressure === LOADS[0]!.pressure ? dock : { ...dock, load: pressure } }
}

export type BoatKind = UsualBoat | 'none' | 'own'

const FIGURES = ['length', 'height', 'draught', 'mass'] as const

/** A Design keeps six decimals. */
const alike = (a: BoatFigures, b: BoatFigures): boolean =>
  FIGURES.every((key) => Math.abs(a[key] - b[key]) < 1e-5)

/** What it is called, else which usual boat it is by its figures: older Designs call it nothing. */
export function boatKind({ dock: { boat } }: Design): BoatKind {
  if (!boat) return 'none'
  if (boat.kind) return boat.kind
  const kinds = Object.keys(USUAL_BOATS) as UsualBoat[]
  return kinds.find((kind) => alike(USUAL_BOATS[kind], boat)) ?? 'own'
}

/** Are its figures others than its kind and length say? */
export function hasOwnFigures(design: Design): boolean {
  const { boat } = design.dock
  const kind = boatKind(design)
  return Boolean(boat) && kind !== 'none' && kind !== 'own' && !isUsual(kind, boat!)
}

const isUsual = (kind: UsualBoat, boat: Boat): boolean =>
  boat.length > 0 && alike(usualBoat(kind, boat.length), boat)

/** As that kind usually is, at its most common length. The side that it lies at is kept. */
export function setBoatKind(design: Design, kind: BoatKind): Design {
  if (kind === 'own' || kind === boatKind(design)) return design
  const { boat, ...dock } = design.dock
  if (kind === 'none') return { ...design, dock }
  return {
    ...design,
    dock: { ...dock, boat: { ...boat, ...USUAL_BOATS[kind], kind, side: boat?.side ?? 'left' } },
  }
}

/** One of its figures; what it is called stays. */
export function setBoat(design: Design, change: Partial<Boat>): Design {
  const { boat } = design.dock
  if (!boat) return design
  const kind = boatKind(design)
  const called = kind === 'none' || kind === 'own' ? {} : { kind }
  return { ...design, dock: { ...design.dock, boat: { ...boat, ...called, ...change } } }
}

/** @param length m. The other figures follow where they were the usual ones. */
export function setBoatLength(design: Design, length: number): Design {
  const { boat } = design.dock
  const kind = boatKind(design)
  const follows = boat && kind !== 'none' && kind !== 'own' && length > 0 && isUsual(kind, boat)
  return setBoat(design, follows ? { ...usualBoat(kind, length) } : { length })
}

/** What its kind and length usually come to. */
export function setUsualFigures(design: Design): Design {
  const { boat } = design.dock
  const kind = boatKind(design)
  if (!boat || kind === 'none' || kind === 'own' || !(boat.length > 0)) return design
  return setBoat(design, { ...usualBoat(kind, boat.length) })
}
