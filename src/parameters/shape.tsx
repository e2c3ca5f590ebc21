/** The run and what is at its ends: sections, ramp, head. */
import { useState } from 'react'
import { LIMITS } from '../../rules/index.ts'
import { sectionsForReach } from '../../rules/layout/sections-for-reach.ts'
import { dockFacts } from '../panel/dock-facts.ts'
import { useDock, useLeadline, useLeadlineStore } from '../state/store.ts'
import { Choice, Hint, Stepper } from '../ui/controls.tsx'
import { Fold } from '../ui/fold.tsx'
import { LengthField } from '../ui/quantity-field.tsx'
import { meters } from '../words/index.ts'
import { useWords } from '../words/use-words.ts'
import * as change from './design-edits.ts'
import { HeadPicture, type HeadShape } from './shape-pictures.tsx'

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
        <Reach now={reach} />
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
        <RampHint on={ramp} />
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

/** The same wish in feet: how far out, of which so many sections follow. What was asked for stays beside what it comes to. */
function Reach({ now }: { readonly now: number }) {
  const store = useLeadlineStore()
  const edit = useLeadline((s) => s.edit)
  const { sections, ramp = false, head = NO_HEAD, frame } = useLeadline((s) => s.design.dock)
  const catalog = useLeadline((s) => s.catalog)
  const stale = useLeadline((s) => s.stale)
  const [asked, ask] = useState<{ readonly reach: number; readonly sections: number } | null>(null)
  const { t, units } = useWords()
  const own = catalog.frames.find(({ code }) => code === frame)
  if (!own) return null
  const commit = (reach: number) => {
    const { design, project } = store.getState()
    const found = sectionsForReach(design, catalog, reach, project.bed)
    if (!found) return []
    const issues = edit((d) => change.setSections(d, found.sections))
    if (issues.length === 0) ask({ reach, sections: found.sections })
    return issues
  }
  const values = { asked: meters(asked?.reach ?? 0), count: sections ?? 1, reach: meters(now) }
  return (
    <>
      <LengthField
        label={t('reach.label')}
        value={now}
        step={own.length + catalog.rules.jointGap.value}
        commit={commit}
        className="beside"
      />
      <Hint>
        {/* Once something else made it longer or shorter, the wish is over. */}
        {asked && asked.sections === sections && !stale
          ? t(ramp ? 'reach.ramp' : 'reach.no-ramp', values)
          : t('reach.hint', { example: meters(units === 'imperial' ? 12.192 : 12) })}{' '}
        {t(`reach.${head.sections > 0 ? head.shape : 'straight'}`)}
      </Hint>
    </>
  )
}

/** A wheelbarrow is pushed up this without a thought, rise over run. */
const GENTLE = 1 / 10

function RampHint({ on }: { readonly on: boolean }) {
  const { ramp } = useDock()
  const { t } = useWords()
  const stale = useLeadline((s) => s.stale)
  if (!on) return <Hint>{t('ramp.off')}</Hint>
  // Its slope is of an earlier dock while this one is worked out.
  if (!ramp || stale) return <Hint>{t('ramp.on')}</Hint>
  const steep = Math.abs(ramp.slope)
  const way = ramp.slope > 0 ? 'up' : 'down'
  const key = steep < 0.005 ? 'level' : steep <= GENTLE ? (`${way}-gentle` as const) : way
  return (
    <>
      <Hint>
        {t('ramp.on')} {t(`ramp.${key}`, { step: meters(Math.abs(ramp.step)) })}
      </Hint>
      {key !== 'level' && (
        <Fold summary={t('ramp.figures')}>
          <Hint>{t('ramp.slope', { slope: { value: steep, unit: 'slope' } })}</Hint>
        </Fold>
      )}
    </>
  )
}
