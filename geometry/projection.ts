/** Where places of a dock fall on a flat picture of it: for drawings, the section strip and the block of lake alike. m. */
import type { Placement, Vec3 } from '../rules/index.ts'
import { add, cross, dot, rotate } from './vec.ts'

/** To the right and up. */
export type Flat = readonly [right: number, up: number]

/** Where a picture looks from: what is to the right and up on it, and toward the reader. Unit vectors. */
export interface Eye {
  readonly right: Vec3
  readonly up: Vec3
  readonly toward: Vec3
}

/** From above, x to the right. */
export const ABOVE: Eye = { right: [1, 0, 0], up: [0, 1, 0], toward: [0, 0, 1] }
/** From the right side of the dock: the lake to the right. */
export const SIDE: Eye = { right: [1, 0, 0], up: [0, 0, 1], toward: [0, -1, 0] }

/** Level, with `right` to the right. @param right level, of length 1 */
export const levelEye = (right: Vec3): Eye => ({ right, up: [0, 0, 1], toward: cross(right, [0, 0, 1]) })

/** From the side, gone round the dock by `round` toward the shore and `above` it; radians. */
export function obliqueEye(round: number, above: number): Eye {
  const right: Vec3 = [Math.cos(round), Math.sin(round), 0]
  const up: Vec3 = [-Math.sin(round) * Math.sin(above), Math.cos(round) * Math.sin(above), Math.cos(above)]
  return { right, up, toward: cross(right, up) }
}

/** A parallel view: nothing becomes smaller with distance. */
export const seenFrom = ({ right, up }: Eye, place: Vec3): Flat => [dot(right, place), dot(up, place)]

/** Greater is nearer to the reader. */
export const nearness = ({ toward }: Eye, place: Vec3): number => dot(toward, place)

/** A place of a part's own frame, in the dock's. */
export const inDock = ({ at, turn }: Pick<Placement, 'at' | 'turn'>, own: Vec3): Vec3 =>
  add(rotate(turn, own), at)
