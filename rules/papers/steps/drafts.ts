/** The steps of one dock in the order of set-up, with the words of the season; set-up.ts puts them in order and numbers them. */
import type { Catalog } from '../../catalog/index.ts'
import type { Design } from '../../design/index.ts'
import type { Dock, Leg, Section } from '../../dock.ts'
import { braceHoles } from '../../leg-places.ts'
import type { PaperWord } from '../../words/papers.ts'
import { groupBy, sectionsInOrder } from '../order.ts'
import { count, list, meters, type Saying, saying, text } from '../saying.ts'
import type { Allotted } from './allot.ts'
import { crewOf, liftOf } from './hands.ts'
import { lineId, type Plan, panelStep } from './plan.ts'
import type { Step, StepLine, StepPart, Work } from './step.ts'

export type Season = 'set-up' | 'autumn'

export interface Draft extends Omit<Step, 'number' | 'tools' | 'standing'> {
  /** Sections that stand in the water after this step (autumn: no more). */
  readonly stands: readonly string[]
}

export interface Job {
  readonly dock: Dock
  readonly design: Design
  readonly catalog: Catalog
  readonly plan: Plan
  readonly allotted: Allotted
  readonly season: Season
}

/** Words of a line of work: those of set-up begin with `up`, those of autumn with `down`. */
const word = (season: Season, key: string): PaperWord =>
  `${season === 'set-up' ? 'up' : 'down'}-${key}` as PaperWord

export function drafts(job: Job): Draft[] {
  const { dock } = job
  const order = sectionsInOrder(dock)
  if (order.length === 0) return []
  const legs = groupBy(dock.legs, (leg) => leg.section)
  const legsOf = (section: Section): readonly Leg[] => legs.get(section.id) ?? []
  const standing = order.filter(({ role }) => role === 'standing')
  const ramp = order.filter(({ role }) => role === 'ramp')
  const following = order.filter(({ role }) => role === 'following')
  return [
    readyStep(job),
    ...order.map((section) => dryStep(job, section, legsOf(section))),
    ...standing.map((section) => standingStep(job, section, legsOf(section))),
    ...ramp.map((section) => rampStep(job, section)),
    ...(standing.length + ramp.length > 0 ? [levelStep(job, [...standing, ...ramp])] : []),
    ...following.map((section) => outwardStep(job, section, legsOf(section))),
    ...lastSteps(job),
  ]
}

const line = (
  { allotted, season }: Job,
  step: string,
  work: Work,
  about: readonly string[],
  values: Saying['values'] = {},
  of?: string,
  key: string = work,
): StepLine => {
  const id = lineId(step, work, of)
  return { id, work, say: saying(word(season, key), values), about, parts: allotted.partsOf(id) }
}

const total = (parts: readonly StepPart[], kind: string): number =>
  parts.reduce((sum, part) => sum + (part.kind === kind ? part.count : 0), 0)

/** A line for the pieces allotted to it, or none where there are none. */
function put(
  job: Job,
  step: string,
  work: Work,
  kind: string,
  about: readonly string[],
  values: Saying['values'] = {},
): StepLine[] {
  const parts = job.allotted.partsOf(lineId(step, work))
  if (parts.length === 0) return []
  return [line(job, step, work, about, { count: count(total(parts, kind)), ids: list(about), ...values })]
}

