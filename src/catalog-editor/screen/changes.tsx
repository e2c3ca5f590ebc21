/** What differs, a line each: against the catalog that was opened, or against the demo shop's. */
import { useMemo, useState } from 'react'
import { Select } from '../../ui/select.tsx'
import { type Change, changesBetween } from '../changes.ts'
import { isList, type Json, type JsonObject, type Path, valueAt, withValue } from '../draft.ts'
import { CATALOG_FORM, sectionOf } from '../form/catalog-form.ts'
import { nodeAt } from '../form/node.ts'
import { valueText } from '../form/told.ts'
import { useCatalog, useEditor, useWords, type Words } from './context.ts'

/** More are counted. */
const SHOWN = 150

/** `Frames, Frame 4 x 8 ft: Price`. */
function whereText(path: Path, of: string, { t, label }: Words): string {
  const section = sectionOf(path)
  const last = path.at(-1)
  const field = typeof last === 'number' ? '' : label(path)
  return [section ? t(`section.${section}`) : '', of, field].filter((one) => one !== '').join(', ')
}

export function changeText(change: Change, draft: Json, words: Words): string {
  const { kind, path, before, after, of } = change
  const { t } = words
  const node = nodeAt(CATALOG_FORM, path, draft)
  const where = whereText(path, of, words)
  const entry = typeof path.at(-1) === 'number'
  if (kind === 'moved') return t('change.moved', { where })
  if (kind === 'added' && (entry || typeof after === 'object')) return t('change.added', { where })
  if (kind === 'removed' && (entry || typeof before === 'object')) return t('change.removed', { where })
  if (kind === 'added') return t('change.is-new', { where, after: valueText(node, after, words) })
  if (kind === 'removed') return t('change.is-gone', { where, before: valueText(node, before, words) })
  return t('change.changed', {
    where,
    before: valueText(node, before, words),
    after: valueText(node, after, words),
  })
}

/** As it was there. */
export function putBack(draft: JsonObject, { kind, path, before }: Change): JsonObject {
  const last = path.at(-1)
  if (kind === 'removed' && typeof last === 'number') {
    const list = valueAt(draft, path.slice(0, -1))
    const at = isList(list) ? list : []
    return withValue(draft, path.slice(0, -1), at.toSpliced(last, 0, before ?? null)) as JsonObject
  }
  if (kind === 'moved') {
    const list = valueAt(draft, path)
    const order = isList(before) ? before : []
    const rank = (one: Json): number => order.indexOf(valueAt(one, ['code']) ?? null)
    return isList(list)
      ? (withValue(
          draft,
          path,
          list.toSorted((a, b) => rank(a) - rank(b)),
        ) as JsonObject)
      : draft
  }
  return withValue(draft, path, before) as JsonObject
}

export function ChangesPanel() {
  const { store, demo, open, heading } = useEditor()
  const draft = useCatalog((s) => s.draft)
  const saved = useCatalog((s) => s.saved)
  const words = useWords()
  const { t } = words
  const [since, setSince] = useState<'since' | 'demo'>('demo')
  const changes = useMemo(
    () => changesBetween(since === 'demo' ? demo : saved, draft),
    [since, demo, saved, draft],
  )
  return (
    <section className="panel" aria-labelledby="changes-title">
      <h2 id="changes-title" tabIndex={-1} ref={heading}>
        {t('changes.title')}
      </h2>
      <Select
        name={t('changes.of')}
        value={since}
        options={['demo', 'since'] as const}
        wordOf={(one) => t(`changes.${one}`)}
        set={setSince}
      />
      {changes.length === 0 && <p className="hint">{t('changes.none')}</p>}
      <ul className="changes">
        {changes.slice(0, SHOWN).map((change) => {
          const text = changeText(change, draft, words)
          return (
            <li key={`${change.kind} ${change.path.join('/')}`}>
              <span>{text}</span>
              <button
                type="button"
                className="quiet"
                aria-label={t('change.back-of', { where: whereText(change.path, change.of, words) })}
                onClick={() => store.getState().change((now) => putBack(now, change))}
              >
                {t('change.back')}
              </button>
            </li>
          )
        })}
      </ul>
      {changes.length > SHOWN && <p>{t('changes.more', { count: changes.length - SHOWN })}</p>}
      <div className="actions">
        <button type="button" onClick={() => open('form')}>
          {t('back')}
        </button>
      </div>
    </section>
  )
}
