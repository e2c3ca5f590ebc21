import { useLeadline } from '../state/store.ts'
import { Choice } from '../ui/controls.tsx'
import { useWords } from '../ui/use-words.ts'
import * as change from './design-edits.ts'

const BOTTOMS = ['rock', 'gravel', 'sand', 'clay', 'muck'] as const

export function Bottom() {
  // What was only taken is not chosen: a tap on it says it.
  const bottom = useLeadline(({ design: { site } }) =>
    site.assumed?.includes('bottom') ? null : site.bottom,
  )
  const edit = useLeadline((s) => s.edit)
  const { t } = useWords()
  return (
    <div className="control">
      <Choice
        legend={t('bottom.label')}
        value={bottom}
        columns={5}
        options={BOTTOMS.map((kind) => ({
          value: kind,
          label: t(`bottom.${kind}`),
          picture: <i className={`swatch ${kind}`} />,
        }))}
        hint={t('bottom.hint')}
        set={(kind) => edit((d) => change.setBottom(d, kind))}
      />
    </div>
  )
}
