/** An ordinary dock with its two anchor posts is quiet where the water is: what is raised on most docks is read on none. */
import { describe, expect, it } from 'vitest'
import { assess, type Design, deriveKit } from '../../rules/index.ts'
import { EXPOSURES } from '../../rules/site/waves/exposures.ts'
import { isToFix } from '../../rules/to-fix.ts'
import { ordinaryDock } from '../../src/build/guide/ordinary-docks.ts'
import { countCell } from '../../src/build/guide/quiet-count.ts'
import { catalogs } from '../support/catalogs.ts'

/** As many of each scene, from both shops by turns: some 80 ms each; `npm run build:quiet` counts more of them. */
const DOCKS = 16
/** Judgment: the largest share of docks in a quiet cove that may be warned of, or stopped. */
const MOST_WARNED = 0.15
/** Judgment: of docks on an open small lake that may be stopped. Most are warned of: they are light for its waves, as the guide tells. */
const MOST_STOPPED = 0.25

describe('ordinary docks with two posts and no boat', () => {
  const count = (scene: 'quiet cove' | 'open small lake') =>
    countCell({ scene, posts: 2, boat: false }, DOCKS, catalogs)
  const cove = count('quiet cove')
  const lake = count('open small lake')
  const loud = ({ codes }: typeof cove): string =>
    JSON.stringify(
      Object.fromEntries(Object.entries(codes).filter(([, { warn = 0, stop = 0 }]) => warn + stop > 0)),
    )

  it('are mostly without a warning in a quiet cove', () => {
    expect(cove.warned / DOCKS, loud(cove)).toBeLessThanOrEqual(MOST_WARNED)
  })

  it('are warned of more on an open small lake than in the cove, and fewer than a quarter is stopped', () => {
    expect(lake.warned, loud(lake)).toBeGreaterThan(cove.warned)
    expect(lake.stopped / DOCKS, loud(lake)).toBeLessThan(MOST_STOPPED)
  })
})

describe('an ordinary dock whose owner says “sheltered cove”', () => {
  it('is mostly without a warning, without posts too', () => {
    let warned = 0
    for (let seed = 0; seed < DOCKS; seed++) {
      const catalog = catalogs[seed % 2]!
      const drawn: Design = ordinaryDock(seed, { scene: 'quiet cove', posts: 0, boat: false }, catalog)
      const design = { ...drawn, site: { ...drawn.site, wind: EXPOSURES.sheltered } }
      const { findings } = assess(deriveKit(design, catalog), { remedies: false })
      if (findings.some(isToFix)) warned++
    }
    expect(warned / DOCKS).toBeLessThanOrEqual(MOST_WARNED)
  })
})
