/** Entries by names of the shop's own: stock, materials, spares by kind, panels that lie in another's place, names in languages. */
import { useId, useState } from 'react'
import { kindWord } from '../../../rules/index.ts'
import { isObject, isUnder, type JsonObject, type Path, renamedKey } from '../draft.ts'
import { blankOf, freeCode } from '../form/blank.ts'
import { codesOf, followed } from '../form/catalog-form.ts'
import type { RecordNode } from '../form/node.ts'
import { useCatalog, useEditor, useWords } from './context.ts'
import { useFaultsUnder } from './field.tsx'
import { Box, Faults, Form, isSimple, LeafField } from './form.tsx'
import { NamesInLanguages } from './names-in-languages.tsx'

interface Props {
  readonly node: RecordNode
  readonly path: Path
  readonly value: JsonObject
}

export function RecordForm(props: Props) {
  const { node, path, value } = props
  const { t, label } = useWords()
  if (path.length === 1 && path[0] === 'words') return <NamesInLanguages value={value} />
  const keys = Object.keys(value)
  return (
    <Box path={path} title={label(path)} says={node.says}>
      <Faults path={path} />
      {keys.length === 0 && <p className="hint">{t('record.none')}</p>}
      <div className="entries">
        {keys.map((key) => (
          <Named key={key} node={node} list={value} path={[...path, key]} name={key} />
        ))}
      </div>
      <NewName {...props} />
    </Box>
  )
}

interface NamedProps {
  readonly node: RecordNode
  readonly list: JsonObject
  readonly path: Path
  readonly name: string
}

function Named({ node, list, path, name }: NamedProps) {
  const { store, aim } = useEditor()
  const { t, reader } = useWords()
  const faults = useFaultsUnder(path)
  const inner = node.value
  const value = list[name]
  const shown = path[1] === 'byKind' ? kindWord(name, reader) : name
  const remove = (
    <button
      type="button"
      className="quiet"
      aria-label={t('entry.remove', { name: shown })}
      onClick={() => store.getState().set(path, undefined)}
    >
      {t('remove')}
    </button>
  )
  if (isSimple(inner))
    return (
      <div className="plain-row">
        <LeafField node={inner} path={path} value={value} label={shown} />
        {remove}
      </div>
    )
  return (
    <details
      className="entry"
      data-path={path.join('/')}
      data-bad={faults > 0 || undefined}
      open={aim !== null && isUnder(aim.path, path)}
    >
      <summary>
        {shown}
        {faults > 0 && <span className="badge bad">{t('section.has', { count: faults })}</span>}
      </summary>
      {path[1] !== 'byKind' && <Rename path={path} list={list} name={name} />}
      <Form node={inner} path={path} value={value} open />
      <div className="actions">{remove}</div>
    </details>
  )
}

/** All that names it goes with it. */
function Rename({ path, list, name }: Omit<NamedProps, 'node'>) {
  const { store } = useEditor()
  const { t } = useWords()
  const id = useId()
  const [typed, type] = useState(name)
  const to = typed.trim()
  const taken = to !== name && Object.hasOwn(list, to)
  const commit = (): void => {
    if (to === '' || to === name || taken) {
      if (!taken) type(name)
      return
    }
    const parent = path.slice(0, -1)
    store.getState().change((draft) => {
      const renamed = putAt(draft, parent, renamedKey(list, name, to))
      return followed(renamed, [...parent, to], name, to) as JsonObject
    })
  }
  return (
    <div className="cell">
      <label htmlFor={id}>{t('record.name')}</label>
      <input
        id={id}
        type="text"
        value={typed}
        aria-invalid={taken}
        onChange={(event) => type(event.currentTarget.value)}
        onBlur={commit}
        onKeyDown={(event) => event.key === 'Enter' && commit()}
      />
      {taken && <p className="fault">{t('record.taken', { name: to })}</p>}
    </div>
  )
}

const putAt = (draft: JsonObject, path: Path, value: JsonObject): JsonObject => {
  const [key, ...rest] = path
  if (key === undefined) return value
  const inner = draft[key]
  return { ...draft, [key]: putAt(isObject(inner) ? inner : {}, rest, value) }
}

/** A new one is like the last; where names are known already, one of those. */
function NewName({ node, path, value }: Props) {
  const { store } = useEditor()
  const { t, reader, label } = useWords()
  const draft = useCatalog((s) => s.draft)
  const id = useId()
  const panels = path.at(-1) === 'panels'
  const known = path[1] === 'byKind' ? SPARE_KINDS : panels ? codesOf(draft, 'panels') : null
  const put = (key: string): void => {
    const last = Object.values(value).at(-1)
    const blank = panels ? key : last === undefined ? blankOf(node.value) : last
    store.getState().set([...path, key], blank)
  }
  if (!known)
    return (
      <button
        type="button"
        onClick={() => put(freeCode(Object.keys(value).at(-1) ?? String(path[0]), Object.keys(value)))}
      >
        {t(Object.keys(value).length > 0 ? 'add.entry' : 'add.first')}
      </button>
    )
  const left = known.filter((key) => !Object.hasOwn(value, key))
  if (left.length === 0) return null
  return (
    <div className="cell">
      <label htmlFor={id}>{t('add.named', { what: label(path) })}</label>
      <select
        id={id}
        value=""
        onChange={(event) => event.currentTarget.value !== '' && put(event.currentTarget.value)}
      >
        <option value="">{t('unstated')}</option>
        {left.map((key) => (
          <option key={key} value={key}>
            {path[1] === 'byKind' ? kindWord(key, reader) : key}
          </option>
        ))}
      </select>
    </div>
  )
}

/** Small parts that a shop puts in a few more of. */
const SPARE_KINDS = [
  'set-bolt',
  'pad-bolt',
  'hook-bolt',
  'brace-bolt',
  'bar-bolt',
  'pin-bolt',
  'hinge-pin',
  'deck-clip',
  'leg-cap',
  'sleeve-cap',
  'foot-pad',
  'brace-clamp',
  'hook-bracket',
  'deck-panel',
] as const
