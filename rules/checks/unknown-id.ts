import { pointer } from '../design/pointer.ts'
import { lying } from '../layout/berth.ts'
import { moved } from './boat-places.ts'
import { type Check, type Found, key, remedy, remove, text } from './check.ts'

/** The Design speaks of a leg, a pair or a boat's section that this dock does not have (any more). */
export const unknownId: Check = {
  code: 'unknown-id',
  severity: 'warn',
  basis: 'Geometry',
  find(kit) {
    const { design, legs, pairs } = kit
    const found: Found[] = []
    const legIds = new Set(legs.map((leg) => leg.id))
    const pairIds = new Set(pairs.map(({ pair }) => pair.id))
    for (const id of Object.keys(design.dock.overrides ?? {}))
      if (!legIds.has(id))
        found.push({
          parts: [],
          values: { id: text(id), what: key('leg') },
          remedy: remedy('leave-out', [remove(`/dock/overrides/${pointer(id)}`)]),
        })
    ;(design.dock.bracing?.none ?? []).forEach((id, i) => {
      if (!pairIds.has(id))
        found.push({
          parts: [],
          values: { id: text(id), what: key('leg-pair') },
          remedy: remedy('leave-out', [remove(`/dock/bracing/none/${i}`)]),
        })
    })
    const placed = new Set(lying(kit).map(({ id }) => id))
    ;(design.dock.boats ?? []).forEach(({ id, section }, i) => {
      if (!placed.has(id))
        found.push({
          parts: [],
          values: { id: text(section), what: key('boat-section') },
          remedy: moved(kit, id) ?? remedy('leave-out', [remove(`/dock/boats/${i}`)]),
        })
    })
    return found
  },
}
