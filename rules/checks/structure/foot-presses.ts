import { allowableBearing, BARE_BED, presumptiveBearing } from '../../structure/strength/index.ts'
import { pascals, text, worst } from '../check.ts'
import { largerPad, OURS, type StructureCheck } from './judged.ts'

/** A foot presses harder than a bare bed is trusted with, and less than the bottom is presumed to bear. */
export const footPresses: StructureCheck = {
  code: 'foot-presses',
  severity: 'note',
  basis: `International Building Code 2018 table 1806.2, times ${BARE_BED} on a bare bed. ${OURS}`,
  find({ kit, structure }) {
    const over = structure.feet.filter(({ leg: id, pressure }) => {
      const leg = kit.legs.find((l) => l.id === id)!
      const bottom = kit.bed.bottomAt(leg.x, leg.y)
      const trusted = allowableBearing(bottom)
      return trusted !== null && pressure > trusted && pressure <= presumptiveBearing(bottom)!
    })
    if (over.length === 0) return []
    const most = worst(over, (foot) => foot.use ?? 0)
    return [
      {
        parts: over.map((foot) => foot.leg),
        values: {
          leg: text(most.leg),
          pressure: pascals(most.pressure),
          bears: pascals(most.pressure / most.use!),
        },
        remedy: largerPad(kit),
      },
    ]
  },
}
