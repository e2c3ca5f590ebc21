/** What a season record tells on a screen of letters and on paper: sentences, and tables whose cells are said. */
import type { LegNamed, SeasonRecord } from '../record/schema.ts'
import { type Conflict, type LegState, latestSeason, type SeasonState, seasonState } from '../record/state.ts'
import { formatLength } from './figures.ts'
import type { Reader } from './language.ts'
import { wordsOf } from './messages.ts'
import { RECORD, type RecordWord } from './record.ts'

export interface ToldColumn {
  readonly title: string
  /** Figures stand at the end of their cells. */
  readonly end?: boolean
  readonly bold?: boolean
  /** Takes what the others leave; one to a table. */
  readonly flex?: boolean
  /** To be written in by hand: left out where nothing can be written. */
  readonly write?: boolean
}

export interface ToldTable {
  readonly columns: readonly ToldColumn[]
  readonly rows: readonly (readonly string[])[]
}

export interface ToldRecord {
  readonly title: string
  /** Whose it is. */
  readonly of: string
  readonly lead: readonly string[]
  /** Said before anything else. */
  readonly cautions: readonly string[]
  readonly tables: readonly ToldTable[]
  readonly lists: readonly { readonly title: string; readonly items: readonly string[] }[]
}

/** A column with what is in it for one row. */
export type Cells<T> = ToldColumn & { readonly cell: (row: T) => string }

export const tableOf = <T>(columns: readonly Cells<T>[], rows: readonly T[]): ToldTable => ({
  columns: columns.map(({ cell: _, ...column }) => column),
  rows: rows.map((row) => columns.map(({ cell }) => cell(row))),
})

export const orDash = (value: number | null | undefined, reader: Reader): string =>
  value === null || value === undefined ? '—' : formatLength(value, reader)

const dayOf = (at: string): string => at.slice(0, 10)

export function ofRecord(record: SeasonRecord, season: string, reader: Reader): string {
  const t = wordsOf(RECORD, reader)
  return t('record-of', { name: record.name || t('no-name'), season })
}

/** From the stake, or the water's edge of the survey day. */
const outOf = ({ x }: LegNamed, { stake }: SeasonRecord): number | null =>
  x === null ? null : x - (stake?.x ?? 0)

function sideOf({ side, aside }: LegNamed, reader: Reader): string {
  const t = wordsOf(RECORD, reader)
  return aside === null ? t(`side.${side}`) : t(`aside.${side}`, { off: formatLength(aside, reader) })
}

/** Number, how far out, side: what every table of legs begins with. */
export function legColumns<T>(record: SeasonRecord, of: (row: T) => LegNamed, reader: Reader): Cells<T>[] {
  const t = wordsOf(RECORD, reader)
  return [
    { title: t('col.leg'), end: true, bold: true, cell: (row) => String(of(row).number) },
    { title: t('col.out'), end: true, cell: (row) => orDash(outOf(of(row), record), reader) },
    { title: t('col.side'), cell: (row) => sideOf(of(row), reader) },
  ]
}

/** To keep in the boathouse: how each leg stood, on which water. @param season the latest in which legs were set where absent */
export function asBuiltTold(record: SeasonRecord, reader: Reader, season?: string): ToldRecord {
  const t = wordsOf(RECORD, reader)
  const state = seasonState(record, season ?? latestSeason(record, ({ kind }) => kind === 'set'))
  const length = (value: number): string => formatLength(value, reader)
  const { today } = state
  return {
    title: t('as-built'),
    of: ofRecord(record, state.season, reader),
    lead: [
      t('as-built-lead', { stake: record.stake?.name || t('edge') }),
      today ? t('water', { level: length(today.level), deck: length(today.deck) }) : t('water-unknown'),
      ...(record.mark ? [t('mark', { mark: record.mark.name, above: length(record.mark.above) })] : []),
    ],
    cautions: [],
    tables: [legsTable(record, state, reader)],
    lists: [
      { title: t('conflicts'), items: state.conflicts.map((one) => conflictText(one, state, reader)) },
      { title: t('wear'), items: wearTexts(state, reader) },
      { title: t('notes'), items: noteTexts(state, reader) },
    ].filter(({ items }) => items.length > 0),
  }
}

