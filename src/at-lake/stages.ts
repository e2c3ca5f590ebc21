/** The day in the order in which it is gone through, a screen each: what there is to do, and what of it is done. Follows the dock's own order of work. */
import type { Day, DayStep } from '../../rules/at-lake/index.ts'
import type { StepLine } from '../../rules/papers/steps/step.ts'
import type { SeasonRecord, SeasonState } from '../../rules/record/index.ts'
import { stillStops } from './stops-at.ts'

export type Stage =
  | { readonly kind: 'level' | 'safe'; readonly key: string }
  /** `step`: null for a dock without a plan. */
  | {
      readonly kind: 'measure' | 'set'
      readonly key: string
      readonly leg: string
      readonly step: DayStep | null
    }
  /** Of a dock without a plan: all of it on one screen. */
  | { readonly kind: 'plain'; readonly key: string }
  | {
      readonly kind: 'step'
      /** Under which it is written down that it is done. */
      readonly key: string
      readonly step: DayStep
      readonly lines: readonly StepLine[]
    }

/** What stands on screens of its own; of a section that is hung the clamp stands on that of its leg, for it is placed before the leg is let down. */
const APART: ReadonlySet<string> = new Set(['sound', 'set-leg', 'ready'])
const HUNG_APART: ReadonlySet<string> = new Set([...APART, 'clamp-place'])
/** Buried lines are asked for before anybody begins, with all else that can hurt. */
const ASKED = 'up-ready-services'

/** @param known how a leg stood is known, so that it is set again and not measured first */
export function setUpStages(order: readonly DayStep[], known: (leg: string) => boolean): Stage[] {
  return [
    { kind: 'level', key: 'level' },
    { kind: 'safe', key: 'safe' },
    ...order.flatMap((step): Stage[] => stagesOf(step, known)),
  ]
}

function stagesOf(step: DayStep, known: (leg: string) => boolean): Stage[] {
  const { id, phase, lines } = step.step
  const apart = phase === 'outward' ? HUNG_APART : APART
  const rest = lines.filter(({ work }) => !apart.has(work))
  if (step.legs.length === 0) {
    const ready = lines.filter(({ say }) => say.key !== ASKED)
    return [{ kind: 'step', key: id, step, lines: phase === 'ready' ? ready : rest }]
  }
  const carry = rest.filter(({ work }) => work === 'carry')
  const after = rest.filter(({ work }) => work !== 'carry')
  const of = (kind: 'measure' | 'set', leg: string): Stage => ({ kind, key: `${kind}/${leg}`, leg, step })
  const measured = step.legs.filter((leg) => !known(leg)).map((leg) => of('measure', leg))
  const set = step.legs.map((leg) => of('set', leg))
  const carried: Stage = { kind: 'step', key: `${id}/carry`, step, lines: carry }
  const last: Stage[] = after.length > 0 ? [{ kind: 'step', key: id, step, lines: after }] : []
  // From the deck the bottom is sounded before the section is on its way; in the water it stands first.
  if (phase === 'outward') return [...measured, carried, ...set, ...last]
  const byLeg = step.legs.flatMap((leg) => [...(known(leg) ? [] : [of('measure', leg)]), of('set', leg)])
  return [carried, ...byLeg, ...last]
}

/** What has been ticked off when the dock comes out has a key of its own. */
const OUT = 'out/'

/** A dock without a plan: how each leg stands, one after the other. */
export const oldDockStages = ({ legs }: Pick<SeasonRecord, 'legs'>): Stage[] => [
  { kind: 'level', key: 'level' },
  { kind: 'safe', key: 'safe' },
  ...legs.map(({ id }): Stage => ({ kind: 'set', key: `set/${id}`, leg: id, step: null })),
]

export function outStages(order: readonly DayStep[], { sections }: Pick<SeasonRecord, 'sections'>): Stage[] {
  if (order.length === 0 && sections.length === 0)
    return [
      { kind: 'safe', key: `${OUT}safe` },
      { kind: 'plain', key: `${OUT}all` },
    ]
  return [
    { kind: 'safe', key: `${OUT}safe` },
    ...order.map(
      (step): Stage => ({
        kind: 'step',
        key: `${OUT}${step.step.id}`,
        step,
        lines: step.step.lines.filter(({ work }) => work !== 'sound'),
      }),
    ),
  ]
}

export function isDone(stage: Stage, state: SeasonState): boolean {
  switch (stage.kind) {
    case 'level':
      return state.level !== null || state.done.includes(LEVEL_LATER)
    case 'measure':
      return state.legs.some(
        ({ leg, sounding, asPlanned }) => leg.id === stage.leg && (sounding || asPlanned),
      )
    case 'set':
      return state.legs.some(({ leg, set }) => leg.id === stage.leg && set)
    default:
      return state.done.includes(stage.key)
  }
}

/**
 * After a leg that was measured: the next one; and once all that are measured together are, back to one of them at which a stop stands by
 * now, for the next leg's depth may have brought it.
 */
export function afterMeasure(
  stages: readonly Stage[],
  at: number,
  state: SeasonState,
  day: Day | null,
): number {
  if (stages[at + 1]?.kind === 'measure') return at + 1
  const stopped = day?.stations.flatMap(({ legs }) => legs.filter((one) => stillStops(one, state))) ?? []
  for (let i = at - 1; i >= 0; i--) {
    const stage = stages[i]
    if (stage?.kind !== 'measure') break
    if (isDone(stage, state) && stopped.some(({ leg }) => leg === stage.leg)) return i
  }
  return at + 1
}

/** On past what is measured already, all the same. */
export function pastMeasured(stages: readonly Stage[], at: number, state: SeasonState): number {
  let to = at + 1
  for (let stage = stages[to]; stage?.kind === 'measure' && isDone(stage, state); stage = stages[to]) to++
  return to
}

/** Nobody knows how the lake stands: it is found from the first leg that is measured. */
export const LEVEL_LATER = 'level/later'

/** Where to go on: the first that is not done, or at which a stop stands; after the last one of all. */
export function nextStage(stages: readonly Stage[], state: SeasonState, day: Day | null = null): number {
  const stopped = new Set(
    day?.stations.flatMap(({ legs }) => legs.filter((at) => stillStops(at, state)).map(({ leg }) => leg)),
  )
  const at = stages.findIndex(
    (stage) => !isDone(stage, state) || (stage.kind === 'measure' && stopped.has(stage.leg)),
  )
  return at < 0 ? stages.length : at
}
