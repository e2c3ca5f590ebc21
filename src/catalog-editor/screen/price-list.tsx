/** A price list: pasted or opened, shown as it was read, and taken in when that is right. */
import { useEffect, useMemo, useRef, useState } from 'react'
import { demoCatalog, formatFigure, formatLength, formatMass, kindWord } from '../../../rules/index.ts'
import type { Row } from '../../soundings-file/table.ts'
import { FilePick } from '../../ui/file-picker.tsx'
import { Select } from '../../ui/select.tsx'
import { changesBetween } from '../changes.ts'
import type { JsonObject } from '../draft.ts'
import { isUnder } from '../draft.ts'
import { cut } from '../form/told.ts'
import { type Doubt, doubtsOf } from '../price-list/doubts.ts'
import { firstReading, LENGTH_UNITS, type PriceRow, type Reading, readRows } from '../price-list/read-row.ts'
import { isShare, isSlot, ROW_KINDS, type RowKind } from '../price-list/row-kinds.ts'
import { guessRoles, type PriceTable, ROLES, readPriceTable } from '../price-list/table.ts'
import { TAKEN_LISTS, type Taken, type TakenList, takePriceList } from '../price-list/take.ts'
import { isWaiting, NO_LIST } from '../price-list/waiting.ts'
import { useCatalog, useEditor, useWords, type Words } from './context.ts'
import { toHeading } from './to-heading.ts'

/** The list in hand, read as it was said, and what can be done with it. */
function usePriceList() {
  const { store, show, tell, list, putList } = useEditor()
  const { reader, currency } = useWords()
  const [fault, setFault] = useState<'list.nothing' | 'list.unreadable' | null>(null)
  const { typed, text, isRead } = list
  const table = useMemo(() => (isRead ? readPriceTable(text) : null), [isRead, text])
  const firstOf = (read: PriceTable): Reading =>
    firstReading(guessRoles(read), reader.units, currency, read.head)
  const take = (from: string): void => {
    const read = readPriceTable(from)
    const some = read !== null && read.rows.length > 0
    setFault(some ? null : 'list.nothing')
    if (!some) return
    // Of the same list what was said of it holds.
    const said = from === text && list.reading ? {} : { reading: firstOf(read), replace: null }
    putList({ ...list, ...said, text: from, isRead: true })
  }
  /** Of a list out of a file, what is in the field besides stays. */
  const away = (): void => putList({ ...NO_LIST, typed: isRead && typed !== text ? typed : '' })
  const done = (taken: Taken): void => {
    const rows = Object.keys(taken.did).length
    store.getState().change(
      () => taken.catalog as unknown as JsonObject,
      (before) => [
        ...before.filter((path) => !taken.guessed.some((one) => isUnder(path, one.slice(0, 1)))),
        ...taken.guessed,
      ],
    )
    away()
    show('frames')
    tell({ key: 'list.took', values: { count: rows } })
  }
  const said = list.reading
  // Columns are as many as the list has, whoever read it before.
  const reading = table && (said?.roles.length === table.head.length ? { ...said, currency } : firstOf(table))
  return { list, putList, table, reading, fault, setFault, take, away, done }
}

export function PriceListPanel() {
  const { heading, isKept } = useEditor()
  const { t } = useWords()
  const wrong = useCatalog((s) => s.issues.length > 0)
  const { list, putList, table, reading, fault, setFault, take, away, done } = usePriceList()
  const { typed, text, isRead } = list
  // biome-ignore lint/correctness/useExhaustiveDependencies: whenever the other is shown.
  useEffect(() => toHeading(heading.current), [isRead])
  return (
    <section className="panel" aria-labelledby="price-list-title">
      <h2 id="price-list-title" tabIndex={-1} ref={heading}>
        {t('list.title')}
      </h2>
      <p className="hint">{t('list.about')}</p>
      {isWaiting(list) && (
        <>
          {isKept && <p className="hint">{t('list.kept')}</p>}
          <button type="button" className="quiet" onClick={away}>
            {t('list.away')}
          </button>
        </>
      )}
      {wrong && <p className="fault">{t('list.wrong-first')}</p>}
      {table && reading ? (
        <Confirm
          table={table}
          reading={reading}
          change={(to) => putList({ ...list, reading: to })}
          replace={list.replace}
          setReplace={(replace) => putList({ ...list, reading, replace })}
          done={done}
          // What came out of a file is there to be read again.
          drop={() => putList({ ...list, isRead: false, typed: typed.trim() === '' ? text : typed })}
        />
      ) : (
        <Paste
          text={typed}
          type={(to) => putList({ ...list, typed: to })}
          locked={wrong}
          take={take}
          unreadable={() => setFault('list.unreadable')}
        />
      )}
      {fault && (
        <p className="fault" role="alert">
          {t(fault)}
        </p>
      )}
    </section>
  )
}

