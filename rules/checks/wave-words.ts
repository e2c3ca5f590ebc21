/** What the checks of waves share. */
import { quantize } from '../numbers.ts'

export const WAVES =
  'Shore Protection Manual 1984 eqs. 3-39 and 3-40; crest and breaking by ASCE 7-16 5.4.4 (from memory)'

export const upToCentimeter = (height: number): number => quantize(Math.ceil(height * 100 - 1e-6) / 100)
