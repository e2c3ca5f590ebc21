/**
 * Lengthwise braces: where the Design asks for them, between two legs one behind the other at a side of a section.
 *
 * A bay is a side of a section with a leg at each of its ends: its own, or where it is carried the nearest one in line of the section that
 * it hangs on; as far apart as one of the catalog's lengthwise braces is for. A leg is in one bay at most, as it is in one pair, so that it
 * has two clamps at the most. `last`: of the sections that head one way the farthest with a brace at both sides, else at one, for what is braced
 * there holds all that hangs together. `all`: each bay, from the farthest in, whose legs have none yet. Judgment.
 */

import type { Shop } from '../catalog-index.ts'
import type { PlacedSection } from '../layout/index.ts'
import { atMost } from '../numbers.ts'
import { type BracedPair, type BraceFit, type BraceSite, braceAll, candidates } from './braces.ts'
import type { PlacedLeg } from './legs.ts'
import { apart, type PlacedPair } from './pairs.ts'

/** @param across what braces these legs already, which does not move */
export function braceAlong(
  sections: readonly PlacedSection[],
  legs: readonly PlacedLeg[],
  across: readonly BracedPair[],
  site: BraceSite,
): BracedPair[] {
  const wish = site.design.dock.bracing?.along ?? 'none'
  if (wish === 'none') return []
  const braced = new Map<PlacedLeg, BraceFit>()
  for (const { pair, fit } of across) if (fit) for (const leg of pair.legs) braced.set(leg, fit)
  const own = new Map<PlacedSection | null, PlacedLeg[]>()
  for (const leg of legs) own.set(leg.section, [...(own.get(leg.section) ?? []), leg])
  const taken = new Set<PlacedLeg>()
  const chosen = new Map<number, BracedPair[]>()
  for (const section of [...sections].reverse()) {
    const bay = bayOf(section, own, site.shop).flatMap((pair) => {
      const along = pair.legs.flatMap((leg) => braced.get(leg) ?? [])
      // Two legs that a brace of theirs joins already, and legs that have one along, are left.
      if ((along.length > 1 && along[0] === along[1]) || pair.legs.some((leg) => taken.has(leg))) return []
      return braceAll([{ ...pair, along }], site)
    })
    const held = bay.filter(isHeld)
    const key = wish === 'all' ? -section.index : Math.round(section.heading) % 180
    if (bay.length > 0 && held.length > (chosen.get(key)?.filter(isHeld).length ?? -1)) chosen.set(key, bay)
    if (wish === 'all') for (const { pair } of held) for (const leg of pair.legs) taken.add(leg)
  }
  return [...chosen.values()].flat()
}

/** Braced, or would be but for the Design: what one takes out by hand does not go elsewhere. */
const isHeld = ({ fit, leftOut }: BracedPair): boolean => leftOut || fit !== null

/** Legs one behind the other at the left and at the right of a section, its start first, as far apart as a brace is for. */
function bayOf(
  section: PlacedSection,
  legs: ReadonlyMap<PlacedSection | null, readonly PlacedLeg[]>,
  shop: Shop,
): PlacedPair[] {
  const { c, s, host } = section
  return (['left', 'right'] as const).flatMap((side) => {
    const at = (end: string) => legs.get(section)?.find(({ corner }) => corner === `${end}.${side}`)
    const [start, end] = [at('start'), at('end')]
    const leg = start ?? end
    if (!leg) return []
    const [carrying] = (legs.get(host) ?? [])
      .filter(({ x, y }) => atMost(Math.abs(c * (y - leg.y) - s * (x - leg.x)), shop.rules.pairAlign))
      .sort((p, q) => apart(leg, p) - apart(leg, q))
    const [a, b] = [start ?? carrying, end ?? carrying]
    if (!a || !b) return []
    const pair: PlacedPair = {
      id: `${section.id}.${side}`,
      legs: [a, b],
      spacing: apart(a, b),
      across: false,
      along: [],
    }
    return candidates(pair, null, shop).length > 0 ? [pair] : []
  })
}
