/** How the ramp lies, in plain words; how steep in figures on request. */
import { useDock, useLeadline } from '../state/store.ts'
import { Hint } from '../ui/controls.tsx'
import { Fold } from '../ui/fold.tsx'
import { useWords } from '../ui/use-words.ts'
import { meters } from '../words/index.ts'
import { WANTS } from '../words/wants.ts'

/** A wheelbarrow is pushed up this without a thought, rise over run. */
const GENTLE = 1 / 10

export function RampHint({ on }: { readonly on: boolean }) {
  const { ramp } = useDock()
  const { t } = useWords(WANTS)
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
