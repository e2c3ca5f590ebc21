/** The few controls that the panel is made of, beside its fields: native ones, so that keyboard, touch and screen readers find what they know. */
import { type ReactNode, useEffect, useId, useRef } from 'react'
import { useLeadlineStore } from '../state/store.ts'
import { keyStep, snap } from '../units/steps.ts'
import { useWords } from './use-words.ts'

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

interface StepperProps {
  readonly label: ReactNode
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
  /** Null: none of them yet. */
  readonly value: T | null
  readonly options: readonly { readonly value: T; readonly label: ReactNode; readonly picture?: ReactNode }[]
  readonly hint?: ReactNode
  readonly columns?: number
  set(value: T): void
}

/** A choice of a few options, all visible: radio buttons drawn as cards. */
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
  // React has no event for the native `change`, which fires when a slider is released.
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

/** A browser brings only the cursor of a text area into view. */
export const wholeInSight = ({ currentTarget }: { readonly currentTarget: HTMLElement }): void =>
  currentTarget.scrollIntoView({ block: 'nearest' })
