import { atMost } from '../numbers.ts'
import { type Check, slope } from './check.ts'
import { rampSlope } from './ramp-too-steep.ts'

/**
 * 2010 ADA Standards 405.2: running slope of a ramp at most 1:12. Private docks are not covered; told as guidance.
 *
 * 1003.2.1: a gangway has no limit on its rise, and none on its slope where all of it is at least 80 ft long, or 30 ft in a facility of
 * fewer than 25 boat slips. A shore ramp is far shorter, so its slope is told, and with it that exception.
 */
const ADA_SLOPE = 1 / 12

export const rampSlopeAda: Check = {
  code: 'ramp-slope-ada',
  severity: 'note',
  basis: '2010 ADA Standards for Accessible Design, 405.2; gangways by 1003.2.1',
  find(kit) {
    const steep = rampSlope(kit)
    return steep === null || atMost(steep, ADA_SLOPE)
      ? []
      : [{ parts: [kit.layout.ramp!.id], values: { slope: slope(steep), most: slope(ADA_SLOPE) } }]
  },
}
