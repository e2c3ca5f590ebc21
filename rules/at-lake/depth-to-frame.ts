import type { Catalog } from '../catalog/index.ts'
import type { Day } from './types.ts'

/**
 * Depth from a rod stood on the ground beside a leg and read at the frame's top, panels off, the frame at its height: what is under the
 * deck less what is over today's water, m.
 */
export const depthToFrame = (
  read: number,
  { overWater }: Pick<Day, 'overWater'>,
  { decking }: Catalog,
): number => read + decking.rise - overWater
