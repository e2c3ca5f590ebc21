import { EXPOSURES } from '../../rules/site/waves/exposures.ts'
import { useDock, useLeadline } from '../state/store.ts'
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
  const design = useLeadline((s) => s.design)
  const edit = useLeadline((s) => s.edit)
  const { waves } = useDock()
  const { t } = useWords(WANTS)
  const { t: screen } = useWords()
  const now = change.exposureOf(design)
  const called = (value: change.Exposure): string =>
    value === 'none' || value === 'own' ? t(`exposure.${value}`) : screen(`exposure.${value}`)
  const option = <T extends change.Exposure>(value: T, wind: change.Wind | undefined) => ({
    value,
    label: (
      <>
        {called(value)}
        {wind && (
          <small>
            {t('exposure.wind', {
              speed: { value: wind.speed, unit: 'm/s' },
              fetch: { value: wind.fetch, unit: 'fetch' },
            })}
          </small>
        )}
      </>
    ),
  })
  const hint = !waves
    ? `${t('exposure.hint')} ${t('exposure.pending')}`
    : t(waves.period > 0 ? 'waves.told' : 'waves.wakes', {
        height: meters(waves.height),
        period: { value: waves.period, unit: 's' },
        crest: meters(waves.crest),
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
          ...(now === 'own' ? [option('own', design.site.wind)] : []),
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
