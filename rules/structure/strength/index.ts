/** What members, bolts, beds and people can take, and published loads. No frame, no dock: plain functions. */

export {
  allowableBearing,
  grip,
  presumptiveBearing,
  sinkageUnder,
  slidingResistance,
} from './bearing.ts'
export { braceStrength, braceUse, SLIP_SAFETY } from './brace.ts'

export {
  boatWavesBeam,
  boatWavesBow,
  boatWindBeam,
  boatWindBow,
  bumpEnergy,
  bumpForce,
  DECK_LOADS,
  GUARD_PUSH,
  GUST,
  LADDER_LOAD,
  LADDER_STANDOFF,
  WIND_DRAG,
  windPressure,
} from './loads-published.ts'
export { strengthsOfStock } from './member.ts'

export {
  sagLimit,
  swayWord,
} from './serviceability.ts'

export {
  type Strengths,
  utilization,
} from './strengths.ts'
