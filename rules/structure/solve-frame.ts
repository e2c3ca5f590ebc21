import { factorFrame } from './factor-frame.ts'
import type { FrameModel, FrameSolution } from './frame-model.ts'

/**
 * Linear analysis of a space frame of Euler–Bernoulli members: small displacements, SI, axes as frame-model.ts
 * says.
 *
 * A rotation of a node that nothing resists and nothing turns is 0. Everything else that can move throws
 * UnstableFrameError, which names a node and a direction. An input that cannot be meant (an index that leads
 * nowhere, a member without length, `up` parallel to its member) throws a RangeError that names it.
 *
 * Source: direct stiffness method, Przemieniecki, Theory of Matrix Structural Analysis (1968), chapters 5 and
 * 6 (memory).
 */
export function solveFrame(model: FrameModel): FrameSolution {
  return factorFrame(model).solve(model.loads, model.memberLoads)
}
