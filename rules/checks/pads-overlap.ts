import { type Check, meters, text } from './check.ts'

/** Two legs so near each other that their foot pads would lie on one another. */
export const padsOverlap: Check = {
  code: 'pads-overlap',
  severity: 'warn',
  basis: 'Geometry',
  find({ legs }) {
    const found = []
    const sorted = [...legs].sort((a, b) => a.x - b.x || a.y - b.y)
    for (let i = 0; i < sorted.length; i++)
      for (let k = i + 1; k < sorted.length; k++) {
        const [a, b] = [sorted[i]!, sorted[k]!]
        const [ax, ay] = half(a)
        const [bx, by] = half(b)
        if (b.x - a.x >= Math.max(a.pad.plate.length, a.pad.plate.width)) break
        const apart = Math.max(b.x - a.x - ax - bx, Math.abs(b.y - a.y) - ay - by)
        if (apart < -1e-6)
          found.push({ parts: [a.id, b.id], values: { a: text(a.id), b: text(b.id), by: meters(-apart) } })
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
