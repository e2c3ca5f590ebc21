import { COMBINED, endBefore, type StructureCheck } from './judged.ts'

/** In some case no foot bears any more, or none that all bear: the dock goes over. */
export const doesNotStand: StructureCheck = {
  code: 'does-not-stand',
  severity: 'stop',
  basis: COMBINED,
  find({ kit, structure }) {
    if (structure.stands) return []
    const last = kit.layout.placed.filter((p) => p.role !== 'ramp').at(-1)
    return [{ parts: [], values: {}, remedy: last ? endBefore(kit, last.id) : null }]
  },
}
