/** Where the dock without braces stands beside the one with them: on the far side from the eye, so that neither hides the other. */
import type { Slab } from '../deck-rectangles.ts'

/** Water between the two, m. */
const APART = 1.4

/** How far aside, m; left is positive. */
export const asideOf = ({ y0, y1 }: Slab, left: boolean): number => (y1 - y0 + APART) * (left ? -1 : 1)

/** Around both. */
export const both = (bounds: Slab, aside: number): Slab => ({
  ...bounds,
  y0: Math.min(bounds.y0, bounds.y0 + aside),
  y1: Math.max(bounds.y1, bounds.y1 + aside),
})
