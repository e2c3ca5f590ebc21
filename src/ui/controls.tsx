/** The few controls that the panel is made of: native ones, so that keyboard, touch and screen readers find what they know. */
import { type ReactNode, useEffect, useId, useRef, useState } from 'react'
import type { Issue } from '../../rules/index.ts'
import { useLeadlineStore } from '../state/store.ts'
import { bareUnit, parseLength } from '../units/parse.ts'
import { keyStep, snap } from '../units/steps.ts'
import { text, type Word } from '../words/index.ts'
import { useWords } from '../words/use-words.ts'

export function Group({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <fieldset className="group">
      <legend>{title}</legend>
      {children}
    </fieldset>
  )
}

export const Hint = ({ id, children }: { readonly id?: string; readonly children: ReactNode }) => (
  <p className="hint" {...(id === undefined ? {} : { id })}>
    {children}
  </p>
)

interface FieldProps<T> {
  readonly label: string
  /** m; negative only where the field means it. */
  readonly value: T
  /** Takes what was typed; what it gives back is why not. */
  readonly commit: (to: T) => readonly Issue[]
  readonly hideLabel?: boolean
  readonly className?: string
}

interface QuantityFieldProps<T> extends FieldProps<T> {
  readonly shown: string
  readonly placeholder?: string
  /** What a text says, or why it says nothing; null where it is no such thing at all. */
  read(typed: string): { readonly value: T } | { readonly fault: Word; readonly example: string }
  /** The next one up or down by an arrow key. */
  next(way: 1 | -1, large: boolean): T
}

/** A length typed the way people type it. */
export function LengthField(props: FieldProps<number>) {
  const { units, t, length } = useWords()
  const example = t(`example.length.${units}`)
  return (
    <QuantityField
      {...props}
      shown={length(props.value)}
      read={(typed) => {
        const read = parseLength(typed, bareUnit(units))
        return read.ok ? { value: read.meters } : { fault: `length.${read.fault}`, example }
      }}
      next={(way, large) => props.value + way * keyStep(units, large)}
    />
  )
}

/**
 * Taken on Enter or when left; a text that was not touched changes nothing, so that what the screen rounds never gets into the design.
 * What is wrong stays as typed, with what was expected beside it.
 */
export function QuantityField<T>({
  label,
  value,
  shown,
  placeholder,
  read,
  next,
  commit,
  hideLabel = false,
  className = '',
}: QuantityFieldProps<T>) {
  const { units, t } = useWords()
  const id = useId()
  const [typed, setTyped] = useState<string | null>(null)
  const [fault, setFault] = useState<string | null>(null)
  // Another value from elsewhere (a drag, undo) takes the place of what stood here.
  const [last, setLast] = useState(value)
  if (last !== value) {
    setLast(value)
    setTyped(null)
    setFault(null)
  }

  const take = (): void => {
    if (typed === null || typed === shown) {
      setTyped(null)
      setFault(null)
      return
    }
    const said = read(typed)
    if ('fault' in said) {
      setFault(t(said.fault, { example: text(said.example) }))
      return
    }
    const issues = commit(said.value)
    if (issues[0]) setFault(t('length.refused', { why: text(issues[0].message) }))
    else {
      setTyped(null)
      setFault(null)
    }
  }
  const nudge = (way: 1 | -1, large: boolean): void => {
    if (commit(next(way, large)).length === 0) setTyped(null)
  }
  return (
    <div className={`field ${className}`}>
      <label htmlFor={id} className={hideLabel ? 'unseen' : ''}>
        {label}
      </label>
      <input
        id={id}
        type="text"
        inputMode={units === 'imperial' ? 'text' : 'decimal'}
        autoComplete="off"
        spellCheck={false}
        value={typed ?? shown}
        placeholder={placeholder}
        aria-invalid={fault !== null}
        aria-describedby={fault === null ? undefined : `${id}-fault`}
        onFocus={(event) => event.currentTarget.select()}
        onChange={(event) => setTyped(event.currentTarget.value)}
        onBlur={take}
        onKeyDown={(event) => {
          if (event.key === 'Enter') take()
          else if (event.key === 'Escape' && typed !== null) {
            event.stopPropagation()
            setTyped(null)
            setFault(null)
          } else if (event.key === 'ArrowUp' || event.key === 'ArrowDown') {
            event.preventDefault()
            nudge(event.key === 'ArrowUp' ? 1 : -1, event.shiftKey)
          }
        }}
      />
      {fault !== null && (
        <p className="fault" id={`${id}-fault`} role="alert">
          {fault}
        </p>
      )}
    </div>
  )
}

