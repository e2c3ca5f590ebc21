/**
 * The questions with which a dock begins, one at a time, in the place of the panel: the dock grows in the picture beside them. Each may be
 * skipped, each answer is a step of undo. All that is shown as answered is read from the Design, so that undo takes it back here too.
 */
import { type ComponentType, useLayoutEffect, useRef, useState } from 'react'
import { useLeadline } from '../state/store.ts'
import { useSheet } from '../ui/use-sheet.ts'
import { useWords } from '../ui/use-words.ts'
import { count, meters } from '../words/index.ts'
import { START } from '../words/start.ts'
import { BankQuestion } from './ask-bank.tsx'
import { BottomQuestion } from './ask-bottom.tsx'
import { DepthsQuestion } from './ask-depths.tsx'
import { LevelsQuestion } from './ask-levels.tsx'
import { WindQuestion } from './ask-wind.tsx'
import { Elsewise } from './elsewise.tsx'
import { answerOf } from './shore.ts'
import css from './start.css?inline'

type Name = 'depths' | 'bank' | 'bottom' | 'levels' | 'wind'

const QUESTIONS: readonly { readonly name: Name; readonly Ask: ComponentType }[] = [
  { name: 'depths', Ask: DepthsQuestion },
  { name: 'bank', Ask: BankQuestion },
  { name: 'bottom', Ask: BottomQuestion },
  { name: 'levels', Ask: LevelsQuestion },
  { name: 'wind', Ask: WindQuestion },
]
/** So many are asked of everybody; the rest of those who want to say more. */
const ASKED = 3

/** `done`: no more is to be asked. */
export function Start({ done }: { readonly done: () => void }) {
  const answered = useAnswered()
  const { t } = useWords(START)
  const bank = answerOf(
    useLeadline((s) => s.design),
    'bank',
  )
  const [step, setStep] = useState(0)
  const box = useSheet<HTMLElement>(css)
  const head = useRef<HTMLHeadingElement>(null)
  const moved = useRef(false)

  // biome-ignore lint/correctness/useExhaustiveDependencies: each new question is read out; the first takes nobody's focus.
  useLayoutEffect(() => {
    if (moved.current) head.current?.focus({ preventScroll: true })
  }, [step])

  const go = (to: number): void => {
    moved.current = true
    setStep(to)
  }
  const { name, Ask } = QUESTIONS[step]!
  const last = step === QUESTIONS.length - 1
  const shows = step === ASKED - 1 || last
  return (
    <section className="start" ref={box} aria-labelledby="start-question">
      <p className="hint">
        {step < ASKED ? t('start.step', { n: count(step + 1), all: count(ASKED) }) : t('start.step-more')}
      </p>
      <h2 id="start-question" ref={head} tabIndex={-1}>
        {t(`start.${name}`, { distance: meters(0 - bank.distance) })}
      </h2>
      <Ask />
      <div className="actions ways">
        {step > 0 && (
          <button type="button" onClick={() => go(step - 1)}>
            {t('start.back')}
          </button>
        )}
        {step === ASKED - 1 && (
          <button type="button" onClick={() => go(step + 1)}>
            {t('start.further')}
          </button>
        )}
        {shows ? (
          <button type="button" className="main" onClick={done}>
            {t('start.show')}
          </button>
        ) : (
          <button type="button" className={answered[name] ? 'main' : ''} onClick={() => go(step + 1)}>
            {t(answered[name] ? 'start.next' : 'start.skip')}
          </button>
        )}
      </div>
      <Elsewise leave={done} />
    </section>
  )
}

function useAnswered(): Readonly<Record<Name, boolean>> {
  const design = useLeadline((s) => s.design)
  const known = (place: 'near' | 'far' | 'bank'): boolean => answerOf(design, place).assumed !== true
  const said = (what: 'bottom' | 'levels' | 'wind'): boolean => !design.site.assumed?.includes(what)
  return {
    depths: known('near') && known('far'),
    bank: known('bank'),
    bottom: said('bottom'),
    levels: said('levels'),
    wind: said('wind'),
  }
}
