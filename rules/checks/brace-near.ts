import type { Kit } from '../kit.ts'
import type { BraceFit } from '../parts/braces.ts'
import { type Check, COMMON, meters, text } from './check.ts'

/** A check of one of a brace's three clearances: kept, by less than the shop's `braceNear`. */
export const braceNear = (
  code: string,
  clearance: (fit: BraceFit, kit: Kit) => number,
  rule: 'braceToBed' | 'braceToPad' | 'braceToFrame',
): Check => ({
  code,
  severity: 'note',
  basis: COMMON,
  find: (kit) =>
    kit.pairs.flatMap(({ pair, fit }) => {
      if (!fit) return []
      const least = kit.shop.rules[rule]
      const clear = clearance(fit, kit)
      if (clear >= least + kit.shop.rules.braceNear) return []
      const ids = pair.legs.map((leg) => leg.id)
      return [
        {
          parts: [pair.id, ...ids],
          values: { pair: text(pair.id), clear: meters(clear), least: meters(least) },
        },
      ]
    }),
})
