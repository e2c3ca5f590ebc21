/** What the checks of waves share. */
import type { Waves } from '../dock.ts'
import { quantize } from '../numbers.ts'
import { BREAKING, CREST, TENTH } from '../site/waves/waves.ts'

export const WAVES =
  'Shore Protection Manual 1984 eqs. 3-39 and 3-40; crest and breaking by ASCE 7-16 5.4.4 (from memory)'

/** Crest of one wave in ten, or of a wake, over still water at a level, m. */
export const crestAt = (waves: Waves, level: number): number =>
  CREST * Math.min(Math.max(TENTH * waves.open, waves.wake), BREAKING * Math.max(0, waves.depth + level))

export const upToCentimeter = (height: number): number => quantize(Math.ceil(height * 100 - 1e-6) / 100)
