/** One reading at a time: at a leg down to the water, or how far a level's end is off the deck. */
import { count, text } from '../../words/index.ts'
import { Measure, NOTHING, Pick, Ticks, type Typed } from '../fields.tsx'
import { Head } from '../frame.tsx'
import { useBegun, useSay } from '../lake.ts'
import { placeOf, sectionName } from '../names.ts'
import { PlanPicture } from '../pictures/plan-picture.tsx'
import { type Bubble, type Draft, isRead, readingAt, readingsOf, withReading } from './draft.ts'

interface ReadingsProps {
  readonly draft: Draft
  readonly put: (part: Partial<Draft>) => void
  readonly find: () => void
}

export function Readings(props: ReadingsProps) {
  const { draft, put } = props
  const { t } = useSay()
  return (
    <>
      {draft.after && <p className="hint">{t('check.after-moved')}</p>}
      {draft.by === 'water' ? <ByWater {...props} /> : <ByBubble {...props} />}
      <button
        type="button"
        className="quiet"
        onClick={() => put({ by: draft.by === 'water' ? 'bubble' : 'water', at: 0 })}
      >
        {t(draft.by === 'water' ? 'check.by-bubble' : 'check.by-water')}
      </button>
    </>
  )
}

/** Fewest legs that say how a deck lies. */
const FEWEST = 3

function ByWater({ draft, put, find }: ReadingsProps) {
  const begun = useBegun()
  const say = useSay()
  const { t } = say
  const { record, project, state } = begun
  const standing = state.legs.filter(({ set }) => set).map(({ leg }) => leg)
  const legs = standing.length > 0 ? standing : record.legs
  const at = Math.min(draft.at, legs.length - 1)
  const leg = legs[at]
  if (!leg) return <p>{t('check.no-legs')}</p>
  const reading = readingAt(draft, leg.id)
  const set = (part: { high?: Typed; low?: Typed }): void =>
    put({ readings: withReading(draft, { ...reading, ...part }) })
  const read = readingsOf(draft, begun).readings.length
  const last = at === legs.length - 1
  return (
    <>
      <Head of={t('check.leg', { n: count(leg.number) })} where={placeOf(leg, record, say)} />
      {project && (
        <PlanPicture
          dock={project.dock}
          label={t('picture.plan', { n: count(leg.number) })}
          lake={t('picture.lake')}
          legs={[leg.id]}
          set={(id) => isRead(readingAt(draft, id), draft.waves)}
        />
      )}
      <Measure
        label={t(draft.waves ? 'check.high' : 'check.down')}
        kind="over"
        typed={reading.high}
        set={(high) => set({ high })}
      />
      {draft.waves && (
        <Measure label={t('check.low')} kind="over" typed={reading.low} set={(low) => set({ low })} />
      )}
      <Ticks
        items={[{ key: leg.id, label: t('check.swings') }]}
        done={(id) => draft.hanging.includes(id)}
        set={(id, on) =>
          put({ hanging: on ? [...draft.hanging, id] : draft.hanging.filter((one) => one !== id) })
        }
      />
      <div className="ways">
        {!last && (
          <button
            type="button"
            className={read < legs.length ? 'main' : ''}
            onClick={() => put({ at: at + 1 })}
          >
            {t('check.next-leg')}
          </button>
        )}
        <button type="button" className={last ? 'main' : ''} disabled={read < FEWEST} onClick={find}>
          {t('check.find', { n: count(read) })}
        </button>
        {at > 0 && (
          <button type="button" onClick={() => put({ at: at - 1 })}>
            {t('check.last-leg')}
          </button>
        )}
        <button type="button" className="quiet" onClick={() => put({ waves: !draft.waves })}>
          {t(draft.waves ? 'waves.still' : 'waves.some')}
        </button>
      </div>
    </>
  )
}

function ByBubble({ draft, put, find }: ReadingsProps) {
  const begun = useBegun()
  const say = useSay()
  const { t } = say
  const { record, state } = begun
  const stands = new Set(state.legs.filter(({ set }) => set).map(({ leg }) => leg.section))
  const sections = record.sections.filter(({ id, ramp }) => !ramp && (stands.size === 0 || stands.has(id)))
  const asked = sections.flatMap(({ id }) =>
    (['length', 'width'] as const).map((along) => ({ section: id, along })),
  )
  const at = Math.min(draft.at, asked.length - 1)
  const here = asked[at]
  if (!here) return <p>{t('check.no-legs')}</p>
  const own = (one: Bubble): boolean => one.section === here.section && one.along === here.along
  const bubble: Bubble = draft.bubbles.find(own) ?? {
    ...here,
    lower: true,
    gap: NOTHING,
    over: draft.bubbles.at(-1)?.over ?? NOTHING,
  }
  const set = (part: Partial<Bubble>): void =>
    put({ bubbles: [...draft.bubbles.filter((one) => !own(one)), { ...bubble, ...part }] })
  const read = readingsOf(draft, begun).bubbles?.length ?? 0
  const way = here.along
  return (
    <>
      <Head of={t(`check.bubble-${way}`, { section: text(sectionName(here.section, record, say)) })} />
      <p>{t('check.bubble-how')}</p>
      <Pick
        legend={t('check.lower-end')}
        value={bubble.lower ? 'far' : 'near'}
        options={[
          { value: 'far', label: t(way === 'length' ? 'check.lower-lake' : 'check.lower-left') },
          { value: 'near', label: t(way === 'length' ? 'check.lower-shore' : 'check.lower-right') },
        ]}
        set={(to) => set({ lower: to === 'far' })}
      />
      <Measure label={t('check.gap')} kind="gap" typed={bubble.gap} set={(gap) => set({ gap })} />
      <Measure
        label={t('check.level-length')}
        kind="level"
        typed={bubble.over}
        set={(over) => set({ over })}
      />
      <div className="ways">
        {at < asked.length - 1 && (
          <button type="button" className="main" onClick={() => put({ at: at + 1 })}>
            {t('check.next-edge')}
          </button>
        )}
        <button type="button" disabled={read === 0} onClick={find}>
          {t('check.find-bubble')}
        </button>
        {at > 0 && (
          <button type="button" onClick={() => put({ at: at - 1 })}>
            {t('check.last-edge')}
          </button>
        )}
      </div>
    </>
  )
}
