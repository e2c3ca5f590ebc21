/** Where one more extra could go, for whoever points at a place. */
import type { Edge } from '../dock.ts'
import type { Kit } from '../kit.ts'
import { edgeLength, type PlacedSection } from '../layout/index.ts'
import { atLeast, SLACK } from '../numbers.ts'
import { freeEdges, type Interval } from './free-edges.ts'
import { blockedFor } from './post-room.ts'

export interface ExtraPlaces {
  /**
   * The free place of an edge nearest to `wanted` (m from the edge's start corner; its middle where nothing is said), from the same corner;
   * null where the edge has no room.
   */
  nearest(section: PlacedSection, edge: Edge, wanted?: number): number | null
}

/**
 * Beside joints and what has a place of its own already; what is placed by rule makes room. A post stays clear of feet and frames.
 * Null for an extra that the catalog does not have.
 */
export function extraPlaces({ design, shop, layout, joints, legs }: Kit, code: string): ExtraPlaces | null {
  const extra = shop.extras.get(code)
  if (!extra) return null
  const free = freeEdges(layout, joints)
  const byId = new Map(layout.placed.map((p) => [p.id, p]))
  for (const item of design.dock.placed ?? []) {
    const section = byId.get(item.section)
    const known = shop.extras.get(item.code)
    if (section && section.role !== 'ramp' && known) free.take(section, item.edge, item.along, known.space)
  }
  const blocked = extra.place === 'post' ? blockedFor(extra, layout, legs, shop) : (): Interval[] => []
  return {
    nearest: (section, edge, wanted = edgeLength(section, edge) / 2) =>
      section.role === 'ramp'
        ? null
        : nearestOf(free.stretches(section, edge), wanted, extra.space, blocked(section, edge)),
  }
}

/** The middle nearest to `wanted` of `space` that lies whole in a free stretch, in none of the blocked ones; null where there is none. */
function nearestOf(
  free: readonly Interval[],
  wanted: number,
  space: number,
  blocked: readonly Interval[],
): number | null {
  let best: number | null = null
  for (const [from, to] of free) {
    const [first, last] = [from + space / 2, to - space / 2]
    if (!atLeast(last, first)) continue
    for (const place of [wanted, ...blocked.flat()]) {
      const at = Math.min(Math.max(place, first), Math.max(first, last))
      const shut = blocked.some(([a, b]) => at > a + SLACK && at < b - SLACK)
      if (!shut && (best === null || Math.abs(at - wanted) < Math.abs(best - wanted))) best = at
    }
  }
  return best
}
