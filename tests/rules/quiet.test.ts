/** An ordinary dock with its two anchor posts is quiet: what is raised on most docks is read on none. */
import { describe, expect, it } from 'vitest'
import { countCell } from '../../src/build/guide/quiet-count.ts'
import { catalogs } from '../support/catalogs.ts'

/** As many of each scene, from both shops by turns: some 80 ms each; `npm run build:quiet` counts more of them. */
const DOCKS = 16
/** Judgment: the largest share of docks that may be warned of, or stopped. */
const MOST = { 'quiet cove': 0.15, 'open small lake': 0.4 } as const

describe('ordinary docks with two posts and no boat', () => {
  for (const scene of ['quiet cove', 'open small lake'] as const)
    it(`are mostly without a warning: ${scene}`, () => {
      const { warned, docks, codes } = countCell({ scene, posts: 2, boat: false }, DOCKS, catalogs)
      const loud = Object.entries(codes).filter(([, { warn = 0, stop = 0 }]) => warn + stop > 0)
      expect(warned / docks, JSON.stringify(Object.fromEntries(loud))).toBeLessThanOrEqual(MOST[scene])
    })
})
