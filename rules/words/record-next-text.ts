/** Next season's sheet in words: each leg up or down by how much, what the bottom did, whether leg and brace still do. */
import type { NextBrace } from '../record/next-braces.ts'
import type { NextLeg, NextYear } from '../record/next-year.ts'
import type { SeasonRecord } from '../record/schema.ts'
import { formatLength } from './figures.ts'
import type { Reader } from './language.ts'
import { wordsOf } from './messages.ts'
import { RECORD } from './record.ts'
import { legColumns, ofRecord, orDash, type ToldRecord, tableOf } from './record-text.ts'

/** Less than this is nothing, m: what a tape reads to. */
const NOTHING = 0.0005

export function nextYearTold(record: SeasonRecord, next: NextYear, reader: Reader): ToldRecord {
  const t = wordsOf(RECORD, reader)
  const length = (value: number): string => formatLength(value, reader)
  const { last, levelBy, deckBy } = next
  return {
    title: t('next-year'),
    of: ofRecord(record, next.season, reader),
    lead: [
      // Of a dock without a survey heights count from its own first day: how high its deck is over that says nothing.
      record.deckHeight === null
        ? t('next-lead.old', { level: length(next.level) })
        : t(`next-lead.${next.keep}`, { level: length(next.level), deck: length(next.deck) }),
      last === null
        ? t('next-first')
        : levelBy === null || deckBy === null
          ? t('water-unknown')
          : t('next-since', {
              season: last,
              water: movedText(levelBy, reader),
              deck: movedText(deckBy, reader),
            }),
    ],
    cautions: [t('next-measure')],
    tables: [
      tableOf<NextLeg>(
        [
          ...legColumns<NextLeg>(record, ({ leg }) => leg, reader),
          { title: t('col.last'), end: true, cell: ({ last }) => orDash(last?.set.height, reader) },
          { title: t('col.move'), bold: true, cell: ({ by }) => (by === null ? '—' : byText(by, reader)) },
          { title: t('col.now'), end: true, bold: true, cell: ({ height }) => orDash(height, reader) },
          { title: t('col.frame'), end: true, cell: ({ frame }) => orDash(frame, reader) },
          { title: t('col.above'), end: true, cell: ({ aboveDeck }) => orDash(aboveDeck, reader) },
          { title: t('col.bed'), flex: true, cell: (leg) => remarks(leg, reader) },
          { title: t('col.found'), write: true, cell: () => '' },
        ],
        next.legs,
      ),
    ],
    lists: [{ title: t('braces'), items: next.braces.map((brace) => braceText(brace, next, reader)) }].filter(
      ({ items }) => items.length > 0,
    ),
  }
}

/** Of a leg, from sole to deck: `2 1/4 in longer`. */
function byText(by: number, reader: Reader): string {
  const t = wordsOf(RECORD, reader)
  return Math.abs(by) < NOTHING
    ? t('same')
    : t(by > 0 ? 'longer' : 'shorter', { by: formatLength(Math.abs(by), reader) })
}

/** Of water and deck. */
function movedText(by: number, reader: Reader): string {
  const t = wordsOf(RECORD, reader)
  return Math.abs(by) < NOTHING
    ? t('same')
    : t(by > 0 ? 'higher' : 'lower', { by: formatLength(Math.abs(by), reader) })
}

/** What the bottom did, and whether the leg is long enough. */
function remarks({ change, trend, enough, needs, basis }: NextLeg, reader: Reader): string {
  const t = wordsOf(RECORD, reader)
  const length = (value: number): string => formatLength(Math.abs(value), reader)
  const since = change
    ? t(Math.abs(change.by) < NOTHING ? 'bed.same' : change.by < 0 ? 'bed.washed' : 'bed.filled', {
        by: length(change.by),
        season: change.since,
      })
    : basis === null
      ? ''
      : t(`basis.${basis}`)
  const years = trend
    ? t('trend', {
        count: { value: trend.count, unit: 'count' },
        by: t(trend.slope < 0 ? 'trend.down' : 'trend.up', { by: length(trend.slope) }),
        sd: length(trend.sd ?? 0),
      })
    : ''
  const own = enough === null || enough === 'yes' ? '' : t(`enough.${enough}`)
  return [since, years, own, needs ? t('needs', { length: length(needs.length) }) : '']
    .filter(Boolean)
    .join('; ')
}

function braceText({ legs, planned, code, up }: NextBrace, { legs: all }: NextYear, reader: Reader): string {
  const t = wordsOf(RECORD, reader)
  const number = (id: string): string => String(all.find(({ leg }) => leg.id === id)?.leg.number ?? id)
  const values = { low: number(legs[0]), high: number(legs[1]) }
  if (code === null || !up) return t('brace.none', values)
  const holes = { upLow: formatLength(up[0], reader), upHigh: formatLength(up[1], reader) }
  return code === planned || planned === null
    ? t('brace.same', { ...values, ...holes, code })
    : t('brace.other', { ...values, ...holes, code, planned })
}
