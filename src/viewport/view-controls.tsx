/** Where it is looked at from, how high the lake stands while it is looked at, and what is shown with it. */

import { useState } from 'react'
import type { ViewState } from '../state/store.ts'
import { placedOf, useLeadline } from '../state/store.ts'
import { Sign } from '../ui/controls.tsx'
import { useWords } from '../ui/use-words.ts'
import { meters } from '../words/index.ts'

const VIEWS: readonly ViewState['view'][] = ['shore', 'lake', 'side', 'above', 'under']
/** Shown at first where there is little room. */
const FIRST = 3

interface ViewControlsProps {
  readonly scene: 'coming' | 'none' | 'live'
  /** The picture goes with the page when it is scrolled. */
  readonly loose: boolean
  readonly setLoose: (loose: boolean) => void
}

export function ViewControls({ scene, loose, setLoose }: ViewControlsProps) {
  const view = useLeadline((s) => s.view)
  const cut = useLeadline((s) => s.cut)
  const person = useLeadline((s) => s.person)
  const labels = useLeadline((s) => s.labels)
  const waves = useLeadline((s) => s.waves)
  const wavy = useLeadline((s) => (placedOf(s).waves?.length ?? 0) > 0)
  const forces = useLeadline((s) => s.forces)
  const sway = useLeadline((s) => s.sway !== 'none')
  const set = useLeadline((s) => s.set)
  const { t } = useWords()
  const [whole, setWhole] = useState(false)
  const coming = scene === 'coming' ? ' coming' : ''
  const toggle = (name: 'cut' | 'person' | 'labels', on: boolean) => (
    <button type="button" aria-pressed={on} onClick={() => set({ [name]: !on })}>
      {t(`view.${name}`)}
    </button>
  )
  return (
    <div className={whole ? 'stage-controls whole' : 'stage-controls'}>
      {scene !== 'none' && (
        // biome-ignore lint/a11y/useSemanticElements: a row of buttons, not of fields.
        <div className={`row-of-buttons${coming}`} role="group" aria-label={t('view.label')}>
          {VIEWS.map((name, i) => (
            <button
              key={name}
              type="button"
              className={i < FIRST ? '' : 'later'}
              aria-pressed={view === name}
              onClick={() => set({ view: name })}
            >
              {t(`view.${name}`)}
            </button>
          ))}
        </div>
      )}
      <button type="button" className="more" aria-expanded={whole} onClick={() => setWhole(!whole)}>
        {t('view.more')}
      </button>
      <button type="button" className="keep" aria-pressed={!loose} onClick={() => setLoose(!loose)}>
        {t('view.keep')}
      </button>
      {scene !== 'none' && (
        // biome-ignore lint/a11y/useSemanticElements: a row of buttons, not of fields.
        <div className={`row-of-buttons later${coming}`} role="group" aria-label={t('view.shown')}>
          {toggle('cut', cut)}
          {toggle('labels', labels)}
          {wavy && (
            <button type="button" aria-pressed={waves} onClick={() => set({ waves: !waves })}>
              <Sign d={waves ? 'M6 4v10M12 4v10' : 'M5.5 3.5 14 9l-8.5 5.5Z'} />
              {t('view.waves')}
            </button>
          )}
          {/* One at a time: colors are painted on the dock at rest. */}
          <button type="button" aria-pressed={forces} onClick={() => set({ forces: !forces, sway: 'none' })}>
            {t('view.forces')}
          </button>
          <button
            type="button"
            aria-pressed={sway}
            onClick={() => set({ sway: sway ? 'none' : 'across', forces: false })}
          >
            {t('view.sway')}
          </button>
        </div>
      )}
      <div className="row-of-buttons later">{toggle('person', person)}</div>
      <LevelSlider />
    </div>
  )
}

/** From the low to the high level. */
const STEPS = 40

/** Only looked at: it changes nothing in the design. */
function LevelSlider() {
  const level = useLeadline((s) => s.waterLevel)
  const { low, high } = useLeadline((s) => s.design.site.levels)
  const set = useLeadline((s) => s.set)
  const { t } = useWords()
  const at = Math.min(high, Math.max(low, level))
  if (high - low < 0.005) return null
  return (
    <label className="level-slider later">
      <span>{t('view.level')}</span>
      <input
        type="range"
        min={0}
        max={STEPS}
        value={Math.round(((at - low) / (high - low)) * STEPS)}
        aria-valuetext={t(at < 0 ? 'level.under' : 'level.over', { height: meters(Math.abs(at)) })}
        onChange={(event) => {
          const to = low + (high - low) * (Number(event.currentTarget.value) / STEPS)
          // The step nearest to it is the day's own level.
          set({ waterLevel: Math.abs(to) < (high - low) / STEPS / 2 ? 0 : to })
        }}
      />
    </label>
  )
}
