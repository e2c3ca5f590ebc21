/** How the lake stands today: against something that stays, as somebody knows it, or found from the first leg that is measured. Then where the deck goes. */
import { useState } from 'react'
import { liveEntries } from '../../rules/record/index.ts'
import { meters, text } from '../words/index.ts'
import { choiceText, type DeckSaid, deckChoices } from './deck-choices.ts'
import { Measure, NOTHING, Pick, type Typed, typedFrom } from './fields.tsx'
import { UnderWater } from './flooded.tsx'
import { Figure, Head } from './frame.tsx'
import { Higher } from './higher.tsx'
import { type Begun, useBegun, useSay } from './lake.ts'
import { type Draft, draftFrom, type LevelSaid, levelOf, type Way } from './level-draft.ts'
import { levelByLeg, STAKE_DRAFT } from './level-of-leg.ts'
import { marksOf } from './marks.ts'
import { SeasonField } from './season-field.tsx'
import { LEVEL_LATER } from './stages.ts'
import { mustBeWrong } from './stops-at.ts'

/** Less than that is the same level, m. */
const SAME = 0.01

export function Level({ next }: { readonly next: () => void }) {
  const begun = useBegun()
  const { add, keeper } = begun
  const [found, setFound] = useState<LevelSaid | null>(null)
  const done = (level: LevelSaid, deck: DeckSaid): void => {
    add({ ...level, ...deck })
    for (const kept of ['level', STAKE_DRAFT]) keeper.keepDraft(kept, null)
    next()
  }
  const known = (level: LevelSaid): void => {
    const [only, ...more] = deckChoices(begun, Math.abs(level.level) < SAME ? 0 : level.level)
    // Where all else is under water the one that is left is asked, too.
    if (more.length === 0 && only?.key !== 'over-water') done(level, only?.said ?? { keep: 'planned' })
    else setFound(level)
  }
  const later = (): void => {
    keeper.keepDraft('level', null)
    // A leg that was measured already tells at once.
    const leg = begun.state.legs.find(({ sounding }) => sounding?.how === 'measured')
    const told = leg?.sounding ? levelByLeg(leg.leg.id, leg.sounding.depth, begun) : null
    if (told) {
      known(told)
      return
    }
    const voids = levelsOf(begun)
    if (voids.length > 0) add({ kind: 'void', voids })
    add({ kind: 'step', key: LEVEL_LATER, done: true })
    next()
  }
  return found ? (
    <KeepDeck level={found.level} back={() => setFound(null)} done={(deck) => done(found, deck)} />
  ) : (
    <Ways known={known} later={later} />
  )
}

/** What was told of the level this season: taken back where nobody knows after all. */
const levelsOf = ({ record, season }: Begun): string[] =>
  liveEntries(record.entries).flatMap((entry) =>
    entry.kind === 'level' && entry.season === season ? [entry.id] : [],
  )

function Ways({ known, later }: { readonly known: (level: LevelSaid) => void; readonly later: () => void }) {
  const begun = useBegun()
  const { record, state, project, keeper, last } = begun
  const say = useSay()
  const { t } = say
  const marks = marksOf(begun)
  const [draft, setDraft] = useState(() => draftFrom(keeper.draft('level'), marks.length))
  const [stake, setStake] = useState(() => typedFrom(keeper.draft(STAKE_DRAFT)))
  const put = (part: Partial<Draft>): void => {
    const to = { ...draft, ...part }
    keeper.keepDraft('level', to)
    setDraft(to)
  }
  const way = draft.way
  const mark = way?.startsWith('mark-') ? marks[Number(way.slice(5))] : undefined
  const unknown = record.stake && !marks.some(({ name }) => name === record.stake?.name) ? record.stake : null
  const level = levelOf(draft, {
    mark,
    last: last?.today?.level ?? null,
    beside: unknown && stake.value !== null ? { name: unknown.name, down: stake.value } : null,
  })
  const now = state.level
  return (
    <>
      <Head of={t('level.title')} />
      {now && (
        <div className="good">
          <p>{t('level.now', { level: text(levelText(now.level, begun, say)) })}</p>
        </div>
      )}
      <SeasonField />
      <Pick<Way>
        legend={t('level.how')}
        value={way}
        options={waysOf(begun, say)}
        set={(to) => put({ way: to, typed: NOTHING, low: null })}
      />
      {mark && <Down draft={draft} put={put} label={t('level.down', { name: text(mark.name) })} />}
      {way === 'said' && (
        <Higher typed={draft.typed} higher={draft.higher} than={last?.today ? last.season : null} put={put} />
      )}
      {level && way !== 'survey' && <LevelFigure level={level.level} />}
      {marks.length === 0 && project && <p className="hint">{t('level.safe')}</p>}
      {unknown && <Beside name={unknown.name} stake={stake} set={setStake} />}
      <div className={way !== 'later' && level === null ? 'ways' : 'ways pinned'}>
        <button
          type="button"
          className="main"
          disabled={way !== 'later' && level === null}
          onClick={() => (way === 'later' ? later() : level && known(level))}
        >
          {t('next')}
        </button>
      </div>
    </>
  )
}

interface BesideProps {
  readonly name: string
  readonly stake: Typed
  set(to: Typed): void
}

