/**
 * The questions with which a dock begins, one at a time, in the place of the panel: the dock grows in the picture beside them. Each may be
 * skipped, each answer is a step of undo. All that is shown as answered is read from the Design, so that undo takes it back here too. Come back
 * to later, only what nobody has said is asked.
 */
import { type ComponentType, useLayoutEffect, useRef, useState } from 'react'
import { type AskedAt, useLeadline } from '../state/store.ts'
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
import { ALL, isAnswered, type Name, questionOf, questionsLeft } from './questions.ts'
import { answerOf } from './shore.ts'
import css from './start.css?inline'

export interface Asked {
  /** What is being typed there could be taken as it stands, or could not. */
  typing(at: AskedAt, valid: boolean): void
  /** The field that was asked for: the hand is put in it. */
  readonly hand: AskedAt | null
}

const ASKS: Readonly<Record<Name, ComponentType<Asked>>> = {
  depths: DepthsQuestion,
  bank: BankQuestion,
  bottom: BottomQuestion,
  levels: LevelsQuestion,
  wind: WindQuestion,
}
/** So many are asked of everybody; the rest of those who want to say more. */
const ASKED = 3

interface StartProps {
  /** No more is to be asked. */
  readonly done: () => void
  /** Begin there, with what nobody has said; null: from nothing. */
  readonly at: AskedAt | null
}

export function Start({ done, at }: StartProps) {
  const { t } = useWords(START)
  const design = useLeadline((s) => s.design)
  const box = useSheet<HTMLElement>(css)
  const { names, step, go, moved, head, form, typed, typing, leave } = useSteps(at)
  const name = names[step] ?? 'depths'
  const Ask = ASKS[name]
  const last = step >= names.length - 1
  const enough = at === null && step === ASKED - 1
  const answered = isAnswered(design, name, typed)
  const bank = answerOf(design, 'bank')
  const all = at === null ? ASKED : names.length
  const button = (
    word: 'start.back' | 'start.further' | 'start.enough' | 'start.show' | 'start.next' | 'start.skip',
    then: () => void,
    heeds = true,
  ) => (
    <button
      type="button"
      className={word === 'start.show' || word === 'start.next' ? 'main' : ''}
      onClick={() => leave(then, heeds)}
    >
      {t(word)}
    </button>
  )
  const next = go(step + 1)
  return (
    <section className="start" part="start" ref={box} aria-labelledby="start-question">
      <p className="hint">
        {step < all ? t('start.step', { n: count(step + 1), all: count(all) }) : t('start.step-more')}
      </p>
      <h2 id="start-question" ref={head} tabIndex={-1}>
        {t(`start.${name}`, { distance: meters(0 - bank.distance) })}
      </h2>
      <form ref={form} noValidate onSubmit={(event) => event.preventDefault()}>
        <Ask typing={typing} hand={moved ? null : at} />
      </form>
      <div className="actions ways">
        {step > 0 && button('start.back', go(step - 1), false)}
        {enough && button('start.further', next)}
        {at !== null && !last && button('start.enough', done)}
        {enough || last
          ? button('start.show', done)
          : button(answered ? 'start.next' : 'start.skip', next, answered || typed.length > 0)}
      </div>
      {at === null && <Elsewise leave={() => leave(done, false)} />}
    </section>
  )
}

/** Which question is asked, and the way from it to another. */
function useSteps(at: AskedAt | null) {
  const design = useLeadline((s) => s.design)
  const [names] = useState(() => (at === null ? ALL : questionsLeft(design)))
  const [step, setStep] = useState(() => (at === null ? 0 : Math.max(0, names.indexOf(questionOf(at)))))
  const [moved, setMoved] = useState(false)
  const [typed, setTyped] = useState<readonly AskedAt[]>([])
  const head = useRef<HTMLHeadingElement>(null)
  const form = useRef<HTMLFormElement>(null)
  // Each new question is read out; the first takes nobody's focus, but where its own choices were asked for.
  const read = moved || at === 'bottom' || at === 'wind'
  // biome-ignore lint/correctness/useExhaustiveDependencies: at each question once.
  useLayoutEffect(() => {
    if (read) head.current?.focus({ preventScroll: true })
  }, [step])
  /** What is still being typed is taken in first; what cannot be taken keeps its question, with why, if anybody `heeds`. */
  const leave = (then: () => void, heeds: boolean): void => {
    const field = (form.current?.getRootNode() as ShadowRoot | undefined)?.activeElement
    if (field instanceof HTMLElement && form.current?.contains(field)) field.blur()
    // When what was taken in, or not, is drawn.
    queueMicrotask(() => {
      const fields = [...(form.current?.elements ?? [])]
      if (heeds && fields.some((one) => one.getAttribute('aria-invalid') === 'true')) return
      setTyped([])
      then()
    })
  }
  return {
    names,
    step,
    moved,
    head,
    form,
    typed,
    leave,
    go: (to: number) => () => {
      setMoved(true)
      setStep(to)
    },
    typing: (where: AskedAt, valid: boolean) =>
      setTyped((now) => [...now.filter((each) => each !== where), ...(valid ? [where] : [])]),
  }
}
