/** What the shop's parts are called in other languages, a language at a time. */
import { useId, useMemo, useState } from 'react'
import { SHIPPED_LANGUAGES } from '../../words/shipped-names.ts'
import { isObject, type Json, type JsonObject } from '../draft.ts'
import { CATALOG_FORM, leavesOf } from '../form/catalog-form.ts'
import type { TextNode } from '../form/node.ts'
import { useCatalog, useEditor, useWords } from './context.ts'
import { TextField } from './field.tsx'
import { Box, Faults } from './form.tsx'

const NAME: TextNode = { kind: 'text', says: '', optional: true, most: 200, like: null }

/** By code, what the catalog itself calls it. */
function namesIn(draft: JsonObject): Map<string, string> {
  const names = new Map<string, string>()
  for (const { path, value } of leavesOf(CATALOG_FORM, draft)) {
    if (path.at(-1) !== 'code' || typeof value !== 'string') continue
    const owner = path
      .slice(0, -1)
      .reduce<Json | undefined>(
        (at, key) => (typeof at === 'object' && at !== null ? (at as JsonObject)[key] : undefined),
        draft,
      )
    names.set(value, isObject(owner) && typeof owner.name === 'string' ? owner.name : value)
  }
  return names
}

export function NamesInLanguages({ value }: { readonly value: JsonObject }) {
  const { store } = useEditor()
  const { t, label, reader } = useWords()
  const draft = useCatalog((s) => s.draft)
  const tags = [...new Set([...SHIPPED_LANGUAGES, ...Object.keys(value)])]
  const [chosen, choose] = useState<string>(() => Object.keys(value)[0] ?? SHIPPED_LANGUAGES[0])
  const [tag, type] = useState('')
  const ids = { language: useId(), tag: useId() }
  const names = useMemo(() => namesIn(draft), [draft])
  const now = value[chosen]
  const known = isObject(now) ? now : {}
  const others = Object.keys(known).filter((code) => !names.has(code))
  return (
    <Box path={['words']} title={label(['words'])} says={t('words.about')}>
      <Faults path={['words']} />
      <div className="cells">
        <div className="cell">
          <label htmlFor={ids.language}>{t('words.language')}</label>
          <select id={ids.language} value={chosen} onChange={(event) => choose(event.currentTarget.value)}>
            {tags.map((one) => (
              <option key={one} value={one}>
                {languageName(one, reader.language.tag)}
              </option>
            ))}
          </select>
        </div>
        <div className="cell">
          <label htmlFor={ids.tag}>{t('words.tag')}</label>
          <input
            id={ids.tag}
            type="text"
            value={tag}
            onChange={(event) => type(event.currentTarget.value.trim())}
          />
          <button
            type="button"
            disabled={!/^[A-Za-z]{2,3}(?:-[A-Za-z0-9]+)*$/.test(tag)}
            onClick={() => {
              store.getState().set(['words', tag], {})
              choose(tag)
              type('')
            }}
          >
            {t('words.add')}
          </button>
        </div>
      </div>
      <div className="cells names">
        {[...names, ...others.map((code) => [code, t('words.no-code', { code })] as const)].map(
          ([code, name]) => (
            <TextField
              key={`${chosen} ${code}`}
              node={NAME}
              path={['words', chosen, code]}
              value={Object.hasOwn(known, code) ? known[code] : undefined}
              label={name}
            />
          ),
        )}
      </div>
    </Box>
  )
}

function languageName(tag: string, of: string): string {
  try {
    return new Intl.DisplayNames([of], { type: 'language' }).of(tag) ?? tag
  } catch {
    return tag
  }
}
