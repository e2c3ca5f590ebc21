/** Between a Design's few numbers and a plan of its own: the same dock, section by section, under the same ids. */
import type { Shop } from '../catalog-index.ts'
import type { Design } from '../design/index.ts'
import { planOf } from '../layout/plan.ts'
import { quantize } from '../numbers.ts'
import type { PlanItem } from './schema.ts'

/** The plan of a Design, written out where it has none. Null where its frame is not in the catalog: then nobody knows how long it is. */
export function asPlan(design: Design, shop: Shop): readonly PlanItem[] | null {
  if (design.dock.plan) return design.dock.plan
  if (!shop.frames.has(design.dock.frame)) return null
  return planOf(design, shop).map(({ id, on, ramp, edge, with: mate, along }) =>
    on === null
      ? { id, on, ...(ramp ? { role: 'ramp' as const } : {}), along: 0 }
      : { id, on, edge, with: mate, along: quantize(along) },
  )
}

/** The same site and settings with another plan, in the place of `sections`, `ramp` and `head`. */
export function withPlan(design: Design, plan: readonly PlanItem[], frame = design.dock.frame): Design {
  const { sections: _, ramp: _r, head: _h, ...dock } = design.dock
  return { ...design, dock: { ...dock, frame, plan: [...plan] } }
}
