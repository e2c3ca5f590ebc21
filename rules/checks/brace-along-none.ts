import { type Check, key } from './check.ts'

/** Lengthwise braces are asked for, and there is nothing to put one between, or no such brace. */
export const braceAlongNone: Check = {
  code: 'brace-along-none',
  severity: 'note',
  basis: 'Geometry',
  find({ design, shop, pairs }) {
    if (!design.dock.bracing?.along || pairs.some(({ pair }) => pair.along)) return []
    const why = shop.braces.some(({ along }) => along) ? 'no-bay' : 'no-brace'
    return [{ parts: [], values: { why: key(why) } }]
  },
}
