export { berthSection } from './berth.ts'
export {
  CORNERS,
  type Hook,
  hasHooks,
  hooksOf,
  type Joints,
  join,
  jointId,
  leastOverlap,
  MOST_PAIRS,
  type PlacedJoint,
} from './joints.ts'
export {
  type EdgeLine,
  edgeLength,
  edgeOf,
  footprint,
  type Layout,
  type Placed,
  place,
  type Rectangle,
  type ShoreEnd,
  shoreEndOf,
  toPlan,
} from './place.ts'
export { type Planned, planOf } from './plan.ts'
