import type { Kit } from '../kit.ts'
import { highestUnder } from '../layout/outline.ts'
import { outline } from '../layout/place.ts'

export interface Under {
  readonly id: string
  /** Lowest of the frame over the highest ground under it, m. */
  readonly clear: number
}

/** Of every frame that stands in the water; the ramp lies on the shore and is not asked. Two checks ask. */
export const clearancesUnder = (kit: Kit): readonly Under[] => kit.once(clearancesOf)

const clearancesOf = ({ bed, design, shop, layout }: Kit): readonly Under[] =>
  layout.placed
    .filter((p) => p.role !== 'ramp')
    .map((p) => ({
      id: p.id,
      clear: design.dock.deckHeight - shop.shape(p.frame).lowest - highestUnder(bed, outline(p)),
    }))
