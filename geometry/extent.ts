/** How much of the lake is shown round a dock. */
import type { Design, Dock } from '../rules/index.ts'
import { footprintOfAll } from '../rules/layout/footprint.ts'
import type { Extent } from './types.ts'

/** Ground and water shown beyond the dock on each side: a part of its length within these bounds, m. */
const LEAST = 3
const MOST = 15
const SHARE = 0.35

/**
 * The rectangle that holds the dock, the water's edge and those soundings that are near, with a margin; never empty. Soundings farther off
 * than the margin do not stretch it: one of them may be kilometers away.
 */
export function extentOf(dock: Dock, design: Design): Extent {
  let [x0, x1, y0, y1] = [0, 0, 0, 0]
  const hold = (x: number, y: number): void => {
    x0 = Math.min(x0, x)
    x1 = Math.max(x1, x)
    y0 = Math.min(y0, y)
    y1 = Math.max(y1, y)
  }
  const covered = footprintOfAll(dock.sections)
  if (covered) {
    hold(covered.x0, covered.y0)
    hold(covered.x1, covered.y1)
  }
  if (dock.ramp) hold(dock.ramp.shoreX, 0)
  const margin = Math.min(MOST, Math.max(LEAST, SHARE * Math.max(x1 - x0, y1 - y0)))
  const near = { x0: x0 - margin, x1: x1 + margin, y0: y0 - margin, y1: y1 + margin }
  for (const { distance, offset } of design.site.soundings)
    if (distance > near.x0 && distance < near.x1 && offset > near.y0 && offset < near.y1)
      hold(distance, offset)
  return { x0: x0 - margin, x1: x1 + margin, y0: y0 - margin, y1: y1 + margin }
}
