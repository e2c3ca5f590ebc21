import { atMost } from '../numbers.ts'
import { type Check, slope } from './check.ts'
import { rampSlope } from './ramp-too-steep.ts'

/** 2010 ADA Standards 405.2: running slope of a ramp at most 1:12. Private docks are not covered; told as guidance. */
export const ADA_SLOPE = 1 / 12

export const rampSlopeAda: Check = {
  code: 'ramp-slope-ada',
  severity: 'note',
  basis: '2010 ADA Standards for Accessible Design, 405.2',
  find(kit) {
    const steep = rampSlope(kit)
    return steep === null || atMost(steep, ADA_SLOPE)
      ? []
      : [{ parts: [kit.layout.ramp!.id], values: { slope: slope(steep), most: slope(ADA_SLOPE) } }]
  },
}
