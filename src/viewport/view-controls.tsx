/** Where it is looked at from, how high the lake stands while it is looked at, and what is shown with it. */

import { useState } from 'react'
import type { ViewState } from '../state/store.ts'
import { isNumbered, placedOf, useLeadline } from '../state/store.ts'
import { Sign } from '../ui/controls.tsx'
import { chunk, Lazy } from '../ui/lazy.tsx'
import { useWords } from '../ui/use-words.ts'
import { meters } from '../words/index.ts'

const VIEWS: readonly ViewState['view'][] = ['shore', 'lake', 'end', 'above', 'under']
const cutSlider = chunk(() => import('./cut-slider.tsx').then((m) => m.CutSlider))

/** Shown at first where there is little room. */
const FIRST = 3

interface ViewControlsProps {
  readonly scene: 'coming' | 'none' | 'live'
  /** The picture goes with the page when it is scrolled. */
  readonly loose: boolean
  readonly setLoose: (loose: boolean) => void
}

export function ViewControls({ scene, loose, setLoose }: ViewControlsProps) {
  const fromEnd = useLeadline((s) => s.view === 'end')
  const cut = useLeadline((s) => s.cut)
  const legs = useLeadline(isNumbered)
  const set = useLeadline((s) => s.set)
  const { t } = useWords()
  const [whole, setWhole] = useState(false)
  const coming = scene === 'coming' ? ' coming' : ''
  return (
    <div className={whole ? 'stage-controls whole' : 'stage-controls'} part="views">
      {scene !== 'none' && <Views coming={coming} />}
      <button type="button" aria-pressed={legs} onClick={() => set({ legs: !legs })}>
        {t('view.legs')}
      </button>
      <button type="button" className="more" aria-expanded={whole} onClick={() => setWhole(!whole)}>
        {t('view.more')}
      </button>
      <button type="button" className="keep" aria-pressed={!loose} onClick={() => setLoose(!loose)}>
        {t('view.keep')}
      </button>
      {scene !== 'none' && <ShownInScene coming={coming} />}
      <div className="row-of-buttons later">
        <Toggle name="person" />
      </div>
      {scene === 'live' && (cut || fromEnd) && <Lazy chunk={cutSlider} props={{}} />}
      <LevelSlider />
    </div>
  )
}

function Toggle({ name }: { readonly name: 'cut' | 'person' | 'labels' }) {
  const on = useLeadline((s) => s[name])
  const set = useLeadline((s) => s.set)
  const { t } = useWords()
  return (
    <button type="button" aria-pressed={on} onClick={() => set({ [name]: !on })}>
      {t(`view.${name}`)}
    </button>
  )
}

interface OfSceneProps {
  /** A class: the scene is not there yet. */
  readonly coming: string
}

/** Where it is looked at from. */
function Views({ coming }: OfSceneProps) {
  const view = useLeadline((s) => s.view)
  const framed = useLeadline((s) => s.framed)
  const set = useLeadline((s) => s.set)
  const { t } = useWords()
  const look = (to: ViewState['view']): void => set({ view: to, framed: framed + 1, cutAt: null })
  return (
    <>
      {/* biome-ignore lint/a11y/useSemanticElements: a row of buttons, not of fields. */}
      <div className={`row-of-buttons${coming}`} role="group" aria-label={t('view.label')}>
        {VIEWS.map((name, i) => (
          <button
            key={name}
            type="button"
            className={i < FIRST ? '' : 'later'}
            aria-pressed={view === name}
            onClick={() => look(name)}
          >
            {t(`view.${name}`)}
          </button>
        ))}
      </div>
      {/* Under water there is no place that all of it is seen from. */}
      <button type="button" className={coming} onClick={() => look(view === 'under' ? 'lake' : view)}>
        {t('view.whole')}
      </button>
    </>
  )
}

/** What the scene shows with the dock, and how. */
function ShownInScene({ coming }: OfSceneProps) {
  const waves = useLeadline((s) => s.waves)
  const wavy = useLeadline((s) => (placedOf(s).waves?.length ?? 0) > 0)
  const forces = useLeadline((s) => s.forces)
  const sway = useLeadline((s) => s.sway !== 'none')
  const set = useLeadline((s) => s.set)
  const { t } = useWords()
  return (
    // biome-ignore lint/a11y/useSemanticElements: a row of buttons, not of fields.
    <div className={`row-of-buttons later${coming}`} role="group" aria-label={t('view.shown')}>
      <Toggle name="cut" />
      <Toggle name="labels" />
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
