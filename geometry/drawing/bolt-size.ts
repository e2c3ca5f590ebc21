/** A bolt as it is asked for: diameter by length, inch sizes in inches and metric ones in millimeters, whatever the paper is in. */
import type { Catalog } from '../../rules/index.ts'
import { DRAWING } from '../../rules/words/drawing.ts'
import { feetInches } from '../../rules/words/figures.ts'
import type { Reader } from '../../rules/words/language.ts'
import { say } from '../../rules/words/messages.ts'

type Bolt = Catalog['hardware'][number]

/** Inch sizes are sixteenths, m; catalogs round them. */
const SIXTEENTH = 0.0254 / 16
const ROUNDED = 2e-5

/** `5/16 in × 3 in`, `M8 × 80`: nominal diameter and length under the head. */
export function boltSize({ diameter, length }: Pick<Bolt, 'diameter' | 'length'>, reader: Reader): string {
  const off = Math.abs(diameter - Math.round(diameter / SIXTEENTH) * SIXTEENTH)
  if (off <= ROUNDED)
    return say(DRAWING, reader, 'bolt-inch', {
      across: feetInches(diameter, reader, 16),
      long: feetInches(length, reader, 16),
    })
  const mm = (meters: number): number => Math.round(meters * 1e4) / 10
  return say(DRAWING, reader, 'bolt-metric', { across: mm(diameter), long: mm(length) })
}
