/**
 * What a dock is held against: the design's own limits, and where it has none the shop's. What is measured here is what the words of a
 * limit mean; an authority may measure otherwise, so each finding says to ask it. m, the dock's frame of reference.
 */
import type { Catalog } from '../catalog/index.ts'
import type { Design } from '../design/index.ts'
import type { SideLine, SiteLimits } from '../design/schema.ts'
import { outlineAt, type Size, type Stance } from '../layout/footprint.ts'
import { distanceTo, lakewardOf, type Outline, outlineArea } from '../layout/outline.ts'
import type { Bed } from '../site/index.ts'

/** Field by field: the design's stands in place of the shop's. */
export const limitsOf = (
  { site }: Pick<Design, 'site'>,
  { limits }: Pick<Catalog, 'limits'>,
): SiteLimits => ({
  ...limits,
  ...site.limits,
})

/** Where lines across the lake stand that the dock is to stay behind, m; the nearer of the two. Null where there is none. */
export function reachLimit(design: Pick<Design, 'site'>, catalog: Pick<Catalog, 'limits'>): number | null {
  const { reach, share } = limitsOf(design, catalog)
  const { waterWidth } = design.site
  const all = [
    ...(reach === undefined ? [] : [reach]),
    ...(share === undefined || waterWidth === undefined ? [] : [share * waterWidth]),
  ]
  return all.length > 0 ? Math.min(...all) : null
}

/** As much of a placed section as is measured. */
export type Measured = Stance & { readonly frame: Size }

export const covered = (p: Measured): Outline => outlineAt(p, p.frame)

/** Deck over the lake, m2; a ramp as if it lay level. */
export const areaOver = (placed: readonly Measured[]): number =>
  placed.reduce((sum, p) => sum + outlineArea(lakewardOf(covered(p), 0)), 0)

/** Deepest water at any corner of any section, m. @param level of the water, m; @param back so much nearer the shore than they lie, m */
export const deepest = (
  placed: readonly Measured[],
  bed: Pick<Bed, 'bedAt'>,
  level: number,
  back = 0,
): number => Math.max(...placed.flatMap((p) => covered(p).map(([x, y]) => level - bed.bedAt(x - back, y))))

/**
 * How far a place is on the dock's own side of a lot line, m; less than 0 beyond it. Its own side is that where the dock's line meets the
 * water's edge; of a line through that very place neither side is known to be its own, and all off it is beyond. Of a line whose two places
 * are one: how far from it.
 */
function clearOf({ from, to }: Pick<SideLine, 'from' | 'to'>, x: number, y: number): number {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const long = Math.hypot(dx, dy)
  if (long < 1e-6) return Math.hypot(x - from[0], y - from[1])
  const left = (px: number, py: number): number => (dx * (py - from[1]) - dy * (px - from[0])) / long
  const own = left(0, 0)
  if (Math.abs(own) < 1e-6) return -Math.abs(left(x, y))
  return own < 0 ? -left(x, y) : left(x, y)
}

/** Of what is covered the corner that is nearest, m. */
export const outlineClearOf = (side: SideLine, outline: Outline): number => {
  const [x, y] = side.from
  // About a single place the nearest may lie on an edge.
  return Math.hypot(side.to[0] - x, side.to[1] - y) < 1e-6
    ? distanceTo(outline, x, y)
    : Math.min(...outline.map(([px, py]) => clearOf(side, px, py)))
}
