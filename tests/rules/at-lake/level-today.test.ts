import { describe, expect, it } from 'vitest'
import { levelToday, oldDock, stillWater } from '../../../rules/at-lake/index.ts'
import {
  type Design,
  demoCatalog,
  demoDesign,
  deriveKit,
  projectOf,
  publishKit,
} from '../../../rules/index.ts'
import { drawn } from './support/drawn.ts'

const projectFor = (design: Design) =>
  projectOf(design, demoCatalog, publishKit(deriveKit(design, demoCatalog)))

describe('today’s level', () => {
  const design: Design = {
    ...demoDesign,
    site: { ...demoDesign.site, benchmark: { name: 'Bolt in the ledge', above: 0.85 } },
  }
  const project = projectFor(design)

  it('from the design’s fixed mark, 0.85 over the survey water, with 1.03 down to the water: 0.18 lower', () => {
    const found = levelToday({ by: 'mark', down: 1.03 }, project)!
    expect(found.level).toBeCloseTo(-0.18, 9)
    expect(found.error).toBeCloseTo(0.01, 9)
  })

  it('from a stake of a height of its own, read to a crest (0.40 down) and a trough (0.52 down)', () => {
    const found = levelToday({ by: 'stake', above: 0.5, down: { high: 0.4, low: 0.52 } }, project)!
    expect(found.level).toBeCloseTo(0.04, 9)
    expect(found.error).toBeGreaterThan(0.01)
    expect(found.error).toBeLessThan(0.02)
  })

  it('from the first leg: bed at −0.941086 there, 1.00 deep today: 58.914 mm higher, as well as the bed is known', () => {
    const leg = project.dock.legs.find(({ id }) => id === 's4.end.left')!
    expect(leg.bed).toBeCloseTo(-0.941086, 6)
    const found = levelToday({ by: 'leg', leg: leg.id, depth: 1 }, project)!
    expect(found.level).toBeCloseTo(0.058914, 6)
    expect(found.error).toBeGreaterThan(0.03)
  })

  it('nobody knows: that of the survey day, off by a quarter of what the lake ranges over', () => {
    // From −0.3 to 0.25: 0.55 in all.
    expect(levelToday({ by: 'survey' }, project)).toEqual({ level: 0, error: 0.1375, from: 'survey' })
    expect(levelToday({ by: 'said', level: -0.2 }, project)!.error).toBe(0.05)
  })

  it('no mark and no such leg: not known', () => {
    expect(levelToday({ by: 'mark', down: 1 }, projectFor(demoDesign))).toBeNull()
    expect(levelToday({ by: 'leg', leg: 's9.end.left', depth: 1 }, project)).toBeNull()
  })
})

describe('ten seconds of waves', () => {
  /** Crest and trough of ten seconds of a sea drawn by JONSWAP's spectrum (Hasselmann et al. 1973; peak factor 1: Pierson and Moskowitz). */
  function sea(period: number, peak: number, random: () => number) {
    const waves: [number, number, number][] = []
    for (let k = 6; k <= 40; k++) {
      const f = (k / 40) * (3 / period)
      const [fp, s] = [1 / period, f <= 1 / period ? 0.07 : 0.09]
      const density =
        f ** -5 * Math.exp(-1.25 * (fp / f) ** 4) * peak ** Math.exp(-((f - fp) ** 2) / (2 * (s * fp) ** 2))
      waves.push([
        f * (1 + 0.01 * random()),
        Math.sqrt(-2 * Math.log(1 - random()) * density),
        2 * Math.PI * random(),
      ])
    }
    let [high, low] = [-Infinity, Infinity]
    for (let t = 0; t < 10; t += 0.1) {
      const z = waves.reduce((sum, [f, a, p]) => sum + a * Math.cos(2 * Math.PI * f * t + p), 0)
      high = Math.max(high, z)
      low = Math.min(low, z)
    }
    return { high, low }
  }

  for (const [period, peak] of [
    [1.5, 3.3],
    [2, 1],
    [3, 3.3],
    [3, 1],
  ] as const)
    it(`of ${period} s, peak ${peak}: the error told is that of the draws, or up to double`, () => {
      const random = drawn(4)
      let [off, told] = [0, 0]
      for (let time = 0; time < 300; time++) {
        const { high, low } = sea(period, peak, random)
        // Told of a range of 0.2, with nothing of the tape's own; the sea scaled to that.
        const scale = 0.2 / (high - low)
        const found = stillWater({ high: high * scale, low: low * scale }, 0)
        off += found.at ** 2
        told += found.error ** 2
      }
      const ratio = Math.sqrt(told / off)
      expect(ratio).toBeGreaterThan(1)
      expect(ratio).toBeLessThan(2)
    })
})

describe('an old dock without soundings', () => {
  // Set last June 0.50 over the water: leg 1 at 1.40 (0.90 deep), leg 2 at 1.62. Water 0.18 lower now.
  const legs = [
    { leg: '1', length: 1.8288, sole: 0.00635, last: { height: 1.4, depth: 0.9 } },
    { leg: '2', last: { height: 1.62 } },
    { leg: '3', length: 1.2192, sole: 0.00635 },
  ]
  const base = { legs, overLast: 0.5, over: 0.5, risen: -0.18, measured: {} }

  it('the deck with the water: every leg 180 mm down, none known of the new one', () => {
    const [one, two, three] = oldDock(base)
    expect(one!.height).toBeCloseTo(1.22, 9)
    expect(one!.more).toBeCloseTo(-0.18, 9)
    expect(one!.aboveDeck).toBeCloseTo(0.61515, 9)
    expect(two!.height).toBeCloseTo(1.44, 9)
    expect(three).toEqual({
      leg: '3',
      by: 'unknown',
      height: null,
      more: null,
      bed: null,
      aboveDeck: null,
      short: false,
    })
  })

  it('the deck where it was: nothing moves but a foot that was washed out by 60 mm', () => {
    // 0.68 over a water 0.18 lower; 0.78 deep where 0.72 would be without the scour.
    const [one, two] = oldDock({ ...base, over: 0.68, measured: { '1': 0.78 } })
    expect(one!.by).toBe('measured')
    expect(one!.bed).toBeCloseTo(0.06, 9)
    expect(one!.more).toBeCloseTo(0.06, 9)
    expect(two!.more).toBeCloseTo(0, 9)
  })

  it('nobody knows how the water moved: what is measured is told, and a leg that is too short', () => {
    const [one, , three] = oldDock({ ...base, risen: null, measured: { '3': 0.8 } })
    expect(one!.height).toBeNull()
    expect(three!.height).toBeCloseTo(1.3, 9)
    expect(three!.short).toBe(true)
  })
})
