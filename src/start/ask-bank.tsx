/** How high is the ground a few steps back from the water. */
import { useLeadline } from '../state/store.ts'
import { Choice } from '../ui/controls.tsx'
import { useWords } from '../ui/use-words.ts'
import { START } from '../words/start.ts'
import { LengthSteps } from './fields.tsx'
import { BankPicture } from './pictures.tsx'
import { answer, answerOf } from './shore.ts'
import type { Asked } from './start.tsx'
import { FIGURES, useAnswer } from './use-answer.ts'

const BANKS = ['level', 'low', 'steps'] as const
type Bank = (typeof BANKS)[number] | 'other'

export function BankQuestion({ typing, hand }: Asked) {
  const sounding = answerOf(
    useLeadline((s) => s.design),
    'bank',
  )
  const give = useAnswer()
  const { t, units, length } = useWords(START)
  const figures = FIGURES[units]
  const height = sounding.assumed ? null : 0 - sounding.depth
  const set = (to: number) => give((d) => answer(d, 'bank', { depth: to }))
  const now = BANKS.find((name) => height !== null && Math.abs(figures.bank[name] - height) < 1e-6)
  return (
    <>
      <Choice<Bank>
        legend={t('start.high')}
        value={now ?? 'other'}
        options={BANKS.map((name) => ({
          value: name,
          label: (
            <>
              {t(`start.bank.${name}`)}
              {name !== 'level' && <small>{length(figures.bank[name])}</small>}
            </>
          ),
          picture: <BankPicture of={name} />,
        }))}
        set={(name) => name !== 'other' && set(figures.bank[name])}
      />
      <div data-at="bank">
        <LengthSteps
          label={t('start.high')}
          kind="height"
          value={height}
          step={figures.depth}
          commit={set}
          typing={(valid) => typing('bank', valid)}
          hand={hand === 'bank'}
        />
      </div>
    </>
  )
}
