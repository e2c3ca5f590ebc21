/** Sections in the order of work: standing section, ramp, then outward. */
import type { Dock, Section } from '../dock.ts'

export function sectionsInOrder(dock: Dock): Section[] {
  const byId = new Map(dock.sections.map((section) => [section.id, section]))
  return dock.workOrder.flatMap((id) => byId.get(id) ?? [])
}

/** Items by a key of theirs, in their order. */
export function groupBy<T>(items: readonly T[], keyOf: (item: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>()
  for (const item of items) {
    const key = keyOf(item)
    const known = groups.get(key)
    if (known) known.push(item)
    else groups.set(key, [item])
  }
  return groups
}
