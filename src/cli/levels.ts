/** `leadline levels`: what a gauge's record says of the season. */

import { assessKit } from '../../rules/assess-kit.ts'
import { leastUnderKeel } from '../../rules/clearance/keel.ts'
import {
  type DateOrder,
  dateOf,
  GAUGE_UNITS,
  type GaugeRecord,
  type GaugeUnit,
  readGauge,
} from '../../rules/gauge/read.ts'
import {
  type Season,
  type SeasonLevels,
  type Spell,
  seasonLevels,
  timesOf,
} from '../../rules/gauge/season.ts'
import { deriveKit, formatLength, type Reader, type Units, wordsOf } from '../../rules/index.ts'
import { TERMINAL } from '../words/terminal.ts'
import { Unusable } from './errors.ts'
import { readCatalog, readDesign, readLanguage } from './files.ts'
import { readText } from './input.ts'
import { lines } from './lines.ts'
import type { Outcome } from './run.ts'

interface Options {
  readonly from?: string | undefined
  readonly to?: string | undefined
  readonly unit?: string | undefined
  readonly order?: string | undefined
  readonly at?: string | undefined
  readonly design?: string | undefined
  readonly words?: string | undefined
  readonly lang?: string | undefined
  readonly units: Units
}

/** So much of the time the lake is lower, and so much higher. */
const SHARE = 0.05

/** @throws Unusable */
export function levelsCommand(file: string, options: Options): Outcome {
  const reader: Reader = { language: readLanguage(options), units: options.units }
  const t = wordsOf(TERMINAL, reader)
  const unit = oneOf('--unit', options.unit, Object.keys(GAUGE_UNITS) as GaugeUnit[])
  const order = oneOf('--order', options.order, ['mdy', 'dmy'] as const satisfies DateOrder[])
  const season = { from: monthOf('--from', options.from, 5), to: monthOf('--to', options.to, 10) }
  const record = readGauge(readText(file), options.units === 'imperial' ? 'ft' : 'm', {
    ...(unit && { unit }),
    ...(order && { order }),
  })
  if (!record)
    throw new Unusable([`${file}: no dates with levels; expected a date and a level a line, in columns`])
  const found = seasonLevels(record.readings, season, SHARE)
  const out = readLines(record, unit, reader)
  if (!found) {
    const { from, to } = season
    return { code: 0, out: lines([...out, t('levels.none', figures({ from, to }))]), err: '' }
  }
  const length = (value: number) => formatLength(value, reader)
  out.push(
    t('levels.season', {
      ...figures({ from: season.from, to: season.to, count: found.count }),
      first: String(found.years[0]),
      last: String(found.years[1]),
    }),
    t('levels.mean', { mean: length(found.mean), median: length(found.median) }),
    t('levels.range', {
      low: length(found.lowest.level),
      lowest: dateOf(found.lowest),
      high: length(found.highest.level),
      highest: dateOf(found.highest),
      range: length(found.highest.level - found.lowest.level),
    }),
    t('levels.percentiles', { low: length(found.low), high: length(found.high) }),
  )
  const at = options.at === undefined ? null : levelOf(options.at) * GAUGE_UNITS[record.unit]
  if (at !== null) {
    out.push(t('levels.design', { low: length(found.low - at), high: length(found.high - at) }))
    if (options.design !== undefined)
      out.push(...againstDock(options.design, record, season, at, found, reader))
  } else if (options.design !== undefined)
    throw new Unusable(['--design: given without --at; expected the level on the day of the survey too'])
  return { code: 0, out: lines(out), err: '' }
}

function readLines(record: GaugeRecord, asked: GaugeUnit | undefined, reader: Reader): string[] {
  const t = wordsOf(TERMINAL, reader)
  const { readings, unit, order, columns, unread } = record
  return [
    t('levels.read', {
      ...figures({ count: readings.length }),
      from: dateOf(readings[0]!),
      to: dateOf(readings.at(-1)!),
      unit,
      ...columns,
    }),
    ...(record.unitStated || asked ? [] : [t('levels.unit-taken', { unit })]),
    ...(record.orderOpen ? [t('levels.order-open', { order })] : []),
    ...(unread[0]
      ? [
          t('levels.unread', {
            ...figures({ count: unread.length, line: unread[0].line }),
            text: unread[0].text,
          }),
        ]
      : []),
  ]
}

/** How long the deck is awash, and the boat aground. */
function againstDock(
  file: string,
  { readings }: GaugeRecord,
  season: Season,
  at: number,
  found: SeasonLevels,
  reader: Reader,
): string[] {
  const t = wordsOf(TERMINAL, reader)
  const design = readDesign(file).value
  const { dock } = design
  const kit = deriveKit(design, readCatalog(undefined).value)
  const under = leastUnderKeel(dock, assessKit(kit).sections, kit.bed, 0)
  const { awash, aground } = timesOf(readings, season, found, at, { deckHeight: dock.deckHeight, under })
  const told = (key: 'awash' | 'aground', { share, days }: Spell): string => {
    const values = { share: { value: share, unit: 'share' } } as const
    return days === null
      ? t(`levels.${key}`, values)
      : t(`levels.${key}-days`, { ...values, ...figures({ days }) })
  }
  return [told('awash', awash), ...(aground ? [told('aground', aground)] : [])]
}

const figures = <K extends string>(values: Record<K, number>) =>
  Object.fromEntries(
    Object.entries<number>(values).map(([name, value]) => [name, { value, unit: 'count' }]),
  ) as Record<K, { value: number; unit: 'count' }>

function monthOf(name: string, value: string | undefined, usual: number): number {
  if (value === undefined) return usual
  const month = Number(value)
  if (Number.isInteger(month) && month >= 1 && month <= 12) return month
  throw new Unusable([`${name}: "${value}"; expected a month, 1 to 12`])
}

function levelOf(value: string): number {
  const level = value.trim() === '' ? Number.NaN : Number(value)
  if (Number.isFinite(level)) return level
  throw new Unusable([`--at: "${value}"; expected a level in the record's unit`])
}

function oneOf<T extends string>(name: string, value: string | undefined, list: readonly T[]): T | undefined {
  const found = list.find((one) => one === value)
  if (value === undefined || found) return found
  throw new Unusable([`${name}: "${value}"; expected ${list.join(', ')}`])
}
