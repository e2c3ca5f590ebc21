import { G } from '../../structure/dock/basic-loads.ts'
import { newtons, text, worst } from '../check.ts'
import { raiseToClear, type StructureCheck } from './judged.ts'

/** Fresh water, N/m³. */
const WATER = 9810

/** A crest under the planks pushes a section up by more than it weighs: clips, hooks and locks are all that holds it. */
export const sectionFloats: StructureCheck = {
  code: 'section-floats',
  severity: 'warn',
  basis:
    'Hydrostatic uplift of the crest over the underside of the planks; 0.6 of the dead load, ASCE 7-16 2.4.1 (memory)',
  find({ kit, waves }) {
    if (!waves) return []
    const { design, shop, layout, count } = kit
    const high = Math.max(0, design.site.levels.high)
    const over = high + 0.7 * waves.highest - (design.dock.deckHeight - shop.catalog.decking.rise)
    if (over <= 0) return []
    const up = layout.placed
      .filter((p) => p.role !== 'ramp')
      .map((p) => ({
        id: p.id,
        lift: WATER * Math.min(over, shop.catalog.decking.rise + 0.3) * p.frame.length * p.frame.width,
        holds: 0.6 * (count.sectionGrams[p.index]! / 1000) * G,
      }))
      .filter(({ lift, holds }) => lift > holds)
    if (up.length === 0) return []
    const most = worst(up, ({ lift, holds }) => lift / holds)
    return [
      {
        parts: up.map(({ id }) => id),
        values: { section: text(most.id), lift: newtons(most.lift), weight: newtons(most.holds) },
        remedy: raiseToClear(kit, high + 0.7 * waves.highest),
      },
    ]
  },
}
