/** One field of the form: its label, its value as a shop types it, what the schema says of it, what is wrong with it, what it was. */
import { type ReactNode, useEffect, useId, useMemo, useRef, useState } from 'react'
import type { Issue } from '../../../rules/index.ts'
import { isList, isUnder, type Json, keysOf, type Path, samePath, valueAt } from '../draft.ts'
import { codesOf, namedAt } from '../form/catalog-form.ts'
import { readIn, shownIn, unitOf } from '../form/measure.ts'
import type { ChoiceNode, Node, NumberNode, TextNode } from '../form/node.ts'
import { faultText, optionText, scaleOf, valueText } from '../form/told.ts'
import { useCatalog, useEditor, useWords } from './context.ts'

export interface FieldProps<N extends Node = Node> {
  readonly node: N
  readonly path: Path
  readonly value: Json | undefined
  /** Where another name than the field's own is better. */
  readonly label?: string
  /** In a row of its own kind: its label and its description are not seen. */
  readonly bare?: boolean
}

/** What is wrong at this very place. */
export function useFaults(path: Path): readonly Issue[] {
  const issues = useCatalog((s) => s.issues)
  return useMemo(() => issues.filter((issue) => samePath(keysOf(issue.path), path)), [issues, path])
}

/** How many things are wrong there and below. */
export function useFaultsUnder(path: Path): number {
  const issues = useCatalog((s) => s.issues)
  return useMemo(() => issues.filter((issue) => isUnder(keysOf(issue.path), path)).length, [issues, path])
}

/** Puts the keyboard where somebody was sent to. */
function useAim(path: Path) {
  const { aim } = useEditor()
  const ref = useRef<HTMLInputElement & HTMLSelectElement & HTMLTextAreaElement>(null)
  // biome-ignore lint/correctness/useExhaustiveDependencies: sent there once.
  useEffect(() => {
    if (!aim || !samePath(aim.path, path)) return
    ref.current?.focus({ preventScroll: true })
    ref.current?.scrollIntoView({ block: 'center' })
  }, [aim])
  return ref
}

interface BoxProps {
  readonly id: string
  readonly props: FieldProps
  readonly children: ReactNode
  readonly wide?: boolean
}

/** What everybody knows of these is not said at each of forty parts. */
const KNOWN = /^(?:code|id|name|price|bag)$/

function Box({ id, props: { node, path, value, label, bare }, children, wide = false }: BoxProps) {
  const words = useWords()
  const faults = useFaults(path)
  const says = KNOWN.test(String(path.at(-1))) ? '' : words.hint(node.says)
  const name = label ?? words.label(path)
  return (
    <div
      className={`cell ${wide ? 'wide' : ''}`}
      data-path={path.join('/')}
      data-bad={faults.length > 0 || undefined}
    >
      <label htmlFor={id} className={bare ? 'unseen' : ''}>
        {name}
      </label>
      {children}
      {!bare && says !== '' && (
        <p className="hint" id={`${id}-says`}>
          {says}
        </p>
      )}
      {faults.length > 0 && (
        <p className="fault" id={`${id}-fault`}>
          {faults.map((issue) => faultText(node, value, issue, words)).join(' ')}
        </p>
      )}
      <Taken path={path} />
      {!bare && <Changed node={node} path={path} value={value} />}
    </div>
  )
}

/** A figure that nobody has stated. */
function Taken({ path }: { readonly path: Path }) {
  const { store } = useEditor()
  const guessed = useCatalog((s) => s.guessed)
  const { t } = useWords()
  if (!guessed.some((one) => samePath(one, path))) return null
  return (
    <p className="taken">
      {t('guessed')}{' '}
      <button type="button" className="quiet" onClick={() => store.getState().confirm(path)}>
        {t('guessed.right')}
      </button>
    </p>
  )
}

/** What the demo has there, where the same part of it is there. */
function Changed({ node, path, value }: FieldProps) {
  const { store, demo } = useEditor()
  const draft = useCatalog((s) => s.draft)
  const words = useWords()
  const before = useMemo(() => demoValue(demo, draft, path), [demo, draft, path])
  if (before === null || JSON.stringify(before.value) === JSON.stringify(value)) return null
  const back = (): void => store.getState().set(path, before.value)
  return (
    <p className="was">
      <button type="button" className="quiet" onClick={back}>
        {before.value === undefined
          ? words.t('changed.back-none')
          : words.t('changed.back', { value: valueText(node, before.value, words) })}
      </button>
    </p>
  )
}

