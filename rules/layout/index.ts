export { berthSection } from './berth.ts'
export {
  CORNERS,
  hasHooks,
  hooksOf,
  type Joints,
  join,
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
  shoreEndOf,
  toPlan,
} from './place.ts'
export { planOf } from './plan.ts'
