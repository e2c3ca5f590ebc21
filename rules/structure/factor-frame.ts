/**
 * One factorization of a frame, then as many load cases as wanted.
 */
import { assemble, diagonalOf, holdDirections, type Layout, layOut, straightBending } from './assembly.ts'
import { factorBlocks } from './block-ldl.ts'
import {
  DIRECTIONS,
  type FrameLoad,
  type FrameModel,
  type FrameSolution,
  type MemberLoad,
  UnstableFrameError,
} from './frame-model.ts'
import { type FreeRotation, findFreeRotations, holdRotations } from './free-rotations.ts'
import { refuseMechanisms, SUSPECT, VANISHED } from './mechanism.ts'
import { solveCase } from './solve-case.ts'

export interface FrameFactor {
  readonly layout: Layout
  readonly freeRotations: readonly FreeRotation[]
  /**
   * Solves one load case. Throws RangeError for a load that names no node or member, UnstableFrameError for
   * a moment on a rotation that nothing resists and for a load on a member that its joints leave loose.
   */
  readonly solve: (loads: readonly FrameLoad[], memberLoads?: readonly MemberLoad[]) => FrameSolution
}

/**
 * Lays out and factors a frame.
 * Throws RangeError for a frame that cannot be meant, UnstableFrameError for one that can move.
 */
export function factorFrame(model: Pick<FrameModel, 'nodes' | 'members'>): FrameFactor {
  const layout = layOut(model)
  const values = assemble(layout, straightBending(layout.members))
  const freeRotations = findFreeRotations(layout, values)
  holdRotations(layout, values, freeRotations)
  holdDirections(layout, values)
  const diagonal = diagonalOf(layout, values)
  diagonal.forEach((size, i) => {
    if (!(size > 0))
      throw new UnstableFrameError(layout.pattern.order[Math.floor(i / 6)]!, DIRECTIONS[i % 6]!)
  })
  const rule = { reference: diagonal, suspect: SUSPECT, vanished: VANISHED }
  const factor = factorBlocks(layout.pattern, values, rule)
  refuseMechanisms(layout, factor, diagonal, freeRotations)
  return {
    layout,
    freeRotations,
    solve: (loads, memberLoads = []) =>
      solveCase({ layout, factor, diagonal, freeRotations }, loads, memberLoads),
  }
}
