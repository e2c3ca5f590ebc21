/** Whether a depth is known well enough that its error helps anybody who reads it. */

/** Known no better than this, one standard deviation, m: half a forearm either way. Judgment. */
const LOOSE = 0.2
/** Nor is what may as well be dry, or twice as deep; but a hand's breadth is told of the shallowest. */
const LEAST = 0.05

export const isGuess = ({ depth, sd }: { readonly depth: number; readonly sd: number }): boolean =>
  sd > LOOSE || (depth >= 0 && 2 * sd > depth && sd > LEAST)
