/** Setting up, a screen at a time: the level, what keeps people safe, then the dock's own order of work. */
import { count } from '../words/index.ts'
import { Flooded } from './flooded.tsx'
import { Frame } from './frame.tsx'
import { useBegun, useSay } from './lake.ts'
import { Level } from './level.tsx'
import { MeasureLeg } from './measure-leg.tsx'
import { Safety } from './safety.tsx'
import { SetLeg } from './set-leg.tsx'
import { afterMeasure, pastMeasured, type Stage } from './stages.ts'
import { Stands } from './stands.tsx'
import { StepPage } from './step-page.tsx'
import { isFlooded } from './stops-at.ts'
import { useSetUpStages } from './use-stages.ts'

export function SetUp({ at }: { readonly at: number }) {
  const begun = useBegun()
  const { t } = useSay()
  const stages = useSetUpStages(begun)
  const stage = stages[at]
  const to = (stage: number) => (): void => begun.go({ at: 'set-up', stage })
  // The level is asked again in the middle of the work: then on with that.
  const from = begun.page.at === 'set-up' ? begun.page.from : undefined
  const next = to(from ?? at + 1)
  const measured = to(afterMeasure(stages, at, begun.state, begun.day))
  const skip = to(pastMeasured(stages, at, begun.state))
  return (
    <Frame
      title={begun.project || begun.last ? t('set-up.title', { season: begun.season }) : t('home.begin-old')}
      progress={stage && t('progress', { n: count(at + 1), all: count(stages.length) })}
      back={at > 0 ? to(at - 1) : from === undefined ? undefined : to(from)}
      home={() => begun.go({ at: 'home' })}
    >
      {!stage ? (
        <Stands />
      ) : isFlooded(stage, begun) ? (
        <Flooded />
      ) : (
        screenOf(stage, { next, measured, skip }, stages)
      )}
    </Frame>
  )
}

interface Ways {
  readonly next: () => void
  /** After a depth, and on all the same. */
  readonly measured: () => void
  readonly skip: () => void
}

function screenOf(stage: Stage, { next, measured, skip }: Ways, stages: readonly Stage[]) {
  switch (stage.kind) {
    case 'level':
      return <Level key={stage.key} next={next} />
    case 'safe':
      return <Safety key={stage.key} of="set-up" at={stage.key} next={next} />
    case 'measure':
      return <MeasureLeg key={stage.key} leg={stage.leg} next={measured} skip={skip} />
    case 'set':
      return <SetLeg key={stage.key} leg={stage.leg} next={next} />
    case 'step':
      return <StepPage key={stage.key} stage={stage} season="up" stages={stages} next={next} />
    case 'plain':
      return null
  }
}
