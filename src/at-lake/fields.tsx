/** What is answered with a glove on: a length typed or stepped, one of a few, and what is ticked off. */
import { type ReactNode, useId, useState } from 'react'
import { Sign } from '../ui/controls.tsx'
import { useWords } from '../ui/use-words.ts'
import { nextStep } from '../units/steps.ts'
import { text } from '../words/index.ts'
import { fine } from './fine.ts'
import { useSay } from './lake.ts'
import { lengthOf, type Reading, type ReadingKind, readingOf, shownText } from './reading.ts'

/** A touch moves a length by that, m: half an inch, a centimeter. */
const STEP = { imperial: 0.0127, metric: 0.01 } as const

/** What stands in the field, as it was typed, and what that is; null: nothing that counts, or not yet. */
export interface Typed {
  readonly text: string
  readonly value: number | null
}

export const NOTHING: Typed = { text: '', value: null }

/** Read back from where it was kept. */
export const typedFrom = (kept: unknown): Typed => {
  const { text: was, value } = (kept ?? {}) as { text?: unknown; value?: unknown }
  return typeof was === 'string' && (value === null || typeof value === 'number')
    ? { text: was, value }
    : NOTHING
}

interface MeasureProps {
  readonly label: string
  readonly kind: ReadingKind
  readonly typed: Typed
  set(typed: Typed): void
}

/** Less and more go from a figure that stands there: from nothing there is no step. */
export function Measure({ label, kind, typed, set }: MeasureProps) {
  const { t, units, length } = useSay()
  const { t: words } = useWords()
  const [left, setLeft] = useState(false)
  const id = useId()
  const shown = shownText(typed, units, length)
  const read = readingOf(shown, kind, units)
  const fault = read.is === 'fault'
  const put = (to: string): void => set({ text: to, value: lengthOf(to, kind, units) })
  const step = (way: 1 | -1): void => {
    if (typed.value === null) return
    const to = nextStep(typed.value, STEP[units], way)
    if (to >= 0 || kind === 'down') set({ text: length(to), value: to })
  }
  return (
    <div className="measure">
      <div className="field">
        <label htmlFor={id}>{label}</label>
        <input
          id={id}
          type="text"
          inputMode={units === 'imperial' ? 'text' : 'decimal'}
          autoComplete="off"
          spellCheck={false}
          enterKeyHint="done"
          value={shown}
          aria-invalid={fault && left}
          aria-describedby={`${id}-unit${fault && left ? ` ${id}-fault` : ''}`}
          onFocus={(event) => {
            setLeft(false)
            event.currentTarget.select()
          }}
          onBlur={() => setLeft(true)}
          onChange={(event) => put(event.currentTarget.value)}
          onKeyDown={(event) => {
            if (event.key !== 'ArrowUp' && event.key !== 'ArrowDown') return
            event.preventDefault()
            step(event.key === 'ArrowUp' ? 1 : -1)
          }}
        />
      </div>
      <StepButton way={-1} label={t('less', { what: label })} off={typed.value === null} step={step} />
      <StepButton way={1} label={t('more', { what: label })} off={typed.value === null} step={step} />
      <p className="hint" id={`${id}-unit`}>
        {t(`unit.${units}`)}
      </p>
      {read.is === 'fault' && left && (
        <p className="fault" id={`${id}-fault`} role="alert">
          {words(`length.${read.fault}`, { example: text(words(`example.length.${units}`)) })}
        </p>
      )}
      <ReadBack
        kind={kind}
        typed={typed}
        read={read}
        put={put}
        sure={(value) => set({ text: shown, value })}
      />
    </div>
  )
}

interface StepButtonProps {
  readonly way: 1 | -1
  readonly label: string
  readonly off: boolean
  step(way: 1 | -1): void
}

