/** How far out, in feet or meters. */
import { useState } from 'react'
import { sectionsForReach } from '../../rules/layout/sections-for-reach.ts'
import { useLeadline, useLeadlineStore } from '../state/store.ts'
import { Hint } from '../ui/controls.tsx'
import { Fold } from '../ui/fold.tsx'
import { chunk, Lazy } from '../ui/lazy.tsx'
import { LengthField } from '../ui/quantity-field.tsx'
import { useWords } from '../ui/use-words.ts'
import { count, meters } from '../words/index.ts'
import { WANTS } from '../words/wants.ts'
import * as change from './design-edits.ts'

const depthSearch = chunk(() => import('./depth-search/depth-search.tsx').then((m) => m.DepthSearch))

const NO_HEAD = { shape: 'straight', sections: 0 } as const

/** The same wish as so many sections: how far out, of which so many sections follow. What was asked for stays beside what it comes to. */
export function Reach({ now }: { readonly now: number }) {
  const store = useLeadlineStore()
  const edit = useLeadline((s) => s.edit)
  const { sections, ramp = false, head = NO_HEAD, frame } = useLeadline((s) => s.design.dock)
  const catalog = useLeadline((s) => s.catalog)
  const stale = useLeadline((s) => s.stale)
  const [asked, ask] = useState<{ readonly reach: number; readonly sections: number } | null>(null)
  const { t, units } = useWords(WANTS)
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
  // Everywhere on the page all of them are counted, ramp and end too.
  const run = sections ?? 1
  // Once something else made it longer or shorter, the wish is over.
  const fresh = asked && asked.sections === sections && !stale
  const values = {
    asked: meters(asked?.reach ?? 0),
    count: count(run + head.sections),
    run: count(run),
    head: count(head.sections),
    reach: meters(now),
  }
  const all =
    head.sections > 0 ? (ramp ? 'reach.all-both' : 'reach.all-head') : ramp ? 'reach.all-ramp' : 'reach.all'
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
        {fresh
          ? t(
              head.sections > 0
                ? ramp
                  ? 'reach.ramp-head'
                  : 'reach.no-ramp-head'
                : ramp
                  ? 'reach.ramp'
                  : 'reach.no-ramp',
              values,
            )
          : `${t(all, values)} ${t('reach.hint', { example: meters(units === 'imperial' ? 12.192 : 12) })}`}{' '}
        {t(`reach.${head.sections > 0 ? head.shape : 'straight'}`)}
      </Hint>
      {/* A whole section is the step: whoever is near enough may do without the last. */}
      {fresh && now > asked.reach + 1e-3 && run > (ramp ? 2 : 1) && (
        <button type="button" onClick={() => edit((d) => change.setSections(d, run - 1))}>
          {t('reach.fewer', { reach: meters(now - own.length - catalog.rules.jointGap.value) })}
        </button>
      )}
      <Fold summary={t('reach.boat')}>
        <Lazy chunk={depthSearch} props={{}} />
      </Fold>
    </>
  )
}
