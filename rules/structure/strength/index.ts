/** What members, bolts, beds and people can take, and published loads. No frame, no dock: plain functions. */
export { aluminumStrengths, columnStress, metalOf } from './aluminum.ts'
export {
  allowableBearing,
  BARE_BED,
  frictionOf,
  grip,
  presumptiveBearing,
  sinkageUnder,
  slidingResistance,
} from './bearing.ts'
export { type BracePart, type BraceStrength, braceStrength, braceUse, SLIP_SAFETY, slipUse } from './brace.ts'
export { breakout, pullOut, pushIn, upliftInSand } from './helix.ts'
export {
  type Coupling,
  FRAME_LIFT,
  type Lift,
  type LiftingLimit,
  liftingIndex,
  liftingLimit,
  shareOf,
} from './lifting.ts'
export {
  type BoatBody,
  BUMP_SPEED,
  boatWavesBeam,
  boatWavesBow,
  boatWindBeam,
  boatWindBow,
  bumpEnergy,
  bumpForce,
  DECK_LOADS,
  type DeckLoad,
  GUARD_PUSH,
  GUST,
  LADDER_LOAD,
  LADDER_STANDOFF,
  WIND_DRAG,
  windPressure,
} from './loads-published.ts'
export { basisOf, strengthsOf, strengthsOfStock } from './member.ts'
export {
  type GroundSprings,
  groundGives,
  groundGivesWay,
  groundSprings,
  lateralHold,
  type Post,
  SOIL_SAFETY,
  tubeBends,
} from './post.ts'
export {
  type SagCase,
  SWAY_PUSH,
  SWAY_STIFFNESS,
  type SwayWord,
  sagLimit,
  swayWord,
} from './serviceability.ts'
export { SOILS, type Soil, soilOf, TERZAGHI_SUBMERGED } from './soil.ts'
export { steelStrengths } from './steel.ts'
export {
  type Limit,
  type LimitState,
  type MemberForcesAt,
  type MemberOptions,
  type Strengths,
  type Term,
  type Use,
  utilization,
} from './strengths.ts'
