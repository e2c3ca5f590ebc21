export { berthSection } from './berth.ts'
export { toPlan } from './footprint.ts'
export {
  CORNERS,
  hasHooks,
  hooksOf,
  type Joints,
  join,
  leastOverlap,
  MOST_PAIRS,
  OWN_CORNERS,
  type PlacedJoint,
} from './joints.ts'
export {
  type EdgeLine,
  edgeLength,
  edgeOf,
  footprint,
  type Layout,
  type PlacedSection,
  place,
  shoreEndOf,
} from './place.ts'
export { plannedOf, planOf } from './plan.ts'
