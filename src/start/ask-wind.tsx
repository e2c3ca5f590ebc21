/** How open the lake is before the dock, by a picture of it. */
import { exposureOf, setExposure } from '../parameters/design-edits.ts'
import { useLeadline } from '../state/store.ts'
import { Choice } from '../ui/controls.tsx'
import { useWords } from '../ui/use-words.ts'
import { START } from '../words/start.ts'
import { LakePicture } from './pictures.tsx'
import { useAnswer } from './use-answer.ts'

const LAKES = ['sheltered', 'small', 'wide', 'open'] as const

export function WindQuestion() {
  const design = useLeadline((s) => s.design)
  const give = useAnswer()
  const { t } = useWords(START)
  const { t: screen } = useWords()
  return (
    <Choice
      legend={screen('exposure.label')}
      value={exposureOf(design)}
      columns={2}
      options={LAKES.map((lake) => ({
        value: lake as ReturnType<typeof exposureOf>,
        label: screen(`exposure.${lake}`),
        picture: <LakePicture of={lake} />,
      }))}
      hint={t('start.wind.hint')}
      set={(lake) => give((d) => setExposure(d, lake))}
    />
  )
}
