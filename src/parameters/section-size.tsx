import { useLeadline } from '../state/store.ts'
import { Choice } from '../ui/controls.tsx'
import { useWords } from '../ui/use-words.ts'
import * as change from './design-edits.ts'

export function FrameSize() {
  const frame = useLeadline((s) => s.design.dock.frame)
  const frames = useLeadline((s) => s.catalog.frames)
  const edit = useLeadline((s) => s.edit)
  const { t, money, priced } = useWords()
  return (
    <div className="control">
      <Choice
        legend={t('frame.label')}
        value={frame}
        options={frames.map((f) => ({
          value: f.code,
          label: (
            <>
              {f.name}
              {priced && <small>{money(f.price)}</small>}
            </>
          ),
        }))}
        set={(code) => edit((d) => change.setFrame(d, code))}
      />
    </div>
  )
}
