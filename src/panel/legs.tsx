/** Every leg by its number, to be read with wet hands: where it stands, how high it is set, how long it is, where its brace goes. */
import { type RefObject, useEffect, useRef } from 'react'
import type { Dock, Leg } from '../../rules/index.ts'
import { braceHoles, legNumber } from '../../rules/leg-places.ts'
import { LEGS, placeOfLeg } from '../../rules/words/leg-name.ts'
import { useLeadline, useLeadlineStore, usePlaced } from '../state/store.ts'
import { useSheet } from '../ui/use-sheet.ts'
import { useWords } from '../ui/use-words.ts'
import { count, text } from '../words/index.ts'
import css from './legs.css?inline'
import { PickButton } from './pick-button.tsx'

export function Legs() {
  const dock = usePlaced()
  const store = useLeadlineStore()
  const selection = useLeadline((s) => s.selection)
  const box = useSheet<HTMLElement>(css)
  const { t } = useWords(LEGS)
  const rows = useRef<Rows>(new Map())
  useFollowed(box, rows, selection)
  const go = (leg: Leg): void => {
    store.getState().set({ selection: leg.id })
    rows.current.get(leg.id)?.scrollIntoView({ block: 'start' })
  }
  return (
    <section className="answer by-number" part="legs" ref={box}>
      <h2>{t('title')}</h2>
      {dock.legs.length === 0 ? <p className="hint">{t('empty')}</p> : <p className="hint">{t('how')}</p>}
      {/* biome-ignore lint/a11y/useSemanticElements: a row of buttons, not of fields. */}
      <div className="numbers" role="group" aria-label={t('numbers')}>
        {dock.legs.map((leg) => (
          <button
            key={leg.id}
            type="button"
            aria-label={t('number', { number: count(legNumber(dock, leg.id)) })}
            aria-pressed={selection === leg.id}
            onClick={() => go(leg)}
          >
            {legNumber(dock, leg.id)}
          </button>
        ))}
      </div>
      <ol>
        {dock.legs.map((leg) => (
          <Row key={leg.id} leg={leg} dock={dock} picked={selection === leg.id} rows={rows} />
        ))}
      </ol>
      {dock.pairs.some(({ brace }) => brace) && <p className="hint">{t('measured')}</p>}
    </section>
  )
}

/** By its leg's id. */
type Rows = Map<string, HTMLLIElement>

/** What is picked in the picture or the section is brought into sight here; what is picked elsewhere leaves the page where it is. */
function useFollowed(
  box: RefObject<HTMLElement | null>,
  rows: RefObject<Rows>,
  selection: string | null,
): void {
  const seen = useRef(false)
  useEffect(() => {
    const app = box.current?.closest('.app')
    const note = (event: Event): void => {
      seen.current = (event.target as Element).closest('.stage, .strip') !== null
    }
    app?.addEventListener('pointerdown', note, true)
    return () => app?.removeEventListener('pointerdown', note, true)
  }, [box])
  useEffect(() => {
    if (seen.current && selection !== null) rows.current.get(selection)?.scrollIntoView({ block: 'nearest' })
  }, [rows, selection])
}

interface RowProps {
  readonly leg: Leg
  readonly dock: Dock
  readonly picked: boolean
  /** Takes it in while it is shown. */
  readonly rows: RefObject<Rows>
}

function Row({ leg, dock, picked, rows }: RowProps) {
  const { t, length, reader } = useWords(LEGS)
  const place = placeOfLeg(dock, leg.id, reader)
  const holes = braceHoles(dock, leg)
  const measures: readonly (readonly [name: string, figure: string, of?: string])[] = [
    [t('deck'), length(leg.setHeight)],
    [t('frame'), length(leg.setHeightFrame)],
    [t('length'), leg.stock === null ? t('none-long-enough') : length(leg.stock)],
    ...(holes.length === 0
      ? [[t('brace.none'), t('brace.no')] as const]
      : holes.map(
          ({ end, up, code }) => [t(`brace.${end}`), t('up', { up: text(length(up)) }), code] as const,
        )),
  ]
  return (
    <li
      ref={(row) => {
        if (row) rows.current.set(leg.id, row)
        else rows.current.delete(leg.id)
      }}
      data-leg={leg.id}
      className={picked ? 'lit' : ''}
    >
      <PickButton id={leg.id}>
        <span className="leg-number">{legNumber(dock, leg.id)}</span> {place}
      </PickButton>
      <dl>
        {measures.map(([name, figure, of]) => (
          <div key={name}>
            <dt>
              {name} {of && <small>{of}</small>}
            </dt>
            <dd>{figure}</dd>
          </div>
        ))}
      </dl>
    </li>
  )
}
