import { braceNear } from './brace-near.ts'

/** A brace that keeps its clearance to the lake bed by little. */
export const braceNearBed = braceNear('brace-near-bed', (fit) => fit.toBed, 'braceToBed')
