import { toBed } from '../parts/braces.ts'
import { braceNear } from './brace-near.ts'

/** A brace that keeps its clearance to the lake bed by little. */
export const braceNearBed = braceNear('brace-near-bed', toBed, 'braceToBed')
