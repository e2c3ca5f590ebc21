/** What a foot pad's plate covers in plan: its length lies along its section. */
import type { Outline } from '../layout/outline.ts'
import type { PlacedLeg } from './legs.ts'

export function plateOf({
  pad,
  section: { c, s },
  x,
  y,
}: Pick<PlacedLeg, 'pad' | 'section' | 'x' | 'y'>): Outline {
  const [a, b] = [pad.plate.length / 2, pad.plate.width / 2]
  return [
    [-a, -b],
    [-a, b],
    [a, b],
    [a, -b],
  ].map(([along, across]) => [x + c * along! - s * across!, y + s * along! + c * across!] as const)
}
