/** Where a boat lies: at the section farthest out, on its side. */
import type { Side } from '../dock.ts'
import type { PlacedSection } from './place.ts'

/** As much of a placed section as tells where a boat lies. */
export type Moored = Pick<PlacedSection, 'role' | 'x' | 'y' | 'c' | 's'> & {
  readonly frame: Pick<PlacedSection['frame'], 'length' | 'width'>
}

/** Ends this near to each other lie equally far out, m. */
export const LEVEL = 1e-3

/** Of several equally far out the one that is most to its side. Null where nothing stands. */
export function berthSection<S extends Moored>(placed: readonly S[], side: Side): S | null {
  const sign = side === 'left' ? 1 : -1
  let berth: S | null = null
  for (const p of placed) {
    if (p.role === 'ramp') continue
    const out = berth ? lakewardEdge(p) - lakewardEdge(berth) : 1
    if (out > LEVEL || (out > -LEVEL && berth && sign * (middle(p) - middle(berth)) > LEVEL)) berth = p
  }
  return berth
}

/** x of a section's lakeward edge, m: one that lies across reaches half its width beyond its center line. */
export const lakewardEdge = ({ x, c, s, frame }: Moored): number =>
  x + Math.max(0, c) * frame.length + (Math.abs(s) * frame.width) / 2
const middle = ({ y, s, frame }: Moored): number => y + (s * frame.length) / 2

/** The side that a boat lies along: always along x, its middle at the middle of its section's side, m. */
export interface Berth {
  readonly from: number
  readonly to: number
  readonly y: number
}

/** Null where nothing stands. */
export function berthOf(
  placed: readonly Moored[],
  boat: { readonly length: number; readonly side: Side },
): Berth | null {
  const at = berthSection(placed, boat.side)
  if (!at) return null
  const { x, c, s, frame } = at
  const center = x + (c * frame.length) / 2
  const half = (Math.abs(c) * frame.width + Math.abs(s) * frame.length) / 2
  return {
    from: center - boat.length / 2,
    to: center + boat.length / 2,
    y: middle(at) + (boat.side === 'left' ? half : -half),
  }
}
