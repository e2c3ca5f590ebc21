/** What is right in itself and still worth a look: prices of the demo, frames without a brace, figures taken for granted. */
import { formatLength } from '../../../rules/index.ts'
import { isUnder } from '../draft.ts'
import { SECTION_NAMES, type SectionName, sectionOf } from '../form/catalog-form.ts'
import type { Remark } from '../remarks.ts'
import { useCatalog, useEditor, useWords, type Words } from './context.ts'

interface Props {
  readonly remarks: readonly Remark[]
  readonly all: readonly Remark[]
}

export function Looks({ remarks, all }: Props) {
  const { section, go, show, store } = useEditor()
  const guessed = useCatalog((s) => s.guessed)
  const words = useWords()
  const { t } = words
  const own = guessed.filter((path) => sectionOf(path) === section)
  // Once, where a shop begins.
  const others =
    section === 'shop'
      ? SECTION_NAMES.filter(
          (one) =>
            one !== section &&
            (all.some((remark) => remark.section === one) || guessed.some((path) => sectionOf(path) === one)),
        )
      : []
  if (remarks.length === 0 && own.length === 0 && others.length === 0)
    return section === 'shop' ? <p className="hint">{t('looks.none')}</p> : null
  return (
    <details className="looks" open={remarks.length > 0 || own.length > 0}>
      <summary>{t('looks')}</summary>
      <ul>
        {remarks.map((remark) => (
          <li key={`${remark.key} ${remark.path.join('/')}`}>
            {remarkText(remark, words)}{' '}
            <button type="button" className="quiet" onClick={() => go(remark.path)}>
              {t('faults.go')}
            </button>
          </li>
        ))}
        {own[0] && (
          <li>
            {t('look.guessed', { count: own.length })}{' '}
            <button type="button" className="quiet" onClick={() => go(own[0]!)}>
              {t('faults.go')}
            </button>{' '}
            <button
              type="button"
              className="quiet"
              onClick={() =>
                store.getState().change(
                  (draft) => draft,
                  (before) => before.filter((path) => !own.some((one) => isUnder(path, one))),
                )
              }
            >
              {t('guessed.right')}
            </button>
          </li>
        )}
        {others.length > 0 && (
          <li className="others">
            {t('looks.elsewhere')}{' '}
            {others.map((one: SectionName) => (
              <button key={one} type="button" className="quiet" onClick={() => show(one)}>
                {t(`section.${one}`)}
              </button>
            ))}
          </li>
        )}
      </ul>
    </details>
  )
}

function remarkText(remark: Remark, { t, reader }: Words): string {
  switch (remark.key) {
    case 'demo-prices':
      return t('look.demo-prices', { count: remark.count })
    case 'no-brace':
      return t('look.no-brace', { frame: remark.frame, spacing: formatLength(remark.spacing, reader) })
    case 'no-brace-for-leg':
      return t('look.no-brace-for-leg', { length: formatLength(remark.length, reader) })
    case 'still-demo-name':
    case 'demo-contact':
    case 'demo-terms':
      return t(`look.${remark.key}`)
  }
}
