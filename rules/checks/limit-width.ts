import { footprint } from '../layout/index.ts'
import { limitsOf } from '../limits/limits.ts'
import { type Check, meters } from './check.ts'
import { straight } from './limit-way-back.ts'

/** It is wider from side to side than was said to be allowed. */
export const limitWidth: Check = {
  code: 'limit-width',
  severity: 'warn',
  basis: 'A limit of the design or the shop, not of law',
  find(kit) {
    const most = limitsOf(kit.design, kit.shop.catalog).width
    const boxes = kit.layout.placed.map(footprint)
    if (most === undefined || boxes.length === 0) return []
    const [y0, y1] = [Math.min(...boxes.map((b) => b.y0)), Math.max(...boxes.map((b) => b.y1))]
    const width = y1 - y0
    if (width <= most + 1e-6) return []
    return [
      {
        parts: kit.layout.placed
          .filter((_, i) => boxes[i]!.y1 > y1 - 1e-6 || boxes[i]!.y0 < y0 + 1e-6)
          .map(({ id }) => id),
        values: { width: meters(width), most: meters(most) },
        remedy: straight(kit),
      },
    ]
  },
}
