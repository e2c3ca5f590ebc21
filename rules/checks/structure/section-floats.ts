import { G } from '../../structure/dock/basic-loads.ts'
import { upliftOf } from '../../structure/dock/uplift.ts'
import { newtons, text, worst } from '../check.ts'
import { OURS, raiseOverCrests, type StructureCheck } from './judged.ts'

/** Crests under the planks push a section up by more than is counted of its weight: hooks, locks and posts are all that holds it. */
export const sectionFloats: StructureCheck = {
  code: 'section-floats',
  severity: 'warn',
  basis: `Slowly varying uplift by Douglass, Chen and Olsen, Wave Forces on Bridge Decks, FHWA 2006, its mean over the section; 0.6 of the dead load, ASCE 7-16 2.4.1 (both memory). ${OURS}: the profile of the crest`,
  find({ kit, waves }) {
    if (!waves) return []
    const { design, layout, count } = kit
    const high = Math.max(0, design.site.levels.high)
    const lifts = (['left', 'right', 'shore'] as const).map((toward) =>
      upliftOf(kit, waves, high, toward, 'tenth'),
    )
    const up = layout.placed
      .filter((p) => p.role !== 'ramp')
      .map((p) => ({
        id: p.id,
        lift: lifts.reduce((most, own) => Math.max(most, own?.get(p.index) ?? 0), 0),
        holds: 0.6 * (count.sectionGrams[p.index]! / 1000) * G,
      }))
      .filter(({ lift, holds }) => lift > holds)
    if (up.length === 0) return []
    const most = worst(up, ({ lift, holds }) => lift / holds)
    return [
      {
        parts: up.map(({ id }) => id),
        values: { section: text(most.id), lift: newtons(most.lift), weight: newtons(most.holds) },
        remedy: raiseOverCrests(kit, waves),
      },
    ]
  },
}
