/** Shapes as tests write them: a box by half of its edges along the axes, a cylinder by half of its length. m. */
import type { Box, Cylinder } from '../../../rules/clearance/convex.ts'
import type { Vec3 } from '../../../rules/index.ts'

export const box = (middle: Vec3, x: number, y: number, z: number): Box => ({
  shape: 'box',
  middle,
  edges: [
    [x, 0, 0],
    [0, y, 0],
    [0, 0, z],
  ],
})
export const cylinder = (middle: Vec3, axis: Vec3, half: number, radius: number): Cylinder => ({
  shape: 'cylinder',
  middle,
  axis,
  half,
  radius,
})
