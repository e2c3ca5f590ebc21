/** The run and what is at its ends: sections, ramp, head. */
import { LIMITS } from '../../rules/index.ts'
import { dockFacts } from '../state/dock-facts.ts'
import { useDock, useLeadline } from '../state/store.ts'
import { Hint, Stepper } from '../ui/controls.tsx'
import { chunk, Lazy } from '../ui/lazy.tsx'
import { useWords } from '../ui/use-words.ts'
import { meters } from '../words/index.ts'
import * as change from './design-edits.ts'

const farOut = chunk(() => import('./wants.ts').then((m) => m.Reach))
const shapes = chunk(() => import('../plan-editor/shapes.tsx').then((m) => m.Shapes))
const rampHint = chunk(() => import('./wants.ts').then((m) => m.RampHint))

export function Run() {
  const design = useLeadline((s) => s.design)
  const edit = useLeadline((s) => s.edit)
  const dock = useDock()
  const stale = useLeadline((s) => s.stale)
  const { t } = useWords()
  const { sections = 1, ramp = false, head } = design.dock
  const { reach, depth } = dockFacts(dock, design)
  return (
    <>
      {!design.dock.plan && (
        <>
          <div className="control">
            <Stepper
              label={t('sections.label')}
              fewer={t('sections.fewer')}
              more={t('sections.more')}
              value={sections}
              min={ramp ? 2 : 1}
              max={LIMITS.sections - (head?.sections ?? 0)}
              set={(n) => edit((d) => change.setSections(d, n))}
            />
            <Hint>
              {stale
                ? t('takes.working')
                : t('sections.reach', { reach: meters(reach), depth: meters(depth) })}
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
        </>
      )}
      <Lazy chunk={shapes} props={{}} />
    </>
  )
}
