/** 'Out to forty feet' in sections. */
import type { Catalog } from '../catalog/index.ts'
import { shopOf } from '../catalog-index.ts'
import type { Design } from '../design/index.ts'
import { SLACK } from '../numbers.ts'
import { type Bed, makeBed } from '../site/index.ts'
import { shoreEndOf } from './place.ts'
import { planOf } from './plan.ts'
import { findStart } from './start.ts'

export interface SectionsForReach {
  /** Of the main run, ramp included. */
  readonly sections: number
  /** From the water's edge to the lake end of the last of them, m. */
  readonly reach: number
}

/**
 * The fewest sections of the main run whose lake end is at least `reach` (m) from the water's edge. Where the dock begins is asked of the
 * site, as `derive` does, and is the same however long it is; what lies to the side at its end reaches no farther.
 * Null for a plan of its own and for a frame that the catalog does not have. Not held to the most sections of a Design.
 */
export function sectionsForReach(
  design: Design,
  catalog: Catalog,
  reach: number,
  bed: Bed = makeBed(design.site),
): SectionsForReach | null {
  const { plan, ramp = false } = design.dock
  if (plan) return null
  const shop = shopOf(catalog)
  const head = { shape: 'straight', sections: 0 } as const
  // The shore end alone tells where it begins.
  const shortest = { ...design, dock: { ...design.dock, sections: ramp ? 2 : 1, head } }
  const shoreEnd = shoreEndOf(planOf(shortest, shop), shop)
  if (!shoreEnd) return null
  const { x } = findStart(design, shop, bed, shoreEnd)
  const { jointGap: gap } = shop.rules
  const pitch = shoreEnd.standing.length + gap
  const legged = Math.max(1, Math.ceil((reach - x + gap - SLACK) / pitch))
  return { sections: legged + (ramp ? 1 : 0), reach: x + legged * pitch - gap }
}
