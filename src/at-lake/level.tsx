/** How the lake stands today: against something that stays, as somebody knows it, or found from the first leg that is measured. Then where the deck goes. */
import { useState } from 'react'
import { stillWater } from '../../rules/at-lake/index.ts'
import type { Keep } from '../../rules/record/index.ts'
import { meters, text } from '../words/index.ts'
import { Measure, NOTHING, Pick, type Typed, typedFrom } from './fields.tsx'
import { Figure, Head } from './frame.tsx'
import { type Begun, useBegun, useSay } from './lake.ts'
import { marksOf } from './marks.ts'
import { SeasonField } from './season-field.tsx'
import { LEVEL_LATER } from './stages.ts'

type Way = `mark-${number}` | 'said' | 'survey' | 'later'

/** An entry but for where the deck goes. */
interface LevelSaid {
  readonly kind: 'level'
  readonly level: number
  readonly from: 'mark' | 'stake' | 'said' | 'survey'
  readonly mark?: string
  readonly down?: number
  readonly waves?: { high: number; low: number }
  readonly sd?: number
}

/** Less than that is the same level, m. */
const SAME = 0.01

export function Level({ next }: { readonly next: () => void }) {
  const { add, keeper } = useBegun()
  const [found, setFound] = useState<LevelSaid | null>(null)
  const done = (level: LevelSaid, keep: Keep): void => {
    add({ ...level, keep })
    keeper.keepDraft('level', null)
    next()
  }
  const known = (level: LevelSaid): void => {
    if (Math.abs(level.level) < SAME) done(level, 'planned')
    else setFound(level)
  }
  const later = (): void => {
    keeper.keepDraft('level', null)
    add({ kind: 'step', key: LEVEL_LATER, done: true })
    next()
  }
  return found ? (
    <KeepDeck level={found.level} back={() => setFound(null)} done={(keep) => done(found, keep)} />
  ) : (
    <Ways known={known} later={later} />
  )
}

interface Draft {
  readonly way: Way | null
  readonly typed: Typed
  /** The lowest reading of ten seconds; null: still water. */
  readonly low: Typed | null
  /** Null: not said yet. */
  readonly higher: boolean | null
}

const EMPTY: Draft = { way: null, typed: NOTHING, low: null, higher: null }

function draftFrom(kept: unknown): Draft {
  const { way, typed, low, higher } = (kept ?? {}) as { readonly [K in keyof Draft]?: unknown }
  return {
    way: typeof way === 'string' && /^(mark-\d+|said|survey|later)$/.test(way) ? (way as Way) : null,
    typed: typedFrom(typed),
    low: low === null || low === undefined ? null : typedFrom(low),
    higher: typeof higher === 'boolean' ? higher : null,
  }
}

function Ways({ known, later }: { readonly known: (level: LevelSaid) => void; readonly later: () => void }) {
  const begun = useBegun()
  const { record, state, project, keeper } = begun
  const say = useSay()
  const { t } = say
  const [draft, setDraft] = useState(() => draftFrom(keeper.draft('level') ?? EMPTY))
  const put = (part: Partial<Draft>): void => {
    const to = { ...draft, ...part }
    keeper.keepDraft('level', to)
    setDraft(to)
  }
  const marks = marksOf(begun)
  const surveyed = record.design?.job?.surveyed
  const way = draft.way
  const mark = way?.startsWith('mark-') ? marks[Number(way.slice(5))] : undefined
  const level = levelOf(draft, mark)
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
        options={[
          ...marks.map(({ name }, i) => ({
            value: `mark-${i}` as Way,
            label: t('level.mark', { name: text(name) }),
            more: t('level.mark-more'),
          })),
          {
            value: 'survey',
            label: t(project ? 'level.survey' : 'level.first'),
            more: surveyed ? t('level.survey-day', { day: text(surveyed) }) : t('level.survey-unknown'),
          },
          { value: 'said', label: t('level.said') },
          ...(project
            ? [{ value: 'later' as Way, label: t('level.later'), more: t('level.later-more') }]
            : []),
        ]}
        set={(to) => put({ way: to, typed: NOTHING, low: null })}
      />
      {mark && <Down draft={draft} put={put} label={t('level.down', { name: text(mark.name) })} />}
      {way === 'said' && <Above draft={draft} put={put} />}
      {level && way !== 'survey' && <LevelFigure level={level.level} />}
      <div className="ways">
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
        kind="height"
        typed={draft.typed}
        from={0.5}
        set={(typed) => put({ typed })}
      />
      {draft.low && (
        <Measure
          label={t('waves.low')}
          kind="height"
          typed={draft.low}
          from={draft.typed.value ?? 0.5}
          set={(low) => put({ low })}
        />
      )}
      <button type="button" className="quiet" onClick={() => put({ low: draft.low ? null : NOTHING })}>
        {t(draft.low ? 'waves.still' : 'waves.some')}
      </button>
    </>
  )
}