/** Entries of lists are told apart by their codes. Null: the demo has no such part. */
function demoValue(demo: Json, draft: Json, path: Path): { readonly value: Json | undefined } | null {
  let at: Json | undefined = demo
  let now: Json | undefined = draft
  for (const [i, key] of path.entries()) {
    const own = valueAt(now, [key])
    if (typeof key === 'number' && isList(at)) {
      const code = valueAt(own, ['code'])
      const twin: Json | undefined =
        typeof code === 'string' ? at.find((one) => valueAt(one, ['code']) === code) : at[key]
      if (twin === undefined) return null
      at = twin
    } else {
      if (typeof at !== 'object' || at === null) return null
      at = valueAt(at, [key])
      if (at === undefined && i < path.length - 1) return null
    }
    now = own
  }
  return { value: at }
}

const describedBy = (id: string, bad: boolean): string => `${id}-says${bad ? ` ${id}-fault` : ''}`

/**
 * What is typed is taken on Enter or when the field is left; what cannot be read stays, and is told.
 *
 * @param of what stands in the field, however it is shown: another takes the place of what is being typed
 */
function useTyped(shown: string, take: (typed: string) => void, of = shown) {
  const [typed, type] = useState<string | null>(null)
  const [last, setLast] = useState(of)
  if (last !== of) {
    setLast(of)
    type(null)
  }
  const commit = (): void => {
    if (typed !== null && typed !== shown) take(typed)
    type(null)
  }
  return { text: typed ?? shown, type, commit, drop: () => type(null), settled: typed === null || undefined }
}

export function NumberField(props: FieldProps<NumberNode>) {
  const { node, path, value } = props
  const { store } = useEditor()
  const words = useWords()
  const id = useId()
  const aim = useAim(path)
  const bad = useFaults(path).length > 0
  const scale = scaleOf(node, words)
  const shown = typeof value === 'number' ? shownIn(scale, value) : value === undefined ? '' : String(value)
  const take = (typed: string): void => {
    const text = typed.trim()
    // What is no figure is kept as it was typed: it is shown, and told what was expected.
    const read = text === '' ? undefined : (readIn(scale, text) ?? text)
    store.getState().set(path, read === undefined && !node.optional ? '' : read)
  }
  // In another language it is the same figure, in other units what is being typed would be another.
  const field = useTyped(shown, take, `${JSON.stringify(value)} ${scale.units}`)
  const unit = node.measure === 'length' ? '' : unitOf(scale)
  return (
    <Box id={id} props={props}>
      <div className="with-unit">
        <input
          id={id}
          ref={aim}
          type="text"
          inputMode={node.measure === 'length' && words.reader.units === 'imperial' ? 'text' : 'decimal'}
          autoComplete="off"
          spellCheck={false}
          value={field.text}
          placeholder={node.optional ? words.t('none') : ''}
          data-settled={field.settled}
          aria-invalid={bad}
          aria-describedby={describedBy(id, bad)}
          onFocus={(event) => event.currentTarget.select()}
          onChange={(event) => field.type(event.currentTarget.value)}
          onBlur={field.commit}
          onKeyDown={(event) => {
            if (event.key === 'Enter') field.commit()
            else if (event.key === 'Escape') field.drop()
          }}
        />
        {unit !== '' && <span aria-hidden="true">{unit}</span>}
      </div>
    </Box>
  )
}

/** Longer ones are written over several lines. */
const LINE = 200

