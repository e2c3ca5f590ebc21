/** A pasted line that could not be taken in: its two cells as they came, what is wrong told in place. */
import { useId, useState } from 'react'
import { Sign } from '../ui/controls.tsx'
import { useWords } from '../ui/use-words.ts'
import { bareUnit, parseLength } from '../units/parse.ts'
import { DEPTHS } from '../words/depths.ts'
import { meters, text } from '../words/index.ts'
import type { Draft } from './take-paste.ts'

interface DraftRowProps {
  readonly draft: Draft
  take(draft: Draft, distance: string, depth: string): 'taken' | 'wrong' | null
  drop(): void
}

export function DraftRow({ draft, take, drop }: DraftRowProps) {
  const { t, units } = useWords(DEPTHS)
  const { t: screen } = useWords()
  const id = useId()
  const [distance, setDistance] = useState(draft.distance)
  const [depth, setDepth] = useState(draft.depth)
  const [taken, setTaken] = useState(draft.taken)
  const example = text(screen(`example.length.${units}`))
  const faultOf = (typed: string): string | null => {
    const read = parseLength(typed, bareUnit(units))
    return read.ok ? null : screen(`length.${read.fault}`, { example })
  }
  const takenAt = (typed: string): string => {
    const read = parseLength(typed, bareUnit(units))
    const at = read.ok ? read.meters : 0
    return t(at < 0 ? 'depths.taken-back' : 'depths.taken', { place: meters(Math.abs(at)) })
  }
  const commit = (): void => setTaken(take(draft, distance, depth) === 'taken')
  const cell = (name: string, label: string, value: string, set: (to: string) => void) => {
    const fault = faultOf(value)
    return (
      <td>
        <div className="field">
          <input
            type="text"
            aria-label={label}
            value={value}
            aria-invalid={fault !== null || taken}
            aria-describedby={`${id}-${name}`}
            onChange={(event) => set(event.currentTarget.value)}
            onBlur={commit}
            onKeyDown={(event) => event.key === 'Enter' && commit()}
          />
          <p className="fault" id={`${id}-${name}`}>
            {fault ?? (taken && name === 'distance' ? takenAt(distance) : '')}
          </p>
        </div>
      </td>
    )
  }
  return (
    <tr className="draft">
      {cell('distance', t('depths.distance'), distance, setDistance)}
      <td />
      {cell('depth', t('depths.depth'), depth, setDepth)}
      <td>
        <button type="button" className="quiet icon" aria-label={t('depths.remove-draft')} onClick={drop}>
          <Sign d="M5 5l8 8M13 5l-8 8" />
        </button>
      </td>
    </tr>
  )
}
