import { lying, sectionsUnder } from '../layout/berth.ts'
import { moved } from './boat-places.ts'
import { type Check, meters, text, worst } from './check.ts'

/** A boat would lie where a section of the dock is. */
export const boatOnSection: Check = {
  code: 'boat-on-section',
  severity: 'warn',
  basis: 'Geometry',
  find: (kit) =>
    lying(kit).flatMap((berth) => {
      const on = sectionsUnder(kit.layout.placed, berth)
      if (on.length === 0) return []
      const { section, by } = worst(on, (one) => one.by)
      return [
        {
          parts: [section.id],
          values: { boat: meters(berth.boat.length), section: text(section.id), by: meters(by) },
          remedy: moved(kit, berth.id),
        },
      ]
    }),
}
