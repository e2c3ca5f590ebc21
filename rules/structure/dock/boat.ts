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

/** Softest bumper on the side that a boat lies at, of the section that it lies at, N/m; null where none states how stiff it is. */
export function bumperAt({ kit }: DockFrame): number | null {
  const { boat } = kit.design.dock
  const far = boat && berthSection(kit.layout.placed, boat.side)
  if (!far) return null
  const sign = boat.side === 'left' ? 1 : -1
  const stated = kit.extras.placed
    .filter(({ section, ny }) => section === far && ny * sign > 0.5)
    .flatMap(({ extra }) => extra.parts)
    .flatMap(({ kind, stiffness }) => (kind === 'bumper' && stiffness !== undefined ? [stiffness] : []))
  return stated.length > 0 ? Math.min(...stated) : null
}

/**
 * A boat coming alongside. It is over in a moment: `force` is the greatest that the dock pushes back with where all of the energy
 * goes into the dock and its bumper as springs in a row, and `energy` is all that there is to slide, tip or rock the dock by.
 */
export interface Bump {
  /** J */
  readonly energy: number
  /** N */
  readonly force: number
  /** How far dock and bumper give under that, m. */
  readonly give: number
}

/**
 * @param give of the dock there under 1 N, m
 * @param bumper N/m, null without one
 */
export function bump(mass: number, give: number, bumper: number | null = null): Bump {
  const soft = give + (bumper === null ? 0 : 1 / bumper)
  const energy = bumpEnergy(mass)
  const force = bumpForce(energy, 1 / soft)
  return { energy, force, give: force * soft }
}