function readyStep(job: Job): Draft {
  const { dock, design, season } = job
  const posts = dock.placements.some(({ kind }) => kind === 'anchor-post' || kind === 'auger')
  const say = (key: PaperWord, values: Saying['values'] = {}): StepLine => ({
    id: lineId('ready', key),
    work: 'ready',
    say: saying(key, values),
    about: [],
    parts: [],
  })
  const up = season === 'set-up'
  const { benchmark } = design.site
  const level = benchmark
    ? say(up ? 'up-ready-benchmark' : 'down-ready-benchmark', {
        mark: text(benchmark.name),
        above: meters(benchmark.above),
      })
    : say(up ? 'up-ready-level' : 'down-ready-level')
  return {
    id: 'ready',
    phase: 'ready',
    section: null,
    title: saying(up ? 'up-ready' : 'down-ready'),
    lines: [
      level,
      ...(up
        ? [
            say('up-ready-sort', { parts: count(dock.parts.length) }),
            ...(posts ? [say('up-ready-services')] : []),
          ]
        : [
            say('down-ready-boat'),
            say('down-ready-mark'),
            ...(dock.legs.length > 0 ? [say('down-ready-stood')] : []),
          ]),
    ],
    crew: crewOf(['shore', 2]),
    lift: null,
    loose: [],
    cautions: posts && up ? ['caution-services'] : [],
    stands: [],
  }
}

function dryStep(job: Job, section: Section, legs: readonly Leg[]): Draft {
  const { catalog, plan, season } = job
  const { id, role } = section
  const step = `dry.${id}`
  const legIds = legs.map((leg) => leg.id)
  const lows = plan.lows.get(id) ?? []
  const hooked = job.allotted.ownersOf(lineId(step, 'hooks'))
  const about = plan.hinge?.between.includes(id) ? [plan.hinge.id] : []
  const clamped = job.allotted.ownersOf(lineId(step, 'clamps'))
  const fitted = legs.filter(({ code }) => code !== null)
  const lift = liftOf(section, 'shore', catalog)
  const people = lift.people
  return {
    id: step,
    phase: 'dry',
    section: id,
    title: saying(word(season, `dry-${role}`), { section: text(id) }),
    lines: [
      line(job, step, 'frame', [id], { section: text(id) }),
      ...put(job, step, 'set-bolts', 'set-bolt', legIds),
      ...put(
        job,
        step,
        'legs',
        'leg',
        fitted.map((leg) => leg.id),
        {
          legs: list(fitted.map((leg) => `${leg.id} (${leg.code})`)),
        },
      ),
      ...put(job, step, 'clamps', 'brace-clamp', clamped),
      ...put(job, step, 'pads', 'foot-pad', legIds),
      ...lows.map((pair) =>
        line(
          job,
          step,
          'brace-low',
          [pair.id],
          {
            pair: text(pair.id),
            code: text(pair.brace!.code),
            leg: text(pair.brace!.low),
          },
          pair.id,
        ),
      ),
      ...put(job, step, 'hooks', 'hook-bracket', hooked),
      ...put(job, step, 'hinge-bar', 'hinge-bar', about),
      ...put(job, step, 'first-pin', 'hinge-pin', about),
    ],
    crew: crewOf(['shore', people]),
    lift,
    loose:
      season === 'autumn'
        ? []
        : [
            ...(legs.length > 0 ? [saying('loose-set-bolts', { section: text(id) })] : []),
            ...(lows.length > 0
              ? [saying('loose-brace-high', { pairs: list(lows.map((pair) => pair.id)) })]
              : []),
          ],
    cautions: lift.screen && lift.screen.index > 1 ? ['caution-lift'] : [],
    stands: [],
  }
}

const setLegs = (job: Job, step: string, legs: readonly Leg[]): StepLine[] =>
  legs.map((leg) =>
    line(
      job,
      step,
      'set-leg',
      [leg.id],
      {
        leg: text(leg.id),
        deck: meters(leg.setHeight),
        frame: meters(leg.setHeightFrame),
        depth: meters(-leg.bed),
      },
      leg.id,
      leg.code === null ? 'set-leg-none' : leg.bed > 0 ? 'set-leg-ashore' : 'set-leg',
    ),
  )

