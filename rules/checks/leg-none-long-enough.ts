import type { Remedy } from '../dock.ts'
import type { Kit } from '../kit.ts'
import { requiredOf } from '../parts/legs.ts'
import { type Check, COMMON, meters, names, number, remedy, replace, worst } from './check.ts'

/** No stock leg is long enough. */
export const legNoneLongEnough: Check = {
  code: 'leg-none-long-enough',
  severity: 'stop',
  basis: COMMON,
  find(kit) {
    const short = kit.legs.filter((leg) => leg.stock === null)
    if (short.length === 0) return []
    const deepest = worst(short, (leg) => requiredOf(leg, kit))
    return [
      {
        parts: short.map((leg) => leg.id),
        values: {
          legs: names(short.map((leg) => leg.id)),
          required: meters(requiredOf(deepest, kit)),
          longest: meters(kit.shop.legs.at(-1)!.length),
        },
        remedy: fewerSections(kit, Math.min(...short.map((leg) => leg.section.index))),
      },
    ]
  },
}

/** A straight run that ends before the first section whose legs are too short. */
function fewerSections({ design, layout }: Kit, firstShort: number): Remedy | null {
  const { plan, head, sections, ramp } = design.dock
  if (plan || sections === undefined || (head && head.sections > 0)) return null
  const least = ramp ? 2 : 1
  return firstShort >= least && firstShort < layout.placed.length
    ? remedy('fewer-sections', [replace('/dock/sections', firstShort)], { sections: number(firstShort) })
    : null
}