interface PasteProps {
  readonly text: string
  readonly type: (text: string) => void
  /** What is marked is to be put right first. */
  readonly locked: boolean
  readonly take: (text: string) => void
  readonly unreadable: () => void
}

function Paste({ text, type, locked, take, unreadable }: PasteProps) {
  const { open } = useEditor()
  const { t } = useWords()
  return (
    <>
      <label className="paste">
        <span>{t('list.paste')}</span>
        <textarea
          rows={8}
          spellCheck={false}
          value={text}
          onChange={(event) => type(event.currentTarget.value)}
        />
      </label>
      <div className="actions">
        <button
          type="button"
          className="main"
          disabled={text.trim() === '' || locked}
          onClick={() => take(text)}
        >
          {t('list.read')}
        </button>
        <FilePick
          label={t('list.open')}
          accept=".csv,.tsv,.txt,text/csv,text/plain"
          take={(file) => file.text().then(take, unreadable)}
        />
        <button type="button" className="quiet" onClick={() => open('form')}>
          {t('back')}
        </button>
      </div>
    </>
  )
}

interface ConfirmProps {
  readonly table: PriceTable
  readonly reading: Reading
  readonly change: (reading: Reading) => void
  /** Null: nobody has said yet. */
  readonly replace: readonly TakenList[] | null
  readonly setReplace: (lists: readonly TakenList[]) => void
  readonly done: (taken: Taken) => void
  readonly drop: () => void
}

const KIND_LIST: Readonly<Partial<Record<RowKind, TakenList>>> = {
  frame: 'frames',
  leg: 'legs',
  brace: 'braces',
  'deck-panel': 'deckings',
  extra: 'extras',
  service: 'services',
}

/** Lists that nobody has touched are the demo shop's: a shop's own take their place. */
function firstReplaced(draft: JsonObject): readonly TakenList[] {
  const touched = new Set(
    changesBetween(demoCatalog as unknown as JsonObject, draft).map(({ path }) => path[0]),
  )
  return TAKEN_LISTS.filter((list) => !touched.has(list))
}

function Confirm({ table, reading, change, replace: said, setReplace, done, drop }: ConfirmProps) {
  const { store } = useEditor()
  const catalog = useCatalog((s) => s.good)
  const words = useWords()
  const { t } = words
  const [first] = useState(() => firstReplaced(store.getState().draft))
  const replace = said ?? first
  const rows = useMemo(() => readRows(table.rows, reading), [table, reading])
  const taken = useMemo(
    () => takePriceList(catalog, rows, { replace, panelName: panelName(words) }),
    [catalog, rows, replace, words],
  )
  const doubts = useMemo(() => doubtsOf(table, reading, rows, taken), [table, reading, rows, taken])
  const lists = TAKEN_LISTS.filter((list) => rows.some(({ kind }) => KIND_LIST[kind] === list))
  const count = Object.keys(taken.did).length
  const main = useRef<HTMLButtonElement>(null)
  return (
    <>
      <p>
        {t('list.rows', { count: table.rows.length })}{' '}
        {table.passed > 0 && t('list.passed', { count: table.passed })}{' '}
        <button type="button" className="quiet" onClick={() => main.current?.focus()}>
          {t('list.past')}
        </button>
      </p>
      <Units reading={reading} change={change} />
      <Doubts of={doubts} table={table} />
      <Rows table={table} rows={rows} reading={reading} taken={taken} change={change} />
      {lists.length > 0 && (
        <fieldset className="part">
          <legend>{t('list.replace')}</legend>
          <p className="hint">{t('list.replace-hint')}</p>
          <div className="checks">
            {lists.map((list) => (
              <label key={list}>
                <input
                  type="checkbox"
                  checked={replace.includes(list)}
                  onChange={() =>
                    setReplace(
                      replace.includes(list) ? replace.filter((one) => one !== list) : [...replace, list],
                    )
                  }
                />
                {t(`replace.${list}`)}
              </label>
            ))}
          </div>
        </fieldset>
      )}
      <p className="hint">{t('list.rest')}</p>
      <LeftRows taken={taken} />
      <div className="actions">
        <button
          type="button"
          className="main"
          ref={main}
          disabled={count === 0}
          aria-describedby={doubts.length > 0 ? 'price-list-doubts' : undefined}
          onClick={() => done(taken)}
        >
          {t('list.take', { count })}
        </button>
        <button type="button" onClick={drop}>
          {t('list.again')}
        </button>
      </div>
    </>
  )
}

