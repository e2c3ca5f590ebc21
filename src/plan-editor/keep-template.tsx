/** The dock's shape kept among the shop's own: a copy of its catalog that has it. */
import { useState } from 'react'
import type { PlanItem } from '../../rules/plan/schema.ts'
import { download } from '../platform/download.ts'
import { plainName } from '../platform/file-name.ts'
import { useLeadline } from '../state/store.ts'
import { Hint } from '../ui/controls.tsx'
import { Fold } from '../ui/fold.tsx'
import { useWords } from '../ui/use-words.ts'
import { PLAN_EDITOR } from '../words/plan-editor.ts'
import { withTemplate } from './with-template.ts'

export function KeepTemplate({
  plan,
  frame,
}: {
  readonly plan: readonly PlanItem[]
  readonly frame: string
}) {
  const catalog = useLeadline((s) => s.catalog)
  const { t } = useWords(PLAN_EDITOR)
  const [name, setName] = useState('')
  return (
    <Fold className="control" summary={t('template')}>
      <label className="template-name">
        <span>{t('template.name')}</span>
        <input
          type="text"
          maxLength={120}
          value={name}
          onInput={(event) => setName(event.currentTarget.value)}
        />
      </label>
      <button
        type="button"
        disabled={name.trim() === ''}
        onClick={() =>
          download(
            `${JSON.stringify(withTemplate(catalog, name.trim(), frame, plan), null, 2)}\n`,
            'application/json',
            `${plainName(catalog.id)}.catalog.json`,
          )
        }
      >
        {t('template.save')}
      </button>
      <Hint>{t('template.hint')}</Hint>
    </Fold>
  )
}
