/** How heavily the deck may be crowded, as changes of the Design. */
import type { Design } from '../../rules/index.ts'
import { DECK_LOADS } from '../../rules/structure/strength/loads-published.ts'

/** The first is what is taken where the Design says nothing. */
export const LOADS = DECK_LOADS

/** Pa */
export const loadOf = ({ dock }: Design): number => dock.load ?? LOADS[0]!.pressure

export function setLoad(design: Design, pressure: number): Design {
  const { load: _, ...dock } = design.dock
  return { ...design, dock: pressure === LOADS[0]!.pressure ? dock : { ...dock, load: pressure } }
}
