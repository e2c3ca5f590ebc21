import { toFrame } from '../parts/braces.ts'
import { braceNear } from './brace-near.ts'

/** A brace that keeps its clearance to the frame by little. */
export const braceNearFrame = braceNear('brace-near-frame', toFrame, 'braceToFrame')
