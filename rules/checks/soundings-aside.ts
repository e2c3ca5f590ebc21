import { atMost } from '../numbers.ts'
import { type Check, COMMON, meters, worst } from './check.ts'

/** Legs stand far to the side of all soundings, where the bed is taken as it is at the nearest of them. */
export const soundingsAside: Check = {
  code: 'soundings-aside',
  severity: 'warn',
  basis: COMMON,
  find({ legs, bed, design, shop }) {
    const most = shop.rules.soundingsSide
    let [right, left] = [bed.lineY, bed.lineY]
    if (bed.mode === 'area')
      for (const { offset } of design.site.soundings) {
        right = Math.min(right, offset)
        left = Math.max(left, offset)
      }
    const off = (leg: { y: number }): number => Math.max(right - leg.y, leg.y - left)
    const aside = legs.filter((leg) => !atMost(off(leg), most))
    if (aside.length === 0) return []
    return [
      {
        parts: aside.map((leg) => leg.id),
        values: { off: meters(off(worst(aside, off))), most: meters(most) },
      },
    ]
  },
}
