/** How far each leg goes up or down from how it stood last, for this year's water; and what the bottom did since. */
import { useState } from 'react'
import { type NextLeg, nextYear } from '../../rules/record/index.ts'
import { count, meters, text } from '../words/index.ts'
import { choiceText, type DeckChoice, deckChoices } from './deck-choices.ts'
import { Measure, NOTHING, Pick } from './fields.tsx'
import { Frame, Head } from './frame.tsx'
import { useBegun, useSay } from './lake.ts'
import { levelText } from './level.tsx'
import { levelOf } from './level-draft.ts'

/** Less is the same, m. */
const SAME = 0.003
/** What the bottom does in a year that is worth a word, m. */
const TOLD = 0.01

export function NextYear() {
  const begun = useBegun()
  const say = useSay()
  const { t, length } = say
  const { record, season, state, last, go, project } = begun
  const [typed, setTyped] = useState(NOTHING)
  const [higher, setHigher] = useState<boolean | null>(null)
  const [keep, setKeep] = useState<DeckChoice['key'] | null>(null)
  const told = state.level?.level ?? null
  // Told against the same day as when it is set up: that on which the dock was set last, where its level is known.
  const from = last?.today?.level ?? null
  const tried = levelOf(
    { way: 'said', typed, low: null, higher },
    { mark: undefined, last: from, beside: null },
  )
  const level = told ?? tried?.level ?? from ?? 0
  const than = { season: text(last?.season ?? '') }
  const choices = deckChoices(begun, level)
  const picked = choices.find(({ key }) => key === keep) ?? choices[0]
  // What was told for this season goes before what is tried here.
  const deck = state.today?.deck ?? picked?.deck
  const next = nextYear(record, {
    ...{ level, season },
    ...(deck === undefined ? {} : { deck }),
    ...(project ? { project } : {}),
  })
  return (
    <Frame title={t('home.next')} home={() => go({ at: 'home' })}>
      <Head of={t('next.title', { season: text(season) })} where={levelText(level, begun, say)} />
      {told === null && (
        <>
          <Pick<'higher' | 'lower'>
            legend={t('level.which')}
            value={higher === null ? null : higher ? 'higher' : 'lower'}
            options={[
              { value: 'higher', label: t(from === null ? 'level.higher' : 'level.higher-last', than) },
              { value: 'lower', label: t(from === null ? 'level.lower' : 'level.lower-last', than) },
            ]}
            set={(to) => setHigher(to === 'higher')}
          />
          <Measure label={t('level.by')} kind="change" typed={typed} set={setTyped} />
        </>
      )}
      {state.today === null && choices.length > 1 && (
        <Pick<DeckChoice['key']>
          legend={t('next.keep')}
          value={picked?.key ?? null}
          options={choices.map((choice) => ({ value: choice.key, ...choiceText(choice, level, begun, say) }))}
          set={setKeep}
        />
      )}
      <table className="lake-table">
        <thead>
          <tr>
            <th scope="col">{t('coming.leg')}</th>
            <th scope="col">{t('next.by')}</th>
            <th scope="col">{t('heights.deck')}</th>
          </tr>
        </thead>
        <tbody>
          {next.legs.map((leg) => (
            <tr key={leg.leg.id}>
              <th scope="row">{leg.leg.number}</th>
              <td>
                <By leg={leg} />
              </td>
              <td className="length">{leg.height === null ? '–' : length(leg.height)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="hint">{t('next.hint')}</p>
      <div className="ways">
        <button type="button" className="main" onClick={() => go({ at: 'set-up', stage: 0 })}>
          {t('home.again', { season: text(season) })}
        </button>
      </div>
    </Frame>
  )
}

/** Longer is down: the leg slides down in its holder. */
function By({ leg: { by, enough, needs, change, trend } }: { readonly leg: NextLeg }) {
  const { t } = useSay()
  const way =
    by === null
      ? '–'
      : Math.abs(by) < SAME
        ? t('next.same')
        : t(by > 0 ? 'next.down' : 'next.up', { by: meters(Math.abs(by)) })
  return (
    <>
      {way}
      {enough === 'no' && (
        <small>{needs ? t('next.needs', { length: meters(needs.length) }) : t('leg.none')}</small>
      )}
      {enough === 'reserve' && <small>{t('next.reserve')}</small>}
      {change && Math.abs(change.by) >= TOLD && (
        <small>
          {t(change.by < 0 ? 'next.scoured' : 'next.filled', {
            by: meters(Math.abs(change.by)),
            since: text(change.since),
          })}
        </small>
      )}
      {trend && Math.abs(trend.slope) >= TOLD && (
        <small>
          {t(trend.slope < 0 ? 'next.sinks' : 'next.rises', {
            by: meters(Math.abs(trend.slope)),
            count: count(trend.count),
          })}
        </small>
      )}
    </>
  )
}
