/** Out before the ice: what stands is taken out in its order, the last piece put first; who lifts what, and where it is stored. */
import { useState } from 'react'
import { count } from '../words/index.ts'
import { LineField } from './fields.tsx'
import { Frame, Head } from './frame.tsx'
import { useBegun, useSay } from './lake.ts'
import { Safety } from './safety.tsx'
import type { Stage } from './stages.ts'
import { StepPage } from './step-page.tsx'
import { useOutStages } from './use-stages.ts'

export function Out({ at }: { readonly at: number }) {
  const begun = useBegun()
  const { t } = useSay()
  const stages = useOutStages(begun)
  const stage = stages[at]
  const to = (stage: number) => (): void => begun.go({ at: 'out', stage })
  return (
    <Frame
      title={t('out.title', { season: begun.season })}
      progress={stage && t('progress', { n: count(at + 1), all: count(stages.length) })}
      back={at > 0 ? to(at - 1) : undefined}
      home={() => begun.go({ at: 'home' })}
    >
      {stage ? screenOf(stage, to(at + 1), stages) : <Stored />}
    </Frame>
  )
}

function screenOf(stage: Stage, next: () => void, stages: readonly Stage[]) {
  switch (stage.kind) {
    case 'safe':
      return <Safety key={stage.key} of="out" at={stage.key} next={next} />
    case 'step':
      return <StepPage key={stage.key} stage={stage} season="down" stages={stages} next={next} />
    default:
      return <Plain key={stage.key} at={stage.key} next={next} />
  }
}

/** Of a dock without a plan. */
function Plain({ at, next }: { readonly at: string; readonly next: () => void }) {
  const { add } = useBegun()
  const { t } = useSay()
  return (
    <>
      <Head of={t('out.plain')} />
      <ol>
        {(['boat', 'stood', 'far', 'panels', 'legs', 'flat'] as const).map((line) => (
          <li key={line}>{t(`out.plain-${line}`)}</li>
        ))}
      </ol>
      <p className="care">{t('care.lift')}</p>
      <div className="ways">
        <button
          type="button"
          className="main"
          onClick={() => {
            add({ kind: 'step', key: at, done: true })
            next()
          }}
        >
          {t('out.ashore')}
        </button>
      </div>
    </>
  )
}

/** All is ashore: where it lies is what is looked for in spring. */
function Stored() {
  const { add, go, state } = useBegun()
  const { t } = useSay()
  const known = state.out.at(-1)
  const [where, setWhere] = useState(known?.stored ?? '')
  return (
    <>
      <Head of={t('out.done')} />
      <LineField label={t('out.stored')} value={where} set={setWhere} />
      <p className="hint">{t('out.next')}</p>
      <div className="ways">
        <button
          type="button"
          className="main"
          onClick={() => {
            add({ kind: 'out', ...(where.trim() === '' ? {} : { stored: where.trim() }) })
            go({ at: 'home' })
          }}
        >
          {t('out.keep')}
        </button>
        <button type="button" onClick={() => go({ at: 'wear' })}>
          {t('home.wear')}
        </button>
      </div>
    </>
  )
}
