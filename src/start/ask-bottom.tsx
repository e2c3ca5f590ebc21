/** What the bottom is like, by pictures of it and how it feels underfoot. */
import { setBottom } from '../parameters/design-edits.ts'
import { useLeadline } from '../state/store.ts'
import { Choice } from '../ui/controls.tsx'
import { useWords } from '../ui/use-words.ts'
import { START } from '../words/start.ts'
import { BottomPicture } from './pictures.tsx'
import { useAnswer } from './use-answer.ts'

const BOTTOMS = ['sand', 'gravel', 'rock', 'clay', 'muck'] as const
type Bottom = (typeof BOTTOMS)[number] | 'none'

export function BottomQuestion() {
  const { bottom, assumed } = useLeadline((s) => s.design.site)
  const give = useAnswer()
  const { t } = useWords(START)
  const { t: screen } = useWords()
  return (
    <Choice<Bottom>
      legend={screen('bottom.label')}
      value={assumed?.includes('bottom') ? 'none' : bottom}
      columns={2}
      options={BOTTOMS.map((kind) => ({
        value: kind,
        label: (
          <>
            {screen(`bottom.${kind}`)}
            <small>{t(`start.bottom.${kind}`)}</small>
          </>
        ),
        picture: <BottomPicture of={kind} />,
      }))}
      set={(kind) => kind !== 'none' && give((d) => setBottom(d, kind))}
    />
  )
}
