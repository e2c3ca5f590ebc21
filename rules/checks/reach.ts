import type { Kit } from '../kit.ts'
import { footprint } from '../layout/index.ts'

/** Distances that a dock covers, from the foot of its ramp to its lakeward end, m; null for an empty dock. */
export function reachOf({ layout, ramp }: Kit): { x0: number; x1: number } | null {
  if (layout.placed.length === 0) return null
  let x0 = Number.POSITIVE_INFINITY
  let x1 = Number.NEGATIVE_INFINITY
  for (const p of layout.placed) {
    if (p.role === 'ramp') continue
    const r = footprint(p)
    x0 = Math.min(x0, r.x0)
    x1 = Math.max(x1, r.x1)
  }
  if (ramp) x0 = Math.min(x0, ramp.contact?.x ?? ramp.pose.x)
  return { x0, x1 }
}
