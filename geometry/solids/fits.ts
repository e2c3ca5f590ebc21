/** Sizes that small parts take from the parts they sit on, m. */
import { type Catalog, type Stock, sectionProperties } from '../../rules/index.ts'
import { legStock } from '../../rules/parts/clamp-plates.ts'
import { circle, type Ring, rectangle, sidesOf } from './rings.ts'

/** Outline of a stock's outside, `grow` larger all round. */
export function outline(stock: Stock, grow = 0): Ring {
  const { width, height } = sectionProperties(stock)
  const round = stock.shape === 'round-tube' || stock.shape === 'round-bar'
  return round ? circle(width + 2 * grow, sidesOf(width)) : rectangle(width + 2 * grow, height + 2 * grow)
}

/** From a leg's axis to its surface, and to the outside of the sleeve that it slides in. */
export const legRadius = (catalog: Catalog): number => sectionProperties(legStock(catalog)).height / 2
export const sleeveRadius = (catalog: Catalog): number =>
  sectionProperties(catalog.stock[catalog.sleeve.stock]!).height / 2

/** Widest rail that a bolt through a frame's edge goes through. */
export const railWidth = (catalog: Catalog): number =>
  Math.max(
    ...catalog.frames
      .flatMap((f) => [f.rail, f.ends])
      .map((code) => sectionProperties(catalog.stock[code]!).width),
  )
