import { footprint, type Placed } from '../layout/index.ts'
import type { Kit } from '../kit.ts'

/** Lowest of a standing section's frame over the highest ground under it, m; the ramp lies on the shore and is not asked. */
export function clearanceUnder(p: Placed, { bed, design, shop }: Kit): number {
  const { x0, x1, y0, y1 } = footprint(p)
  return design.dock.deckHeight - shop.shape(p.frame).lowest - bed.highest(x0, x1, y0, y1)
}
