/** Shapes to begin with, as pure functions of the Design. */
import type { Shop } from '../../rules/catalog-index.ts'
import type { Design } from '../../rules/index.ts'
import { asPlan, withPlan } from '../../rules/plan/as-plan.ts'
import type { PlanItem } from '../../rules/plan/schema.ts'
import { type TemplateName, templatePlan } from '../../rules/plan/templates.ts'
import * as change from '../parameters/design-edits.ts'

export const HEADS = ['straight', 'left', 'right', 'tee', 'wide'] as const
export type Head = (typeof HEADS)[number]
export const WRITTEN = ['U', 'F', 'H', 'double-slip'] as const satisfies readonly TemplateName[]
export type Written = (typeof WRITTEN)[number]

/** A head, a template, a shop's own by its place in the catalog, or none of them. */
export type Shape = Head | Written | `shop-${number}` | 'own'

export const writtenOf = (shape: Shape): Written | undefined => WRITTEN.find((one) => one === shape)

const hasRamp = (plan: readonly PlanItem[]): boolean => plan.some(({ role }) => role === 'ramp')

/** Sections with legs from the shore straight out to the lake: of a plan those that follow each other end to start. */
export function reachOf({ dock }: Design): number {
  const { plan } = dock
  if (!plan) return (dock.sections ?? 1) - (dock.ramp ? 1 : 0)
  const next = new Map(
    plan.flatMap((item) =>
      item.on !== null && item.edge === 'end' && item.with === 'start' ? [[item.on, item]] : [],
    ),
  )
  const root = plan.find(({ on }) => on === null)
  const seen = new Set<string>()
  for (let at = root; at && !seen.has(at.id); at = next.get(at.id)) seen.add(at.id)
  return Math.max(1, seen.size - (hasRamp(plan) ? 1 : 0))
}

const written = (design: Design, name: Written, shop: Shop, reach = reachOf(design)): PlanItem[] | null => {
  const frame = shop.frames.get(design.dock.frame)
  const { plan } = design.dock
  const ramp = plan ? hasRamp(plan) : design.dock.ramp === true
  return frame ? templatePlan(name, { frame, reach, ramp }) : null
}

const same = (a: readonly PlanItem[] | null, b: readonly PlanItem[]): boolean =>
  a !== null && a.length === b.length && JSON.stringify(a) === JSON.stringify(b)

/** A template so many sections far out. */
export function withReach(design: Design, name: Written, reach: number, shop: Shop): Design {
  const plan = written(design, name, shop, reach)
  return plan ? withPlan(design, plan) : design
}

/** What the dock's shape is called. */
export function shapeOf(design: Design, shop: Shop): Shape {
  const { plan, head, frame } = design.dock
  if (!plan) return head && head.sections > 0 ? head.shape : 'straight'
  const name = WRITTEN.find((one) => same(written(design, one, shop), plan))
  if (name) return name
  const own = (shop.catalog.templates ?? []).findIndex((one) => one.frame === frame && same(one.plan, plan))
  return own >= 0 ? `shop-${own}` : 'own'
}

/** The same dock in another shape: as far out, with a ramp where it has one. A shop's own shape is as the shop has it. */
export function withShape(design: Design, shape: Shape, shop: Shop): Design {
  if (shape === 'own') {
    const plan = asPlan(design, shop)
    return plan ? withPlan(design, plan) : design
  }
  if (shape.startsWith('shop-')) {
    const own = shop.catalog.templates?.[Number(shape.slice('shop-'.length))]
    return own ? withPlan(design, own.plan, own.frame) : design
  }
  const name = writtenOf(shape)
  if (name) return withReach(design, name, reachOf(design), shop)
  const { plan, ...dock } = design.dock
  if (!plan) return change.setHead(design, shape as Head)
  const ramp = hasRamp(plan)
  const run = { ...design, dock: { ...dock, ramp, sections: reachOf(design) + (ramp ? 1 : 0) } }
  return change.setHead(run, shape as Head)
}
