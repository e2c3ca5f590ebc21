/** Names for directions that do not lie along a global axis: the axis they are nearest to. */
import type { Direction, Vec3 } from './frame-model.ts'

const MOVES: readonly Direction[] = ['ux', 'uy', 'uz']
const TURNS: readonly Direction[] = ['rx', 'ry', 'rz']

const nearest = (vector: Vec3, names: readonly Direction[]): Direction => {
  const sizes = vector.map(Math.abs)
  return names[sizes.indexOf(Math.max(...sizes))]!
}

/** For a movement along a vector in global axes. */
export const nearestMove = (vector: Vec3): Direction => nearest(vector, MOVES)

/** For a rotation about a vector in global axes. */
export const nearestTurn = (vector: Vec3): Direction => nearest(vector, TURNS)
