import type { Remedy } from '../dock.ts'
import { deriveKit, type Kit } from '../kit.ts'
import { remedy, replace } from './check.ts'

const byRule = new WeakMap<Kit, Kit>()

/** Back to the start by rule, where one was given and the rule's is better: `good` is asked of the dock that it makes. */
export function startByRule(kit: Kit, good: (byRule: Kit) => boolean): Remedy | null {
  if (kit.start.by !== 'given') return null
  let other = byRule.get(kit)
  if (!other) {
    other = deriveKit({ ...kit.design, dock: { ...kit.design.dock, start: null } }, kit.shop.catalog, kit.bed)
    byRule.set(kit, other)
  }
  return other.start.found && good(other) ? remedy('start-by-rule', [replace('/dock/start', null)]) : null
}
