/** Placements by part: what is drawn as instances of one solid. */
import type { Dock, Placement } from '../rules/index.ts'
import { partKeyOf } from './solids/index.ts'

/** Keyed `${kind}\n${code}`, in the dock's order. Each placement is in exactly one list. */
export function groupPlacements(dock: Dock): Map<string, readonly Placement[]> {
  const groups = new Map<string, Placement[]>()
  for (const placement of dock.placements) {
    const key = partKeyOf(placement.kind, placement.code)
    const group = groups.get(key)
    if (group) group.push(placement)
    else groups.set(key, [placement])
  }
  return groups
}
