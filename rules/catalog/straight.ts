/** Frames of two kinds: those that a run is made of, and corner pieces that turn it. */
import type { Catalog, Frame } from './schema.ts'

/** In the shop's order; there is at least one. */
export const straightFrames = ({ frames }: Pick<Catalog, 'frames'>): readonly Frame[] =>
  frames.filter(({ turn }) => turn === undefined)

export const cornerPieces = ({ frames }: Pick<Catalog, 'frames'>): readonly Frame[] =>
  frames.filter(({ turn }) => turn !== undefined)
