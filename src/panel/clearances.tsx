/** How near what is picked is to the ground and to the next part: what the scene draws, to be read. */
import { useMemo } from 'react'
import { gapsOf } from '../../geometry/index.ts'
import { isJudged, useLeadline } from '../state/store.ts'
import { useWords } from '../ui/use-words.ts'
import { meters } from '../words/index.ts'
import { REASONS } from '../words/reasons.ts'

export function Clearances({ id }: { readonly id: string }) {
  const project = useLeadline((s) => s.project)
  // When the hand rests: it takes longer than what is drawn in the frame of an edit may take.
  const rests = useLeadline(isJudged)
  const { t } = useWords(REASONS)
  const gaps = useMemo(() => (rests ? gapsOf(id, project) : []), [rests, id, project])
  if (gaps.length === 0) return null
  return (
    <ul className="near">
      {gaps.map(({ to, gap }) => (
        <li key={to?.of ?? ''}>
          {to
            ? t('near.part', { height: meters(gap), what: { value: to.kind, unit: 'kind' } })
            : t('near.ground', { height: meters(gap) })}
        </li>
      ))}
    </ul>
  )
}
