/** Levels from a gauge's record: pasted, read, confirmed, and used as one step. What was pasted stays while the part is folded. */
import { type ReactNode, useEffect, useId, useMemo, useState } from 'react'
import { leastUnderKeel } from '../../../rules/clearance/keel.ts'
import {
  type Confirmed,
  type DateOrder,
  dateOf,
  GAUGE_UNITS,
  type GaugeRecord,
  type GaugeUnit,
  readGauge,
} from '../../../rules/gauge/read.ts'
import {
  type Season,
  type SeasonLevels,
  type Spell,
  seasonLevels,
  timesOf,
} from '../../../rules/gauge/season.ts'
import type { Figure } from '../../../rules/index.ts'
import { useLeadline, useLeadlineStore } from '../../state/store.ts'
import { Hint, wholeInSight } from '../../ui/controls.tsx'
import { Fold } from '../../ui/fold.tsx'
import { LengthField } from '../../ui/quantity-field.tsx'
import { useSheet } from '../../ui/use-sheet.ts'
import { useWords } from '../../ui/use-words.ts'
import { GAUGE } from '../../words/gauge.ts'
import { count, meters, text } from '../../words/index.ts'
import * as change from '../design-edits.ts'
import { Chart } from './chart.tsx'
import css from './gauge.css?inline'

const UNITS = Object.keys(GAUGE_UNITS) as GaugeUnit[]
const ORDERS: readonly DateOrder[] = ['mdy', 'dmy']
const SHARES = [0, 0.01, 0.05, 0.1] as const
const share = (value: number): Figure => ({ value, unit: 'share' })

export function Gauge() {
  const { t, units, figure } = useWords(GAUGE)
  const [pasted, paste] = useState('')
  const [confirmed, confirm] = useState<Confirmed>({})
  const [season, setSeason] = useState<Season>({ from: 5, to: 10 })
  const [left, leave] = useState(0.05)
  const [typed, type] = useState<number | null>(null)
  const id = useId()
  const record = useMemo(
    () => (pasted.trim() === '' ? null : readGauge(pasted, units === 'imperial' ? 'ft' : 'm', confirmed)),
    [pasted, units, confirmed],
  )
  return (
    <Fold className="control" summary={t('title')}>
      <Box>
        <label htmlFor={id}>{t('paste')}</label>
        <textarea
          id={id}
          rows={4}
          spellCheck={false}
          value={pasted}
          onFocus={wholeInSight}
          onInput={(event) => {
            paste(event.currentTarget.value)
            confirm({})
            type(null)
          }}
        />
        <Hint>{t('hint')}</Hint>
        {pasted.trim() !== '' && record === null && (
          <p className="fault" role="alert">
            {t('nothing')}
          </p>
        )}
        {record && (
          <>
            <Read record={record} confirmed={confirmed} confirm={confirm} />
            <div className="pair">
              <Month label={t('from')} value={season.from} set={(from) => setSeason({ ...season, from })} />
              <Month label={t('to')} value={season.to} set={(to) => setSeason({ ...season, to })} />
            </div>
            <Pick
              label={t('share')}
              value={left}
              options={SHARES}
              told={(of) => figure(share(of))}
              set={leave}
            />
            <Told record={record} season={season} left={left} typed={typed} type={type} />
          </>
        )}
      </Box>
    </Fold>
  )
}

/** Drawn when it is unfolded, and its styles with it. */
function Box({ children }: { readonly children: ReactNode }) {
  const box = useSheet<HTMLDivElement>(css)
  return (
    <div className="gauge" ref={box}>
      {children}
    </div>
  )
}

function Read({
  record,
  confirmed,
  confirm,
}: {
  readonly record: GaugeRecord
  readonly confirmed: Confirmed
  readonly confirm: (to: Confirmed) => void
}) {
  const { t, length } = useWords(GAUGE)
  const { readings, unread, unit, order, columns } = record
  const [first] = readings
  return (
    <>
      <p role="status">
        {t('read', {
          count: count(readings.length),
          from: text(dateOf(first!)),
          to: text(dateOf(readings.at(-1)!)),
          date: text(columns.date),
          level: text(columns.level),
        })}{' '}
        {t('first', { date: text(dateOf(first!)), level: text(length(first!.level)) })}
      </p>
      {unread[0] && (
        <p className="hint">
          {t('unread', { count: count(unread.length) })}{' '}
          {t('unread-line', { line: count(unread[0].line), text: text(unread[0].text) })}
        </p>
      )}
      <Pick
        label={t('unit')}
        value={unit}
        options={UNITS}
        told={(of) => of}
        set={(to) => confirm({ ...confirmed, unit: to })}
      />
      {!record.unitStated && confirmed.unit === undefined && <Hint>{t('unit-open')}</Hint>}
      {order !== 'ymd' && (
        <Pick
          label={t('order')}
          value={order}
          options={ORDERS}
          told={(of) => t(of === 'dmy' ? 'order.dmy' : 'order.mdy')}
          set={(to) => confirm({ ...confirmed, order: to })}
        />
      )}
      {record.orderOpen && confirmed.order === undefined && <Hint>{t('order-open')}</Hint>}
    </>
  )
}

