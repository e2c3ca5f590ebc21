/** Depths from a file or a pasted table: read, shown as they were understood, and taken in when that is right. And saved as files. */
import { useRef, useState } from 'react'
import { download } from '../platform/download.ts'
import { plainName } from '../platform/file-name.ts'
import { readTable, type Table, type TableFault } from '../soundings-file/table.ts'
import { placingOf, soundingsCsv, soundingsGeoJson } from '../soundings-file/write.ts'
import { useLeadline } from '../state/store.ts'
import { Hint, wholeInSight } from '../ui/controls.tsx'
import { useSheet } from '../ui/use-sheet.ts'
import { useWords } from '../ui/use-words.ts'
import { count } from '../words/index.ts'
import { SOUNDINGS_FILE } from '../words/soundings-file.ts'
import { Confirm } from './confirm.tsx'
import { OpenFile } from './open-file.tsx'
import css from './soundings-file.css?inline'

type Told = { readonly fault: TableFault | 'unreadable' } | { readonly taken: number } | null

export function SoundingsFile() {
  const { t } = useWords(SOUNDINGS_FILE)
  const box = useSheet<HTMLDivElement>(css)
  const [text, setText] = useState('')
  const [table, setTable] = useState<Table | null>(null)
  const [told, setTold] = useState<Told>(null)
  const take = async (from: string): Promise<void> => {
    setTold(null)
    const read = await readTable(from)
    if (read.ok) setTable(read.table)
    else setTold({ fault: read.fault })
  }
  // The button that had the focus goes: who goes by keyboard goes on here, and undo is asked of this dock.
  const status = useRef<HTMLDivElement>(null)
  const close = (taken?: number): void => {
    status.current?.focus({ preventScroll: true })
    setTable(null)
    setText('')
    setTold(taken === undefined ? null : { taken })
  }
  return (
    <div className="soundings-file" ref={box}>
      {table ? (
        <Confirm table={table} done={close} />
      ) : (
        <>
          <Hint>{t('hint')}</Hint>
          <label>
            <span>{t('paste')}</span>
            <textarea
              rows={5}
              spellCheck={false}
              value={text}
              onFocus={wholeInSight}
              onChange={(event) => setText(event.currentTarget.value)}
            />
          </label>
          <div className="actions">
            <button type="button" disabled={text.trim() === ''} onClick={() => take(text)}>
              {t('read')}
            </button>
            <OpenFile take={take} failed={() => setTold({ fault: 'unreadable' })} />
          </div>
          <Save />
        </>
      )}
      <div role="status" ref={status} tabIndex={-1}>
        {told && <p className={'fault' in told ? 'fault' : 'hint'}>{wordsFor(told)}</p>}
      </div>
    </div>
  )

  function wordsFor(of: NonNullable<Told>): string {
    if ('taken' in of) return t('taken', { rows: count(of.taken) })
    if (of.fault === 'unreadable') return t('fault.unreadable')
    const { why, line } = of.fault
    if (why === 'not-xml' && line === undefined) return t('fault.not-xml-whole')
    return t(`fault.${why}`, line === undefined ? {} : { line: count(line) })
  }
}

function Save() {
  const site = useLeadline((s) => s.design.site)
  const name = useLeadline((s) => s.design.name)
  const { t } = useWords(SOUNDINGS_FILE)
  const placing = placingOf(site)
  const file = (ending: string): string => `${plainName(name)}.${ending}`
  return (
    <fieldset className="save">
      <legend>{t('save')}</legend>
      <div className="actions">
        <button
          type="button"
          onClick={() => download(soundingsCsv(site.soundings), 'text/csv', file('soundings.csv'))}
        >
          {t('save.csv')}
        </button>
        <button
          type="button"
          disabled={!placing}
          onClick={() =>
            placing &&
            download(
              soundingsGeoJson(site.soundings, placing),
              'application/geo+json',
              file('soundings.geojson'),
            )
          }
        >
          {t('save.geojson')}
        </button>
      </div>
      {!placing && <Hint>{t('save.no-place')}</Hint>}
    </fieldset>
  )
}
