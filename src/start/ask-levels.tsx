/** How far the lake goes up and down over a season. */
import type { Design } from '../../rules/index.ts'
import { setLevel } from '../parameters/design-edits.ts'
import { useLeadline } from '../state/store.ts'
import { useWords } from '../ui/use-words.ts'
import { START } from '../words/start.ts'
import { LengthSteps, Likely } from './fields.tsx'
import { FIGURES, useAnswer } from './use-answer.ts'

export function LevelsQuestion() {
  const { levels, assumed } = useLeadline((s) => s.design.site)
  const give = useAnswer()
  const { t, units } = useWords(START)
  const figures = FIGURES[units]
  const said = !assumed?.includes('levels')
  const rises = said ? levels.high : null
  const falls = said ? 0 - levels.low : null
  const both = (d: Design, to: number): Design => setLevel(setLevel(d, 'high', to), 'low', 0 - to)
  return (
    <>
      <p className="hint">{t('start.levels.hint')}</p>
      <Likely
        legend={t('start.levels.both')}
        values={figures.levels}
        value={rises === falls ? rises : null}
        set={(to) => give((d) => both(d, to))}
      />
      <div className="pair">
        <LengthSteps
          label={t('start.levels.rises')}
          kind="height"
          value={rises}
          step={figures.level}
          commit={(to) => give((d) => setLevel(d, 'high', to))}
        />
        <LengthSteps
          label={t('start.levels.falls')}
          kind="depth"
          value={falls}
          step={figures.level}
          commit={(to) => give((d) => setLevel(d, 'low', 0 - to))}
        />
      </div>
    </>
  )
}