const panelName =
  ({ t, reader }: Words) =>
  (width: number, length: number, decking: string | null): string => {
    const said = { width: formatLength(width, reader), length: formatLength(length, reader) }
    return decking === null ? t('list.panel', said) : t('list.panel-in', { ...said, decking })
  }

function Units({ reading, change }: Pick<ConfirmProps, 'reading' | 'change'>) {
  const { t } = useWords()
  return (
    <div className="cells">
      <div className="cell">
        <span className="name" aria-hidden="true">
          {t('list.units')}
        </span>
        <Select
          name={t('list.units')}
          value={reading.length}
          options={LENGTH_UNITS}
          wordOf={(one) => t(`list.unit.${one}`)}
          set={(length) => change({ ...reading, length })}
        />
      </div>
      <div className="cell">
        <span className="name" aria-hidden="true">
          {t('list.weights')}
        </span>
        <Select
          name={t('list.weights')}
          value={reading.mass}
          options={['lb', 'kg'] as const}
          wordOf={(one) => t(`list.unit.${one}`)}
          set={(mass) => change({ ...reading, mass })}
        />
      </div>
    </div>
  )
}

interface DoubtsProps {
  readonly of: readonly Doubt[]
  readonly table: PriceTable
}

/** Where columns are chosen, and beside the button by its description. */
function Doubts({ of, table }: DoubtsProps) {
  const words = useWords()
  return (
    <div role="status">
      {of.length > 0 && (
        <div className="care" id="price-list-doubts">
          <p>{words.t('doubts')}</p>
          <ul>
            {of.map((one) => (
              <li key={JSON.stringify(one)}>{doubtText(one, table, words)}</li>
            ))}
          </ul>
        </div>
      )}
    </div>
  )
}

function doubtText(doubt: Doubt, { head, rows }: PriceTable, words: Words): string {
  const { t, reader, money } = words
  const named = (k: number): string => columnText(head, k, words)
  switch (doubt.why) {
    case 'twice': {
      const cells = (row: Row) => doubt.columns.map((k) => (row.cells[k] ?? '').trim())
      const row = rows.find((one) => cells(one).filter((cell) => cell !== '').length > 1) ?? rows[0]!
      const [counts = '', not = ''] = cells(row)
      const columns = doubt.columns.map((k) => k + 1).join(', ')
      return t('doubt.twice', {
        columns,
        role: t(`role.${doubt.role}`),
        at: row.at,
        counts: cut(counts),
        not: cut(not),
      })
    }
    case 'coins':
      return t('doubt.coins', {
        column: named(doubt.column),
        ...{ at: doubt.at, cell: cut(doubt.cell), price: money(Math.round(doubt.price)) },
      })
    case 'rows': {
      const { row, why, detail } = doubt.first
      return t('doubt.rows', {
        ...{ bad: doubt.bad, count: doubt.of },
        row: t('list.left', { at: row.at, name: row.name, why: t(`left.${why}`, { detail }) }),
      })
    }
    case 'size': {
      const { row, count, instead } = doubt
      const length = (m: number): string => formatLength(m, reader)
      const told = t('doubt.size', {
        ...{ count, at: row.at, name: row.name, kind: kindText(row.kind, words) },
        ...{ is: length(doubt.is), least: length(doubt.least), most: length(doubt.most) },
      })
      return instead
        ? `${told} ${t('doubt.instead', { unit: t(`list.unit.${instead.unit}`), is: length(instead.is) })}`
        : told
    }
    default: {
      const { role, column, at, cell } = doubt
      return t(`doubt.${doubt.why}`, {
        ...{ column: named(column), role: t(`role.${role}`), at, cell: cut(cell) },
        expected: isExpected(role) ? t(`expect.${role}`) : '',
      })
    }
  }
}

