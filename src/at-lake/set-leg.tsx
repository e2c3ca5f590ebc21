/** How high a leg is set: the one figure of the screen; where that is on the leg; whether the leg in hand does; where the brace's clamps go; what is tightened. */
import { useState } from 'react'
import type { LegAt } from '../../rules/at-lake/index.ts'
import type { Said } from '../../rules/record/index.ts'
import { count, meters, text } from '../words/index.ts'
import { Measure, NOTHING, type Typed } from './fields.tsx'
import { fine } from './fine.ts'
import { Figure } from './frame.tsx'
import { legOf, useBegun, useSay } from './lake.ts'
import { LegInHand } from './leg-in-hand.tsx'
import { Limits } from './limits.tsx'
import { StationHead } from './measure-leg.tsx'
import { legNumberOf, partName } from './names.ts'
import { NextLegs } from './next-legs.tsx'
import { OldLeg } from './old-leg.tsx'
import { LegPicture } from './pictures/leg-picture.tsx'
import { Stops } from './stops.tsx'
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
  const { t, length, reader } = useSay()
  const [other, setOther] = useState<Typed | null>(null)
  const { state, last, day, add } = begun
  const own = state.legs.find(({ leg }) => leg.id === at.leg)
  const was = last?.legs.find(({ leg }) => leg.id === at.leg)?.set
  const { heights, limit } = at
  const height = other === null ? heights.deck : (other.value ?? heights.deck)
  const stands = own?.set && Math.abs(own.set.height - heights.deck) < 0.003
  const write = (): void => {
    if (day) add(entryOf(at, height, begun, own?.sounding != null && own.asPlanned === false))
    next()
  }
  return (
    <>
      <StationHead at={at} what="set.title" />
      <Figure value={length(heights.frame)} of={t('set.frame', { sole: text(fine(heights.sole, reader)) })} />
      <SetPicture at={at} />
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
      {was && <LastYear by={heights.deck - was.height} />}
      {own?.set && !stands && (
        <p className="care">
          {t('set.was', { height: meters(own.set.height - (heights.deck - heights.frame)) })}
        </p>
      )}
      <TwoPhones conflicts={state.conflicts.filter(({ of }) => of === at.leg)} />
      {limit.say === 'stop-and-call' && <Limits at={at} />}
      <LegInHand at={at} />
      <Brace at={at} />
      {other !== null && (
        <Measure
          label={t('set.other-field')}
          kind="height"
          typed={other}
          from={heights.deck}
          set={setOther}
        />
      )}
      <Bolts />
      <div className="ways">
        <button
          type="button"
          className="main"
          disabled={other !== null && other.value === null}
          onClick={write}
        >
          {t('set.done')}
        </button>
        {other === null && (
          <button type="button" className="quiet" onClick={() => setOther(NOTHING)}>
            {t('set.other')}
          </button>
        )}
      </div>
      <NextLegs after={at.leg} />
      <Stops />
    </>
  )
}

/** What is written down of a leg that was set. */
function entryOf(
  at: LegAt,
  height: number,
  { day, project, record }: ReturnType<typeof useBegun>,
  measured: boolean,
): Said {
  const marks = at.brace?.marks.filter(({ leg }) => leg === at.leg) ?? []
  const code = at.brace?.code
  return {
    kind: 'set',
    leg: at.leg,
    stock: at.stock?.code ?? null,
    length: at.stock?.length ?? null,
    height,
    frame: height - (record.rise ?? 0),
    depth: at.measured?.depth ?? at.expected.depth,
    level: day?.level ?? null,
    keep: day?.keep ?? 'planned',
    ...(code && project ? { braces: marks.map(({ end, fromSole }) => ({ code, end, up: fromSole })) } : {}),
    how: measured ? 'measured' : 'as-planned',
  }
}

function LastYear({ by }: { readonly by: number }) {
  const { t } = useSay()
  const key = Math.abs(by) < 0.003 ? 'set.as-last' : by > 0 ? 'set.more-than-last' : 'set.less-than-last'
  return <p className="good">{t(key, { by: meters(Math.abs(by)) })}</p>
}

function Bolts() {
  const { day } = useBegun()
  const { t } = useSay()
  const [bolts] = day?.setBolts ?? []
  if (!bolts) return null
  return (
    <p className="care">
      <b>
        {t(bolts.count === 2 ? 'set.bolts-both' : 'set.bolts', {
          count: count(bolts.count),
          size: text(bolts.wrench),
        })}
      </b>
    </p>
  )
}

function Brace({ at }: { readonly at: LegAt }) {
  const { project, record } = useBegun()
  const { t } = useSay()
  const { brace } = at
  if (!brace || !project || brace.fits === 'not-needed') return null
  const name = text(brace.code ? partName(brace.code, project.catalog) : '')
  const own = brace.marks.filter(({ leg }) => leg === at.leg)
  if (brace.fits === 'none') return <p className="stop">{t('brace.none')}</p>
  return (
    <div className={brace.fits === 'other' || brace.moved ? 'care' : 'good'}>
      <p>
        <b>
          {t(brace.fits === 'other' ? 'brace.other' : brace.moved ? 'brace.moved' : 'brace.fits', { name })}
        </b>
      </p>
      {own.map(({ leg, end, fromSole, fromTop }) => (
        <p key={leg}>
          {t(fromTop === null ? `brace.mark-${end}` : `brace.mark-${end}-top`, {
            n: count(legNumberOf(leg, record)),
            up: meters(fromSole),
            top: meters(fromTop ?? 0),
          })}
        </p>
      ))}
    </div>
  )
}

function SetPicture({ at }: { readonly at: LegAt }) {
  const { t, length } = useSay()
  const { heights, stock } = at
  const clamps = at.brace?.marks.filter(({ leg }) => leg === at.leg).map(({ fromSole }) => fromSole) ?? []
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
