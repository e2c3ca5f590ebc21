/** How high a leg is set: the one figure of the screen; where that is on the leg; whether the leg in hand does; where the brace's clamps go; what is tightened. */
import { useState } from 'react'
import type { BraceAt, LegAt, Mark } from '../../rules/at-lake/index.ts'
import type { Said, SeasonRecord } from '../../rules/record/index.ts'
import { count, meters, text } from '../words/index.ts'
import { Measure, NOTHING, type Typed, typedFrom } from './fields.tsx'
import { fine } from './fine.ts'
import { Figure } from './frame.tsx'
import { type Begun, legOf, marksOn, useBegun, useSay } from './lake.ts'
import { LegInHand } from './leg-in-hand.tsx'
import { Limits } from './limits.tsx'
import { MeasureLeg, StationHead } from './measure-leg.tsx'
import { braceName, legNumberOf } from './names.ts'
import { NextLegs } from './next-legs.tsx'
import { OldLeg } from './old-leg.tsx'
import { LegPicture } from './pictures/leg-picture.tsx'
import { Stops } from './stops.tsx'
import { cannotBeSet, saidKey, stopsAt } from './stops-at.ts'
import { TwoPhones } from './two-phones.tsx'

interface SetLegProps {
  readonly leg: string
  readonly next: () => void
}

export function SetLeg({ leg, next }: SetLegProps) {
  const { day } = useBegun()
  const at = day && legOf(day, leg)
  return at ? <Planned at={at} next={next} /> : <OldLeg leg={leg} next={next} />
}

function Planned({ at, next }: { readonly at: LegAt; readonly next: () => void }) {
  const begun = useBegun()
  const { t } = useSay()
  const [measuring, setMeasuring] = useState(false)
  const { state, last } = begun
  const own = state.legs.find(({ leg }) => leg.id === at.leg)
  const was = last?.legs.find(({ leg }) => leg.id === at.leg)?.set
  const { heights } = at
  const stands = own?.set && Math.abs(own.set.height - heights.deck) < 0.003
  const stop = stopsAt(at)
  const said = stop && state.done.includes(saidKey(at))
  const hung = isHung(at, begun)
  if (measuring) return <MeasureLeg leg={at.leg} next={() => setMeasuring(false)} again />
  return (
    <>
      <StationHead at={at} what="set.title" />
      {stop && <Limits at={at} said={said} />}
      {!cannotBeSet(at) && <HeightOf at={at} hung={hung && (!stop || said)} />}
      {!stop && at.limit.reasons.includes('tall') && <p className="care">{t('limit.tall')}</p>}
      {at.depth < 0 && <p className="care">{t('set.dry')}</p>}
      {was && !stop && <LastYear by={heights.deck - was.height} />}
      {own?.set && !stands && (
        <p className="care">
          {t('set.was', { height: meters(own.set.height - (heights.deck - heights.frame)) })}
        </p>
      )}
      <TwoPhones conflicts={state.conflicts.filter(({ of }) => of === at.leg)} />
      <LegInHand at={at} stop={stop} />
      <Brace at={at} brace={at.brace} hung={hung} />
      <Brace at={at} brace={at.along} hung={hung} />
      {stop && (
        <div className="ways">
          <button type="button" className={said ? 'quiet' : 'main'} onClick={() => setMeasuring(true)}>
            {t('measure.again')}
          </button>
        </div>
      )}
      <SetWays at={at} hung={hung} next={next} />
      <NextLegs after={at.leg} />
      <Stops />
    </>
  )
}

/** Of a section that is hung on another. */
const isHung = ({ leg }: LegAt, { day }: Pick<Begun, 'day'>): boolean =>
  day?.order.some(({ step, legs }) => step.phase === 'outward' && legs.includes(leg)) ?? false

