/** Any part of the form, as the schema has it: fields, groups of them, lists, records by name, one of several kinds. */
import { type ReactNode, useId, useMemo } from 'react'
import { isList, isObject, isUnder, type Json, type Path } from '../draft.ts'
import { asOption, blankOf } from '../form/blank.ts'
import { isElsewhere, namedAt } from '../form/catalog-form.ts'
import {
  type Node,
  type ObjectNode,
  optionOf,
  type RecordNode,
  type TextNode,
  type TupleNode,
  type VariantNode,
} from '../form/node.ts'
import { cut, optionText } from '../form/told.ts'
import { useEditor, useWords } from './context.ts'
import { EntryList } from './entry-list.tsx'
import {
  BooleanField,
  ChoiceField,
  CodeField,
  ColorField,
  type FieldProps,
  NumberField,
  TextField,
  useFaults,
} from './field.tsx'
import { LogoField } from './logo.tsx'
import { RecordForm } from './record.tsx'

interface FormProps {
  readonly node: Node
  readonly path: Path
  readonly value: Json | undefined
  /** Its fields stand by themselves, without a box around them. */
  readonly open?: boolean
  /** Keys that are shown elsewhere already. */
  readonly without?: readonly string[]
}

export function Form({ node, path, value, open = false, without = [] }: FormProps) {
  switch (node.kind) {
    case 'fixed':
      return <Fixed path={path} value={value} />
    case 'number':
    case 'text':
    case 'boolean':
    case 'choice':
      return <LeafField node={node} path={path} value={value} />
    case 'tuple':
      return <TupleForm node={node} path={path} value={value} />
    default:
      return (
        <Shaped node={node} path={path} value={value}>
          {() =>
            node.kind === 'list' ? (
              <EntryList node={node} path={path} value={isList(value) ? value : []} />
            ) : node.kind === 'record' ? (
              <RecordForm node={node as RecordNode} path={path} value={isObject(value) ? value : {}} />
            ) : node.kind === 'variant' ? (
              <VariantForm node={node} path={path} value={value} without={without} />
            ) : (
              <ObjectForm node={node} path={path} value={value} open={open} without={without} />
            )
          }
        </Shaped>
      )
  }
}

/** Of a part that may be left out: a button to put it in, one to take it out. Of one that has another shape: what stands there. */
function Shaped({ node, path, value, children }: FormProps & { readonly children: () => ReactNode }) {
  const { store } = useEditor()
  const { t, label, hint } = useWords()
  const fits = node.kind === 'list' ? isList(value) : isObject(value)
  if (fits) return children()
  // Of a list of lines the first is there to be typed.
  const begin = (): void =>
    store.getState().set(path, node.kind === 'list' && node.item.kind === 'text' ? [''] : blankOf(node))
  if (value === undefined)
    return (
      <div className="absent" data-path={path.join('/')}>
        <button type="button" onClick={begin}>
          {t('add.named', { what: label(path) })}
        </button>
        {node.says !== '' && <p className="hint">{hint(node.says)}</p>}
        <Faults path={path} />
      </div>
    )
  return (
    <div className="absent" data-path={path.join('/')}>
      <h4>{label(path)}</h4>
      <p className="fault">{t('odd', { value: cut(JSON.stringify(value)) })}</p>
      <button type="button" onClick={begin}>
        {t('odd.replace')}
      </button>
    </div>
  )
}

/** What is wrong with a whole part, and not with a field of it. */
export function Faults({ path }: { readonly path: Path }) {
  const faults = useFaults(path)
  if (faults.length === 0) return null
  return <p className="fault">{faults.map(({ message }) => message).join('. ')}</p>
}

function Fixed({ path, value }: Omit<FormProps, 'node'>) {
  const { label } = useWords()
  return (
    <div className="cell" data-path={path.join('/')}>
      <span className="name">{label(path)}</span>
      <span>{value === undefined ? '' : String(value)}</span>
      <Faults path={path} />
    </div>
  )
}

export function LeafField(props: FieldProps) {
  const { node, path } = props
  if (node.kind === 'number') return <NumberField {...props} node={node} />
  if (node.kind === 'choice') return <ChoiceField {...props} node={node} />
  if (node.kind === 'boolean') return <BooleanField {...props} />
  if (node.kind !== 'text') return null
  const text: FieldProps<TextNode> = { ...props, node }
  if (path.join('.') === 'shop.logo') return <LogoField {...text} />
  if (path.at(-1) === 'color') return <ColorField {...text} />
  return namedAt(path) ? <CodeField {...text} /> : <TextField {...text} />
}

function TupleForm({ node, path, value }: FormProps & { readonly node: TupleNode }) {
  const { label } = useWords()
  return (
    <Box path={path} title={label(path)} says={node.says}>
      <div className="cells">
        {node.items.map((item, i) => (
          <Form
            // biome-ignore lint/suspicious/noArrayIndexKey: each place has its own meaning.
            key={i}
            node={item}
            path={[...path, i]}
            value={isList(value) ? value[i] : undefined}
          />
        ))}
      </div>
    </Box>
  )
}