function Above({ draft, put }: PartProps) {
  const { t } = useSay()
  return (
    <>
      <Pick
        legend={t('level.which')}
        value={draft.higher === null ? null : draft.higher ? 'higher' : 'lower'}
        options={[
          { value: 'higher', label: t('level.higher') },
          { value: 'lower', label: t('level.lower') },
        ]}
        set={(to) => put({ higher: to === 'higher' })}
      />
      <Measure
        label={t('level.by')}
        kind="height"
        typed={draft.typed}
        from={0.1}
        set={(typed) => put({ typed })}
      />
    </>
  )
}

/** What follows from what stands in the fields; null: not enough yet. */
function levelOf(
  { way, typed, low, higher }: Draft,
  mark: { name: string; above: number; by: 'mark' | 'stake' } | undefined,
): LevelSaid | null {
  if (way === 'survey') return { kind: 'level', level: 0, from: 'survey' }
  if (typed.value === null) return null
  if (way === 'said' && higher === null) return null
  if (way === 'said') return { kind: 'level', level: (higher ? 1 : -1) * Math.abs(typed.value), from: 'said' }
  if (!mark || (low && low.value === null)) return null
  const waves = low && low.value !== null ? { high: typed.value, low: low.value } : null
  const { at, error } = waves ? stillWater(waves) : { at: typed.value, error: null }
  return {
    kind: 'level',
    level: mark.above - at,
    from: mark.by,
    mark: mark.name,
    down: at,
    ...(waves ? { waves } : {}),
    ...(error === null ? {} : { sd: error }),
  }
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
  readonly done: (keep: Keep) => void
}

/** The deck where it was planned, or as high over today's water: two different docks once the lake moves. */
export function KeepDeck({ level, back, done }: KeepDeckProps) {
  const begun = useBegun()
  const say = useSay()
  const { t } = say
  const words = levelText(level, begun, say)
  const planned = begun.record.deckHeight
  if (planned === null)
    return (
      <>
        <Head of={words} />
        <p>{t('keep.old')}</p>
        <div className="list">
          <button type="button" onClick={() => done('over-water')}>
            {t('keep.old-water')}
          </button>
          <button type="button" onClick={() => done('planned')}>
            {t('keep.old-planned')}
          </button>
        </div>
      </>
    )
  return (
    <>
      <Head of={t('keep.title')} where={words} />
      <div className="list">
        <button type="button" onClick={() => done('planned')}>
          {t('keep.planned')}
          <small>{t('keep.planned-more', { over: meters(planned - level) })}</small>
        </button>
        <button type="button" onClick={() => done('over-water')}>
          {t('keep.over-water', { over: meters(planned) })}
          <small>{t(level > 0 ? 'keep.up' : 'keep.down', { by: meters(Math.abs(level)) })}</small>
        </button>
      </div>
      <p className="hint">{t('keep.hint')}</p>
      <div className="ways">
        <button type="button" className="quiet" onClick={back}>
          {t('level.again')}
        </button>
      </div>
    </>
  )
}
