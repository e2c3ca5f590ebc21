import { pointer } from '../design/pointer.ts'
import { type Check, type Found, key, remedy, remove, text } from './check.ts'

/** The Design speaks of a leg or a pair that this dock does not have (any more). */
export const unknownId: Check = {
  code: 'unknown-id',
  severity: 'warn',
  basis: 'Geometry',
  find({ design, legs, pairs }) {
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
    return found
  },
}
