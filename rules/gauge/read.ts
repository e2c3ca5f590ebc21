/**
 * A gauge's record as it is pasted: a date and a level a line, in whatever columns an agency puts them. Nothing is guessed silently: what was
 * taken for the date, the level, the order of day and month and the unit is told, to be confirmed, and what could not be read is counted.
 */
import { cellsOf, partedBy } from '../pasted-table.ts'
import { EXACT } from '../words/figures.ts'

export const GAUGE_UNITS = { m: 1, cm: 0.01, mm: 0.001, ft: EXACT.foot, in: EXACT.inch } as const
export type GaugeUnit = keyof typeof GAUGE_UNITS
/** Order of the parts of a date in digits. */
export type DateOrder = 'ymd' | 'mdy' | 'dmy'

export interface Reading {
  /** Days since 1970-01-01; of a month or a year its middle. */
  readonly day: number
  /** 1 to 12; null of a year alone. */
  readonly month: number | null
  readonly year: number
  /** m over the gauge's zero. */
  readonly level: number
}

export interface Unread {
  /** From 1. */
  readonly line: number
  readonly text: string
  readonly why: 'date' | 'level' | 'missing'
}

export interface GaugeRecord {
  /** In order of time; one a day, the mean of that day's. */
  readonly readings: readonly Reading[]
  readonly unit: GaugeUnit
  /** The record says its unit. */
  readonly unitStated: boolean
  readonly order: DateOrder
  /** Days and months could be the other way round. */
  readonly orderOpen: boolean
  readonly columns: { readonly date: string; readonly level: string }
  /** Headings and remarks are not among them. */
  readonly unread: readonly Unread[]
}

export interface Confirmed {
  readonly unit?: GaugeUnit
  readonly order?: DateOrder
}

/** Agencies write a level that is missing as such a number. */
const MISSING = -900
/** Lines that a column is chosen by. */
const LOOKED_AT = 400

/**
 * Null where no two columns are a date and a number.
 *
 * @param bare the unit of a record that states none
 */