/** Under water in the hands of those who stand there; of a section that is hung while the leg's foot can still be reached from the deck. */
const placeClamps = (
  job: Job,
  step: string,
  legs: readonly Leg[],
  key: 'clamp-place' | 'clamp-place-deck',
): StepLine[] =>
  legs.flatMap((leg) => {
    const [hole, upper] = braceHoles(job.dock, leg)
    if (!hole) return []
    const values = { leg: text(leg.id), up: meters(hole.up) }
    if (!upper) return [line(job, step, 'clamp-place', [leg.id], values, leg.id, key)]
    const along = job.plan.pairs.get(hole.pair)?.along ? hole : upper
    const both = { leg: text(leg.id), low: meters(hole.up), high: meters(upper.up), along: meters(along.up) }
    return [line(job, step, 'clamp-place', [leg.id], both, leg.id, key.replace('place', 'places'))]
  })

/** `hung`: only those lengthwise between two sections, which is when both hang together, or only the others; absent: all. */
const braceHighs = (job: Job, step: string, hung?: boolean): StepLine[] =>
  (job.plan.highs.get(step) ?? []).flatMap((pair) => {
    const [a, b] = pair.legs.map((leg) => job.plan.sectionOf.get(leg))
    if (hung !== undefined && hung !== (pair.along === true && a !== b)) return []
    const high = pair.legs.find((leg) => leg !== pair.brace!.low)!
    return line(
      job,
      step,
      'brace-high',
      [pair.id],
      { pair: text(pair.id), code: text(pair.brace!.code), leg: text(high) },
      pair.id,
    )
  })

const ties = (job: Job, step: string): StepLine[] =>
  (job.plan.ties.get(step) ?? []).map((joint) =>
    line(job, step, 'tie', [joint.id], { a: text(joint.between[0]), b: text(joint.between[1]) }, joint.id),
  )

const panels = (job: Job, section: Section): StepLine[] => {
  const step = panelStep(section)
  const parts = job.allotted.partsOf(lineId(step, 'panels', section.id))
  if (parts.length === 0) return []
  const values = { section: text(section.id), count: count(total(parts, 'deck-panel')) }
  return [line(job, step, 'panels', [section.id], values, section.id)]
}

/** The one for which someone gets wet. */
function standingStep(job: Job, section: Section, legs: readonly Leg[]): Draft {
  const step = `in.${section.id}`
  const lift = liftOf(section, 'water', job.catalog)
  return {
    id: step,
    phase: 'first',
    section: section.id,
    title: saying(word(job.season, 'in-standing'), { section: text(section.id) }),
    lines: [
      line(
        job,
        step,
        'carry',
        [section.id],
        { section: text(section.id), at: meters(Math.abs(section.x)) },
        undefined,
        section.x < 0 ? 'carry-ashore' : 'carry',
      ),
      ...setLegs(job, step, legs),
      ...placeClamps(job, step, legs, 'clamp-place'),
    ],
    crew: crewOf(['water', 2], ['shore', Math.max(1, lift.people - 2)]),
    lift,
    loose: job.season === 'autumn' ? [] : [saying('loose-standing', { section: text(section.id) })],
    cautions: ['caution-cold', 'caution-lift'],
    stands: [section.id],
  }
}

function rampStep(job: Job, section: Section): Draft {
  const step = `in.${section.id}`
  const lift = liftOf(section, 'water', job.catalog)
  const { hinge } = job.plan
  const about = hinge ? [section.id, hinge.id] : [section.id]
  return {
    id: step,
    phase: 'first',
    section: section.id,
    title: saying(word(job.season, 'in-ramp'), { section: text(section.id) }),
    lines: [
      line(job, step, 'lay-ramp', about, { section: text(section.id) }),
      ...put(job, step, 'pins', 'hinge-pin', hinge ? [hinge.id] : []),
    ],
    crew: crewOf(['water', 2], ['shore', Math.max(1, lift.people - 2)]),
    lift,
    loose: job.season === 'autumn' ? [] : [saying('loose-ramp', { section: text(section.id) })],
    cautions: ['caution-cold', 'caution-fingers'],
    stands: [section.id],
  }
}

