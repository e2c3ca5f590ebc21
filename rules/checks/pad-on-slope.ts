import type { Kit } from '../kit.ts'
import { atMost } from '../numbers.ts'
import type { PlacedLeg } from '../parts/legs.ts'
import { type Check, COMMON, names, slope, worst } from './check.ts'

/** A foot pad on a bed so steep that it stands on its edge and slides. */
export const padOnSlope: Check = {
  code: 'pad-on-slope',
  severity: 'warn',
  basis: COMMON,
  find(kit) {
    const most = kit.shop.rules.padSlopeMax
    const steep = kit.legs.filter((leg) => !atMost(slopeUnder(leg, kit), most))
    if (steep.length === 0) return []
    const steepest = slopeUnder(
      worst(steep, (leg) => slopeUnder(leg, kit)),
      kit,
    )
    return [
      {
        parts: steep.map((leg) => leg.id),
        values: { legs: names(steep.map((leg) => leg.id)), slope: slope(steepest), most: slope(most) },
      },
    ]
  },
}

/** Slope of the bed across the pad as it lies, rise over run: half of the plate each way along its section, and square to it. */
function slopeUnder({ x, y, pad, section }: PlacedLeg, { bed, design }: Kit): number {
  const wall = design.site.shore?.kind === 'wall'
  // The face of a wall is no slope of the bed: on the lake's side of it nothing is asked beyond it.
  const part = (dx: number): number => (wall && x >= 0 && x + dx < 0 ? x / -dx : 1)
  const along = (dx: number, dy: number): number => {
    const [ahead, behind] = [part(dx), part(-dx)]
    const run = (ahead + behind) * Math.hypot(dx, dy)
    const rise = bed.firmAt(x + ahead * dx, y + ahead * dy) - bed.firmAt(x - behind * dx, y - behind * dy)
    return run > 0 ? rise / run : 0
  }
  const { c, s } = section
  const a = pad.plate.length / 2
  const b = pad.plate.width / 2
  return Math.hypot(along(a * c, a * s), along(-b * s, b * c))
}
