/** How deep is it? The soundings as a table: typed, pasted from a spreadsheet, added and taken out. Depth or height, never signs. */
import {
  type ClipboardEvent,
  type FocusEvent,
  type RefObject,
  useLayoutEffect,
  useRef,
  useState,
} from 'react'
import { useLeadline, useLeadlineStore } from '../state/store.ts'
import { Sign } from '../ui/controls.tsx'
import { Fold } from '../ui/fold.tsx'
import { chunk, Lazy } from '../ui/lazy.tsx'
import { useSheet } from '../ui/use-sheet.ts'
import { useWords } from '../ui/use-words.ts'
import { bareUnit } from '../units/parse.ts'
import { DEPTHS } from '../words/depths.ts'
import { count } from '../words/index.ts'
import css from './depths.css?inline'
import { DraftRow, type Said } from './draft-row.tsx'
import { addSounding, inTheWay, sorted } from './more-soundings.ts'
import { isGrid, readPaste } from './paste.ts'
import { SoundingRow } from './sounding-row.tsx'
import { byDistance, changeSounding } from './soundings.ts'
import { type Draft, takePaste } from './take-paste.ts'

const plan = chunk(() => import('../bed/plan/bed-plan.tsx').then((m) => m.BedPlan))
const file = chunk(() => import('../bed/soundings-file.tsx').then((m) => m.SoundingsFile))
const stake = chunk(() => import('./stake.tsx').then((m) => m.Stake))

/** Rows shown at first; a site may have thousands. */
const PAGE = 40

export function Depths() {
  const design = useLeadline((s) => s.design)
  const { t } = useWords(DEPTHS)
  const [shown, setShown] = useState(PAGE)
  const box = useSheet<HTMLDivElement>(css)
  const addButton = useRef<HTMLButtonElement>(null)
  const { drafts, told, paste, add, takeDraft, dropDraft, lately } = useDrafts(addButton)
  const { soundings } = design.site
  const { body, order, hold, leave } = useOrder()

  return (
    <>
      <div className="depths" ref={box} onPaste={paste}>
        <p className="hint">{t('depths.hint')}</p>
        <table>
          <thead>
            <tr>
              <th scope="col">{t('depths.distance')}</th>
              <th scope="col">{t('depths.where')}</th>
              <th scope="col">{t('depths.depth')}</th>
              <td />
            </tr>
          </thead>
          <tbody ref={body} onFocus={hold} onBlur={leave}>
            {order.slice(0, shown).map((i, row) => (
              <SoundingRow key={i} index={i} row={row} lately={lately} />
            ))}
            {drafts.map((draft) => (
              <DraftRow key={draft.key} draft={draft} take={takeDraft} drop={() => dropDraft(draft.key)} />
            ))}
          </tbody>
        </table>
        <div className="actions">
          <button type="button" ref={addButton} onClick={add}>
            <Sign d="M4 9h10M9 4v10" />
            {t('depths.add')}
          </button>
          {shown < soundings.length && (
            <button type="button" className="quiet" onClick={() => setShown(shown + 5 * PAGE)}>
              {t('depths.more')} ({soundings.length - shown})
            </button>
          )}
        </div>
        <div role="status">
          {told.map((line) => (
            <p key={line} className="hint">
              {line}
            </p>
          ))}
        </div>
      </div>
      {/* Beside the table, which takes what is pasted into it at once. */}
      <Fold className="control" summary={t('depths.plan')}>
        <Lazy chunk={plan} props={{}} />
      </Fold>
      <Fold className="control" summary={t('depths.file')}>
        <Lazy chunk={file} props={{}} />
      </Fold>
      <Fold className="control" summary={t('depths.stake')}>
        <Lazy chunk={stake} props={{}} />
      </Fold>
    </>
  )
}

/**
 * The rows by distance. While the hand is in one they stay where they are, or it would be carried off; they are sorted when it is left. Whoever
 * was on the way to another row gets there, though rows are moved meanwhile.
 */