const StepButton = ({ way, label, off, step }: StepButtonProps) => (
  <button type="button" className="icon" aria-label={label} disabled={off} onClick={() => step(way)}>
    <Sign d={way > 0 ? 'M4 9h10M9 4v10' : 'M4 9h10'} />
  </button>
)

interface ReadBackProps {
  readonly kind: ReadingKind
  readonly typed: Typed
  readonly read: Reading
  /** With its unit now. */
  put(to: string): void
  sure(value: number): void
}

/** As what it was taken, in large figures; or what is asked before it is taken. */
function ReadBack({ kind, typed, read, put, sure }: ReadBackProps) {
  const { t, reader, length } = useSay()
  const told = (meters: number): string =>
    reader.units === 'metric' && Math.abs(meters * 100 - Math.round(meters * 100)) < 0.05
      ? length(meters)
      : fine(meters, reader)
  if (typed.value !== null)
    return (
      <p className="read-back" role="status">
        {t('read.as')} <b>{told(typed.value)}</b>
      </p>
    )
  switch (read.is) {
    case 'which':
      return (
        <div className="doubt" role="status">
          <p>
            <b>{t('read.which')}</b>
          </p>
          <div className="two">
            {read.ways.map(({ text: to, unit, meters }) => (
              <button type="button" className="choice" key={unit} onClick={() => put(to)}>
                <b>{told(meters)}</b>
                <small>{t(`read.${unit}`)}</small>
              </button>
            ))}
          </div>
        </div>
      )
    case 'large':
      return (
        <div className="doubt" role="status">
          <p>{t(`large.${kind}`, { length: text(told(read.meters)) })}</p>
          <button type="button" onClick={() => sure(read.meters)}>
            {t('large.sure', { length: text(told(read.meters)) })}
          </button>
        </div>
      )
    case 'never':
    case 'negative':
      return (
        <p className="doubt" role="alert">
          {t(read.is === 'never' ? 'large.never' : 'large.negative', { length: text(told(read.meters)) })}
        </p>
      )
    default:
      return null
  }
}

interface PickProps<T extends string> {
  readonly legend: string
  readonly value: T | null
  readonly options: readonly { readonly value: T; readonly label: string; readonly more?: ReactNode }[]
  set(value: T): void
}

export function Pick<T extends string>({ legend, value, options, set }: PickProps<T>) {
  const name = useId()
  return (
    <fieldset className="pick">
      <legend>{legend}</legend>
      {options.map((option) => (
        <label key={option.value}>
          <input
            type="radio"
            name={name}
            value={option.value}
            checked={option.value === value}
            onChange={() => set(option.value)}
          />
          <span>
            {option.label}
            {option.more && <small>{option.more}</small>}
          </span>
        </label>
      ))}
    </fieldset>
  )
}

interface TicksProps {
  readonly items: readonly { readonly key: string; readonly label: string }[]
  readonly done: (key: string) => boolean
  set(key: string, done: boolean): void
}

export function Ticks({ items, done, set }: TicksProps) {
  return (
    <ul className="ticks">
      {items.map(({ key, label }) => (
        <li key={key}>
          <label>
            <input
              type="checkbox"
              checked={done(key)}
              onChange={(event) => set(key, event.currentTarget.checked)}
            />
            <span>{label}</span>
          </label>
        </li>
      ))}
    </ul>
  )
}

interface LineFieldProps {
  readonly label: string
  readonly value: string
  readonly rows?: number
  /** Characters. */
  readonly longest?: number
  set(value: string): void
}

export function LineField({ label, value, rows = 1, longest = 2000, set }: LineFieldProps) {
  const id = useId()
  const props = {
    id,
    value,
    maxLength: longest,
    onChange: (event: { readonly currentTarget: { readonly value: string } }) =>
      set(event.currentTarget.value),
  }
  return (
    <div className="text-field">
      <label htmlFor={id}>{label}</label>
      {rows > 1 ? <textarea rows={rows} {...props} /> : <input type="text" {...props} />}
    </div>
  )
}