interface StepperProps {
  readonly label: string
  readonly fewer: string
  readonly more: string
  readonly value: number
  readonly min: number
  readonly max: number
  readonly by?: number
  set(value: number): void
}

export function Stepper({ label, fewer, more, value, min, max, by = 1, set }: StepperProps) {
  const id = useId()
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset with its legend would not stand in a row.
    <div className="stepper" role="group" aria-labelledby={id}>
      <span id={id}>{label}</span>
      <button type="button" aria-label={fewer} disabled={value - by < min} onClick={() => set(value - by)}>
        <Sign d="M4 9h10" />
      </button>
      <output aria-live="polite">{value}</output>
      <button type="button" aria-label={more} disabled={value + by > max} onClick={() => set(value + by)}>
        <Sign d="M4 9h10M9 4v10" />
      </button>
    </div>
  )
}

export const Sign = ({ d }: { readonly d: string }) => (
  <svg className="sign" viewBox="0 0 18 18" aria-hidden="true">
    <path d={d} />
  </svg>
)

interface ChoiceProps<T extends string> {
  readonly legend: string
  readonly value: T
  readonly options: readonly { readonly value: T; readonly label: ReactNode; readonly picture?: ReactNode }[]
  readonly hint?: ReactNode
  readonly columns?: number
  set(value: T): void
}

/** One of a few, all in sight: radio buttons drawn as cards. */
export function Choice<T extends string>({ legend, value, options, hint, columns = 3, set }: ChoiceProps<T>) {
  const name = useId()
  return (
    <fieldset className="choice" data-columns={columns}>
      <legend>{legend}</legend>
      <div>
        {options.map((option) => (
          <label key={option.value}>
            <input
              type="radio"
              name={name}
              value={option.value}
              checked={option.value === value}
              onChange={() => set(option.value)}
            />
            {option.picture}
            <span>{option.label}</span>
          </label>
        ))}
      </div>
      {hint && <Hint>{hint}</Hint>}
    </fieldset>
  )
}

interface LengthSliderProps {
  readonly label: string
  readonly value: number
  readonly min: number
  readonly max: number
  readonly valueText: string
  set(meters: number, gesture: string): void
}

/** A slider for a length; one drag is one step of undo. */
export function LengthSlider({ label, value, min, max, valueText, set }: LengthSliderProps) {
  const store = useLeadlineStore()
  const { units } = useWords()
  const gesture = useId()
  const ref = useRef<HTMLInputElement>(null)
  const end = (): void => store.getState().endGesture()
  // React has no word for the native `change`, which says that a slider was let go of.
  useEffect(() => {
    const input = ref.current
    const let_go = (): void => store.getState().endGesture()
    input?.addEventListener('change', let_go)
    return () => input?.removeEventListener('change', let_go)
  }, [store])
  return (
    <input
      ref={ref}
      type="range"
      aria-label={label}
      aria-valuetext={valueText}
      min={Math.min(min, value)}
      max={Math.max(max, value)}
      step="any"
      value={value}
      onChange={(event) => set(snap(Number(event.currentTarget.value), units), gesture)}
      onKeyDown={(event) => {
        const by = keyStep(units, event.shiftKey || event.key.startsWith('Page'))
        const step = {
          ArrowUp: by,
          ArrowRight: by,
          PageUp: by,
          ArrowDown: -by,
          ArrowLeft: -by,
          PageDown: -by,
        }[event.key]
        if (step === undefined) return
        event.preventDefault()
        set(value + step, gesture)
      }}
      onKeyUp={end}
      onBlur={end}
    />
  )
}
