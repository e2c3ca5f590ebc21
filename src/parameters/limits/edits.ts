/** What the fields of limits change, as pure functions of the Design. */

import type { SideLine, SiteLimits } from '../../../rules/design/schema.ts'
import type { Design } from '../../../rules/index.ts'

export type Held = 'reach' | 'width' | 'area' | 'depth' | 'share'

/** Absent instead of empty: a dock that is held against nothing says nothing of it. */
function withLimits(design: Design, limits: SiteLimits): Design {
  const { limits: _, ...site } = design.site
  return { ...design, site: Object.keys(limits).length > 0 ? { ...site, limits } : site }
}

/** @param to m, m2 or a part; null: no limit of one's own */
export function setLimit(design: Design, which: Held, to: number | null): Design {
  const { [which]: _, ...rest } = design.site.limits ?? {}
  return withLimits(design, to === null ? rest : { ...rest, [which]: to })
}

/** @param to m; null: not known */
export function setWaterWidth(design: Design, to: number | null): Design {
  const { waterWidth: _, ...site } = design.site
  return { ...design, site: to === null ? site : { ...site, waterWidth: to } }
}

export function setSides(design: Design, sides: readonly SideLine[]): Design {
  const { sides: _, ...rest } = design.site.limits ?? {}
  return withLimits(design, sides.length > 0 ? { ...rest, sides: [...sides] } : rest)
}
