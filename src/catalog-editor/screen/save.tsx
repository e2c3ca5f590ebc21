/** The catalog as a file: a new edition of it, with what is new in it said. */
import { useId, useMemo, useState } from 'react'
import { download } from '../../platform/download.ts'
import { plainName } from '../../platform/file-name.ts'
import { changesBetween } from '../changes.ts'
import { type JsonObject, same, withValue } from '../draft.ts'
import { nextEdition } from '../edition.ts'
import { writtenFile } from '../file.ts'
import { changeText } from './changes.tsx'
import { useCatalog, useEditor, useWords } from './context.ts'

/** More are counted. */
const SHOWN = 30

export function SavePanel() {
  const { store, open, tell, heading } = useEditor()
  const draft = useCatalog((s) => s.draft)
  const saved = useCatalog((s) => s.saved)
  const wrong = useCatalog((s) => s.issues.length)
  const words = useWords()
  const { t } = words
  const id = useId()
  const last = typeof saved.edition === 'string' ? saved.edition : ''
  const now = typeof draft.edition === 'string' ? draft.edition : ''
  const changes = useMemo(() => changesBetween(saved, draft), [saved, draft])
  // One that was given another edition by hand has it already.
  const [edition, setEdition] = useState(() =>
    now !== last || changes.length === 0 ? now : nextEdition(last),
  )
  const file = `${plainName(typeof draft.id === 'string' ? draft.id : '')}.catalog.json`
  const save = (): void => {
    const made = withValue(draft, ['edition'], edition) as JsonObject
    download(writtenFile(made), 'application/json', file)
    if (!same(made, saved)) store.getState().wrote(made)
    tell({ key: 'save.did', values: { file } })
    open('form')
  }
  return (
    <section className="panel" aria-labelledby="save-title">
      <h2 id="save-title" tabIndex={-1} ref={heading}>
        {t('save.title')}
      </h2>
      {wrong > 0 && <p className="fault">{t('save.wrong', { count: wrong })}</p>}
      <div className="cell">
        <label htmlFor={id}>{t('save.edition')}</label>
        <input
          id={id}
          type="text"
          maxLength={60}
          value={edition}
          onChange={(event) => setEdition(event.currentTarget.value)}
        />
        <p className="hint">{t('save.edition-hint', { edition: last })}</p>
      </div>
      <p>{changes.length === 0 ? t('save.same') : t('save.changed', { count: changes.length })}</p>
      <ul className="changes">
        {changes.slice(0, SHOWN).map((change) => (
          <li key={`${change.kind} ${change.path.join('/')}`}>{changeText(change, draft, words)}</li>
        ))}
      </ul>
      {changes.length > SHOWN && <p>{t('changes.more', { count: changes.length - SHOWN })}</p>}
      <div className="actions">
        <button type="button" className="main" onClick={save}>
          {wrong > 0 ? t('save.as-it-is') : t('save.file', { file })}
        </button>
        <button type="button" onClick={() => open('form')}>
          {t('back')}
        </button>
      </div>
    </section>
  )
}
