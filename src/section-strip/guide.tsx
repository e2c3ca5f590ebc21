/** How to measure your shore, in plain steps. */

import { useWords } from '../ui/use-words.ts'
import { DEPTHS } from '../words/depths.ts'

const STEPS = ['guide.1', 'guide.2', 'guide.3', 'guide.4', 'guide.5', 'guide.6'] as const

export function Guide() {
  const { t } = useWords(DEPTHS)
  return (
    <div className="guide">
      <p>{t('guide.intro')}</p>
      <ol className="steps">
        {STEPS.map((step) => (
          <li key={step}>{t(step)}</li>
        ))}
      </ol>
      <p className="care">{t('guide.safe')}</p>
    </div>
  )
}
