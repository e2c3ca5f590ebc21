import { covered, limitsOf, outlineClearOf } from '../limits/limits.ts'
import { type Check, meters, number } from './check.ts'
import { straight, turned } from './limit-way-back.ts'

/** It comes nearer to a lot line, or goes farther over it, than was said to be allowed. One for each line. */
export const limitSide: Check = {
  code: 'limit-side',
  severity: 'warn',
  basis: 'A limit of the design or the shop, not of law',
  find(kit) {
    return (limitsOf(kit.design, kit.shop.catalog).sides ?? []).flatMap((side, i) => {
      const near = kit.layout.placed
        .map((p) => ({ id: p.id, clear: outlineClearOf(side, covered(p)) }))
        .filter(({ clear }) => clear < side.distance - 1e-6)
      if (near.length === 0) return []
      const clear = Math.min(...near.map((one) => one.clear))
      return [
        {
          parts: near.map(({ id }) => id),
          values: {
            line: number(i + 1),
            clear: meters(clear),
            least: meters(side.distance),
            short: meters(side.distance - clear),
          },
          remedy: turned(kit) ?? straight(kit),
        },
      ]
    })
  },
}
