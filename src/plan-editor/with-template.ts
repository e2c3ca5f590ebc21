import type { Catalog } from '../../rules/index.ts'
import type { PlanItem } from '../../rules/plan/schema.ts'

/** A catalog with one more shape to begin with, under a code that no other has; one of the same name gives way to it. */
export function withTemplate(
  catalog: Catalog,
  name: string,
  frame: string,
  plan: readonly PlanItem[],
): Catalog {
  const others = (catalog.templates ?? []).filter((one) => one.name !== name)
  const taken = new Set(others.map(({ code }) => code))
  let n = others.length + 1
  while (taken.has(`shape-${n}`)) n++
  return { ...catalog, templates: [...others, { code: `shape-${n}`, name, frame, plan: [...plan] }] }
}
