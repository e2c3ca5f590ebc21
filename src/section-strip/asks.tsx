/** Questions about a length, in words: for fields of depths, distances and heights. */
import type { ReactNode } from 'react'
import { useWords } from '../ui/use-words.ts'
import { doubtOf, type LengthKind } from '../units/doubt.ts'
import { DEPTHS } from '../words/depths.ts'
import { meters } from '../words/index.ts'

export function useAsks(
  kind: LengthKind,
): (of: number, typed: string, put: (to: number) => void) => ReactNode {
  const { units } = useWords()
  return (of, typed, put) => {
    const doubt = doubtOf(kind, of, typed, units)
    return doubt && <Asks {...doubt} of={of} put={put} />
  }
}

interface AsksProps extends NonNullable<ReturnType<typeof doubtOf>> {
  readonly of: number
  put(to: number): void
}

function Asks({ why, instead, of, put }: AsksProps) {
  const { t } = useWords(DEPTHS)
  const length = { length: meters(instead ?? Math.abs(of)) }
  return (
    <div className="asks" role="status">
      <span>{t(`asks.${why}`, length)}</span>
      {instead !== undefined && (
        <button type="button" onClick={() => put(instead)}>
          {t('asks.take', length)}
        </button>
      )}
    </div>
  )
}
