/** How much of what a part can take is used, in four steps: the same in tables and in the picture. */
export type Band = 'little' | 'some' | 'much' | 'over'

/** Highest use of each step (judgment: for the eye, no check goes by it but the last, which is the limit itself). */
const BANDS: readonly { readonly band: Band; readonly most: number }[] = [
  { band: 'little', most: 0.6 },
  { band: 'some', most: 0.85 },
  { band: 'much', most: 1 },
  { band: 'over', most: Number.POSITIVE_INFINITY },
]

/** @param use share of 1 */
export const bandOf = (use: number): Band => BANDS.find(({ most }) => use <= most)!.band
