/**
 * How firmly a sleeve holds its leg against leaning, from the shapes that the shop states.
 *
 * The set bolts press the tube against the far wall: at the uppermost and the lowest bolt, leg and sleeve are each squeezed as a
 * ring. A ring of mean radius r and wall t, pinched across by P on a length b, gives 0.149·P·r³/(E·I) with I = b·t³/12
 * (Roark's Formulas for Stress and Strain, 7th ed., table 9.2 case 1, memory); a square tube's wall of clear width w gives
 * P·w³/(192·E·I), clamped at its corners (two walls in a row). The length that helps is taken as one outside width to each side
 * of the bolt (judgment, no published source). Leg and sleeve give in series at both bolts, which stand `a` apart:
 * stiffness = k·a²/2. A shop that has pulled a section sideways with a scale states `sleeve.stiffness` instead.
 */
import type { Stock } from '../../catalog/index.ts'
import type { Shop } from '../../catalog-index.ts'
import { barOf } from './bars.ts'

/** Across a tube at a bolt, N/m. */
function pinch(stock: Stock, E: number): number {
  switch (stock.shape) {
    case 'round-tube': {
      const r = (stock.diameter - stock.wall) / 2
      const I = (2 * stock.diameter * stock.wall ** 3) / 12
      return (E * I) / (0.149 * r ** 3)
    }
    case 'rect-tube': {
      const w = stock.width - stock.wall
      const I = (2 * stock.width * stock.wall ** 3) / 12
      return (192 * E * I) / w ** 3 / 2
    }
    default:
      return Number.POSITIVE_INFINITY
  }
}

/** N·m/rad, both ways. The stock is that of the catalog's first leg where legs differ. */
export function sleeveStiffness(shop: Shop): number {
  const { catalog } = shop
  const { sleeve } = catalog
  if (sleeve.stiffness !== undefined) return sleeve.stiffness
  const leg = catalog.legs[0]!.stock
  const k =
    1 /
    (1 / pinch(catalog.stock[leg]!, barOf(shop, leg).E) +
      1 / pinch(catalog.stock[sleeve.stock]!, barOf(shop, sleeve.stock).E))
  // One bolt alone: the couple is that of the sleeve's own length, half of it.
  const apart = sleeve.bolts.length > 1 ? sleeve.bolts.at(-1)! - sleeve.bolts[0]! : sleeve.length / 2
  return (k * apart ** 2) / 2
}