/** A threshold or count of the shop: its figure, with the note of the file under it. */
const isRule = ({ fields }: ObjectNode): boolean =>
  'value' in fields && 'unit' in fields && 'description' in fields

function ObjectForm({ node, path, value, open, without = [] }: FormProps & { readonly node: ObjectNode }) {
  const { section, store } = useEditor()
  const { t, label } = useWords()
  const object = isObject(value) ? value : {}
  if (isRule(node)) return <Rule node={node} path={path} value={value} />
  const keys = Object.keys(node.fields).filter(
    (key) => !without.includes(key) && !isElsewhere([...path, key], section),
  )
  const simple = keys.filter((key) => isSimple(node.fields[key]!))
  const field = (key: string) => (
    <Form
      key={key}
      node={node.fields[key]!}
      path={[...path, key]}
      value={Object.hasOwn(object, key) ? object[key] : undefined}
    />
  )
  const fields = (
    <>
      <Faults path={path} />
      {simple.length > 0 && <div className="cells">{simple.map(field)}</div>}
      {keys.filter((key) => !simple.includes(key)).map(field)}
    </>
  )
  if (open) return <div className="open">{fields}</div>
  return (
    <Box path={path} title={label(path)} says={node.says}>
      {fields}
      {node.optional && (
        <button type="button" className="quiet" onClick={() => store.getState().set(path, undefined)}>
          {t('entry.remove', { name: label(path) })}
        </button>
      )}
    </Box>
  )
}

export const isSimple = ({ kind }: Node): boolean =>
  kind === 'number' || kind === 'text' || kind === 'boolean' || kind === 'choice' || kind === 'fixed'

interface BoxProps {
  readonly path: Path
  readonly title: string
  readonly says: string
  readonly children: ReactNode
}

export function Box({ path, title, says, children }: BoxProps) {
  const { hint } = useWords()
  return (
    <fieldset className="part" data-path={path.join('/')}>
      <legend>{title}</legend>
      {says !== '' && <p className="hint">{hint(says)}</p>}
      {children}
    </fieldset>
  )
}

function Rule({ node, path, value }: FormProps & { readonly node: ObjectNode }) {
  const { store, aim } = useEditor()
  const { t, label, hint } = useWords()
  const object = isObject(value) ? value : {}
  const figure = node.fields.value!
  // The description of the rule is that of its figure.
  const said = isSimple(figure) ? { ...figure, says: node.says } : figure
  const note = [...path, 'description']
  return (
    <div className="rule" data-path={path.join('/')}>
      <Faults path={path} />
      {isSimple(figure) ? (
        <LeafField node={said} path={[...path, 'value']} value={object.value} label={label(path)} />
      ) : (
        <>
          <h4>{label(path)}</h4>
          <p className="hint">{hint(node.says)}</p>
          <Form node={figure} path={[...path, 'value']} value={object.value} open />
        </>
      )}
      <details open={aim !== null && isUnder(aim.path, note)}>
        <summary>{t('rule.note')}</summary>
        <LeafField node={node.fields.description!} path={note} value={object.description} />
        <Fixed path={[...path, 'unit']} value={object.unit} />
      </details>
      {node.optional && (
        <button type="button" className="quiet" onClick={() => store.getState().set(path, undefined)}>
          {t('entry.remove', { name: label(path) })}
        </button>
      )}
    </div>
  )
}

function VariantForm({ node, path, value, without = [] }: FormProps & { readonly node: VariantNode }) {
  const { store } = useEditor()
  const words = useWords()
  const id = useId()
  const option = useMemo(() => optionOf(node, value), [node, value])
  const now = isObject(value) ? String(value[node.by] ?? '') : ''
  return (
    <div className="variant" data-path={path.join('/')}>
      <div className="cell" data-path={[...path, node.by].join('/')}>
        <label htmlFor={id}>{words.label([...path, node.by])}</label>
        <select
          id={id}
          value={now}
          onChange={(event) => {
            const to = event.currentTarget.value
            const chosen = node.options[to]
            if (chosen) store.getState().set(path, asOption(chosen, node.by, to, value))
          }}
        >
          {!option && <option value={now}>{words.t('choose.unknown', { code: now })}</option>}
          {Object.keys(node.options).map((name) => (
            <option key={name} value={name}>
              {optionText(name, words)}
            </option>
          ))}
        </select>
        <Faults path={[...path, node.by]} />
      </div>
      {option && <ObjectForm node={option} path={path} value={value} open without={[...without, node.by]} />}
      {node.optional && (
        <button type="button" className="quiet" onClick={() => store.getState().set(path, undefined)}>
          {words.t('entry.remove', { name: words.label(path) })}
        </button>
      )}
    </div>
  )
}
