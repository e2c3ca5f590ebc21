import { deckUp } from '../../rules/deck-step.ts'
import { useDock, useLeadline } from '../state/store.ts'
import { Hint, LengthSlider } from '../ui/controls.tsx'
import { LengthField } from '../ui/quantity-field.tsx'
import { useWords } from '../ui/use-words.ts'
import { meters } from '../words/index.ts'
import * as change from './design-edits.ts'

export function DeckHeight() {
  const height = useLeadline((s) => s.design.dock.deckHeight)
  const high = useLeadline((s) => s.design.site.levels.high)
  const edit = useLeadline((s) => s.edit)
  const { t, length } = useWords()
  const over = height - high
  return (
    <div className="control">
      <LengthField
        label={t('deck.label')}
        value={height}
        commit={(to) => edit((d) => change.setDeck(d, to))}
        className="beside"
      />
      <LengthSlider
        label={t('deck.label')}
        value={height}
        min={0}
        max={1.5}
        valueText={length(height)}
        set={(to, gesture) => edit((d) => change.setDeck(d, to), { gesture })}
      />
      <Hint>
        {t(over < 0 ? 'deck.under-high' : 'deck.over-high', { height: meters(Math.abs(over)) })}{' '}
        {t('deck.hint')}
      </Hint>
      <ClearOfWaves />
    </div>
  )
}

/** The two heights that clear the waves, to be taken by a tap; the deck stays where it is until then. */
function ClearOfWaves() {
  const { waves } = useDock()
  const deck = useLeadline((s) => s.design.dock.deckHeight)
  const high = useLeadline((s) => s.design.site.levels.high)
  const edit = useLeadline((s) => s.edit)
  const { t } = useWords()
  if (!waves) return null
  const height = (key: 'waves.re-set' | 'waves.re-set-short' | 'waves.all-season', least: number) => {
    const to = deckUp(least)
    return (
      <button
        type="button"
        aria-pressed={Math.abs(deck - to) < 1e-6}
        onClick={() => edit((d) => change.setDeck(d, to))}
      >
        {t(key, { height: meters(to), rise: meters(waves.canRise ?? 0) })}
      </button>
    )
  }
  const reaches = waves.canRise === null || waves.canRise >= Math.max(0, high) - 1e-6
  return (
    // biome-ignore lint/a11y/useSemanticElements: two buttons with their name before them, not fields.
    <div className="heights" role="group" aria-label={t('waves.deck')}>
      <Hint>{t('waves.deck')}</Hint>
      {height(reaches ? 'waves.re-set' : 'waves.re-set-short', waves.recommendedDeckHeight)}
      {height('waves.all-season', waves.recommendedAllSeason)}
    </div>
  )
}
