/** How deep is it, at two distances. */
import { useLeadline } from '../state/store.ts'
import { useWords } from '../ui/use-words.ts'
import { meters } from '../words/index.ts'
import { START } from '../words/start.ts'
import { LengthSteps, Likely } from './fields.tsx'
import { answer, answerOf } from './shore.ts'
import { FIGURES, useAnswer } from './use-answer.ts'

export function DepthsQuestion() {
  const { t } = useWords(START)
  return (
    <>
      <p className="hint">{t('start.depths.hint')}</p>
      <OneDepth place="near" />
      <OneDepth place="far" />
    </>
  )
}

function OneDepth({ place }: { readonly place: 'near' | 'far' }) {
  const design = useLeadline((s) => s.design)
  const sounding = answerOf(design, place)
  const other = answerOf(design, place === 'near' ? 'far' : 'near')
  const give = useAnswer()
  const { t, units } = useWords(START)
  const figures = FIGURES[units]
  const { distance, assumed } = sounding
  const depth = assumed ? null : sounding.depth
  const deep = (to: number) => give((d) => answer(d, place, { depth: to }))
  const out = (to: number) =>
    // The nearer one stays the nearer one.
    (place === 'near' ? to >= other.distance : to <= other.distance)
      ? t(place === 'near' ? 'start.too-far' : 'start.too-near', { distance: meters(other.distance) })
      : give((d) => answer(d, place, { distance: to }))
  return (
    <div className="one-depth">
      <Likely
        legend={t('start.depth', { distance: meters(distance) })}
        values={figures[place]}
        value={depth}
        set={deep}
      />
      <div className="pair">
        <LengthSteps
          label={t('start.out')}
          kind="distance"
          value={distance}
          step={figures.distance}
          commit={out}
        />
        <LengthSteps label={t('start.deep')} kind="depth" value={depth} step={figures.depth} commit={deep} />
      </div>
    </div>
  )
}
