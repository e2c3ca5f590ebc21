import { MOST_PAIRS } from '../layout/index.ts'
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
    const reach = Math.max(length, width)
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
      const [ax, ay] = half(a)
      for (const k of near.sort((p, q) => p - q)) {
        const b = sorted[k]!
        const [bx, by] = half(b)
        if (b.x - a.x >= reach) break
        const apart = Math.max(b.x - a.x - ax - bx, Math.abs(b.y - a.y) - ay - by)
        if (apart < -1e-6)
          found.push({ parts: [a.id, b.id], values: { a: text(a.id), b: text(b.id), by: meters(-apart) } })
        if (found.length === MOST_PAIRS) return found
      }
    }
    return found
  },
}

/** Half of a pad's plate along x and y: its length lies along its section. */
const half = ({
  pad,
  section,
}: {
  pad: { plate: { length: number; width: number } }
  section: { heading: number }
}) =>
  section.heading % 180 === 0
    ? ([pad.plate.length / 2, pad.plate.width / 2] as const)
    : ([pad.plate.width / 2, pad.plate.length / 2] as const)
