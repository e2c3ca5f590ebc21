/** Whom the quote is for: kept in the design, and printed on its papers. */
import { useId } from 'react'
import type { Design } from '../../rules/index.ts'
import { useLeadline } from '../state/store.ts'
import { useWords } from '../ui/use-words.ts'
import { DOCUMENTS } from '../words/documents.ts'

/** As the design's schema has it, characters. */
const LONGEST = 400
const FIELDS = ['customer', 'order'] as const

export function CustomerFields() {
  const { t } = useWords(DOCUMENTS)
  const job = useLeadline((s) => s.design.job)
  const edit = useLeadline((s) => s.edit)
  const endGesture = useLeadline((s) => s.endGesture)
  const id = useId()
  const set = (key: (typeof FIELDS)[number], to: string) =>
    edit((design): Design => ({ ...design, job: { ...design.job, [key]: to } }), { gesture: `job ${key}` })
  return (
    <div className="paper-options">
      {FIELDS.map((key) => [
        <label key={`${key}-label`} htmlFor={`${id}-${key}`}>
          {t(`job-${key}`)}
        </label>,
        <input
          key={key}
          id={`${id}-${key}`}
          type="text"
          maxLength={LONGEST}
          value={job?.[key] ?? ''}
          onChange={(event) => set(key, event.currentTarget.value)}
          onBlur={endGesture}
        />,
      ])}
    </div>
  )
}
