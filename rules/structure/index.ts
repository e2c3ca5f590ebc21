/** The space-frame solver. */
export { buckling } from './buckling.ts'
export { factorFrame } from './factor-frame.ts'
export {
  type Direction,
  type End6,
  type EndJoint,
  type Fixed6,
  type FrameLoad,
  type FrameMember,
  type FrameModel,
  type FrameNode,
  type MemberLoad,
  UnstableFrameError,
  type Vec3,
  type Vec6,
} from './frame-model.ts'
export { solveFrame } from './solve-frame.ts'
