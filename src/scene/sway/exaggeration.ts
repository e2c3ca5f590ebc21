/** By what factor a sway is exaggerated on the screen: a round number, given in the legend, large enough to see and small enough that legs stay attached. */

/** Widest that is shown, m. */
const WIDEST = 0.3
const TIMES = [1, 2, 5, 10, 20, 50, 100, 200, 500] as const

/** @param most the largest movement of all that is shown together, m */
export const exaggeration = (most: number): number =>
  TIMES.filter((times) => times * most <= WIDEST).at(-1) ?? 1
