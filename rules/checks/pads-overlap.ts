import { MOST_PAIRS } from '../layout/index.ts'
import { overlapOf } from '../layout/outline.ts'
import { plateOf } from '../parts/leg-plate.ts'
import { type Check, type Found, meters, text } from './check.ts'

/** Two legs so near each other that their foot pads would lie on one another. */
export const padsOverlap: Check = {
  code: 'pads-overlap',
  severity: 'warn',
  basis: 'Geometry',
  find({ legs }) {
    const found: Found[] = []
    const sorted = [...legs].sort((a, b) => a.x - b.x || a.y - b.y)
    const { length, width } = legs[0]?.pad.plate ?? { length: 1, width: 1 }
    // Of plates that lie askew the corners reach farther.
    const reach = Math.hypot(length, width)
    // By cells as wide as a pad: those that may lie on one another are in one, or in the next.
    const cells = new Map<number, number[]>()
    const column = (v: number): number => Math.floor(v / reach)
    const cell = (cx: number, cy: number): number => cx * 2 ** 26 + cy
    sorted.forEach(({ x, y }, i) => {
      const at = cell(column(x), column(y))
      const there = cells.get(at)
      if (there) there.push(i)
      else cells.set(at, [i])
    })
    for (let i = 0; i < sorted.length; i++) {
      const a = sorted[i]!
      const near: number[] = []
      for (let dx = 0; dx <= 1; dx++)
        for (let dy = -1; dy <= 1; dy++)
          for (const k of cells.get(cell(column(a.x) + dx, column(a.y) + dy)) ?? []) if (k > i) near.push(k)
      for (const k of near.sort((p, q) => p - q)) {
        const b = sorted[k]!
        if (b.x - a.x >= reach) break
        const by = overlapOf(plateOf(a), plateOf(b))
        if (by > 1e-6)
          found.push({ parts: [a.id, b.id], values: { a: text(a.id), b: text(b.id), by: meters(by) } })
        if (found.length === MOST_PAIRS) return found
      }
    }
    return found
  },
}
