export { cornerOf, CORNERS, type Hook, join, type Joints, jointId, leastOverlap, type PlacedJoint } from './joints.ts'
export { edgeOf, footprint, type Layout, type Placed, place, type Rectangle, toPlan } from './place.ts'
export { type Planned, planOf } from './plan.ts'
