import { useMemo } from 'react'
import { straightFrames } from '../../rules/catalog/straight.ts'
import { useLeadline } from '../state/store.ts'
import { Choice } from '../ui/controls.tsx'
import { useNames } from '../ui/use-names.ts'
import { useWords } from '../ui/use-words.ts'
import { WANTS } from '../words/wants.ts'
import { useAdded } from './added.ts'
import * as change from './design-edits.ts'

/** With what another size would do to the whole dock. */
export function FrameSize() {
  const frame = useLeadline((s) => s.design.dock.frame)
  const catalog = useLeadline((s) => s.catalog)
  const frames = useMemo(() => straightFrames(catalog), [catalog])
  const edit = useLeadline((s) => s.edit)
  const { t } = useWords(WANTS)
  const named = useNames()
  const added = useAdded(
    useMemo(() => new Map(frames.map(({ code }) => [code, (d) => change.setFrame(d, code)])), [frames]),
  )
  return (
    <div className="control">
      <Choice
        legend={t('frame.label')}
        value={frame}
        options={frames.map(({ code, name }) => ({
          value: code,
          label: (
            <>
              {named({ code, name })}
              <small>{added(code)}</small>
            </>
          ),
        }))}
        set={(code) => edit((d) => change.setFrame(d, code))}
      />
    </div>
  )
}
