import { atLeast } from '../numbers.ts'
import { type Check, COMMON, meters, names } from './check.ts'

/** Long legs that stand alone: nothing near enough to brace them to. */
export const legUnpaired: Check = {
  code: 'leg-unpaired',
  severity: 'note',
  basis: COMMON,
  find({ legs, pairs, shop }) {
    const paired = new Set(pairs.flatMap(({ pair }) => (pair.along ? [] : pair.legs.map((leg) => leg.id))))
    const from = shop.rules.braceFrom
    const alone = legs.filter((leg) => !paired.has(leg.id) && atLeast(leg.stock?.length ?? from, from))
    if (alone.length === 0) return []
    const ids = alone.map((leg) => leg.id)
    return [{ parts: ids, values: { legs: names(ids), from: meters(from) } }]
  },
}
