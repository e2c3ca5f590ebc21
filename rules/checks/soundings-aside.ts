import { atMost } from '../numbers.ts'
import { type Check, COMMON, meters, worst } from './check.ts'

/** Legs stand far to the side of a single line of soundings, where the bed is taken as it is on the line. */
export const soundingsAside: Check = {
  code: 'soundings-aside',
  severity: 'warn',
  basis: COMMON,
  find({ legs, bed, shop }) {
    const most = shop.rules.soundingsSide
    const off = (leg: { y: number }): number => Math.abs(leg.y - bed.lineY)
    const aside = bed.mode === 'line' ? legs.filter((leg) => !atMost(off(leg), most)) : []
    if (aside.length === 0) return []
    return [
      {
        parts: aside.map((leg) => leg.id),
        values: { off: meters(off(worst(aside, off))), most: meters(most) },
      },
    ]
  },
}
