/** At a station: which leg, how deep it is expected, how deep it is. What differs too much is measured again first; then the shop is called. */
import { useEffect, useState } from 'react'
import { type LegAt, levelToday } from '../../rules/at-lake/index.ts'
import { meters, text } from '../words/index.ts'
import { Measure, NOTHING, type Typed, typedFrom } from './fields.tsx'
import { Figure, Head } from './frame.tsx'
import { legOf, useBegun, useSay } from './lake.ts'
import { KeepDeck } from './level.tsx'
import { Limits } from './limits.tsx'
import { placeOf } from './names.ts'
import { PlanPicture } from './pictures/plan-picture.tsx'

interface LegProps {
  readonly leg: string
  readonly next: () => void
}

export function MeasureLeg({ leg, next }: LegProps) {
  const { day, state, keeper, add } = useBegun()
  const at = day && legOf(day, leg)
  const [asking, setAsking] = useState(
    () => !isMeasured(at) || typedFrom(keeper.draft(`leg/${leg}`)).text !== '',
  )
  /** Just entered: where nothing is the matter the next screen comes by itself. */
  const [entered, setEntered] = useState(false)
  const fine = at?.limit.say === 'go' || at?.limit.say === 'other-leg'
  const level = useLevelOfLeg(leg, at)
  // biome-ignore lint/correctness/useExhaustiveDependencies: once it is known what follows from the entry.
  useEffect(() => {
    if (entered && isMeasured(at) && fine && state.level && level.found === null) next()
  }, [entered, at, level.found])
  if (!day || !at) return null
  const enter = (depth: number, how: 'measured' | 'to-frame' | 'as-planned'): void => {
    keeper.keepDraft(`leg/${leg}`, null)
    const known = how === 'as-planned' ? null : level.find(depth)
    add({ kind: 'sounding', leg, depth, level: known ?? day.level, how })
    setAsking(false)
    setEntered(true)
  }
  if (level.found !== null)
    return <KeepDeck level={level.found} back={() => level.drop()} done={(keep) => level.take(keep)} />
  if (asking) return <Ask at={at} enter={enter} known={state.level !== null} />
  return <Told at={at} fine={fine} next={next} again={() => setAsking(true)} enter={enter} />
}

const isMeasured = (at: LegAt | null | undefined): boolean => at?.measured != null

/** Where nobody knew how the lake stands, the first leg that is measured tells. */
function useLevelOfLeg(leg: string, at: LegAt | null | undefined) {
  const { state, project, add, record } = useBegun()
  const [found, setFound] = useState<number | null>(null)
  const number = String(at?.number ?? '')
  const say = (level: number, keep: 'planned' | 'over-water', sd: number | undefined): void =>
    add({ kind: 'level', level, from: 'leg', mark: number, keep, ...(sd === undefined ? {} : { sd }) })
  return {
    found: state.level === null || found === null ? null : found,
    /** @returns the level that follows; null where it was known */
    find(depth: number): number | null {
      if (state.level !== null || !project) return null
      const today = levelToday({ by: 'leg', leg, depth }, project)
      if (!today) return null
      say(today.level, 'planned', today.error)
      if (record.deckHeight !== null && Math.abs(today.level) >= 0.01) setFound(today.level)
      return today.level
    },
    take(keep: 'planned' | 'over-water'): void {
      if (keep === 'over-water' && found !== null) say(found, keep, state.level?.sd)
      setFound(null)
    },
    drop: () => setFound(null),
  }
}

interface AskProps {
  readonly at: LegAt
  /** How the lake stands. */
  readonly known: boolean
  readonly enter: (depth: number, how: 'measured' | 'to-frame' | 'as-planned') => void
}

function Ask({ at, known, enter }: AskProps) {
  const begun = useBegun()
  const { keeper, day, record } = begun
  const { t } = useSay()
  const [typed, setTyped] = useState(() => typedFrom(keeper.draft(`leg/${at.leg}`)))
  const [by, setBy] = useState<By>(at.others.depth < 0 ? 'land' : 'water')
  const [same, setSame] = useState(false)
  const set = (to: Typed): void => {
    keeper.keepDraft(`leg/${at.leg}`, to)
    setTyped(to)
  }
  const measureBy = (to: By): void => {
    setBy(to)
    set(NOTHING)
  }
  /** Of the frame's top over the water. */
  const frame = (day?.overWater ?? 0) - (record.rise ?? 0)
  const expected = at.others.depth
  const { label, depthOf, from } = {
    water: { label: t('measure.depth'), depthOf: (it: number) => it, from: expected },
    land: { label: t('measure.ashore-field'), depthOf: (it: number) => -it, from: -expected },
    frame: { label: t('measure.frame'), depthOf: (it: number) => it - frame, from: expected + frame },
  }[by]
  const depth = typed.value === null ? null : depthOf(typed.value)
  if (same) return <Same at={at} enter={enter} back={() => setSame(false)} />
  return (
    <>
      <StationHead at={at} what="measure.title" />
      <Where at={at} />
      {known ? <Expected at={at} /> : <p className="care">{t('measure.level-first')}</p>}
      <Measure label={label} kind="depth" typed={typed} from={from} set={set} />
      <div className="ways">
        <button
          type="button"
          className="main"
          disabled={depth === null}
          onClick={() => depth !== null && enter(depth, by === 'frame' ? 'to-frame' : 'measured')}
        >
          {t('measure.use')}
        </button>
        {known && (
          <button type="button" onClick={() => setSame(true)}>
            {t('measure.as-expected')}
          </button>
        )}
        {by !== 'frame' && (
          <button type="button" className="quiet" onClick={() => measureBy('frame')}>
            {t('measure.to-frame')}
          </button>
        )}
        {by !== 'water' && (
          <button type="button" className="quiet" onClick={() => measureBy('water')}>
            {t(by === 'land' ? 'measure.in-water' : 'measure.to-water')}
          </button>
        )}
        {by === 'water' && Math.abs(expected) < NEAR_EDGE && (
          <button type="button" className="quiet" onClick={() => measureBy('land')}>
            {t('measure.on-land')}
          </button>
        )}
      </div>
    </>
  )
}

