/** What the dock must carry besides itself, as changes of the Design: people on its deck, a boat at its side. */
import type { Design } from '../../rules/index.ts'
import { DECK_LOADS } from '../../rules/structure/strength/loads-published.ts'
import { USUAL_BOATS } from '../../rules/structure/strength/usual-boats.ts'

export type Boat = NonNullable<Design['dock']['boat']>

/** The first is what is taken where the Design says nothing. */
export const LOADS = DECK_LOADS

/** Pa */
export const loadOf = ({ dock }: Design): number => dock.load ?? LOADS[0]!.pressure

export function setLoad(design: Design, pressure: number): Design {
  const { load: _, ...dock } = design.dock
  return { ...design, dock: pressure === LOADS[0]!.pressure ? dock : { ...dock, load: pressure } }
}

export type BoatKind = keyof typeof USUAL_BOATS | 'none' | 'own'

export function boatKind({ dock: { boat } }: Design): BoatKind {
  if (!boat) return 'none'
  const kinds = Object.entries(USUAL_BOATS) as [
    keyof typeof USUAL_BOATS,
    (typeof USUAL_BOATS)[keyof typeof USUAL_BOATS],
  ][]
  const keys = ['length', 'height', 'draught', 'mass'] as const
  // A Design keeps six decimals.
  const found = kinds.find(([, like]) => keys.every((key) => Math.abs(like[key] - boat[key]) < 1e-5))
  return found ? found[0] : 'own'
}

/** The side that it lies at is kept. */
export function setBoatKind(design: Design, kind: BoatKind): Design {
  if (kind === 'own') return design
  const { boat, ...dock } = design.dock
  if (kind === 'none') return { ...design, dock }
  return { ...design, dock: { ...dock, boat: { ...boat, ...USUAL_BOATS[kind], side: boat?.side ?? 'left' } } }
}

export const setBoat = (design: Design, change: Partial<Boat>): Design =>
  design.dock.boat
    ? { ...design, dock: { ...design.dock, boat: { ...design.dock.boat, ...change } } }
    : design
