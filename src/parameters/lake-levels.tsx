import { useLeadline } from '../state/store.ts'
import { Hint } from '../ui/controls.tsx'
import { LengthField } from '../ui/quantity-field.tsx'
import { useWords } from '../ui/use-words.ts'
import { WANTS } from '../words/wants.ts'
import * as change from './design-edits.ts'

/** How far it rises and falls: no signs. A high level under the day's is a fall of that much, and comes as a negative number. */
export function Levels() {
  const { low, high } = useLeadline((s) => s.design.site.levels)
  const highUnsaid = useLeadline((s) => change.levelAssumed(s.design, 'high'))
  const lowUnsaid = useLeadline((s) => change.levelAssumed(s.design, 'low'))
  const edit = useLeadline((s) => s.edit)
  const { t } = useWords(WANTS)
  return (
    <fieldset className="control list">
      <legend>{t('levels.label')}</legend>
      <div className="pair">
        <LengthField
          label={t('levels.rises')}
          value={high}
          unsaid={highUnsaid}
          commit={(to) => edit((d) => change.setLevel(d, 'high', to))}
        />
        <LengthField
          label={t('levels.falls')}
          value={0 - low}
          unsaid={lowUnsaid}
          commit={(to) => edit((d) => change.setLevel(d, 'low', 0 - to))}
        />
      </div>
      <Hint>{t('levels.hint')}</Hint>
    </fieldset>
  )
}
