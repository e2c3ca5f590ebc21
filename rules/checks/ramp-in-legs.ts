import type { Kit } from '../kit.ts'
import { legsInRamp } from '../parts/ramp-legs.ts'
import { type Check, names, text } from './check.ts'
import { startByRule } from './start-by-rule.ts'

const inTheWay = ({ ramp, legs, design, shop }: Kit): string[] =>
  ramp?.contact ? legsInRamp(ramp.pose, legs, design.dock.deckHeight, shop).map((leg) => leg.id) : []

/** The ramp comes down so steeply that its end at the hinge runs into legs of the standing section. */
export const rampInLegs: Check = {
  code: 'ramp-in-legs',
  severity: 'stop',
  basis: 'Geometry',
  find(kit) {
    const ids = inTheWay(kit)
    if (ids.length === 0) return []
    const { id } = kit.layout.ramp!
    return [
      {
        parts: [id, ...ids],
        values: { ramp: text(id), legs: names(ids) },
        remedy: startByRule(kit, (other) => other.ramp?.contact != null && inTheWay(other).length === 0),
      },
    ]
  },
}