const isExpected = (role: Reading['roles'][number]): role is Exclude<Reading['roles'][number], 'none'> =>
  role !== 'none'

const columnText = (head: readonly string[], k: number, { t }: Words): string =>
  head[k] ? t('list.column-named', { n: k + 1, name: head[k] }) : t('list.column', { n: k + 1 })

interface RowsProps extends Pick<ConfirmProps, 'table' | 'reading' | 'change'> {
  readonly rows: readonly PriceRow[]
  readonly taken: Taken
}

function Rows({ table, rows, reading, taken, change }: RowsProps) {
  const words = useWords()
  const { t } = words
  const named = (k: number): string => columnText(table.head, k, words)
  const setRole = (k: number, role: Reading['roles'][number]): void =>
    change({ ...reading, roles: reading.roles.with(k, role) })
  const setKind = (at: number, kind: RowKind): void =>
    change({ ...reading, kinds: { ...reading.kinds, [at]: kind } })
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what is scrolled must be reached by keyboard.
    <section className="price-rows" aria-label={t('list.table')} tabIndex={0}>
      <table>
        <thead>
          <tr>
            <th scope="col">{t('list.line')}</th>
            <th scope="col">{t('list.gives')}</th>
            {reading.roles.map((role, k) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: columns are known by their order alone.
              <th scope="col" key={k}>
                <span>{named(k)}</span>
                <Select
                  name={named(k)}
                  value={role}
                  options={ROLES}
                  wordOf={(one) => t(`role.${one}`)}
                  set={(to) => setRole(k, to)}
                />
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {table.rows.map((row, i) => {
            const read = rows[i]!
            return (
              <tr key={row.at} data-left={taken.did[row.at] === undefined || undefined}>
                <td>{row.at}</td>
                <td>
                  <Select
                    name={t('row.kind-of', { at: row.at })}
                    value={read.kind}
                    options={ROW_KINDS}
                    wordOf={(one) => kindText(one, words)}
                    set={(to) => setKind(row.at, to)}
                  />
                  <small>{givesText(read, taken, words)}</small>
                </td>
                {reading.roles.map((_, k) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: columns are known by their order alone.
                  <td key={k}>{row.cells[k] ?? ''}</td>
                ))}
              </tr>
            )
          })}
        </tbody>
      </table>
    </section>
  )
}

const OWN_WORDS = ['extra', 'service', 'tie', 'leave', 'zone', 'tax', 'deposit'] as const
const isOwnWord = (kind: RowKind): kind is (typeof OWN_WORDS)[number] => OWN_WORDS.some((one) => one === kind)

function kindText(kind: RowKind, { t, reader }: Words): string {
  if (isOwnWord(kind)) return t(`row.${kind}`)
  return kindWord(kind, reader)
}

function givesText(row: PriceRow, { did }: Taken, { t, reader, money }: Words): string {
  const done = did[row.at]
  if (!done) return ''
  const sizes = isSlot(row.kind) ? [] : row.measures.map((one) => formatLength(one, reader))
  return [
    t(`list.did.${done}`),
    sizes.join(' x '),
    row.price === null ? '' : money(row.price),
    row.share === null || !isShare(row.kind)
      ? ''
      : formatFigure({ value: row.share, unit: 'share-fine' }, reader),
    row.mass === null ? '' : formatMass(row.mass, reader),
  ]
    .filter((one) => one !== '')
    .join(' · ')
}

/** More are counted. */
const TOLD = 12

function LeftRows({ taken: { left } }: { readonly taken: Taken }) {
  const { t } = useWords()
  if (left.length === 0) return null
  return (
    <div className="care">
      <p>{t('list.would-leave', { count: left.length })}</p>
      <ul>
        {left.slice(0, TOLD).map(({ row, why, detail }) => (
          <li key={row.at}>
            {t('list.left', { at: row.at, name: row.name, why: t(`left.${why}`, { detail }) })}
          </li>
        ))}
      </ul>
      {left.length > TOLD && <p>{t('changes.more', { count: left.length - TOLD })}</p>}
    </div>
  )
}
