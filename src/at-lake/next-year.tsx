/** How far each leg goes up or down from how it stood last, for this year's water; and what the bottom did since. */
import { useMemo, useState } from 'react'
import { type NextLeg, nextYear, seasonState } from '../../rules/record/index.ts'
import { count, meters, text } from '../words/index.ts'
import { before } from './begun.tsx'
import { choiceText, DECK_KEYS, type DeckChoice, deckChoices } from './deck-choices.ts'
import { Pick } from './fields.tsx'
import { Frame, Head } from './frame.tsx'
import { type Above, aboveFrom, Higher } from './higher.tsx'
import { type Begun, useBegun, useSay } from './lake.ts'
import { levelText } from './level.tsx'
import { levelOf } from './level-draft.ts'
import { usePaper } from './share/use-paper.ts'
import { Tape } from './tape.tsx'
import { useDraft } from './use-draft.ts'

/** Less is the same, m. */
const SAME = 0.003
/** What the bottom does in a year that is worth a word, m. */
const TOLD = 0.01

export function NextYear() {
  const begun = useBegun()
  const say = useSay()
  const { t } = say
  const { go } = begun
  const { season, level, told, last, next, ...asked } = useNext(begun)
  const [failed, setFailed] = useState('')
  const paper = usePaper(setFailed)
  return (
    <Frame title={t('home.next')} home={() => go({ at: 'home' })}>
      <Head of={t('next.title', { season: text(season) })} where={levelText(level, begun, say)} />
      {told === null && <Higher {...asked.tried} than={last?.today ? last.season : null} put={asked.put} />}
      {asked.choices.length > 1 && (
        <Pick<DeckChoice['key']>
          legend={t('next.keep')}
          value={asked.picked?.key ?? null}
          options={asked.choices.map((choice) => ({
            value: choice.key,
            ...choiceText(choice, level, { record: begun.record, last }, say),
          }))}
          set={asked.pick}
        />
      )}
      <Legs of={next.legs} />
      <p className="hint">{t('next.hint')}</p>
      {failed !== '' && (
        <p className="care" role="alert">
          {failed}
        </p>
      )}
      <div className="ways">
        {season === begun.season && (
          <button type="button" className="main" onClick={() => go({ at: 'set-up', stage: 0 })}>
            {t('home.again', { season: text(season) })}
          </button>
        )}
        <button type="button" onClick={() => void paper({ next })}>
          {t('next.paper')}
        </button>
      </div>
    </Frame>
  )
}

/** What was told for the season, or what is tried here; and the heights that follow. */
function useNext(begun: Begun) {
  const { record, project, page } = begun
  const season = (page.at === 'next' && page.of) || begun.season
  const { state, last } = useMemo(
    () =>
      season === begun.season ? begun : { state: seasonState(record, season), last: before(record, season) },
    [begun, record, season],
  )
  const [tried, put] = useDraft(`next/${season}`, triedFrom)
  const { typed, higher, keep } = tried
  const told = state.level?.level ?? null
  // Against the same day as when it is set up: that on which the dock was set last, where its level is known.
  const from = last?.today?.level ?? null
  const stands = levelOf(
    { way: 'said', typed, low: null, higher },
    { mark: undefined, last: from, beside: null },
  )
  const level = told ?? stands?.level ?? from ?? 0
  // What was told for this season goes before what is tried here.
  const choices = state.today ? [] : deckChoices({ record, last }, level)
  const picked = choices.find(({ key }) => key === keep) ?? choices[0]
  const deck = state.today?.deck ?? picked?.deck
  const next = nextYear(record, {
    ...{ level, season },
    ...(deck === undefined ? {} : { deck }),
    // As the paper says it.
    ...(state.today
      ? { keep: state.level?.deck === undefined ? state.today.keep : ('as-last' as const) }
      : picked && { keep: picked.key }),
    ...(project ? { project } : {}),
  })
  return {
    ...{ season, last, told, level, next, tried, choices, picked },
    put: (above: Above) => put({ ...above, keep }),
    pick: (to: DeckChoice['key']) => put({ ...tried, keep: to }),
  }
}

/** Tried here, and written down nowhere: the lake, and where the deck goes. */
interface Tried extends Above {
  readonly keep: DeckChoice['key'] | null
}

const triedFrom = (kept: unknown): Tried => {
  const { keep } = Object(kept) as { readonly keep?: unknown }
  return {
    ...aboveFrom(kept),
    keep: DECK_KEYS.find((one) => one === keep) ?? null,
  }
}

function Legs({ of }: { readonly of: readonly NextLeg[] }) {
  const { t, length } = useSay()
  return (
    <table className="lake-table">
      <thead>
        <tr>
          <th scope="col">{t('coming.leg')}</th>
          <th scope="col">{t('next.by')}</th>
          <th scope="col">{t('heights.deck')}</th>
        </tr>
      </thead>
      <tbody>
        {of.map((leg) => (
          <tr key={leg.leg.id}>
            <th scope="row">{leg.leg.number}</th>
            <td>
              <By leg={leg} />
            </td>
            <td className="length">
              <Tape of={leg.height === null ? '–' : length(leg.height)} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
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
