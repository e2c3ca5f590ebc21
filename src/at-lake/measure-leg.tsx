/** At a station: which leg, how deep it is expected, how deep it is. What differs too much is measured again first; then the shop is called. */
import { useEffect, useState } from 'react'
import type { LegAt } from '../../rules/at-lake/index.ts'
import { cornersOf } from '../../rules/layout/footprint.ts'
import { meters, text } from '../words/index.ts'
import { Measure, NOTHING, type Typed, typedFrom } from './fields.tsx'
import { Figure, Head } from './frame.tsx'
import { isGuess } from './guess.ts'
import { legOf, toLevel, useBegun, useSay } from './lake.ts'
import { KeepDeck } from './level.tsx'
import { useLevelOfLeg } from './level-of-leg.ts'
import { Limits } from './limits.tsx'
import { placeOf } from './names.ts'
import { PlanPicture } from './pictures/plan-picture.tsx'

interface LegProps {
  readonly leg: string
  readonly next: () => void
  /** On all the same, where a stop stands; absent: as `next`. */
  readonly skip?: () => void
  /** Asked for from where it is set: what is known stands, and is measured once more. */
  readonly again?: boolean
}

export function MeasureLeg({ leg, next, skip = next, again = false }: LegProps) {
  const { day, state, keeper, add, go, page } = useBegun()
  const at = day && legOf(day, leg)
  const [asking, setAsking] = useState(
    () => again || !isMeasured(at) || typedFrom(keeper.draft(`leg/${leg}`)).text !== '',
  )
  /** Just entered: where nothing is the matter the next screen comes by itself. */
  const [entered, setEntered] = useState(false)
  const fine = at?.limit.say === 'go' || at?.limit.say === 'other-leg'
  const level = useLevelOfLeg(leg)
  // biome-ignore lint/correctness/useExhaustiveDependencies: once it is known what follows from the entry.
  useEffect(() => {
    if (entered && isMeasured(at) && fine && state.level && level.found === null) next()
  }, [entered, at, level.found])
  if (!day || !at) return null
  const enter = (depth: number, how: 'measured' | 'to-frame' | 'as-planned'): void => {
    keeper.keepDraft(`leg/${leg}`, null)
    const known = how === 'measured' ? level.find(depth) : null
    add({ kind: 'sounding', leg, depth, level: known ?? day.level, how })
    setAsking(false)
    setEntered(true)
  }
  if (level.found !== null)
    return <KeepDeck level={level.found} back={() => go(toLevel(page))} done={(deck) => level.take(deck)} />
  if (asking) return <Ask at={at} enter={enter} known={state.level !== null && !level.own} />
  return <Told at={at} fine={fine} next={next} skip={skip} again={() => setAsking(true)} enter={enter} />
}

const isMeasured = (at: LegAt | null | undefined): boolean => at?.measured != null

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
  const { label, depthOf } = {
    water: { label: t('measure.depth'), depthOf: (it: number) => it },
    land: { label: t('measure.ashore-field'), depthOf: (it: number) => -it },
    frame: { label: t('measure.frame'), depthOf: (it: number) => it - frame },
  }[by]
  const depth = typed.value === null ? null : depthOf(typed.value)
  const reach = useReach(at)
  if (same) return <Same at={at} enter={enter} back={() => setSame(false)} />
  return (
    <>
      <StationHead at={at} what="measure.title" />
      <Where at={at} />
      {reach && (
        <p className="care">
          {reach.by > NEAR ? t('measure.reach', { by: meters(reach.by) }) : t('measure.reach-near')}
        </p>
      )}
      {known ? (
        <Expected at={at} />
      ) : (
        <p className="care">
          {t('measure.level-first')} {t('measure.level-care')}
        </p>
      )}
      <Measure label={label} kind={by === 'frame' ? 'frame' : 'depth'} typed={typed} set={set} />
      {/* Pinned once there is something to use: before that it would be over the field. */}
      <div className={depth === null ? 'ways' : 'ways pinned'}>
        <button
          type="button"
          className="main"
          disabled={depth === null}
          onClick={() => depth !== null && enter(depth, by === 'frame' ? 'to-frame' : 'measured')}
        >
          {t('measure.use')}
        </button>
      </div>
      <div className="list">
        {known && (
          <button type="button" onClick={() => setSame(true)}>
            {t('measure.as-expected')}
          </button>
        )}
        {by !== 'frame' && known && !reach && (
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

/** It can be sounded from the deck's very end, m. */
const NEAR = 0.5

/** Of a section that is not out there yet: how far past the end of the deck its leg will stand, m. */
function useReach({ leg, section }: LegAt): { readonly by: number } | null {
  const { day, project, state } = useBegun()
  const step = day?.order.find(({ legs }) => legs.includes(leg))?.step
  if (!project || step?.phase !== 'outward' || state.done.includes(`${step.id}/carry`)) return null
  const { sections, legs } = project.dock
  const on = sections.find(({ id }) => id === sections.find((one) => one.id === section)?.on)
  const at = legs.find(({ id }) => id === leg)
  return on && at ? { by: gapTo(cornersOf(on), [at.x, at.y]) } : null
}

/** From the rectangle that a section covers; 0 within. */
function gapTo(corners: readonly (readonly [number, number])[], [x, y]: readonly [number, number]): number {
  const gap = (all: readonly number[], at: number): number =>
    Math.max(0, Math.min(...all) - at, at - Math.max(...all))
  return Math.hypot(
    gap(
      corners.map(([a]) => a),
      x,
    ),
    gap(
      corners.map(([, b]) => b),
      y,
    ),
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
  if (isGuess(others)) return <p className="care">{t('measure.unsure', { depth: meters(others.depth) })}</p>
  return (
    <>
      <Figure
        less
        value={length(Math.abs(others.depth))}
        of={ashore ? t('measure.ashore') : t('measure.expected', { off: meters(2 * others.sd) })}
      />
      {moved && !ashore && !isGuess(prior) && (
        <p className="hint">{t('measure.plan', { depth: meters(prior.depth), off: meters(2 * prior.sd) })}</p>
      )}
    </>
  )
}

interface ToldProps extends LegProps2 {
  readonly fine: boolean
  readonly next: () => void
  readonly skip: () => void
  readonly again: () => void
  readonly enter: AskProps['enter']
}
interface LegProps2 {
  readonly at: LegAt
}

function Told({ at, fine, next, skip, again, enter }: ToldProps) {
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
          <button type="button" onClick={skip}>
            {t('limit.go-on')}
          </button>
        )}
        {fine && (
          <button type="button" className="main" onClick={next}>
            {t('next')}
          </button>
        )}
        {at.limit.say === 'stop-and-call' && (
          <button type="button" onClick={skip}>
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
