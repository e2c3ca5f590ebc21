/** Where a boat lies, and how it bumps. */
import { berthSection } from '../../layout/index.ts'
import { bumpEnergy, bumpForce } from '../strength/index.ts'
import type { DockFrame } from './frame.ts'

/** The two corners that a boat is tied to: of the section farthest into the lake, on the boat's side. None without a boat. */
export function berth(frame: DockFrame): readonly number[] {
  const { kit } = frame
  const { boat } = kit.design.dock
  if (!boat) return []
  const far = berthSection(kit.layout.placed, boat.side)
  if (!far) return []
  const sign = boat.side === 'left' ? 1 : -1
  const middle = frame.corners[far.index]!.reduce((sum, node) => sum + frame.nodes[node]!.y, 0) / 4
  return frame.corners[far.index]!.filter((node) => sign * (frame.nodes[node]!.y - middle) > 0)
}

/**
 * What the dock pushes back with, N, as the boat comes alongside at the berth: all its energy goes into the dock as a spring.
 *
 * @param give of the dock there under 1 N, m
 */
export const bump = (mass: number, give: number): number => bumpForce(bumpEnergy(mass), 1 / give)
