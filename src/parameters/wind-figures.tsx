/** Wind, open water and wakes in figures, and what they come to: a tap deeper than the choice of an exposure. */
import { basisIn, formatDistance, formatSpeed, formatTime, type Waves } from '../../rules/index.ts'
import { useDock, useLeadline } from '../state/store.ts'
import { LengthField, QuantityField } from '../ui/quantity-field.tsx'
import { useWords, type Words } from '../ui/use-words.ts'
import { bareUnit, type LengthUnit, parseLength } from '../units/parse.ts'
import { parseSpeed, speedStep } from '../units/speed.ts'
import { meters, text } from '../words/index.ts'
import { reasonText } from '../words/reason-text.ts'
import { WAVES, type WaveWord } from '../words/waves.ts'
import * as change from './design-edits.ts'

export function Exposure() {
  const { waves } = useDock()
  return (
    <div className="exposure">
      <Fields />
      {waves && <Told waves={waves} />}
    </div>
  )
}

/** A plain number over this is feet or meters: no lake is that many miles across where docks like these stand. */
const FAR = 30

function Fields() {
  const { wind, wake = 0 } = useLeadline((s) => s.design.site)
  const edit = useLeadline((s) => s.edit)
  const { units, reader, t, length } = useWords(WAVES)
  const far: LengthUnit = units === 'imperial' ? 'mi' : 'km'
  const speed = wind?.speed ?? 0
  const fetch = wind?.fetch ?? 0
  const depth = wind?.depth ?? null
  const readLength = (typed: string, bare: LengthUnit, example: string) => {
    const read = parseLength(typed, bare)
    return read.ok ? { value: read.meters } : { fault: `length.${read.fault}` as const, example }
  }
  return (
    <div className="pair">
      <QuantityField
        label={t('waves.wind')}
        value={speed}
        shown={wind ? formatSpeed(speed, reader) : ''}
        read={(typed) => {
          const value = parseSpeed(typed, units)
          const example = t(`example.wind.${units}`)
          return value === null ? { fault: 'speed.not-a-speed', example } : { value }
        }}
        next={(way, large) => Math.max(0, speed + way * speedStep(units, large))}
        commit={(to) => edit((d) => change.setWind(d, { speed: to }))}
      />
      <QuantityField
        label={t('waves.fetch')}
        value={fetch}
        shown={wind ? formatDistance(fetch, reader) : ''}
        read={(typed) =>
          readLength(typed, Number(typed) > FAR ? bareUnit(units) : far, t(`example.fetch.${units}`))
        }
        next={(way, large) => Math.max(0, fetch + way * (large ? 1000 : 100))}
        commit={(to) => edit((d) => change.setWind(d, { fetch: to }))}
      />
      <QuantityField
        label={t('waves.fetch-depth')}
        value={depth}
        shown={depth === null ? '' : length(depth)}
        placeholder={t('waves.deep')}
        read={(typed) =>
          typed.trim() === ''
            ? { value: null }
            : readLength(typed, bareUnit(units), t(`example.depth.${units}`))
        }
        next={(way, large) => Math.max(0, (depth ?? 0) + way * (large ? 1 : 0.3))}
        commit={(to) => edit((d) => change.setWind(d, { depth: to }))}
      />
      <LengthField label={t('waves.wake')} value={wake} commit={(to) => edit((d) => change.setWake(d, to))} />
    </div>
  )
}

const LAWS = ['spm1984', 'cem2002', 'youngVerhagen1996'] as const

function Told({ waves }: { readonly waves: Waves }) {
  const dock = useDock()
  const { reasons } = dock
  const words = useWords(WAVES)
  const { t } = words
  const { period, length, highest, notes } = waves
  const seconds = (value: number) => ({ value, unit: 's' })
  return (
    <>
      {period > 0 && (
        <p>
          {t('waves.size', {
            length: meters(length),
            highest: meters(highest),
            duration: seconds(waves.duration),
          })}
        </p>
      )}
      <ul className="steps">
        {reasons.waves.map((reason) => (
          <li key={reason.rule}>{reasonText(reason, words.reader, dock)}</li>
        ))}
      </ul>
      {period > 0 && <Laws waves={waves} words={words} />}
      {notes.length > 0 && (
        <ul className="steps hint">
          {notes.map((note) => (
            <li key={note}>
              {t(`waves.note.${note}`, { open: meters(waves.open), wake: meters(waves.wake) })}
            </li>
          ))}
        </ul>
      )}
      <p className="hint">
        {t('waves.basis', { basis: text(basisIn(reasons.waves[0]?.basis ?? '', words)) })}
      </p>
    </>
  )
}

/** Out on the lake by each of the published laws. */
function Laws({ waves, words }: { readonly waves: Waves; readonly words: Words<WaveWord> }) {
  const { t, length } = words
  return (
    <table>
      <caption className="unseen">{t('waves.laws')}</caption>
      <thead>
        <tr>
          <th scope="col">{t('waves.law')}</th>
          <th scope="col">{t('waves.high')}</th>
          <th scope="col">{t('waves.every')}</th>
        </tr>
      </thead>
      <tbody>
        {LAWS.map((law) => (
          <tr key={law}>
            <th scope="row">{t(`waves.law.${law}`)}</th>
            <td>{length(waves.laws[law].height)}</td>
            <td>{formatTime(waves.laws[law].period, words)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
