/** Where a boat lies: at the section farthest out, on its side. */
import type { Side } from '../dock.ts'
import type { PlacedSection } from './place.ts'

/** Ends this near to each other lie equally far out, m. */
const LEVEL = 1e-3

/** Of several equally far out the one that is most to its side. Null where nothing stands. */
export function berthSection(placed: readonly PlacedSection[], side: Side): PlacedSection | null {
  const sign = side === 'left' ? 1 : -1
  let berth: PlacedSection | null = null
  for (const p of placed) {
    if (p.role === 'ramp') continue
    const out = berth ? reach(p) - reach(berth) : 1
    if (out > LEVEL || (out > -LEVEL && berth && sign * (middle(p) - middle(berth)) > LEVEL)) berth = p
  }
  return berth
}

/** Of its lakeward edge: one that lies across reaches half its width beyond its center line. */
const reach = ({ x, c, s, frame }: PlacedSection): number =>
  x + Math.max(0, c) * frame.length + (Math.abs(s) * frame.width) / 2
const middle = ({ y, s, frame }: PlacedSection): number => y + (s * frame.length) / 2
