/** Clearances of a dock to what lies on the bed, exactly: on the same shapes as those to the ground. m. */
import type { Catalog } from '../catalog/index.ts'
import type { Obstacle, Site } from '../design/index.ts'
import type { Dock, Vec3 } from '../dock.ts'
import type { Bed } from '../site/index.ts'
import { obstacleSolid } from '../site/obstacles.ts'
import { type MeasuredPart, nearest, type StandingPart, standingParts } from './clearance.ts'
import { boundsNear, shapeBounds } from './convex.ts'
import { overlapOf } from './overlap.ts'

export interface ObstacleClearance {
  readonly part: MeasuredPart
  readonly obstacle: Obstacle
  /** Least distance; 0 where they touch or overlap. */
  readonly gap: number
  /** The nearest point of each; a point in both where they overlap. */
  readonly from: Vec3
  readonly to: Vec3
  readonly clash: boolean
  /** The least shift that takes them apart, m. */
  readonly depth: () => number
}

/** All that is within `within` of an obstacle, in the order of the obstacles and then of the placements. */
export function obstacleClearances(
  dock: Dock,
  catalog: Catalog,
  { obstacles = [] }: Pick<Site, 'obstacles'>,
  bed: Bed,
  within: number,
): ObstacleClearance[] {
  if (obstacles.length === 0) return []
  const parts = standingParts(dock, catalog)
  return obstacles.flatMap((obstacle) => {
    const solid = obstacleSolid(obstacle, bed)
    const bounds = shapeBounds(solid)
    const measure = (part: StandingPart): ObstacleClearance[] => {
      if (!boundsNear(part.bounds, bounds, within)) return []
      const best = nearest(within)
      for (const own of part.shapes) if (boundsNear(own.bounds, bounds, best.gap)) best.try(own.shape, solid)
      const found = best.of(part, null, () =>
        part.shapes.reduce((most, { shape }) => Math.max(most, overlapOf(shape, solid)), 0),
      )
      if (!found) return []
      const { a, gap, from, to, clash, depth } = found
      return [{ part: a, obstacle, gap, from, to, clash, depth }]
    }
    return parts.flatMap(measure)
  })
}
