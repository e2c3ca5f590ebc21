/** A step of the order of work: who stands where, what is lifted, what is done, what stays loose; and its picture. */

import type { Day } from '../../rules/at-lake/index.ts'
import { peopleOf } from '../../rules/papers/steps/hands.ts'
import { count, meters, text } from '../words/index.ts'
import type { WatersideWord } from '../words/waterside.ts'
import { extraLines } from './extra-lines.ts'
import { Head } from './frame.tsx'
import { aside, bedNow, legOf, marksOn, toLevel, useBegun, useSay } from './lake.ts'
import { lineText } from './line-text.ts'
import { Meanings } from './meanings.tsx'
import { sectionName } from './names.ts'
import { PlanPicture } from './pictures/plan-picture.tsx'
import { SidePicture } from './pictures/side-picture.tsx'
import { isDone, type Stage } from './stages.ts'
import { Stood } from './stood.tsx'
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
  const lines = stage.lines.filter(
    ({ work, about, say: { key } }) =>
      hasWords(key) && work !== 'extra' && (work !== 'clamp-place' || isClamped(about[0], begun.day)),
  )
  const title = titleOf(stage, season, step.section === null ? '' : sectionName(step.section, record, say), t)
  const done = isDone(stage, state)
  const check = season === 'up' && step.id === 'level' && stage.key === 'level'
  const carrying = stage.lines.some(({ work }) => work === 'carry' || work === 'lay-ramp' || work === 'frame')
  return (
    <>
      <Head of={title} />
      <TooDeep stage={stage} />
      <Hands stage={stage} lifting={season === 'down' || carrying} />
      <Cares stage={stage} season={season} last={stages.at(-1) === stage} />
      <StepPicture stage={stage} season={season} label={title} />
      <ol>
        {lines.map((line) => (
          <li key={line.id}>{lineText(line, season, begun, say)}</li>
        ))}
        {extraLines(stage.lines, season, begun, say).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ol>
      {season === 'down' && step.phase === 'ready' && <Stood />}
      <Meanings lines={stage.lines} />
      <Tools stage={stage} season={season} stages={stages} />
      <div className="ways pinned">
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

/** Where a brace fits by now. */
const isClamped = (leg: string | undefined, day: Day | null): boolean =>
  [day && leg !== undefined && legOf(day, leg)].some((at) => at && marksOn(at).length > 0)

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
  const people = peopleOf(crew)
  return (
    <p>
      {crew.some(({ place }) => place === 'water') && (
        <>
          <b>{t('who.all', { people: count(people) })}</b>{' '}
        </>
      )}
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

function Tools({ stage, season, stages }: Pick<StepPageProps, 'stage' | 'season' | 'stages'>) {
  const { t } = useSay()
  if (stage.step.step.phase === 'ready') return <DayTools stages={stages} />
  if (season === 'down') return <Wrenches of={wrenchesOf([stage])} />
  const works = new Set(stage.lines.map(({ id }) => id))
  const wrenches = new Set(
    Object.entries(stage.step.tighten).flatMap(([line, bolts]) =>
      works.has(line) ? bolts.map(({ wrench }) => wrench) : [],
    ),
  )
  return wrenches.size === 0 ? null : (
    <p className="hint">{t('step.wrench', { size: text([...wrenches].join(', ')) })}</p>
  )
}

const wrenchesOf = (stages: readonly Stage[]): string[] => [
  ...new Set(
    stages.flatMap((stage) =>
      'step' in stage && stage.step
        ? stage.step.step.tools.flatMap(({ size }) => (size === null ? [] : [size]))
        : [],
    ),
  ),
]

function Wrenches({ of }: { readonly of: readonly string[] }) {
  const { t } = useSay()
  return of.length === 0 ? null : <p className="hint">{t('step.wrench', { size: text(of.join(', ')) })}</p>
}

/** All that is carried to the lake, told once while the boathouse is still near. */
function DayTools({ stages }: Pick<StepPageProps, 'stages'>) {
  const { t } = useSay()
  return <p className="care">{t('ready.tools', { wrenches: text(wrenchesOf(stages).join(', ')) })}</p>
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
      lying={stage.key.endsWith('/carry')}
    />
  )
}
