import { toPad } from '../parts/braces.ts'
import { braceNear } from './brace-near.ts'

/** A brace that keeps its clearance to the pad by little. */
export const braceNearPad = braceNear('brace-near-pad', toPad, 'braceToPad')
