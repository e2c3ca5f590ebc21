/** What is added: bumpers, ladders, cleats, posts. */
import { LIMITS } from '../../rules/index.ts'
import { useLeadline } from '../state/store.ts'
import { Stepper } from '../ui/controls.tsx'
import { useWords } from '../ui/use-words.ts'
import { text } from '../words/index.ts'
import * as change from './design-edits.ts'

export function Extras() {
  const extras = useLeadline((s) => s.catalog.extras)
  const wanted = useLeadline((s) => s.design.dock.extras)
  const edit = useLeadline((s) => s.edit)
  const { t } = useWords()
  return (
    <fieldset className="control list">
      <legend>{t('extras.label')}</legend>
      {extras.map(({ code, name }) => (
        <Stepper
          key={code}
          label={name}
          fewer={t('extras.fewer', { name: text(name) })}
          more={t('extras.more', { name: text(name) })}
          value={wanted[code] ?? 0}
          min={0}
          max={LIMITS.extras}
          set={(n) => edit((d) => change.setExtra(d, code, n))}
        />
      ))}
    </fieldset>
  )
}
