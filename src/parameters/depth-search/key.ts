import type { Tried } from './search.ts'

/** Tells it from all others that were tried. */
export const keyOf = ({ sections, frame, head, deckHeight }: Tried): string =>
  `${sections} ${frame} ${head.shape} ${head.sections} ${deckHeight}`
