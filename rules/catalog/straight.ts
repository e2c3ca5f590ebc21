/** Frames of two kinds: those that a run is made of, and corner pieces that turn it. */
import type { Catalog, Frame } from './schema.ts'

/** Those that are offered, in the shop's order; there is at least one. */
export const straightFrames = ({ frames }: Pick<Catalog, 'frames'>): readonly Frame[] =>
  frames.filter(({ turn, hidden }) => turn === undefined && !hidden)

export const cornerPieces = ({ frames }: Pick<Catalog, 'frames'>): readonly Frame[] =>
  frames.filter(({ turn, hidden }) => turn !== undefined && !hidden)
