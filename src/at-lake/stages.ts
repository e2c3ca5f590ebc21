/** The day in the order in which it is gone through, a screen each: what there is to do, and what of it is done. Follows the dock's own order of work. */
import type { DayStep } from '../../rules/at-lake/index.ts'
import type { StepLine } from '../../rules/papers/steps/step.ts'
import type { SeasonRecord, SeasonState } from '../../rules/record/index.ts'

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

/** What stands on screens of its own. */
const APART: ReadonlySet<string> = new Set(['sound', 'set-leg', 'ready'])

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
  const rest = lines.filter(({ work }) => !APART.has(work))
  if (step.legs.length === 0)
    return [{ kind: 'step', key: id, step, lines: phase === 'ready' ? lines : rest }]
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
        lines: step.step.lines.filter(({ work }) => work !== 'sound' && work !== 'set-leg'),
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

/** Nobody knows how the lake stands: it is found from the first leg that is measured. */
export const LEVEL_LATER = 'level/later'

/** Where to go on: the first that is not done; after the last one of all. */
export function nextStage(stages: readonly Stage[], state: SeasonState): number {
  const at = stages.findIndex((stage) => !isDone(stage, state))
  return at < 0 ? stages.length : at
}
