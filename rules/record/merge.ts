/**
 * Two records of one dock put together: every entry and every beginning of both, each once, in one order. It does not matter which is
 * put to which, in what order three come together, or how often: nothing is chosen between them and nothing is left out.
 */
import canonicalize from 'canonicalize'
import { type Issue, issue, type Parsed, type Plain, parseWith, plainOf } from '../validation.ts'
import { byOrder } from './order.ts'
import { type Entry, EntrySchema, RECORD_LIMITS, type RecordHeader, type SeasonRecord } from './schema.ts'

/** Largest that a merged record is, as JSON: half of what a file may be, for one that somebody wrote with indents. */
const MOST_CHARACTERS = RECORD_LIMITS.textBytes / 2
/** As of anything that is read (`plain-data.ts`). */
const MOST_VALUES = 450_000

const textOf = (data: unknown): string => canonicalize(data) ?? ''
const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)

/** Entries are mostly the very same object, or written alike: what orders keys is dear. */
const isSame = (a: Entry, b: Entry): boolean =>
  a === b || JSON.stringify(a) === JSON.stringify(b) || textOf(a) === textOf(b)

/** In the order that they hold in, each once. Two of one id that say different things both stay. */
function inOrder(entries: readonly Entry[]): Entry[] {
  const sorted = [...entries].sort(
    (a, b) => byOrder(a, b) || (isSame(a, b) ? 0 : compare(textOf(a), textOf(b))),
  )
  return sorted.filter((entry, i) => {
    const before = sorted[i - 1]
    return !before || byOrder(before, entry) !== 0 || !isSame(before, entry)
  })
}

/** How a record was begun: all of it but what came later. */
export function headerOf(record: SeasonRecord): RecordHeader {
  const { format: _format, version: _version, others: _others, entries: _entries, ...header } = record
  return header
}

/** Of several beginnings the record goes by one with a design, then the one that names most legs, then the earliest that is told. */
const byRank = (a: RecordHeader, b: RecordHeader): number =>
  Number(b.design !== null) - Number(a.design !== null) ||
  b.legs.length - a.legs.length ||
  compare(a.made.at, b.made.at) ||
  compare(a.id, b.id) ||
  compare(textOf(a), textOf(b))

function beginningsOf(records: readonly SeasonRecord[]): RecordHeader[] {
  const once = new Map<string, RecordHeader>()
  for (const record of records)
    for (const header of [headerOf(record), ...record.others]) {
      const text = textOf(header)
      if (!once.has(text)) once.set(text, header)
    }
  return [...once.values()].sort(byRank)
}

function together(records: readonly [SeasonRecord, ...SeasonRecord[]]): SeasonRecord {
  const [own, ...others] = beginningsOf(records)
  return {
    format: 'leadline/record',
    version: 1,
    ...(own ?? headerOf(records[0])),
    others,
    entries: inOrder(records.flatMap(({ entries }) => entries)),
  }
}

/** As merging leaves it, whatever order a file had. */
export const inOneOrder = (record: SeasonRecord): SeasonRecord => together([record])

const valuesIn = (value: unknown): number => {
  if (value === null || typeof value !== 'object') return 1
  let sum = 1
  for (const one of Object.values(value)) sum += valuesIn(one)
  return sum
}

/** What would keep a record from being read again. */
function tooLarge(record: SeasonRecord): Issue[] {
  const { entries, others } = record
  const over = (path: string, count: number, most: number, what: string): Issue[] =>
    count > most ? [issue(path, `${count} ${what}`, `at most ${most}`)] : []
  return [
    ...over('entries', entries.length, RECORD_LIMITS.entries, 'entries'),
    ...over('others', others.length, RECORD_LIMITS.others, 'beginnings'),
    ...over('', JSON.stringify(record).length, MOST_CHARACTERS, 'characters'),
    ...over('', valuesIn(record), MOST_VALUES, 'values'),
  ]
}

const orTooLarge = (record: SeasonRecord): Parsed<SeasonRecord> => {
  const issues = tooLarge(record)
  return issues.length > 0 ? { ok: false, issues } : { ok: true, value: record, notices: [] }
}

/**
 * Both records in one, which `parseRecord` takes; or issues where together they are larger than a record may be: then each stays what it
 * is, and nothing is lost. The same in either order. Of records of different docks it makes one too: ask `sameDock` first.
 */
export const mergeRecords = (a: SeasonRecord, b: SeasonRecord): Parsed<SeasonRecord> =>
  orTooLarge(together([a, b]))

/** Whether two records were begun together, or for docks of one check code. */
export function sameDock(a: SeasonRecord, b: SeasonRecord): boolean {
  const keys = (record: SeasonRecord): string[] =>
    [headerOf(record), ...record.others].flatMap(({ id, dock }) => (dock === null ? [id] : [id, dock]))
  const known = new Set(keys(a))
  return keys(b).some((key) => known.has(key))
}

/** With one more entry, checked as at the border: what a record would not be read with again is told instead. */
export function addEntry(record: SeasonRecord, entry: Entry): Parsed<SeasonRecord> {
  const plain: Plain = plainOf(entry)
  const parsed = parseWith(EntrySchema, plain, () => [])
  if (!parsed.ok) return parsed
  const { entries } = record
  const last = entries.at(-1)
  const added =
    last && byOrder(last, parsed.value) < 0 ? [...entries, parsed.value] : inOrder([...entries, parsed.value])
  return orTooLarge({ ...record, entries: added })
}
