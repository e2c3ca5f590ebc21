/** Leaving bending moments out of buckling does not show on frames shaped like a dock. */
import { describe, expect, it } from 'vitest'
import { buckling } from '../../../../rules/structure/index.ts'
import { sixNodeDock } from '../../../rules/structure/dock-like.ts'
import { bucklingWithMoments } from './moments.ts'

describe('buckling of a dock section on four legs', () => {
  for (const [x, y] of [
    [0, 0],
    [200, 0],
    [0, 200],
    [150, 150],
  ] as const)
    it(`pushed at each corner with ${x} N along and ${y} N across is that with moments to 0.2 %`, () => {
      const model = sixNodeDock(1)
      const loads = model.loads.map(({ node }) => ({ node, force: [x, y, -900, 0, 0, 0] as const }))
      const pushed = { ...model, loads }
      expect(Math.abs(buckling(pushed) / bucklingWithMoments(pushed) - 1)).toBeLessThanOrEqual(2e-3)
    })
})
