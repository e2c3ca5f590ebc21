/** The editor's head: files, price list, what has changed, undo, units; and what was last told. */
import { useRef, useState } from 'react'
import type { Reader } from '../../../rules/index.ts'
import { parseCatalog } from '../../../rules/index.ts'
import { FilePick } from '../../ui/file-picker.tsx'
import type { JsonObject } from '../draft.ts'
import { readCatalogFile } from '../file.ts'
import type { Aside } from '../keep.ts'
import { type Told, useCatalog, useEditor, useWords } from './context.ts'

interface Props {
  readonly side: 'catalog' | 'dock'
  setSide(side: 'catalog' | 'dock'): void
  setUnits(units: Reader['units']): void
}

export function Head({ side, setSide, setUnits }: Props) {
  const { store, open, panel, reader } = useEditor()
  const canUndo = useCatalog((s) => s.canUndo)
  const canRedo = useCatalog((s) => s.canRedo)
  const name = useCatalog((s) => s.draft.name)
  const edition = useCatalog((s) => s.draft.edition)
  const { t } = useWords()
  return (
    <div className="head">
      <div className="toolbar">
        <p className="which">
          <strong>{typeof name === 'string' ? name : t('title')}</strong>{' '}
          <small>{typeof edition === 'string' ? edition : ''}</small>
        </p>
        <div className="tools">
          <button type="button" disabled={!canUndo} onClick={() => store.getState().undo()}>
            {t('undo')}
          </button>
          <button type="button" disabled={!canRedo} onClick={() => store.getState().redo()}>
            {t('redo')}
          </button>
        </div>
        <div className="tools">
          <Files />
          <button type="button" aria-pressed={panel === 'price-list'} onClick={() => open('price-list')}>
            {t('price-list')}
          </button>
          <button type="button" aria-pressed={panel === 'changes'} onClick={() => open('changes')}>
            {t('changes')}
          </button>
          <button type="button" className="main" onClick={() => open('save')}>
            {t('save')}
          </button>
        </div>
        <fieldset className="units">
          <legend className="unseen">{t('units')}</legend>
          {(['imperial', 'metric'] as const).map((units) => (
            <button
              key={units}
              type="button"
              aria-pressed={reader.units === units}
              onClick={() => setUnits(units)}
            >
              {t(`units.${units}`)}
            </button>
          ))}
        </fieldset>
        <fieldset className="sides">
          <legend className="unseen">{t('show')}</legend>
          {(['catalog', 'dock'] as const).map((one) => (
            <button key={one} type="button" aria-pressed={side === one} onClick={() => setSide(one)}>
              {t(`show.${one}`)}
            </button>
          ))}
        </fieldset>
      </div>
      <Telling />
    </div>
  )
}

function Telling() {
  const { told, tell } = useEditor()
  const { t } = useWords()
  return (
    <div role="status" className="telling">
      {told && (
        <div className={`notice ${told.bad ? 'bad' : ''}`}>
          <p>{t(told.key, told.values)}</p>
          <button type="button" className="quiet" onClick={() => tell(null)}>
            {t('close')}
          </button>
        </div>
      )}
    </div>
  )
}

/** Opened whatever is wrong with it, as long as it is a catalog. */
export function openText(
  text: string,
  file: string,
): { readonly draft: JsonObject | null; readonly told: Told } {
  const read = readCatalogFile(text)
  if (!read.ok)
    return {
      draft: null,
      told: { key: `file.${read.why}`, values: { file, detail: read.detail }, bad: true },
    }
  const parsed = parseCatalog(read.draft)
  const name = typeof read.draft.name === 'string' ? read.draft.name : file
  const told: Told = parsed.ok
    ? { key: 'file.opened', values: { name } }
    : { key: 'file.opened-wrong', values: { name, count: parsed.issues.length }, bad: true }
  return { draft: read.draft, told }
}

function Files() {
  const { replace, tell, aside, demo, reader } = useEditor()
  const { t } = useWords()
  const [earlier, setEarlier] = useState<readonly Aside[] | null>(null)
  const menu = useRef<HTMLDetailsElement>(null)
  const close = (): void => {
    if (menu.current) menu.current.open = false
    setEarlier(null)
  }
  const take = async (file: File): Promise<void> => {
    close()
    try {
      const { draft, told } = openText(await file.text(), file.name)
      if (draft) replace(draft, told)
      else tell(told)
    } catch {
      tell({ key: 'file.unreadable', values: { file: file.name }, bad: true })
    }
  }
  const when = (at: number): string =>
    new Date(at).toLocaleString(reader.language.tag, { dateStyle: 'medium', timeStyle: 'short' })
  const nameOf = ({ name }: JsonObject): string => (typeof name === 'string' ? name : '')
  return (
    <details className="menu" ref={menu}>
      <summary>{t('file.menu')}</summary>
      <div className="sheet">
        <FilePick label={t('file.open')} take={take} />
        <button
          type="button"
          aria-expanded={earlier !== null}
          onClick={() => setEarlier(earlier ? null : aside())}
        >
          {t('file.aside')}
        </button>
        {earlier?.length === 0 && <p className="hint">{t('file.aside-none')}</p>}
        {earlier?.map(({ draft, at }) => (
          <button
            key={at}
            type="button"
            className="sub"
            onClick={() => {
              close()
              replace(draft, { key: 'file.opened', values: { name: nameOf(draft) } })
            }}
          >
            {t('file.aside-at', { name: nameOf(draft), when: when(at) })}
          </button>
        ))}
        <button
          type="button"
          onClick={() => {
            close()
            replace(demo, { key: 'file.opened', values: { name: nameOf(demo) } })
          }}
        >
          {t('file.demo')}
        </button>
      </div>
    </details>
  )
}
