/** The run and what is at its ends: sections, ramp, head. */
import { LIMITS } from '../../rules/index.ts'
import { dockFacts } from '../state/dock-facts.ts'
import { useDock, useLeadline } from '../state/store.ts'
import { Choice, Hint, Stepper } from '../ui/controls.tsx'
import { chunk, Lazy } from '../ui/lazy.tsx'
import { useWords } from '../ui/use-words.ts'
import { meters } from '../words/index.ts'
import * as change from './design-edits.ts'
import { HeadPicture, type HeadShape } from './shape-pictures.tsx'

const farOut = chunk(() => import('./wants.ts').then((m) => m.Reach))
const rampHint = chunk(() => import('./wants.ts').then((m) => m.RampHint))

const SHAPES: readonly HeadShape[] = ['straight', 'left', 'right', 'tee', 'wide']

export function Run() {
  const design = useLeadline((s) => s.design)
  const edit = useLeadline((s) => s.edit)
  const dock = useDock()
  const stale = useLeadline((s) => s.stale)
  const { t } = useWords()
  if (design.dock.plan) return <Hint>{t('plan.own')}</Hint>
  const { sections = 1, ramp = false, head = NO_HEAD } = design.dock
  const { reach, depth } = dockFacts(dock, design)
  const step = change.headStep(head.shape)
  return (
    <>
      <div className="control">
        <Stepper
          label={t('sections.label')}
          fewer={t('sections.fewer')}
          more={t('sections.more')}
          value={sections}
          min={ramp ? 2 : 1}
          max={LIMITS.sections - head.sections}
          set={(n) => edit((d) => change.setSections(d, n))}
        />
        <Hint>
          {stale ? t('takes.working') : t('sections.reach', { reach: meters(reach), depth: meters(depth) })}
        </Hint>
        <Lazy chunk={farOut} props={{ now: reach }} />
      </div>
      <div className="control">
        <label className="switch">
          <span>{t('ramp.label')}</span>
          <input
            type="checkbox"
            checked={ramp}
            onChange={(event) => {
              const on = event.currentTarget.checked
              edit((d) => change.setRamp(d, on))
            }}
          />
        </label>
        <Lazy chunk={rampHint} props={{ on: ramp }} />
      </div>
      <div className="control">
        <Choice
          legend={t('head.label')}
          value={head.shape}
          columns={5}
          options={SHAPES.map((shape) => ({
            value: shape,
            label: t(`head.${shape}`),
            picture: <HeadPicture shape={shape} />,
          }))}
          set={(shape) => edit((d) => change.setHead(d, shape))}
        />
        {head.shape !== 'straight' && (
          <Stepper
            label={t('head.count')}
            fewer={t('head.fewer')}
            more={t('head.more')}
            value={head.sections}
            min={step}
            max={head.shape === 'wide' ? change.legged(design) : 40}
            by={step}
            set={(n) => edit((d) => change.setHeadSections(d, n))}
          />
        )}
        {(head.shape === 'left' || head.shape === 'right') && <Hint>{t('head.hint')}</Hint>}
      </div>
    </>
  )
}

const NO_HEAD = { shape: 'straight', sections: 0 } as const
