/** How deep is it? The soundings as a table: typed, pasted from a spreadsheet, added and taken out. Depth or height, never signs. */
import { type ClipboardEvent, useState } from 'react'
import { useLeadline } from '../state/store.ts'
import { LengthField, Sign } from '../ui/controls.tsx'
import { bareUnit, parseLength } from '../units/parse.ts'
import { DEPTHS } from '../words/depths.ts'
import { count, meters } from '../words/index.ts'
import { useWords } from '../words/use-words.ts'
import { DraftRow } from './draft-row.tsx'
import { isGrid, readPaste } from './paste.ts'
import { addSounding, changeSounding, nextPlace, removeSounding } from './soundings.ts'
import { type Draft, takePaste } from './take-paste.ts'

/** Rows at first, and more at each asking: a site may have thousands. */
const PAGE = 40

export function Depths() {
  const design = useLeadline((s) => s.design)
  const edit = useLeadline((s) => s.edit)
  const { t, units } = useWords(DEPTHS)
  const [shown, setShown] = useState(PAGE)
  const [drafts, setDrafts] = useState<readonly Draft[]>([])
  const [told, setTold] = useState<readonly string[]>([])
  const [nextKey, setNextKey] = useState(0)
  const { soundings } = design.site

  const paste = (event: ClipboardEvent<HTMLElement>): void => {
    const clip = event.clipboardData.getData('text/plain')
    if (!isGrid(clip)) return
    event.preventDefault()
    const cell = (event.target as HTMLElement).closest<HTMLElement>('[data-cell]')
    const row = Number(cell?.closest<HTMLElement>('[data-row]')?.dataset.row ?? soundings.length)
    const column = cell?.dataset.cell === 'depth' ? 'depth' : 'distance'
    const taken = takePaste(design, readPaste(clip, bareUnit(units)), row, column)
    const issues = taken.rows > 0 ? edit(() => taken.design) : []
    if (issues[0]) {
      setTold([`${issues[0].path}: ${issues[0].message}`])
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
  const add = (): void => {
    const distance = nextPlace(design)
    edit((d) => addSounding(d, { distance, offset: 0, depth: d.site.soundings.at(-1)!.depth }))
    setShown(Math.max(shown, soundings.length + 1))
  }
  const dropDraft = (key: number): void => setDrafts(drafts.filter((draft) => draft.key !== key))
  const takeDraft = (draft: Draft, distance: string, depth: string): 'taken' | 'wrong' | null => {
    const [x, z] = [parseLength(distance, bareUnit(units)), parseLength(depth, bareUnit(units))]
    if (!x.ok || !z.ok) return 'wrong'
    const issues = edit((d) => addSounding(d, { distance: x.meters, offset: 0, depth: z.meters }))
    if (issues.length > 0) return 'taken'
    dropDraft(draft.key)
    return null
  }

  return (
    <div className="depths" onPaste={paste}>
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
        <tbody>
          {soundings.slice(0, shown).map((_, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a sounding is its place in the list; that is its only name.
            <Row key={i} index={i} />
          ))}
          {drafts.map((draft) => (
            <DraftRow key={draft.key} draft={draft} take={takeDraft} drop={() => dropDraft(draft.key)} />
          ))}
        </tbody>
      </table>
      <div className="actions">
        <button type="button" onClick={add}>
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
  )
}

type Where = 'out' | 'back' | 'out-high' | 'back-deep'

function Row({ index }: { readonly index: number }) {
  const sounding = useLeadline((s) => s.design.site.soundings[index])
  const only = useLeadline((s) => s.design.site.soundings.length < 2)
  const edit = useLeadline((s) => s.edit)
  const { t } = useWords(DEPTHS)
  if (!sounding) return null
  const { distance, offset, depth } = sounding
  const back = distance < 0
  const high = depth < 0
  const where: Where = back ? (high || depth === 0 ? 'back' : 'back-deep') : high ? 'out-high' : 'out'
  const options: Where[] = ['out', 'back', ...(where === 'out' || where === 'back' ? [] : [where])]
  const set = (next: Where): void => {
    if (next !== 'out' && next !== 'back') return
    const sign = next === 'out' ? 1 : -1
    edit((d) =>
      changeSounding(d, index, {
        distance: sign * Math.abs(distance) + 0,
        depth: sign * Math.abs(depth) + 0,
      }),
    )
  }
  return (
    <tr data-row={index}>
      <td data-cell="distance">
        <LengthField
          label={t('depths.distance')}
          hideLabel
          value={Math.abs(distance)}
          commit={(to) => edit((d) => changeSounding(d, index, { distance: (back ? -to : to) + 0 }))}
        />
        {offset !== 0 && <small>{t('depths.aside', { offset: meters(Math.abs(offset)) })}</small>}
      </td>
      <td>
        <select
          aria-label={t('depths.where')}
          value={where}
          onChange={(event) => set(event.currentTarget.value as Where)}
        >
          {options.map((option) => (
            <option key={option} value={option}>
              {t(`depths.${option}`)}
            </option>
          ))}
        </select>
      </td>
      <td data-cell="depth">
        <LengthField
          label={t('depths.depth')}
          hideLabel
          value={Math.abs(depth)}
          commit={(to) =>
            edit((d) => changeSounding(d, index, { depth: (high || where === 'back' ? -to : to) + 0 }))
          }
        />
      </td>
      <td>
        <button
          type="button"
          className="quiet icon"
          disabled={only}
          aria-label={t(back ? 'depths.remove-back' : 'depths.remove', {
            distance: meters(Math.abs(distance)),
          })}
          onClick={() => edit((d) => removeSounding(d, index))}
        >
          <Sign d="M5 5l8 8M13 5l-8 8" />
        </button>
      </td>
    </tr>
  )
}
