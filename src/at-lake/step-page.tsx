/** A step of the order of work: who stands where, what is lifted, what is done, what stays loose; and its picture. */

import { count, meters, text } from '../words/index.ts'
import type { WatersideWord } from '../words/waterside.ts'
import { Head } from './frame.tsx'
import { aside, bedNow, toLevel, useBegun, useSay } from './lake.ts'
import { lineText } from './line-text.ts'
import { sectionName } from './names.ts'
import { PlanPicture } from './pictures/plan-picture.tsx'
import { SidePicture } from './pictures/side-picture.tsx'
import { isDone, type Stage } from './stages.ts'
import { Stops } from './stops.tsx'
import { tooDeepFor } from './too-deep.ts'

type StepStage = Extract<Stage, { readonly kind: 'step' }>

interface StepPageProps {
  readonly stage: StepStage
  readonly season: 'up' | 'down'
  readonly stages: readonly Stage[]
  readonly next: () => void
}

export function StepPage({ stage, season, stages, next }: StepPageProps) {
  const begun = useBegun()
  const say = useSay()
  const { t } = say
  const { add, state, record, go, page } = begun
  const { step } = stage.step
  const lines = stage.lines.filter((line) => hasWords(line.say.key))
  const title = titleOf(stage, season, step.section === null ? '' : sectionName(step.section, record, say), t)
  const done = isDone(stage, state)
  const check = season === 'up' && step.id === 'level' && stage.key === 'level'
  const carrying = stage.lines.some(({ work }) => work === 'carry' || work === 'lay-ramp' || work === 'frame')
  return (
    <>
      <Head of={title} />
      <StepPicture stage={stage} season={season} label={title} />
      <TooDeep stage={stage} />
      <Hands stage={stage} lifting={season === 'down' || carrying} />
      <ol>
        {lines.map((line) => (
          <li key={line.id}>{lineText(line, season, begun, say)}</li>
        ))}
      </ol>
      <Tools stage={stage} />
      <Cares stage={stage} season={season} last={stages.at(-1) === stage} />
      <div className="ways">
        {check && (
          <button type="button" onClick={() => go(aside('check', page))}>
            {t('step.check')}
          </button>
        )}
        <button
          type="button"
          className="main"
          onClick={() => {
            if (!done) add({ kind: 'step', key: stage.key, done: true })
            next()
          }}
        >
          {t(done ? 'next' : 'step.done')}
        </button>
      </div>
    </>
  )
}

/** The day's level has a screen of its own. */
const hasWords = (key: string): boolean => !/-ready-(level|benchmark)$/.test(key)

function titleOf(
  { key, step: { step } }: StepStage,
  season: 'up' | 'down',
  section: string,
  t: ReturnType<typeof useSay>['t'],
): string {
  const name = step.id.replace(/\..*$/, '')
  const part = name === 'in' ? (key.endsWith('/carry') ? 'carry' : `in-${roleOf(step.title.key)}`) : name
  return t(`title.${season}.${part}` as WatersideWord, { section: text(section) })
}

/** `up-in-ramp`: what the section is. */
const roleOf = (key: string): string => /(standing|ramp|following)$/.exec(key)?.[1] ?? 'following'

/** `2 lift, 113 lb: 56.5 lb each`, and where they stand. */
function Hands({ stage, lifting }: { readonly stage: StepStage; readonly lifting: boolean }) {
  const { t } = useSay()
  const { crew, lift } = stage.step.step
  return (
    <p>
      {crew.map(({ place, people }) => t(`who.${place}`, { people: count(people) })).join(' ')}{' '}
      {lift && lifting && (
        <b>
          {t('step.lift', {
            people: count(lift.people),
            mass: { value: lift.mass, unit: 'kg' },
            each: { value: lift.each, unit: 'kg' },
          })}
        </b>
      )}
    </p>
  )
}

/** Said in the place of a picture of it. */
function TooDeep({ stage }: { readonly stage: StepStage }) {
  const { day, go, page } = useBegun()
  const { t } = useSay()
  const { crew, section } = stage.step.step
  const deep = day && tooDeepFor(crew, section, day)
  if (deep === null) return null
  return (
    <div className="stop">
      <p>
        <b>{t('deep.stop', { depth: meters(deep) })}</b>
      </p>
      <p>{t('deep.why')}</p>
      <button type="button" onClick={() => go(toLevel(page))}>
        {t('level.again')}
      </button>
    </div>
  )
}

function Tools({ stage }: { readonly stage: StepStage }) {
  const { t } = useSay()
  const works = new Set(stage.lines.map(({ id }) => id))
  const wrenches = new Set(
    Object.entries(stage.step.tighten).flatMap(([line, bolts]) =>
      works.has(line) ? bolts.map(({ wrench }) => wrench) : [],
    ),
  )
  if (wrenches.size === 0) return null
  return <p className="hint">{t('step.wrench', { size: text([...wrenches].join(', ')) })}</p>
}

/** What is loose, and what can hurt, before the button that says that it is done. */
function Cares({
  stage,
  season,
  last,
}: {
  readonly stage: StepStage
  readonly season: 'up' | 'down'
  readonly last: boolean
}) {
  const { t } = useSay()
  const { step } = stage.step
  const before = stage.key.endsWith('/carry')
  const loose = season === 'up' && !before ? step.loose : []
  const cautions = step.cautions.filter((key) => !(before && key === 'caution-fingers'))
  const moved = step.lift !== null
  return (
    <>
      {(loose.length > 0 || cautions.length > 0 || moved) && (
        <div className="care">
          {loose.map(({ key }) => (
            <p key={key}>{t(`loose.${key}` as WatersideWord)}</p>
          ))}
          {cautions.map((key) => (
            <p key={key}>{t(`care.${key}` as WatersideWord)}</p>
          ))}
          {moved && <p>{t('care.under')}</p>}
        </div>
      )}
      {!last && step.phase !== 'ready' && step.phase !== 'dry' && <Stops />}
    </>
  )
}

function StepPicture({
  stage,
  season,
  label,
}: Pick<StepPageProps, 'stage' | 'season'> & { readonly label: string }) {
  const begun = useBegun()
  const { t } = useSay()
  const { project, day } = begun
  const { step } = stage.step
  if (!project || !day || step.phase === 'ready') return null
  const section = project.dock.sections.find(({ id }) => id === step.section)
  if (step.phase === 'dry')
    return (
      <PlanPicture
        dock={project.dock}
        label={label}
        lake={t('picture.lake')}
        legs={project.dock.legs.filter((leg) => leg.section === step.section).map(({ id }) => id)}
        set={() => false}
        section={step.section ?? undefined}
      />
    )
  const carried = stage.key.endsWith('/carry') || season === 'down'
  const standing = carried ? step.standing.filter((id) => id !== step.section) : step.standing
  return (
    <SidePicture
      project={project}
      label={label}
      standing={standing}
      section={section}
      level={day.level}
      deck={day.deck}
      bedOf={bedNow(day)}
      crew={
        tooDeepFor(step.crew, step.section, day) === null
          ? step.crew
          : step.crew.filter(({ place }) => place !== 'water')
      }
    />
  )
}
