/** A list: of parts a row each with code, name and price at hand and all else below it; of plain values a field each. */
import { useEffect, useRef, useState } from 'react'
import { isList, isObject, isUnder, type Json, type Path, samePath, valueAt } from '../draft.ts'
import { insertEntry, moveEntry, removeEntry } from '../entries.ts'
import { blankOf, entryLike } from '../form/blank.ts'
import type { ChoiceNode, ListNode, Node, ObjectNode } from '../form/node.ts'
import { nodeAt, optionOf } from '../form/node.ts'
import { optionText } from '../form/told.ts'
import { useCatalog, useEditor, useWords } from './context.ts'
import { useFaultsUnder } from './field.tsx'
import { Box, Faults, Form, isSimple, LeafField } from './form.tsx'

interface Props {
  readonly node: ListNode
  readonly path: Path
  readonly value: readonly Json[]
}

export function EntryList({ node, path, value }: Props) {
  const { store } = useEditor()
  const { t, label } = useWords()
  const { item } = node
  if (item.kind === 'choice') return <ChoiceList node={item} path={path} value={value} />
  const rows = value.map((one, i) => {
    const props = { item, path: [...path, i], value: one, list: path, count: value.length }
    return isSimple(item) ? (
      <PlainRow key={props.path.join('/')} {...props} />
    ) : (
      <Entry key={props.path.join('/')} {...props} />
    )
  })
  const add = (): void =>
    insertEntry(store, path, value.length, isSimple(item) ? blankOf(item) : entryLike(item, value))
  return (
    <Box path={path} title={label(path)} says={node.says}>
      <Faults path={path} />
      <div className={isSimple(item) ? 'plain-rows' : 'entries'}>{rows}</div>
      <div className="actions">
        <button type="button" disabled={value.length >= node.most} onClick={add}>
          {t(value.length > 0 && !isSimple(item) ? 'add.entry' : 'add.first')}
        </button>
        {node.optional && (
          <button type="button" className="quiet" onClick={() => store.getState().set(path, undefined)}>
            {t('entry.remove', { name: label(path) })}
          </button>
        )}
      </div>
    </Box>
  )
}

interface RowProps {
  readonly item: Node
  readonly path: Path
  readonly value: Json
  readonly list: Path
  readonly count: number
}

function PlainRow({ item, path, value, list }: RowProps) {
  const { store } = useEditor()
  const { t } = useWords()
  const i = Number(path.at(-1))
  const name = t('entry.nth', { n: i + 1 })
  return (
    <div className="plain-row">
      <LeafField node={item} path={path} value={value} label={name} bare />
      <button
        type="button"
        className="quiet"
        aria-label={t('entry.remove', { name })}
        onClick={() => removeEntry(store, list, i)}
      >
        {t('remove')}
      </button>
    </div>
  )
}

/** What a shop has at hand of a part, without opening it. */
const AT_HAND = ['code', 'name', 'price'] as const
/** Of an extra of one part: what that costs. */
const PART_PRICE = ['parts', 0, 'price'] as const

/** Places within an entry that stand in its row. */
function atHand(at: ObjectNode | null, value: Json): readonly Path[] {
  if (!at) return []
  const all = Object.entries(at.fields)
  // A band of freight, the turns of a bolt: all of it.
  if (!('code' in at.fields) && all.length <= AT_HAND.length && all.every(([, field]) => isSimple(field)))
    return all.map(([key]) => [key])
  const own = AT_HAND.filter((key) => key in at.fields).map((key) => [key])
  const parts = valueAt(value, ['parts'])
  const single = 'parts' in at.fields && !('posts' in at.fields) && isList(parts) && parts.length === 1
  return single && own.length > 0 ? [...own, PART_PRICE] : own
}

