import { LIMITS } from '../design/index.ts'
import { berthSection, type PlacedSection, toPlan } from '../layout/index.ts'
import { type Check, type Judged, meters, number, remedy, replace } from './check.ts'

/** So many sections more are tried. */
const MOST_MORE = 12

/** At the low level the boat reaches to the bottom at its place: along the section farthest out, on its side. */
export const boatAground: Check = {
  code: 'boat-aground',
  severity: 'warn',
  basis: "Depth at the boat's place at the low level, against how far it reaches down",
  find(kit) {
    const { boat } = kit.design.dock
    const far = boat ? berthSection(kit.layout.placed, boat.side) : null
    if (!boat || !far) return []
    const depth = depthBeside(kit, far, boat.side, 0)
    if (depth >= boat.draught - 1e-6) return []
    return [
      {
        parts: [far.id],
        values: { depth: meters(Math.max(0, depth)), draught: meters(boat.draught) },
        remedy: longer(kit, far, (out) => depthBeside(kit, far, boat.side, out) >= boat.draught),
      },
    ]
  },
}

/** Water at the low level at the shallower of a section's two corners on a side; `out`: so far beyond its place, m. */
function depthBeside({ design, bed }: Judged, p: PlacedSection, side: 'left' | 'right', out: number): number {
  const sign = side === 'left' ? 1 : -1
  const half = p.frame.width / 2
  const corners = [0, p.frame.length].flatMap((x) => [toPlan(p, x, half), toPlan(p, x, -half)])
  const middle = corners.reduce((sum, [, y]) => sum + y, 0) / 4
  const low = Math.min(0, design.site.levels.low)
  const beds = corners.filter(([, y]) => sign * (y - middle) > 0).map(([x, y]) => bed.bedAt(x + out, y))
  return low - Math.max(...beds)
}

/** A straight dock can be made longer; of other shapes the boat's place is not its end alone. */
function longer({ design, shop }: Judged, far: PlacedSection, deep: (out: number) => boolean) {
  const { plan, sections, head } = design.dock
  if (plan || sections === undefined || (head && head.shape !== 'straight')) return null
  const pitch = far.frame.length + shop.rules.jointGap
  for (let n = 1; n <= MOST_MORE && sections + n <= LIMITS.sections; n++)
    if (deep(n * pitch))
      return remedy('more-sections', [replace('/dock/sections', sections + n)], { sections: number(n) })
  return null
}