export function readGauge(text: string, bare: GaugeUnit, confirmed: Confirmed = {}): GaugeRecord | null {
  const lines = text
    .replace(/^\ufeff/, '')
    .split(/\r\n?|\n/)
    .map((raw, i) => ({ line: i + 1, raw }))
    .filter(({ raw }) => raw.trim() !== '' && !raw.startsWith('#'))
  const remarks = text.match(/^#.*$/gm)?.join('\n') ?? ''
  const parted = partedBy(lines.map(({ raw }) => raw))
  const cells = lines.map(({ line, raw }) => ({ line, raw, row: cellsOf(raw, parted) }))
  const looked = cells.slice(0, LOOKED_AT).map(({ row }) => row)
  const wide = Math.max(0, ...looked.map((row) => row.length))
  const share = (c: number, is: (cell: string) => boolean): number =>
    looked.filter((row) => is(row[c] ?? '')).length / Math.max(1, looked.length)
  const columns = Array.from({ length: wide }, (_, c) => c)
  const date = best(columns, (c) => share(c, (cell) => partsOf(cell) !== null && !isCount(cell)))
  if (date === null) return null
  const head = cells.find(({ row }) => partsOf(row[date] ?? '') === null)?.row ?? []
  const named = (c: number): number => (LEVEL.test(head[c] ?? '') ? 1 : 0)
  const after = columns.filter((c) => c !== date && share(c, (cell) => numberOf(cell) !== null) >= 0.5)
  const level = best(
    after,
    (c) => 1 + named(c) + (c > date ? 0.5 : 0) + share(c, (cell) => numberOf(cell) !== null) / 4,
  )
  if (level === null) return null

  const unread: Unread[] = []
  const days = new Map<number, { reading: Omit<Reading, 'level'>; sum: number; count: number }>()
  const { order, open } = orderOf(
    cells.map(({ row }) => row[date] ?? ''),
    confirmed.order,
  )
  const stated = unitIn(`${head[level] ?? ''}`) ?? unitIn(remarks)
  const unit = confirmed.unit ?? stated ?? bare
  let begun = false
  for (const { line, raw, row } of cells) {
    const parts = partsOf(row[date] ?? '')
    const when = parts && dayOf(parts, order)
    const value = numberOf(row[level] ?? '')
    if (!when || value === null || value <= MISSING) {
      // What comes before the first reading is the heading.
      const empty = /^(|na|nan|null|-+|m|ice|eqp|ssn|mnt|\*+)$/i.test((row[level] ?? '').trim())
      const why = !when ? 'date' : empty || value !== null ? 'missing' : 'level'
      if (begun || when) unread.push({ line, text: raw.slice(0, 80), why })
      continue
    }
    begun = true
    const known = days.get(when.day) ?? { reading: when, sum: 0, count: 0 }
    days.set(when.day, { reading: when, sum: known.sum + value, count: known.count + 1 })
  }
  if (days.size === 0) return null
  const readings = [...days.values()]
    .map(({ reading, sum, count }) => ({ ...reading, level: (sum / count) * GAUGE_UNITS[unit] }))
    .sort((a, b) => a.day - b.day)
  return {
    readings,
    unit,
    unitStated: stated !== null,
    order,
    orderOpen: open,
    columns: {
      date: head[date]?.trim() || String(date + 1),
      level: head[level]?.trim() || String(level + 1),
    },
    unread,
  }
}

const LEVEL = /level|stage|gage|gauge|height|elev|value|wasserstand|pegel|hauteur/i

const best = (list: readonly number[], of: (c: number) => number): number | null => {
  let found: number | null = null
  let most = 0.5 - 1e-9
  for (const c of list) {
    const figure = of(c)
    if (figure <= most) continue
    most = figure
    found = c
  }
  return found
}

/** A decimal comma where it cannot part thousands. */
function numberOf(cell: string): number | null {
  const text = cell.trim().replace(/\s*(ft|feet|m|meters?|metres?|cm|mm|in)\.?$/i, '')
  if (/^[-+]?\d+,\d+$/.test(text)) return Number(text.replace(',', '.'))
  return /^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i.test(text) ? Number(text) : null
}

const isCount = (cell: string): boolean => /^\d{1,3}$/.test(cell.trim())

type Parts = readonly [number, number, number] | readonly ['ymd', number, number | null, number | null]

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec']

/** Three figures whose order is open; or year, month, day where it is not. */
function partsOf(cell: string): Parts | null {
  const text = cell.trim().toLowerCase()
  const iso = /^(\d{4})[-/.](\d{1,2})(?:[-/.](\d{1,2}))?(?:[t\s].*)?$/.exec(text)
  if (iso) return ['ymd', Number(iso[1]), Number(iso[2]), iso[3] === undefined ? null : Number(iso[3])]
  const solid = /^(\d{4})(\d{2})(\d{2})$/.exec(text)
  if (solid) return ['ymd', Number(solid[1]), Number(solid[2]), Number(solid[3])]
  if (/^(1[89]|20)\d\d$/.test(text)) return ['ymd', Number(text), null, null]
  const figures = /^(\d{1,2})[-/.](\d{1,2})[-/.](\d{4}|\d{2})(?:\s.*)?$/.exec(text)
  if (figures) {
    const year = Number(figures[3])
    return [Number(figures[1]), Number(figures[2]), year < 100 ? year + (year < 50 ? 2000 : 1900) : year]
  }
  const name = /([a-z]{3})[a-z]*/.exec(text)?.[1] ?? ''
  const month = MONTHS.indexOf(name) + 1
  const worded = /^(?:(\d{1,2})[\s.-]+)?[a-z]+\.?[\s-]+(?:(\d{1,2}),?[\s-]+)?(\d{4})(?:\s.*)?$/.exec(text)
  if (month === 0 || !worded) return null
  const day = worded[1] ?? worded[2]
  return ['ymd', Number(worded[3]), month, day === undefined ? null : Number(day)]
}

function orderOf(
  cells: readonly string[],
  asked: DateOrder | undefined,
): { order: DateOrder; open: boolean } {
  const open = cells.map(partsOf).filter((p): p is [number, number, number] => p !== null && p[0] !== 'ymd')
  if (open.length === 0) return { order: 'ymd', open: false }
  const dmy = open.some(([a]) => a > 12)
  const mdy = open.some(([, b]) => b > 12)
  const told: DateOrder = dmy && !mdy ? 'dmy' : 'mdy'
  return { order: asked && asked !== 'ymd' ? asked : told, open: dmy === mdy }
}

const DAY = 86_400_000

function dayOf(parts: Parts, order: DateOrder): Omit<Reading, 'level'> | null {
  const [year, month, day] =
    parts[0] === 'ymd'
      ? [parts[1], parts[2], parts[3]]
      : order === 'dmy'
        ? [parts[2]!, parts[1], parts[0]]
        : [parts[2]!, parts[0], parts[1]]
  if (month === null) return { day: Date.UTC(year, 6, 2) / DAY, month: null, year }
  const date = new Date(Date.UTC(year, month - 1, day ?? 15))
  const real = date.getUTCMonth() === month - 1 && date.getUTCFullYear() === year
  return real ? { day: date.getTime() / DAY, month, year } : null
}

function unitIn(text: string): GaugeUnit | null {
  const found = /\b(feet|foot|ft|meters?|metres?|cm|centimet(?:er|re)s?|mm|inch(?:es)?|m)\b/i.exec(
    text.replaceAll('_', ' '),
  )?.[1]
  if (!found) return null
  const word = found.toLowerCase()
  if (/^(feet|foot|ft)$/.test(word)) return 'ft'
  if (word.startsWith('inch')) return 'in'
  if (word === 'cm' || word.startsWith('centi')) return 'cm'
  return word === 'mm' ? 'mm' : 'm'
}

/** `1964`, or the day as `2024-05-01`. */
export const dateOf = ({ day, month, year }: Pick<Reading, 'day' | 'month' | 'year'>): string =>
  month === null ? String(year) : new Date(day * DAY).toISOString().slice(0, 10)