function levelStep(job: Job, sections: readonly Section[]): Draft {
  const ids = sections.map(({ id }) => id)
  const laid = sections.flatMap((section) => panels(job, section))
  return {
    id: 'level',
    phase: 'first',
    section: ids[0] ?? null,
    title: saying(word(job.season, 'level-title'), { ids: list(ids) }),
    lines: [
      line(job, 'level', 'level', ids.slice(0, 1), { section: text(ids[0] ?? '') }),
      ...braceHighs(job, 'level'),
      ...ties(job, 'level'),
      ...laid,
    ],
    crew: crewOf(['water', 2], ['shore', 1]),
    lift: null,
    loose: job.season === 'autumn' || laid.length === 0 ? [] : [saying('loose-panels', { ids: list(ids) })],
    cautions: ['caution-cold'],
    stands: [],
  }
}

function outwardStep(job: Job, section: Section, legs: readonly Leg[]): Draft {
  const { id, on } = section
  const step = `in.${id}`
  const lift = liftOf(section, 'deck', job.catalog)
  const joint = job.plan.hung.get(id)
  const about = joint ? [id, joint.id] : [id]
  const legIds = legs.map((leg) => leg.id)
  const laid = panels(job, section)
  return {
    id: step,
    phase: 'outward',
    section: id,
    title: saying(word(job.season, 'in-following'), { section: text(id), on: text(on ?? '') }),
    lines: [
      ...(legs.length > 0
        ? [line(job, step, 'sound', legIds, { ids: list(legIds), count: count(legs.length) })]
        : []),
      line(job, step, 'carry', [id], { section: text(id), on: text(on ?? '') }, undefined, 'carry-deck'),
      ...placeClamps(job, step, legs, 'clamp-place-deck'),
      ...setLegs(job, step, legs),
      ...braceHighs(job, step, false),
      line(job, step, 'drop-in', about, { section: text(id), on: text(on ?? '') }),
      ...put(job, step, 'lock', 'hook-bolt', joint ? [joint.id] : [], { on: text(on ?? '') }),
      ...braceHighs(job, step, true),
      ...ties(job, step),
      ...laid,
    ],
    crew: crewOf(['deck', lift.people]),
    lift,
    loose: job.season === 'autumn' || laid.length === 0 ? [] : [saying('loose-panels', { ids: list([id]) })],
    cautions: ['caution-cold', 'caution-fingers'],
    stands: [id],
  }
}

/** What goes on when all stands: extras, then clips, then caps. */
function lastSteps(job: Job): Draft[] {
  const { dock, allotted, season } = job
  const step = (
    id: string,
    lines: readonly StepLine[],
    people: number,
    cautions: readonly PaperWord[] = [],
  ): Draft[] =>
    lines.length === 0
      ? []
      : [
          {
            id,
            phase: 'last',
            section: null,
            title: saying(word(season, `${id}-title`)),
            lines,
            crew: crewOf(['deck', people]),
            lift: null,
            loose: [],
            cautions,
            stands: [],
          },
        ]
  const posts = allotted.extras.some(({ post }) => post)
  const extras = allotted.extras.map(({ id, section, post }) => {
    const [main] = allotted.partsOf(lineId('extras', 'extra', id))
    const values = { id: text(id), name: text(main?.name ?? id), section: text(section) }
    return line(job, 'extras', 'extra', [id], values, id, post ? 'post' : 'extra')
  })
  const panelled = dock.workOrder.filter((id) => job.plan.sections.has(id))
  const legs = dock.legs.map(({ id }) => id)
  return [
    ...step('extras', extras, 2, posts ? ['caution-services', 'caution-cold'] : ['caution-cold']),
    ...step('clips', put(job, 'clips', 'clips', 'deck-clip', panelled), 1),
    ...step(
      'caps',
      [
        ...put(job, 'caps', 'leg-caps', 'leg-cap', legs),
        ...put(job, 'caps', 'sleeve-caps', 'sleeve-cap', panelled),
      ],
      1,
    ),
  ]
}
