/** How deep is it, at two distances. */
import { useLeadline } from '../state/store.ts'
import { useWords } from '../ui/use-words.ts'
import { meters } from '../words/index.ts'
import { START } from '../words/start.ts'
import { LengthSteps, Likely } from './fields.tsx'
import { answer, answerOf, type Place, placesAssumed } from './shore.ts'
import type { Asked } from './start.tsx'
import { FIGURES, useAnswer } from './use-answer.ts'

export function DepthsQuestion({ typing, hand }: Asked) {
  const { t } = useWords(START)
  // Between the two there may be more that were only taken.
  const more = placesAssumed(useLeadline((s) => s.design)).filter((place) => typeof place === 'number')
  return (
    <>
      <p className="hint">{t('start.depths.hint')}</p>
      {(['near', ...more, 'far'] as const).map((place) => (
        <OneDepth key={place} place={place} typing={typing} hand={hand} />
      ))}
    </>
  )
}

function OneDepth({ place, typing, hand }: { readonly place: Place } & Asked) {
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
    <div className="one-depth" data-at={place}>
      <Likely
        legend={t('start.depth', { distance: meters(distance) })}
        values={figures[place === 'near' ? 'near' : 'far']}
        value={depth}
        set={deep}
      />
      <div className="pair">
        {typeof place !== 'number' && (
          <LengthSteps
            label={t('start.out')}
            kind="distance"
            value={distance}
            step={figures.distance}
            commit={out}
          />
        )}
        <LengthSteps
          label={t('start.deep')}
          kind="depth"
          value={depth}
          step={figures.depth}
          commit={deep}
          typing={(valid) => typing(place, valid)}
          hand={hand === place}
        />
      </div>
    </div>
  )
}