/** A stake that cannot tell the level yet is read besides, so that next year it can. */
function Beside({ name, stake, set }: BesideProps) {
  const { keeper } = useBegun()
  const { t } = useSay()
  return (
    <>
      <p className="hint">{t('stake.unknown', { name: text(name) })}</p>
      <Measure
        label={t('level.down', { name: text(name) })}
        kind="down"
        typed={stake}
        set={(to) => {
          keeper.keepDraft(STAKE_DRAFT, to)
          set(to)
        }}
      />
    </>
  )
}

interface WayTold {
  readonly value: Way
  readonly label: string
  readonly more?: string | undefined
}

/** What can be answered, the surest first. */
function waysOf(begun: Begun, { t }: ReturnType<typeof useSay>): WayTold[] {
  const { record, project, last } = begun
  const marks = marksOf(begun)
  const surveyed = record.design?.job?.surveyed
  return [
    ...marks.map(({ name }, i) => ({
      value: `mark-${i}` as Way,
      label: t('level.mark', { name: text(name) }),
      more: t('level.mark-more'),
    })),
    ...(last?.today
      ? [
          {
            value: 'last' as Way,
            label: t('level.last', { season: text(last.season) }),
            more: setOn(begun, t),
          },
        ]
      : []),
    {
      value: 'survey',
      label: t(project ? 'level.survey' : 'level.first'),
      more: !project
        ? t('level.first-day', { day: text(record.made.at.slice(0, 10)) })
        : surveyed
          ? t('level.survey-day', { day: text(surveyed) })
          : t('level.survey-unknown'),
    },
    {
      value: 'said',
      label: t('level.said'),
      more: last?.today ? t('level.said-last', { season: text(last.season) }) : undefined,
    },
    ...(project ? [{ value: 'later' as Way, label: t('level.later'), more: t('level.later-more') }] : []),
  ]
}

/** When legs were set last. */
function setOn({ last }: Begun, t: ReturnType<typeof useSay>['t']): string | undefined {
  const at = last?.legs
    .flatMap(({ set }) => (set ? [set.at] : []))
    .sort()
    .at(-1)
  return at && t('level.last-day', { day: text(at.slice(0, 10)) })
}

interface PartProps {
  readonly draft: Draft
  readonly put: (part: Partial<Draft>) => void
}

/** From a mark down to the water; of waves the highest and the lowest of ten seconds. */
function Down({ draft, put, label }: PartProps & { readonly label: string }) {
  const { t } = useSay()
  return (
    <>
      <Measure
        label={draft.low ? t('waves.high') : label}
        kind="down"
        typed={draft.typed}
        set={(typed) => put({ typed })}
      />
      {draft.low && (
        <Measure label={t('waves.low')} kind="down" typed={draft.low} set={(low) => put({ low })} />
      )}
      <button type="button" className="quiet" onClick={() => put({ low: draft.low ? null : NOTHING })}>
        {t(draft.low ? 'waves.still' : 'waves.some')}
      </button>
    </>
  )
}

/** `7 in higher than on the survey day`. */
export function levelText(
  level: number,
  { project }: Pick<Begun, 'project'>,
  { t }: ReturnType<typeof useSay>,
): string {
  const than = t(project ? 'level.than-survey' : 'level.than-first')
  if (Math.abs(level) < SAME) return t(project ? 'level.same-survey' : 'level.same-first')
  return t(level > 0 ? 'level.over' : 'level.under', { by: meters(Math.abs(level)), than: text(than) })
}

function LevelFigure({ level }: { readonly level: number }) {
  const begun = useBegun()
  const say = useSay()
  const words = levelText(level, begun, say)
  if (Math.abs(level) < SAME) return <p className="good">{words}</p>
  const by = say.length(Math.abs(level))
  return <Figure less value={by} of={words.replace(by, '').trim()} />
}

interface KeepDeckProps {
  readonly level: number
  readonly back: () => void
  readonly done: (deck: DeckSaid) => void
}

/** Where the deck goes: two or three different docks once the lake moves. */
export function KeepDeck({ level, back, done }: KeepDeckProps) {
  const begun = useBegun()
  const say = useSay()
  const { t } = say
  const words = levelText(level, begun, say)
  if (mustBeWrong(level, begun.record)) return <WrongLevel level={level} words={words} back={back} />
  return (
    <>
      <Head of={t('keep.title')} where={words} />
      <div className="list">
        {deckChoices(begun, level).map((choice) => {
          const { label, more } = choiceText(choice, level, begun, say)
          return (
            <button type="button" key={choice.key} onClick={() => done(choice.said)}>
              {label}
              {more && <small>{more}</small>}
            </button>
          )
        })}
      </div>
      <p className="hint">{t(begun.record.deckHeight === null ? 'keep.old' : 'keep.hint')}</p>
      <div className="ways">
        <button type="button" className="quiet" onClick={back}>
          {t('level.again')}
        </button>
      </div>
    </>
  )
}

interface WrongLevelProps {
  readonly level: number
  readonly words: string
  readonly back: () => void
}

/** Nothing goes on from a lake that would stand over the planned deck. */
function WrongLevel({ level, words, back }: WrongLevelProps) {
  const { record } = useBegun()
  const { t } = useSay()
  return (
    <>
      <Head of={t('flooded.title')} where={words} />
      <UnderWater by={level - (record.deckHeight ?? 0)} />
      <div className="ways">
        <button type="button" className="main" onClick={back}>
          {t('level.again')}
        </button>
      </div>
    </>
  )
}
