/** Moves the plane that the lake is cut open along; the section under the picture goes with it. */
import { footprintOfAll } from '../../rules/layout/footprint.ts'
import { LEGS } from '../../rules/words/leg-name.ts'
import { OFF } from '../scene/cut.ts'
import { useLeadline, usePlaced } from '../state/store.ts'
import { useWords } from '../ui/use-words.ts'
import { meters } from '../words/index.ts'

/** A hand's breadth, m. */
const STEP = 0.1

export function CutSlider() {
  const { sections } = usePlaced()
  const fromEnd = useLeadline((s) => s.view === 'end')
  const at = useLeadline((s) => s.cutAt)
  const set = useLeadline((s) => s.set)
  const { t } = useWords(LEGS)
  const bounds = footprintOfAll(sections)
  if (!bounds) return null
  const [from, to] = fromEnd ? [Math.max(0, bounds.x0), bounds.x1 + OFF] : [bounds.y0 - OFF, bounds.y1 + OFF]
  const value = at ?? (fromEnd ? to : from)
  const off = { off: meters(Math.abs(value)) }
  const told = fromEnd ? t('cut.out', off) : t(value < 0 ? 'cut.right' : 'cut.left', off)
  return (
    <label className="level-slider">
      <span>{told}</span>
      <input
        type="range"
        min={from}
        max={to}
        step={STEP}
        value={value}
        aria-label={t('cut.label')}
        aria-valuetext={told}
        onChange={(event) => set({ cutAt: Number(event.currentTarget.value) })}
      />
    </label>
  )
}
