/** All that must be put right before a page can use the catalog, with the way to each. */
import { keysOf, valueAt } from '../draft.ts'
import { CATALOG_FORM } from '../form/catalog-form.ts'
import { nodeAt } from '../form/node.ts'
import { faultText } from '../form/told.ts'
import { useCatalog, useEditor, useWords } from './context.ts'

/** More are counted. */
const SHOWN = 8

export function Faulty() {
  const { go } = useEditor()
  const issues = useCatalog((s) => s.issues)
  const draft = useCatalog((s) => s.draft)
  const words = useWords()
  const { t } = words
  if (issues.length === 0) return null
  return (
    <div className="faulty" role="status">
      <p>
        <strong>{t('faults', { count: issues.length })}.</strong> {t('faults.dock')}
      </p>
      <ul>
        {issues.slice(0, SHOWN).map((issue) => {
          const path = keysOf(issue.path)
          const node = nodeAt(CATALOG_FORM, path, draft)
          return (
            <li key={`${issue.path} ${issue.message}`}>
              <button type="button" className="quiet" onClick={() => go(path)}>
                {issue.path === '' ? t('faults.go') : issue.path}
              </button>{' '}
              {node ? faultText(node, valueAt(draft, path), issue, words) : issue.message}
            </li>
          )
        })}
      </ul>
      {issues.length > SHOWN && <p className="hint">{t('changes.more', { count: issues.length - SHOWN })}</p>}
    </div>
  )
}