export function TextField(props: FieldProps<TextNode>) {
  const { node, path, value } = props
  const { store } = useEditor()
  const { t } = useWords()
  const id = useId()
  const aim = useAim(path)
  const bad = useFaults(path).length > 0
  const field = useTyped(
    value === undefined ? '' : typeof value === 'string' ? value : JSON.stringify(value),
    (typed) => store.getState().set(path, typed === '' && node.optional ? undefined : typed),
  )
  const common = {
    id,
    value: field.text,
    placeholder: node.optional ? t('none') : '',
    'aria-invalid': bad,
    'aria-describedby': describedBy(id, bad),
    onBlur: field.commit,
  }
  return (
    <Box id={id} props={props} wide={node.most > LINE}>
      {node.most > LINE ? (
        <textarea
          {...common}
          ref={aim}
          rows={2}
          onChange={(event) => field.type(event.currentTarget.value)}
        />
      ) : (
        <input
          {...common}
          ref={aim}
          type="text"
          data-settled={field.settled}
          autoComplete="off"
          onChange={(event) => field.type(event.currentTarget.value)}
          onKeyDown={(event) => {
            if (event.key === 'Enter') field.commit()
            else if (event.key === 'Escape') field.drop()
          }}
        />
      )}
    </Box>
  )
}

interface PickProps {
  readonly props: FieldProps
  readonly options: readonly { readonly value: string; readonly label: string }[]
  readonly now: string
  pick(value: string): void
}

function Pick({ props, options, now, pick }: PickProps) {
  const id = useId()
  const aim = useAim(props.path)
  const bad = useFaults(props.path).length > 0
  return (
    <Box id={id} props={props}>
      <select
        id={id}
        ref={aim}
        value={now}
        aria-invalid={bad}
        aria-describedby={describedBy(id, bad)}
        onChange={(event) => pick(event.currentTarget.value)}
      >
        {options.map(({ value, label }) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
      </select>
    </Box>
  )
}

/** A choice of words; of what may be left out, of nothing too. */
export function ChoiceField(props: FieldProps<ChoiceNode>) {
  const { node, path, value } = props
  const { store } = useEditor()
  const words = useWords()
  const now = value === undefined ? '' : String(value)
  const known = node.options.includes(now) || now === ''
  return (
    <Pick
      props={props}
      now={now}
      options={[
        ...(node.optional || now === '' ? [{ value: '', label: words.t('unstated') }] : []),
        ...(known ? [] : [{ value: now, label: words.t('choose.unknown', { code: now }) }]),
        ...node.options.map((option) => ({ value: option, label: optionText(option, words) })),
      ]}
      pick={(to) => store.getState().set(path, to === '' ? undefined : to)}
    />
  )
}

export function BooleanField(props: FieldProps) {
  const { node, path, value } = props
  const { store } = useEditor()
  const { t } = useWords()
  const now = typeof value === 'boolean' ? String(value) : ''
  return (
    <Pick
      props={props}
      now={now}
      options={[
        ...(node.optional || now === '' ? [{ value: '', label: t('unstated') }] : []),
        { value: 'true', label: t('yes') },
        { value: 'false', label: t('no') },
      ]}
      pick={(to) => store.getState().set(path, to === '' ? undefined : to === 'true')}
    />
  )
}

/** The code of something else in this catalog. */
export function CodeField(props: FieldProps<TextNode>) {
  const { node, path, value } = props
  const { store } = useEditor()
  const named = namedAt(path)
  const draft = useCatalog((s) => s.draft)
  const { t } = useWords()
  const codes = useMemo(() => (named ? codesOf(draft, named) : []), [draft, named])
  const now = value === undefined ? '' : String(value)
  return (
    <Pick
      props={props}
      now={now}
      options={[
        ...(node.optional || now === '' ? [{ value: '', label: t('unstated') }] : []),
        ...(codes.includes(now) || now === ''
          ? []
          : [{ value: now, label: t('choose.unknown', { code: now }) }]),
        ...codes.map((code) => ({ value: code, label: code })),
      ]}
      pick={(to) => store.getState().set(path, to === '' ? undefined : to)}
    />
  )
}

export function ColorField(props: FieldProps<TextNode>) {
  const { path, value } = props
  const { store } = useEditor()
  const { label } = useWords()
  const now = typeof value === 'string' && /^#[0-9a-fA-F]{6}$/.test(value) ? value : '#808080'
  return (
    <div className="color">
      <input
        type="color"
        aria-label={label(path)}
        value={now}
        onChange={(event) => store.getState().set(path, event.currentTarget.value)}
      />
      <TextField {...props} />
    </div>
  )
}
