/** How far the lake goes up and down over a season. */
import type { Design } from '../../rules/index.ts'
import { levelAssumed, setLevel } from '../parameters/design-edits.ts'
import { useLeadline } from '../state/store.ts'
import { useWords } from '../ui/use-words.ts'
import { START } from '../words/start.ts'
import { LengthSteps, Likely } from './fields.tsx'
import type { Asked } from './start.tsx'
import { FIGURES, useAnswer } from './use-answer.ts'

export function LevelsQuestion({ typing, hand }: Asked) {
  const design = useLeadline((s) => s.design)
  const { levels } = design.site
  const give = useAnswer()
  const { t, units } = useWords(START)
  const figures = FIGURES[units]
  const rises = levelAssumed(design, 'high') ? null : levels.high
  const falls = levelAssumed(design, 'low') ? null : 0 - levels.low
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
        <div data-at="levels.high">
          <LengthSteps
            label={t('start.levels.rises')}
            kind="height"
            value={rises}
            step={figures.level}
            commit={(to) => give((d) => setLevel(d, 'high', to))}
            typing={(valid) => typing('levels.high', valid)}
            hand={hand === 'levels.high'}
          />
        </div>
        <div data-at="levels.low">
          <LengthSteps
            label={t('start.levels.falls')}
            kind="depth"
            value={falls}
            step={figures.level}
            commit={(to) => give((d) => setLevel(d, 'low', 0 - to))}
            typing={(valid) => typing('levels.low', valid)}
            hand={hand === 'levels.low'}
          />
        </div>
      </div>
    </>
  )
}
