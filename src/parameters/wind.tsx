import { EXPOSURES } from '../../rules/site/waves/exposures.ts'
import { dockOf, useLeadline } from '../state/store.ts'
import { Choice } from '../ui/controls.tsx'
import { Fold } from '../ui/fold.tsx'
import { chunk, Lazy } from '../ui/lazy.tsx'
import { useWords } from '../ui/use-words.ts'
import { meters } from '../words/index.ts'
import { WANTS } from '../words/wants.ts'
import * as change from './design-edits.ts'

const exposure = chunk(() => import('./wind-figures.tsx').then((m) => m.Exposure))
const EXPOSED = ['sheltered', 'small', 'wide', 'open'] as const

export function ExposureChoice() {
  const now = useLeadline((s) => change.exposureOf(s.design))
  const wind = useLeadline((s) => s.design.site.wind)
  const edit = useLeadline((s) => s.edit)
  const { t } = useWords(WANTS)
  const { t: screen } = useWords()
  const called = (value: change.Exposure): string =>
    value === 'none' || value === 'own' ? t(`exposure.${value}`) : screen(`exposure.${value}`)
  const option = <T extends change.Exposure>(value: T, of: change.Wind | undefined) => ({
    value,
    label: (
      <>
        {called(value)}
        {of && (
          <small>
            {t('exposure.wind', {
              speed: { value: of.speed, unit: 'm/s' },
              fetch: { value: of.fetch, unit: 'fetch' },
            })}
          </small>
        )}
      </>
    ),
  })
  const hint = useLeadline((s) => {
    const { waves } = dockOf(s)
    return !waves
      ? `${t('exposure.hint')} ${t('exposure.pending')}`
      : t(waves.period > 0 ? 'waves.told' : 'waves.wakes', {
          height: meters(waves.height),
          period: { value: waves.period, unit: 's' },
          crest: meters(waves.crest),
        })
  })
  return (
    <div className="control">
      <Choice
        legend={screen('exposure.label')}
        value={now}
        columns={2}
        options={[
          ...EXPOSED.map((name) => option<change.Exposure>(name, EXPOSURES[name])),
          option('none', undefined),
          ...(now === 'own' ? [option('own', wind)] : []),
        ]}
        hint={hint}
        set={(to) => edit((d) => change.setExposure(d, to))}
      />
      <Fold summary={t('exposure.figures')}>
        <Lazy chunk={exposure} props={{}} />
      </Fold>
    </div>
  )
}