function useOrder() {
  const store = useLeadlineStore()
  const design = useLeadline((s) => s.design)
  const body = useRef<HTMLTableSectionElement>(null)
  const [held, setHeld] = useState<readonly number[] | null>(null)
  const [toward, setToward] = useState<HTMLElement | null>(null)
  const order = held?.length === design.site.soundings.length ? held : byDistance(design)
  useLayoutEffect(() => {
    if (!toward) return
    setToward(null)
    const root = toward.getRootNode() as ShadowRoot
    if (toward.isConnected && root.activeElement !== toward) toward.focus()
  }, [toward])
  return {
    body,
    order,
    hold: () => setHeld((now) => now ?? byDistance(store.getState().design)),
    leave: ({ target, relatedTarget }: FocusEvent<HTMLElement>) => {
      const to = relatedTarget instanceof HTMLElement ? relatedTarget : null
      if (to?.closest('tr') === (target as HTMLElement).closest('tr') && to) return
      setHeld(null)
      setToward(to && body.current?.contains(to) ? to : null)
    },
  }
}

/**
 * Rows that are no soundings yet: added and still empty, or pasted from a spreadsheet (into the soundings, from the focused cell on) and not to
 * be read. `lately`: the last one that became a sounding, so that what is doubtful in it is asked about where it went.
 */
function useDrafts(addButton: RefObject<HTMLButtonElement | null>) {
  const design = useLeadline((s) => s.design)
  const edit = useLeadline((s) => s.edit)
  const { t, units } = useWords(DEPTHS)
  const { t: screen } = useWords()
  const [drafts, setDrafts] = useState<readonly Draft[]>([])
  const [told, setTold] = useState<readonly string[]>([])
  const [nextKey, setNextKey] = useState(0)
  const [lately, setLately] = useState<Said | null>(null)
  const add = (): void => {
    setDrafts([...drafts, { key: nextKey, distance: '', depth: '', taken: false, added: true }])
    setNextKey(nextKey + 1)
  }
  const paste = (event: ClipboardEvent<HTMLElement>): void => {
    const clip = event.clipboardData.getData('text/plain')
    if (!isGrid(clip)) return
    event.preventDefault()
    const cell = event.target instanceof Element ? event.target.closest<HTMLElement>('[data-cell]') : null
    const row = Number(cell?.closest<HTMLElement>('[data-row]')?.dataset.row ?? design.site.soundings.length)
    const column = cell?.dataset.cell === 'depth' ? 'depth' : 'distance'
    const taken = takePaste(sorted(design), readPaste(clip, bareUnit(units)), row, column)
    const issues = taken.rows > 0 ? edit(() => taken.design) : []
    if (issues[0]) {
      setTold([screen('length.refused')])
      return
    }
    setDrafts([...drafts, ...taken.drafts.map((draft, i) => ({ ...draft, key: nextKey + i }))])
    setNextKey(nextKey + taken.drafts.length)
    const wrong = taken.drafts.length
    setTold([
      t('depths.pasted', { rows: count(taken.rows) }),
      ...(wrong > 0 ? [t('depths.wrong', { wrong: count(wrong) })] : []),
    ])
  }
  const dropDraft = (key: number): void => setDrafts(drafts.filter((draft) => draft.key !== key))
  const takeDraft = (draft: Draft, said: Said, entered: boolean): 'taken' | null => {
    const { distance, depth } = said
    const issues = edit((d) => {
      // What was only taken to be there gives way to what was measured.
      const there = inTheWay(d, -1, distance)
      return there?.assumed
        ? changeSounding(d, d.site.soundings.indexOf(there), { depth })
        : addSounding(d, { distance, offset: 0, depth })
    })
    if (issues.length > 0) return 'taken'
    setLately(said)
    dropDraft(draft.key)
    // On to the next one.
    if (entered) addButton.current?.focus()
    return null
  }
  return { drafts, told, paste, add, takeDraft, dropDraft, lately }
}