function legsTable(record: SeasonRecord, state: SeasonState, reader: Reader): ToldTable {
  const t = wordsOf(RECORD, reader)
  const set = ({ set }: LegState, value: (set: NonNullable<LegState['set']>) => string): string =>
    set ? value(set) : ''
  const rise = record.rise
  return tableOf<LegState>(
    [
      ...legColumns<LegState>(record, ({ leg }) => leg, reader),
      { title: t('col.stock'), end: true, cell: (state) => orDash(lengthOf(state), reader) },
      {
        title: t('col.deck'),
        end: true,
        bold: true,
        cell: ({ set }) => (set ? formatLength(set.height, reader) : t('not-set')),
      },
      {
        title: t('col.frame'),
        end: true,
        cell: (leg) =>
          set(leg, ({ height, frame }) => orDash(frame ?? (rise === null ? null : height - rise), reader)),
      },
      { title: t('col.above'), end: true, cell: (leg) => set(leg, () => orDash(aboveDeck(leg), reader)) },
      {
        title: t('col.depth'),
        end: true,
        cell: ({ sounding, asPlanned }) =>
          sounding ? formatLength(sounding.depth, reader) : asPlanned ? t('how.as-planned') : '—',
      },
      { title: t('col.set'), cell: (leg) => set(leg, ({ at }) => dayOf(at)) },
      { title: t('col.by'), cell: (leg) => set(leg, ({ by }) => by ?? '') },
    ],
    state.legs,
  )
}

/** Of the leg that stands there. */
const lengthOf = ({ set, leg }: LegState): number | null =>
  set?.length ?? (set && set.stock !== leg.planned?.stock ? null : (leg.planned?.length ?? null))

/** From the deck up to the tube's top: what is measured with the panels on. */
function aboveDeck(state: LegState): number | null {
  const [length, sole] = [lengthOf(state), state.leg.planned?.sole ?? null]
  return length === null || sole === null || !state.set ? null : length + sole - state.set.height
}

const numberOf = (state: SeasonState, id: string): string =>
  String(state.legs.find(({ leg }) => leg.id === id)?.leg.number ?? id)

/** `Leg 7, pad to deck: 4 ft 2 in (Ann, 2026-06-06), 4 ft 5 in (no name, 2026-06-06)` */
function conflictText({ kind, of, entries }: Conflict, state: SeasonState, reader: Reader): string {
  const t = wordsOf(RECORD, reader)
  const what = (entry: Conflict['entries'][number]): string => {
    switch (entry.kind) {
      case 'level':
        return formatLength(entry.level, reader)
      case 'set':
        return formatLength(entry.height, reader)
      case 'sounding':
        return formatLength(entry.depth, reader)
      case 'step':
        return t(entry.done ? 'step.done' : 'step.open')
      default:
        return t('take-out-done')
    }
  }
  const said = entries.map((entry) =>
    t('said', { what: what(entry), by: entry.by ?? t('nobody'), day: dayOf(entry.at) }),
  )
  const key = `conflict.${kind}`
  const values = { of: of === null ? '' : numberOf(state, of), said: said.join(', ') }
  return key in RECORD.english ? t(key as RecordWord, values) : values.said
}

function placeText(
  at: { leg?: string | undefined; section?: string | undefined },
  state: SeasonState,
  reader: Reader,
) {
  const t = wordsOf(RECORD, reader)
  if (at.leg !== undefined) return t('at-leg', { number: numberOf(state, at.leg) })
  return at.section === undefined ? '' : t('at-section', { section: at.section })
}

function noteTexts(state: SeasonState, reader: Reader): string[] {
  const t = wordsOf(RECORD, reader)
  return state.notes.map((note) => {
    const at = placeText(note, state, reader)
    const values = { day: dayOf(note.at), by: note.by ?? t('nobody'), text: note.text, at }
    return t(at === '' ? 'note' : 'note-at', values)
  })
}

function wearTexts(state: SeasonState, reader: Reader): string[] {
  const t = wordsOf(RECORD, reader)
  return state.wear.map((wear) => {
    const part = t('worn-part', {
      count: { value: wear.count, unit: 'count' },
      part: { value: wear.part, unit: 'kind' },
      what: t(`wear.${wear.what}`),
    })
    return [part, placeText(wear, state, reader), wear.note ?? ''].filter(Boolean).join(', ')
  })
}
