/** Where a boat lies, and how it bumps. */
import type { Berth } from '../../layout/berth.ts'
import type { PlacedSection } from '../../layout/index.ts'
import { bumpEnergy, bumpForce } from '../strength/index.ts'
import type { DockFrame } from './frame.ts'

type Lying = Berth<PlacedSection>

/** The two corners that a boat is tied to: of its section, on the edge that it lies at. */
export function tiedTo(
  { corners, nodes }: DockFrame,
  { section, line: { nx, ny } }: Lying,
): readonly number[] {
  const at = (node: number): number => nx * nodes[node]!.x + ny * nodes[node]!.y
  const four = corners[section.index]!
  const middle = four.reduce((sum, node) => sum + at(node), 0) / 4
  return four.filter((node) => at(node) > middle)
}

/** Softest bumper on the edge that a boat lies at, N/m; null where none states how stiff it is. */
export function bumperAt({ kit }: Pick<DockFrame, 'kit'>, { section, line }: Lying): number | null {
  const stated = kit.extras.placed
    .filter((extra) => extra.section === section && extra.nx * line.nx + extra.ny * line.ny > 0.5)
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
