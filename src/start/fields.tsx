/** What the questions are answered with: a row of likely lengths to tap, and a field between a less and a more for any other. */
import type { ReactNode } from 'react'
import { useId } from 'react'
import type { Issue } from '../../rules/index.ts'
import { useAsks } from '../section-strip/asks.tsx'
import { Sign } from '../ui/controls.tsx'
import { LengthField } from '../ui/quantity-field.tsx'
import { useWords } from '../ui/use-words.ts'
import type { LengthKind } from '../units/doubt.ts'
import { text } from '../words/index.ts'
import { START } from '../words/start.ts'

interface LengthStepsProps {
  readonly label: string
  readonly kind: LengthKind
  /** m; null: not said yet. */
  readonly value: number | null
  /** m */
  readonly step: number
  commit(to: number): readonly Issue[] | string
  readonly typing?: (valid: boolean) => void
  /** The hand is put here. */
  readonly hand?: boolean
}

export function LengthSteps({ label, kind, value, step, commit, typing, hand = false }: LengthStepsProps) {
  const { t, length } = useWords(START)
  const ask = useAsks(kind)
  const from = value ?? 0
  // On whole steps, wherever it stood.
  const up = (Math.floor(from / step + 1e-6) + 1) * step
  const down = Math.max(0, (Math.ceil(from / step - 1e-6) - 1) * step)
  const button = (word: 'start.less' | 'start.more', to: number, d: string) => (
    <button
      type="button"
      className="icon"
      aria-label={t(word, { what: text(label) })}
      disabled={to === from}
      onClick={() => commit(to)}
    >
      <Sign d={d} />
    </button>
  )
  return (
    <div className="length-steps">
      {button('start.less', down, 'M4 9h10')}
      <LengthField
        label={label}
        value={from}
        shown={value === null ? '' : length(value)}
        commit={commit}
        ask={ask}
        typing={typing}
        focus={hand}
      />
      {button('start.more', up, 'M4 9h10M9 4v10')}
    </div>
  )
}

interface LikelyProps {
  readonly legend: string
  /** m */
  readonly values: readonly number[]
  readonly value: number | null
  readonly label?: (value: number) => ReactNode
  set(value: number): void
}

export function Likely({ legend, values, value, label, set }: LikelyProps) {
  const name = useId()
  const { length } = useWords()
  return (
    <fieldset className="choice likely">
      <legend>{legend}</legend>
      <div>
        {values.map((each) => (
          <label key={each}>
            <input
              type="radio"
              name={name}
              checked={value !== null && Math.abs(value - each) < 1e-6}
              onChange={() => set(each)}
            />
            <span>{label ? label(each) : length(each)}</span>
          </label>
        ))}
      </div>
    </fieldset>
  )
}
