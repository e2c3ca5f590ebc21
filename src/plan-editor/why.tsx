/** Why what was asked for cannot be. It is drawn as it was asked for, until it is dropped or another thing is asked. */
import type { Lying, Tried } from '../../rules/plan/troubles.ts'
import { useWords } from '../ui/use-words.ts'
import { PLAN_EDITOR } from '../words/plan-editor.ts'
import { whyNot } from './sentences.ts'

interface WhyProps {
  readonly lying: Lying
  readonly tried: Tried
  readonly drop: () => void
}

export function Why({ lying, tried, drop }: WhyProps) {
  const { t } = useWords(PLAN_EDITOR)
  const why = whyNot(t, lying, tried)
  if (why.length === 0) return null
  return (
    <div className="plan-why">
      <p>{t('shown')}</p>
      <ul>
        {why.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <button type="button" onClick={drop}>
        {t('drop')}
      </button>
    </div>
  )
}
