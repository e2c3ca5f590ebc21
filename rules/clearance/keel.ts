/** Water under a boat where it lies. */
import type { Design } from '../design/index.ts'
import type { Dock } from '../dock.ts'
import { type Berth, berthsOf, mooredOf, waterOutline } from '../layout/berth.ts'
import { highestUnder } from '../layout/outline.ts'
import type { Bed } from '../site/index.ts'

/**
 * Least water between bed and boat anywhere that it covers, its whole length and beam taken to reach as deep as its deepest place. Less
 * than 0 where it would touch. m
 *
 * @param level of the water, m
 * @param out so much farther out than it lies, m
 */
export function underKeel(berth: Berth, bed: Bed, level: number, out = 0): number {
  const water = waterOutline(berth).map(([x, y]) => [x + out, y] as const)
  return level - highestUnder(bed, water) - berth.boat.draught
}

/** The lake at its lowest, which a boat must float at, m. */
export const lowLevel = ({ low }: { readonly low: number }): number => Math.min(0, low)

/** Of all boats at a dock the least; null where none lies there. */
export function leastUnderKeel(
  boats: Pick<Design['dock'], 'boat' | 'boats'>,
  sections: Dock['sections'],
  bed: Bed,
  level: number,
): number | null {
  const berths = berthsOf(boats, mooredOf(sections))
  return berths.length === 0 ? null : Math.min(...berths.map((berth) => underKeel(berth, bed, level)))
}
