/** A row that is no sounding yet: pasted and not to be read, or added and not filled in. It counts for nothing until both of its figures are there. */
import { useEffect, useId, useRef, useState } from 'react'
import { Sign } from '../ui/controls.tsx'
import { Select } from '../ui/select.tsx'
import { useWords } from '../ui/use-words.ts'
import { bareUnit, parseLength } from '../units/parse.ts'
import { DEPTHS } from '../words/depths.ts'
import { meters, text } from '../words/index.ts'
import type { Draft } from './take-paste.ts'

/** As it was typed, and what that comes to, m. */
export interface Said {
  readonly typed: { readonly distance: string; readonly depth: string }
  readonly distance: number
  readonly depth: number
}

interface DraftRowProps {
  readonly draft: Draft
  /** @param entered by a key, which leaves the hand without a place. */
  take(draft: Draft, said: Said, entered: boolean): 'taken' | null
  drop(): void
}

export function DraftRow({ draft, take, drop }: DraftRowProps) {
  const { t } = useWords(DEPTHS)
  const { distance, depth, where, fault, set, choose, commit } = useDraft(draft, take)
  const added = draft.added === true
  const cell = (name: 'distance' | 'depth', value: string) => (
    <td>
      <Cell
        name={name}
        value={value}
        fault={fault[name]}
        hint={name === 'distance' && added ? t('depths.not-yet') : ''}
        hand={name === 'distance' && added}
        set={set[name]}
        enter={() => commit(true)}
      />
    </td>
  )
  return (
    // Whoever goes on to say where it is, or takes it out, has not left it yet.
    <tr
      className="draft"
      onBlur={({ currentTarget, relatedTarget }) =>
        currentTarget.contains(relatedTarget as Node | null) || commit(false)
      }
    >
      {cell('distance', distance)}
      <td>
        <Select
          name={t('depths.where')}
          value={where}
          options={['out', 'back'] as const}
          wordOf={(option) => t(`depths.${option}`)}
          set={choose}
        />
      </td>
      {cell('depth', depth)}
      <td>
        <button type="button" className="quiet icon" aria-label={t('depths.remove-draft')} onClick={drop}>
          <Sign d="M5 5l8 8M13 5l-8 8" />
        </button>
      </td>
    </tr>
  )
}

interface CellProps {
  readonly name: 'distance' | 'depth'
  readonly value: string
  readonly fault: string
  readonly hint: string
  readonly hand: boolean
  set(to: string): void
  enter(): void
}

function Cell({ name, value, fault, hint, hand, set, enter }: CellProps) {
  const { t, units } = useWords(DEPTHS)
  const id = useId()
  const input = useRef<HTMLInputElement>(null)
  useEffect(() => {
    if (hand) input.current?.focus()
  }, [hand])
  return (
    <div className="field">
      <input
        ref={input}
        type="text"
        inputMode={units === 'imperial' ? 'text' : 'decimal'}
        autoComplete="off"
        aria-label={t(`depths.${name}`)}
        value={value}
        aria-invalid={fault !== ''}
        aria-describedby={id}
        onChange={(event) => set(event.currentTarget.value)}
        onKeyDown={(event) => {
          if (event.key !== 'Enter') return
          // Not the press of where the hand goes on to.
          event.preventDefault()
          enter()
        }}
      />
      <p className={fault === '' ? 'hint' : 'fault'} id={id}>
        {fault || hint}
      </p>
    </div>
  )
}

/** What is typed in it so far, what is wrong with that, and how it becomes a sounding. */
function useDraft(draft: Draft, take: DraftRowProps['take']) {
  const { t, units } = useWords(DEPTHS)
  const { t: screen } = useWords()
  const [distance, setDistance] = useState(draft.distance)
  const [depth, setDepth] = useState(draft.depth)
  const [taken, setTaken] = useState(draft.taken)
  const [chosen, choose] = useState<'out' | 'back' | null>(null)
  const gone = useRef(false)
  const lengthOf = (typed: string) => parseLength(typed, bareUnit(units))
  const [x, z] = [lengthOf(distance), lengthOf(depth)]
  const signed = (meters: number): number =>
    chosen === null ? meters : (chosen === 'back' ? -1 : 1) * Math.abs(meters) + 0
  const faultOf = (typed: string): string => {
    const read = lengthOf(typed)
    if (read.ok || (draft.added && typed.trim() === '')) return ''
    return screen(`length.${read.fault}`, { example: text(screen(`example.length.${units}`)) })
  }
  const at = x.ok ? signed(x.meters) : 0
  const takenAt = t(at < 0 ? 'depths.taken-back' : 'depths.taken', { place: meters(Math.abs(at)) })
  return {
    distance,
    depth,
    // A minus sign says it too.
    where: chosen ?? (x.ok && x.meters < 0 ? 'back' : 'out'),
    fault: { distance: taken ? takenAt : faultOf(distance), depth: faultOf(depth) },
    set: { distance: setDistance, depth: setDepth },
    choose,
    commit(entered: boolean): void {
      if (!x.ok || !z.ok || gone.current) return
      const said = { typed: { distance, depth }, distance: signed(x.meters), depth: signed(z.meters) }
      // Taken in, the hand goes on, which leaves the row once more.
      gone.current = true
      gone.current = take(draft, said, entered) === null
      setTaken(!gone.current)
    },
  }
}