function Told({
  record: { readings },
  season,
  left,
  typed,
  type,
}: {
  readonly record: GaugeRecord
  readonly season: Season
  readonly left: number
  readonly typed: number | null
  readonly type: (to: number) => void
}) {
  const { t } = useWords(GAUGE)
  const surveyed = useLeadline((s) => s.design.job?.surveyed)
  const found = useMemo(() => seasonLevels(readings, season, left), [readings, season, left])
  const own = readings.find((one) => one.month !== null && dateOf(one) === surveyed)?.level
  const at = typed ?? own ?? found?.median ?? 0
  useMarks(found, at, left)
  if (!found) return <Hint>{t('season-none')}</Hint>
  const told = { low: found.low - at, high: found.high - at }
  const yearly = readings.every(({ month }) => month === null)
  return (
    <>
      <LengthField
        label={t('at')}
        value={at}
        commit={(to) => {
          type(to)
          return []
        }}
      />
      <Hint>{t(typed !== null ? 'at-typed' : own !== undefined ? 'at-record' : 'at-median')}</Hint>
      <p>
        {t(yearly ? 'season-years' : 'season', {
          count: count(found.count),
          first: text(String(found.years[0])),
          last: text(String(found.years[1])),
          mean: meters(found.mean),
          low: meters(found.lowest.level),
          lowest: text(dateOf(found.lowest)),
          high: meters(found.highest.level),
          highest: text(dateOf(found.highest)),
        })}
      </p>
      <Chart readings={readings} season={season} found={found} at={at} />
      <p>
        <strong>
          {t('levels', { low: meters(-told.low), high: meters(told.high), share: share(left) })}
        </strong>{' '}
        {t('trend')}
      </p>
      <Times readings={readings} season={season} found={found} at={at} />
      <Use low={told.low} high={told.high} />
    </>
  )
}

/** Drawn in the section for as long as they are told of here. */
function useMarks(found: SeasonLevels | null, at: number, left: number): void {
  const { t } = useWords(GAUGE)
  const store = useLeadlineStore()
  const told = { share: share(left) }
  const text = [t('mark.low', told), t('mark.median'), t('mark.high', told)].join('\n')
  useEffect(() => {
    const levels = found ? [found.low, found.median, found.high] : []
    const { set } = store.getState()
    const lines = text.split('\n')
    set({ marks: levels.map((level, i) => ({ at: level - at, text: lines[i]! })) })
    return () => set({ marks: undefined })
  }, [store, found, at, text])
}

/** How often the deck is awash and the boat aground. */
function Times({ readings, season, found, at }: Parameters<typeof Chart>[0]) {
  const { t } = useWords(GAUGE)
  const { boat, boats, deckHeight } = useLeadline((s) => s.design.dock)
  const { bed, dock } = useLeadline((s) => s.project)
  const stale = useLeadline((s) => s.stale)
  if (stale) return null
  const under = leastUnderKeel({ boat, boats }, dock.sections, bed, 0)
  const { awash, aground } = timesOf(readings, season, found, at, { deckHeight, under })
  const told = (key: 'awash' | 'aground', { share: part, days }: Spell): string =>
    days === null ? t(key, { share: share(part) }) : t(`${key}-days`, { days: count(days) })
  return (
    <p>
      {told('awash', awash)} {aground && told('aground', aground)}
    </p>
  )
}

/** To the millimeter, as one step. */
function Use({ low, high }: { readonly low: number; readonly high: number }) {
  const { t } = useWords(GAUGE)
  const edit = useLeadline((s) => s.edit)
  const levels = useLeadline((s) => s.design.site.levels)
  const [fault, setFault] = useState('')
  const [down, up] = [low, high].map((level) => Math.round(level * 1000) / 1000 + 0) as [number, number]
  const used = levels.low === down && levels.high === up
  return (
    <>
      <button
        type="button"
        disabled={used}
        onClick={() => {
          const issues = edit((d) => change.setLevel(change.setLevel(d, 'low', down), 'high', up))
          setFault(issues[0]?.message ?? '')
        }}
      >
        {t(used ? 'used' : 'use')}
      </button>
      {fault !== '' && (
        <p className="fault" role="alert">
          {fault}
        </p>
      )}
    </>
  )
}

function Month({
  label,
  value,
  set,
}: {
  readonly label: string
  readonly value: number
  readonly set: (to: number) => void
}) {
  const { language } = useWords(GAUGE)
  const name = new Intl.DateTimeFormat(language.tag, { month: 'long', timeZone: 'UTC' })
  return (
    <Pick
      label={label}
      value={value}
      options={[1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]}
      told={(month) => name.format(Date.UTC(2001, month - 1, 15))}
      set={set}
    />
  )
}

function Pick<T extends string | number>(props: {
  readonly label: string
  readonly value: T
  readonly options: readonly T[]
  readonly told: (of: T) => string
  readonly set: (to: T) => void
}) {
  const { label, value, options, told, set } = props
  const id = useId()
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        value={String(value)}
        onChange={(event) => {
          const chosen = options.find((one) => String(one) === event.currentTarget.value)
          if (chosen !== undefined) set(chosen)
        }}
      >
        {options.map((one) => (
          <option key={one} value={String(one)}>
            {told(one)}
          </option>
        ))}
      </select>
    </div>
  )
}
