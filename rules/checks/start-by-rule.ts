import type { Remedy } from '../dock.ts'
import { deriveKit, type Kit } from '../kit.ts'
import { remedy, replace } from './check.ts'

/** The same dock with its start by rule. Several checks ask. */
const byRule = ({ design, shop, bed }: Kit): Kit =>
  deriveKit({ ...design, dock: { ...design.dock, start: null } }, shop.catalog, bed)

/** Back to the start by rule, where one was given and the rule's is better: `good` is asked of the dock that it makes. */
export function startByRule(kit: Kit, good: (byRule: Kit) => boolean): Remedy | null {
  if (kit.start.by !== 'given') return null
  const other = kit.once(byRule)
  return other.start.found && good(other) ? remedy('start-by-rule', [replace('/dock/start', null)]) : null
}
