/**
 * Lengthwise braces: where the Design asks for them, between two legs one behind the other at a side of a section.
 *
 * A bay is a side of a section with a leg at each of its ends: its own, or where it is carried the nearest one in line of the section that
 * it hangs on; as far apart as one of the catalog's lengthwise braces is for. A leg is in one bay at most, as it is in one pair, so that it
 * has two clamps at the most. `last`: of the sections that lie one way the farthest with a brace at both sides, else at one, for what is braced
 * there holds all that hangs together; the run's way comes first. `all`: each bay, from the farthest in, whose legs have none yet. Judgment.
 */

import type { Shop } from '../catalog-index.ts'
import type { PlacedSection } from '../layout/index.ts'
import { atMost } from '../numbers.ts'
import { type BracedPair, type BraceSite, braceAll, candidates, clampsOf } from './braces.ts'
import type { PlacedLeg } from './legs.ts'
import { apart, type PlacedPair } from './pairs.ts'

/** @param across what braces these legs already, which does not move */
export function braceAlong(
  sections: readonly PlacedSection[],
  legs: readonly PlacedLeg[],
  across: readonly BracedPair[],
  site: BraceSite,
): BracedPair[] {
  const wish = site.design.dock.bracing?.along
  if (!wish) return []
  const clamps = new Map(
    across.flatMap(({ fit }) => (fit ? clampsOf(fit, site.shop) : [])).map((clamp) => [clamp.leg, clamp]),
  )
  const own = new Map<PlacedSection | null, PlacedLeg[]>()
  for (const leg of legs) own.set(leg.section, [...(own.get(leg.section) ?? []), leg])
  const inward = [...sections].reverse()
  const turns =
    wish === 'all'
      ? inward.map((section) => [section])
      : [...new Set(sections.map(wayOf))].map((way) => inward.filter((section) => wayOf(section) === way))
  const taken = new Set<PlacedLeg>()
  return turns.flatMap((turn) => {
    let best: BracedPair[] = []
    for (const section of turn) {
      const bay = bayOf(section, own, site.shop)
        .filter((pair) => !pair.legs.some((leg) => taken.has(leg)))
        .flatMap((pair) =>
          braceAll([{ ...pair, along: pair.legs.flatMap(({ id }) => clamps.get(id) ?? []) }], site),
        )
      if (bay.length > 0 && (best.length === 0 || held(bay).length > held(best).length)) best = bay
      if (held(best).length > 1) break
    }
    for (const { pair } of held(best)) for (const leg of pair.legs) taken.add(leg)
    return best
  })
}

/** Sections that lie one way look up or down it. */
const wayOf = ({ heading }: PlacedSection): number => Math.round(heading) % 180

/** Braced, or would be but for the Design: what one takes out by hand does not go elsewhere. */
const held = (bay: readonly BracedPair[]): BracedPair[] => bay.filter(({ fit, leftOut }) => fit || leftOut)

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