/** The one figure of the screen, and where that is on the leg. */
function HeightOf({ at, hung }: { readonly at: LegAt; readonly hung: boolean }) {
  const { t, length, reader } = useSay()
  const { heights } = at
  return (
    <>
      <Figure value={length(heights.frame)} of={t('set.frame', { sole: text(fine(heights.sole, reader)) })} />
      <SetPicture at={at} />
      {hung && <InOrder at={at} />}
      <dl>
        <div>
          <dt>{t('set.deck')}</dt>
          <dd>{length(heights.deck)}</dd>
        </div>
        {heights.fromTop !== null && (
          <div>
            <dt>{t('set.from-top')}</dt>
            <dd>{length(heights.fromTop)}</dd>
          </div>
        )}
      </dl>
    </>
  )
}

interface SetWaysProps {
  readonly at: LegAt
  readonly hung: boolean
  readonly next: () => void
}

/** It is set: but not while a stop stands, unless the shop says how to go on. */
function SetWays({ at, hung, next }: SetWaysProps) {
  const begun = useBegun()
  const { t } = useSay()
  const { state, day, add, keeper } = begun
  const draft = `set/${at.leg}`
  const [other, setOther] = useState<Typed | null>(() => {
    const kept = keeper.draft(draft)
    return kept === null ? null : typedFrom(kept)
  })
  const put = (to: Typed): void => {
    keeper.keepDraft(draft, to)
    setOther(to)
  }
  // Panels are off when it is set: measured to the frame, like the figure of the screen.
  const rise = at.heights.deck - at.heights.frame
  const height = other?.value == null ? at.heights.deck : other.value + rise
  const own = state.legs.find(({ leg }) => leg.id === at.leg)
  if (stopsAt(at) && cannotBeSet(at)) return null
  if (stopsAt(at) && !state.done.includes(saidKey(at)))
    return (
      <div className="ways">
        <button
          type="button"
          className="quiet"
          onClick={() => add({ kind: 'step', key: saidKey(at), done: true })}
        >
          {t('set.shop-said')}
        </button>
      </div>
    )
  const write = (): void => {
    if (day) add(entryOf(at, height, begun, own?.sounding != null && own.asPlanned === false))
    keeper.keepDraft(draft, null)
    next()
  }
  return (
    <>
      {other !== null && <Measure label={t('set.other-frame')} kind="leg" typed={other} set={put} />}
      {!hung && <Bolts />}
      {!hung && <p className="hint">{t('set.bears')}</p>}
      {other === null && (
        <button type="button" className="quiet" onClick={() => put(NOTHING)}>
          {t('set.other')}
        </button>
      )}
      <div className="ways pinned">
        <button
          type="button"
          className="main"
          disabled={other !== null && other.value === null}
          onClick={write}
        >
          {t('set.done')}
        </button>
      </div>
    </>
  )
}

/** What is written down of a leg that was set. */
function entryOf(
  at: LegAt,
  height: number,
  { day, record, state }: ReturnType<typeof useBegun>,
  measured: boolean,
): Said {
  const braces = [at.brace, at.along].flatMap((brace) =>
    (brace?.marks ?? []).flatMap(({ leg, end, fromSole }) =>
      leg === at.leg && brace?.code ? [{ code: brace.code, end, up: fromSole }] : [],
    ),
  )
  return {
    kind: 'set',
    leg: at.leg,
    stock: at.stock?.code ?? null,
    length: at.stock?.length ?? null,
    height,
    ...(record.rise === null ? {} : { frame: height - record.rise }),
    depth: at.measured?.depth ?? at.expected.depth,
    level: day?.level ?? null,
    keep: day?.keep ?? 'planned',
    ...(state.level?.deck === undefined ? {} : { deck: state.level.deck }),
    ...(at.brace?.code || braces.length > 0 ? { braces } : {}),
    how: measured ? 'measured' : 'as-planned',
  }
}

function LastYear({ by }: { readonly by: number }) {
  const { t } = useSay()
  const key = Math.abs(by) < 0.003 ? 'set.as-last' : by > 0 ? 'set.more-than-last' : 'set.less-than-last'
  return <p className="good">{t(key, { by: meters(Math.abs(by)) })}</p>
}

