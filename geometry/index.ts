/** From Dock to shape. No DOM, no three: typed arrays and plain data, m, the dock's frame of reference (z up). */
export { type BedMesh, bedColumns, bedMesh, bedRows, groundMesh } from './bed.ts'
export { clashSteps, judged, withClashes } from './clashes.ts'
export type { Contact } from './clearance/contacts.ts'
export {
  type Clearance,
  type ClearanceOptions,
  clearanceSteps,
  clearances,
  type Found,
  type MeasuredPart,
  TOUCHING,
} from './clearance.ts'
export { type Contour, contours, depthSteps } from './contours.ts'
export { extentOf } from './extent.ts'
export { type Gap, gapsOf } from './gaps.ts'
export { groupPlacements } from './placements.ts'
export { partKeyOf, solidOf } from './solids/index.ts'
export type { Extent, Look, Solid, SolidBody, SolidGroup } from './types.ts'
export { rotate } from './vec.ts'
export { type WaterSurface, waterSurface } from './water.ts'
