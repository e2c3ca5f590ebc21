/** Questions about a length, in words: for fields of depths, distances and heights. */

import type { Asked } from '../ui/quantity-field.tsx'
import { doubtOf, type LengthKind } from '../units/doubt.ts'
import { DEPTHS } from '../words/depths.ts'
import { meters } from '../words/index.ts'
import { useWords } from '../words/use-words.ts'

export function useAsks(kind: LengthKind): (of: number, typed: string) => Asked<number> | null {
  const { t, units } = useWords(DEPTHS)
  return (of, typed) => {
    const doubt = doubtOf(kind, of, typed, units)
    if (!doubt) return null
    const { why, instead } = doubt
    const length = { length: meters(instead ?? Math.abs(of)) }
    return {
      say: t(`asks.${why}`, length),
      ...(instead === undefined ? {} : { instead: { value: instead, say: t('asks.take', length) } }),
    }
  }
}