/** From the water, from dry ground up, or from the bottom up to the frame. */
type By = 'water' | 'land' | 'frame'
/** Where it is expected to be no deeper, it may turn out to be dry, m. */
const NEAR_EDGE = 0.3

/** Nobody is told to have measured who did not. */
function Same({ at, enter, back }: Pick<AskProps, 'at' | 'enter'> & { readonly back: () => void }) {
  const { t } = useSay()
  const { day, record } = useBegun()
  const planned = record.legs.find(({ id }) => id === at.leg)?.planned
  const plan = planned ? (day?.level ?? 0) - planned.bed : at.prior.depth
  return (
    <>
      <Head of={t('same.title')} />
      <div className="list">
        <button type="button" onClick={() => enter(at.others.depth, 'measured')}>
          {t(at.others.depth < 0 ? 'same.measured-ashore' : 'same.measured', {
            depth: meters(at.others.depth),
            up: meters(-at.others.depth),
          })}
          <small>{t('same.measured-more')}</small>
        </button>
        <button type="button" onClick={() => enter(plan, 'as-planned')}>
          {t(plan < 0 ? 'same.planned-ashore' : 'same.planned', { depth: meters(plan), up: meters(-plan) })}
          <small>{t('same.planned-more')}</small>
        </button>
      </div>
      <div className="ways">
        <button type="button" className="quiet" onClick={back}>
          {t('same.back')}
        </button>
      </div>
    </>
  )
}

/** What is to be expected by all that was measured before, and where that differs what the plan had. */
function Expected({ at }: { readonly at: LegAt }) {
  const { t, length } = useSay()
  const { others, prior } = at
  const moved = Math.abs(others.depth - prior.depth) > 0.005
  const ashore = others.depth < 0
  return (
    <>
      <Figure
        less
        value={length(Math.abs(others.depth))}
        of={ashore ? t('measure.ashore') : t('measure.expected', { off: meters(2 * others.sd) })}
      />
      {moved && !ashore && (
        <p className="hint">{t('measure.plan', { depth: meters(prior.depth), off: meters(2 * prior.sd) })}</p>
      )}
    </>
  )
}

interface ToldProps extends LegProps2 {
  readonly fine: boolean
  readonly next: () => void
  readonly again: () => void
  readonly enter: AskProps['enter']
}
interface LegProps2 {
  readonly at: LegAt
}

function Told({ at, fine, next, again, enter }: ToldProps) {
  const { t, length } = useSay()
  const depth = at.measured?.depth ?? at.expected.depth
  const planned = at.measured?.how === 'as-planned'
  const first = at.limit.say === 'measure-again'
  return (
    <>
      <StationHead at={at} what="measure.title" />
      <Figure
        less
        value={length(Math.abs(depth))}
        of={t(planned ? 'measure.was-planned' : depth < 0 ? 'measure.was-ashore' : 'measure.was')}
      />
      {!fine && <Limits at={at} />}
      <div className="ways">
        <button type="button" className={first ? 'main' : ''} onClick={again}>
          {t('measure.again')}
        </button>
        {first && !planned && (
          <button type="button" onClick={() => enter(depth, 'measured')}>
            {t('measure.twice')}
          </button>
        )}
        {first && planned && (
          <button type="button" onClick={next}>
            {t('limit.go-on')}
          </button>
        )}
        {fine && (
          <button type="button" className="main" onClick={next}>
            {t('next')}
          </button>
        )}
        {at.limit.say === 'stop-and-call' && (
          <button type="button" onClick={next}>
            {t('limit.go-on')}
          </button>
        )}
      </div>
    </>
  )
}

interface StationHeadProps extends LegProps2 {
  readonly what: 'measure.title' | 'set.title'
}

export function StationHead({ at, what }: StationHeadProps) {
  const { record } = useBegun()
  const say = useSay()
  const leg = record.legs.find(({ id }) => id === at.leg)
  return (
    <Head
      of={say.t(what, { n: { value: at.number, unit: 'count' } })}
      where={leg && placeOf(leg, record, say)}
    />
  )
}

/** Which leg it is, in the dock from above. */
function Where({ at }: LegProps2) {
  const { project, state } = useBegun()
  const { t } = useSay()
  if (!project) return null
  const set = new Set(state.legs.filter((one) => one.set).map(({ leg }) => leg.id))
  return (
    <PlanPicture
      dock={project.dock}
      label={t('picture.plan', { n: text(String(at.number)) })}
      lake={t('picture.lake')}
      legs={[at.leg]}
      set={(leg) => set.has(leg)}
      section={at.section}
    />
  )
}