function Entry({ item, path, value, list, count }: RowProps) {
  const { aim } = useEditor()
  const { t } = useWords()
  const faults = useFaultsUnder(path)
  const guessed = useCatalog((s) => s.guessed.filter((one) => isUnder(one, path)).length)
  const [open, setOpen] = useState(false)
  const box = useRef<HTMLDetailsElement>(null)
  const at = fieldsIn(item, value)
  const hand = atHand(at, value)
  // Whoever is sent to a field within finds it open.
  // biome-ignore lint/correctness/useExhaustiveDependencies: sent there once.
  useEffect(() => {
    if (
      aim &&
      isUnder(aim.path, path) &&
      aim.path.length > path.length &&
      !hand.some((rest) => samePath(aim.path.slice(path.length), rest))
    )
      setOpen(true)
  }, [aim])
  const i = Number(path.at(-1))
  const name = nameOf(value) ?? t('entry.nth', { n: i + 1 })
  return (
    <div className="entry" data-bad={faults > 0 || undefined} data-path={path.join('/')}>
      <Faults path={path} />
      {hand.length > 0 && at && isObject(value) && (
        <div className="at-hand">
          {hand.map((rest) => {
            const place = [...path, ...rest]
            const node = nodeAt(item, rest, value)
            return (
              node && (
                <LeafField
                  key={rest.join('/')}
                  node={node}
                  path={place}
                  value={valueAt(value, rest)}
                  bare={i > 0}
                />
              )
            )
          })}
        </div>
      )}
      <details ref={box} open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary aria-label={t('entry.more', { name })}>
          {hand.length > 0 ? t('details') : summaryOf(value) || name}
          {faults > 0 && <span className="badge bad">{t('section.has', { count: faults })}</span>}
          {guessed > 0 && <span className="badge">{t('section.looks', { count: guessed })}</span>}
        </summary>
        {open && (
          <>
            <Form
              node={item}
              path={path}
              value={value}
              open
              without={hand.filter((rest) => rest.length === 1).map(String)}
            />
            <EntryActions item={item} value={value} list={list} count={count} i={i} name={name} />
          </>
        )}
      </details>
    </div>
  )
}

interface ActionsProps extends Pick<RowProps, 'item' | 'value' | 'list' | 'count'> {
  readonly i: number
  readonly name: string
}

function EntryActions({ item, value, list, count, i, name }: ActionsProps) {
  const { store, tell } = useEditor()
  const { t } = useWords()
  const copy = (): void =>
    insertEntry(store, list, i + 1, entryLike(item, listAt(store.getState().draft, list), value))
  const remove = (): void => {
    removeEntry(store, list, i)
    tell({ key: 'removed', values: { name } })
  }
  return (
    <div className="actions">
      <button type="button" aria-label={t('entry.copy', { name })} onClick={copy}>
        {t('copy')}
      </button>
      <button
        type="button"
        aria-label={t('entry.up', { name })}
        disabled={i === 0}
        onClick={() => moveEntry(store, list, i, i - 1)}
      >
        {t('up')}
      </button>
      <button
        type="button"
        aria-label={t('entry.down', { name })}
        disabled={i === count - 1}
        onClick={() => moveEntry(store, list, i, i + 1)}
      >
        {t('down')}
      </button>
      <button type="button" aria-label={t('entry.remove', { name })} onClick={remove}>
        {t('remove')}
      </button>
    </div>
  )
}

const listAt = (draft: Json, path: Path): readonly Json[] => {
  const list = valueAt(draft, path)
  return isList(list) ? list : []
}

const fieldsIn = (item: Node, value: Json): ObjectNode | null =>
  item.kind === 'object' ? item : item.kind === 'variant' ? optionOf(item, value) : null

const nameOf = (value: Json): string | null =>
  isObject(value) ? String(value.name ?? value.code ?? value.at ?? value.id ?? '') || null : null

/** Of an entry without a code: its first few figures. */
const summaryOf = (value: Json): string => (isObject(value) ? (nameOf(value) ?? '') : '')

/** Some of a few words. */
function ChoiceList({
  node,
  path,
  value,
}: {
  readonly node: ChoiceNode
  readonly path: Path
  readonly value: readonly Json[]
}) {
  const { store } = useEditor()
  const words = useWords()
  return (
    <Box path={path} title={words.label(path)} says={node.says}>
      <Faults path={path} />
      <div className="checks">
        {node.options.map((option) => {
          const at = value.indexOf(option)
          return (
            <label key={option}>
              <input
                type="checkbox"
                checked={at >= 0}
                onChange={() =>
                  at >= 0 ? removeEntry(store, path, at) : insertEntry(store, path, value.length, option)
                }
              />
              {optionText(option, words)}
            </label>
          )
        })}
      </div>
    </Box>
  )
}
