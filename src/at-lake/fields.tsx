/** What is answered with a glove on: a length typed or stepped, one of a few, and what is ticked off. */
import { type ReactNode, useId, useState } from 'react'
import { Sign } from '../ui/controls.tsx'
import { useWords } from '../ui/use-words.ts'
import { doubtOf, type LengthKind } from '../units/doubt.ts'
import { bareUnit, parseLength } from '../units/parse.ts'
import { nextStep } from '../units/steps.ts'
import { meters, text } from '../words/index.ts'
import { useSay } from './lake.ts'

/** A touch moves a length by that, m: half an inch, a centimeter. */
const STEP = { imperial: 0.0127, metric: 0.01 } as const

/** What stands in the field, as it was typed, and what that is; null: nothing that could be read. */
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
  readonly kind: LengthKind
  readonly typed: Typed
  /** Where the first touch of less or more begins, m. */
  readonly from: number
  set(typed: Typed): void
}

export function Measure({ label, kind, typed, from, set }: MeasureProps) {
  const { t, units, length } = useSay()
  const { t: words } = useWords()
  const [left, setLeft] = useState(false)
  const id = useId()
  const read = parseLength(typed.text, bareUnit(units))
  const fault = typed.text !== '' && !read.ok
  const doubt = read.ok ? doubtOf(kind, read.meters, typed.text, units) : null
  const put = (value: number): void => set({ text: length(value), value })
  const step = (way: 1 | -1): void =>
    put(typed.value === null ? nearest(from, STEP[units]) : nextStep(typed.value, STEP[units], way))
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
          value={typed.text}
          placeholder={t(`example.${units}`)}
          aria-invalid={fault && left}
          aria-describedby={fault && left ? `${id}-fault` : undefined}
          onFocus={(event) => {
            setLeft(false)
            event.currentTarget.select()
          }}
          onBlur={() => setLeft(true)}
          onChange={(event) => {
            const now = event.currentTarget.value
            const is = parseLength(now, bareUnit(units))
            set({ text: now, value: is.ok ? is.meters : null })
          }}
          onKeyDown={(event) => {
            if (event.key !== 'ArrowUp' && event.key !== 'ArrowDown') return
            event.preventDefault()
            step(event.key === 'ArrowUp' ? 1 : -1)
          }}
        />
      </div>
      <button type="button" className="icon" aria-label={t('less', { what: label })} onClick={() => step(-1)}>
        <Sign d="M4 9h10" />
      </button>
      <button type="button" className="icon" aria-label={t('more', { what: label })} onClick={() => step(1)}>
        <Sign d="M4 9h10M9 4v10" />
      </button>
      {fault && left && !read.ok && (
        <p className="fault" id={`${id}-fault`} role="alert">
          {words(`length.${read.fault}`, { example: text(words(`example.length.${units}`)) })}
        </p>
      )}
      {doubt && (
        <p className="doubt" role="status">
          {t(doubt.instead === undefined ? 'doubt.large' : 'doubt.unit')}{' '}
          {doubt.instead !== undefined && (
            <button type="button" onClick={() => put(doubt.instead ?? 0)}>
              {t('doubt.take', { length: meters(doubt.instead) })}
            </button>
          )}
        </p>
      )}
    </div>
  )
}

const nearest = (value: number, step: number): number => Math.round(value / step) * step

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
