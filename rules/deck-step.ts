/**
 * Deck heights that are proposed: whole half inches, as they are read in the water. One rule for checks and screens, so that what a sentence
 * says, what its button does and what the parameters offer is one number.
 */
import { quantize } from './numbers.ts'

const STEP = 0.0127

/** The next one up, m: nothing that must be cleared is reached into. */
export const deckUp = (meters: number): number => quantize(Math.ceil(meters / STEP - 1e-6) * STEP)

/** The next one down, m. */
export const deckDown = (meters: number): number => quantize(Math.floor(meters / STEP + 1e-6) * STEP)