function useBoltsText(): string | null {
  const { day } = useBegun()
  const { t } = useSay()
  const [bolts] = day?.setBolts ?? []
  return bolts
    ? t(bolts.count === 2 ? 'set.bolts-both' : 'set.bolts', {
        count: count(bolts.count),
        size: text(bolts.wrench),
      })
    : null
}

function Bolts() {
  const said = useBoltsText()
  return (
    said && (
      <p className="care">
        <b>{said}</b>
      </p>
    )
  )
}

/** Of a section that is to be hung, which lies on the deck with its lake end past the edge: what hands do while they reach it. */
function InOrder({ at }: { readonly at: LegAt }) {
  const { record } = useBegun()
  const { t, length } = useSay()
  const bolts = useBoltsText()
  return (
    <>
      <p className="care">{t('set.hung')}</p>
      <ol>
        {marksOn(at).map((mark) => (
          <li key={mark.fromSole}>{markText(mark, record, t)}</li>
        ))}
        <li>{t('set.let-down', { height: text(length(at.heights.frame)) })}</li>
        {bolts && (
          <li>
            <b>{bolts}</b>
          </li>
        )}
      </ol>
    </>
  )
}

function markText(
  { leg, end, fromSole, fromTop }: Mark,
  record: SeasonRecord,
  t: ReturnType<typeof useSay>['t'],
): string {
  return t(fromTop === null ? `brace.mark-${end}` : `brace.mark-${end}-top`, {
    n: count(legNumberOf(leg, record)),
    up: meters(fromSole),
    top: meters(fromTop ?? 0),
  })
}

interface BraceProps {
  readonly at: LegAt
  readonly brace: BraceAt | null
  readonly hung: boolean
}

function Brace({ at, brace, hung }: BraceProps) {
  const { project, record } = useBegun()
  const { t } = useSay()
  if (!brace || !project || brace.fits === 'not-needed') return null
  const name = text(brace.code ? braceName(brace.code, project.catalog) : '')
  const own = hung ? [] : brace.marks.filter((mark) => mark.leg === at.leg)
  const low = brace.marks.find(({ end }) => end === 'low')?.leg ?? ''
  if (brace.fits === 'none')
    return brace === at.along ? (
      <p className="care">{t('brace.along-none')}</p>
    ) : (
      <p className="stop">{t('brace.none')}</p>
    )
  return (
    <div className={brace.fits === 'other' || brace.moved ? 'care' : 'good'}>
      <p>
        <b>
          {t(brace.fits === 'other' ? 'brace.other' : brace.moved ? 'brace.moved' : 'brace.fits', { name })}
        </b>
      </p>
      {brace.turnedFrom !== null && (
        <p>
          <b>
            {t('brace.turned', {
              n: count(legNumberOf(low, record)),
              was: count(legNumberOf(brace.turnedFrom, record)),
            })}
          </b>
        </p>
      )}
      {own.map((mark) => (
        <p key={mark.leg}>{markText(mark, record, t)}</p>
      ))}
      {own.length > 0 && <p>{t('brace.when-stands')}</p>}
    </div>
  )
}

function SetPicture({ at }: { readonly at: LegAt }) {
  const { t, length } = useSay()
  const { heights, stock } = at
  const clamps = marksOn(at).map(({ fromSole }) => fromSole)
  const over = heights.aboveDeck
  return (
    <LegPicture
      label={t('picture.leg', { height: meters(heights.frame), n: count(at.number) })}
      height={heights.frame}
      top={stock ? stock.length + heights.sole : null}
      depth={at.measured?.depth ?? at.expected.depth}
      clamps={clamps}
      words={{
        height: length(heights.frame),
        deck: t('picture.frame'),
        water: t('picture.water'),
        over: over !== null && over > 0 ? t('picture.over', { over: meters(over) }) : null,
        clamp: clamps.map((up) => t('picture.clamp', { up: meters(up) })),
      }}
    />
  )
}
