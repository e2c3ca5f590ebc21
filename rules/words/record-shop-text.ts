/** Taking a dock out, what is to be ordered again, and what a shop learns from records, in words. */
import { LEARN_LEAST, type Learned } from '../record/learn.ts'
import type { Reorder, ReorderRow } from '../record/reorder.ts'
import type { SeasonRecord } from '../record/schema.ts'
import type { LegState } from '../record/state.ts'
import type { TakeOut, TakeOutSection } from '../record/take-out.ts'
import { formatLength, formatMass, moneyIn } from './figures.ts'
import type { Reader } from './language.ts'
import { wordsOf } from './messages.ts'
import { RECORD } from './record.ts'
import { legColumns, ofRecord, orDash, type ToldRecord, type ToldTable, tableOf } from './record-text.ts'

export function takeOutTold(record: SeasonRecord, out: TakeOut, reader: Reader): ToldRecord {
  const t = wordsOf(RECORD, reader)
  return {
    title: t('take-out'),
    of: ofRecord(record, out.season, reader),
    lead: [
      t('take-lead'),
      ...(out.mass === null || out.people === null
        ? []
        : [t('take-all', { mass: formatMass(out.mass, reader), people: out.people })]),
    ],
    cautions: [t('take-stop')],
    tables: [sectionsOut(out, reader), legsOut(record, out, reader)].filter(({ rows }) => rows.length > 0),
    lists: [],
  }
}

function sectionsOut({ sections }: TakeOut, reader: Reader): ToldTable {
  const t = wordsOf(RECORD, reader)
  const mass = (value: number | null): string => (value === null ? '—' : formatMass(value, reader))
  return tableOf<TakeOutSection>(
    [
      {
        title: t('col.section'),
        bold: true,
        cell: ({ section, ramp }) => (ramp ? `${section}, ${t('ramp')}` : section),
      },
      { title: t('col.lift'), end: true, cell: ({ lift }) => mass(lift) },
      { title: t('col.people'), end: true, cell: ({ people }) => (people === null ? '—' : String(people)) },
      { title: t('col.each'), end: true, cell: ({ each }) => mass(each) },
      {
        title: t('col.legs'),
        flex: true,
        cell: ({ legs }) => legs.map((leg) => legText(leg, reader)).join(', '),
      },
      { title: t('col.stored'), cell: ({ out }) => (out ? (out.stored ?? t('take-out-done')) : '') },
      { title: t('col.done'), write: true, cell: () => '' },
    ],
    sections,
  )
}

function legText({ leg, set }: LegState, reader: Reader): string {
  const t = wordsOf(RECORD, reader)
  return t('legs-of', {
    number: leg.number,
    height: set ? formatLength(set.height, reader) : t('not-set'),
  })
}

function legsOut(record: SeasonRecord, { legs }: TakeOut, reader: Reader): ToldTable {
  const t = wordsOf(RECORD, reader)
  return tableOf<LegState>(
    [
      ...legColumns<LegState>(record, ({ leg }) => leg, reader),
      { title: t('col.deck'), end: true, cell: ({ set }) => orDash(set?.height, reader) },
      { title: t('col.stored'), cell: ({ out }) => (out ? (out.stored ?? t('take-out-done')) : '') },
      { title: t('col.done'), write: true, cell: () => '' },
    ],
    legs,
  )
}

export function reorderTold(record: SeasonRecord, list: Reorder, reader: Reader): ToldRecord {
  const t = wordsOf(RECORD, reader)
  const money = moneyIn(list.currency, reader.language)
  return {
    title: t('reorder'),
    of: ofRecord(record, list.season, reader),
    lead:
      list.rows.length === 0
        ? [t('reorder-none')]
        : [t('reorder-lead', { season: list.season }), t('reorder-sum', { price: money(list.price) })],
    cautions: [],
    tables: [
      tableOf<ReorderRow>(
        [
          { title: t('col.count'), end: true, bold: true, cell: ({ count }) => String(count) },
          {
            title: t('col.part'),
            cell: ({ kind, name }) => name ?? t('part-kind', { part: { value: kind, unit: 'kind' } }),
          },
          { title: t('col.code'), cell: ({ code }) => code ?? t('reorder-ask') },
          { title: t('col.price'), end: true, cell: ({ price }) => (price === null ? '—' : money(price)) },
          {
            title: t('col.why'),
            flex: true,
            cell: ({ wear }) =>
              wear.map(({ what, note }) => [t(`wear.${what}`), note].filter(Boolean).join(': ')).join('; '),
          },
        ],
        list.rows,
      ),
    ].filter(({ rows }) => rows.length > 0),
    lists: [],
  }
}

/** In lines: soundings first, then each bottom. */
export function learnedLines({ sounding, settling, records }: Learned, reader: Reader): string[] {
  const t = wordsOf(RECORD, reader)
  const fine = (value: number) => ({ value: value * 1000, unit: 'mm' })
  return [
    t('learn-lead', { count: { value: records, unit: 'count' } }),
    sounding
      ? t('learn-sounding', {
          ...{ sd: fine(sounding.sd), error: fine(sounding.error), offset: fine(sounding.offset) },
          ...{ count: sounding.count, docks: sounding.docks },
        })
      : t('learn-sounding-none'),
    ...settling.map(({ bottom, pad, mean, error, count, catalog }) =>
      t(error === null ? 'learn-settling-one' : 'learn-settling', {
        ...{ pad, count, bottom: t(`bottom.${bottom}`), mean: fine(mean), catalog: fine(catalog) },
        error: fine(error ?? 0),
      }),
    ),
    ...(settling.length === 0 ? [t('learn-settling-none')] : []),
    t('learn-least', { least: LEARN_LEAST }),
  ]
}
