/** The waves of a site and the deck heights that follow: worked by hand, at their limits, and on random sites. */
import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Dock, WaveNote, Waves } from '../../rules/dock.ts'
import { demoCatalog, demoDesign } from '../../rules/index.ts'
import { EXPOSURES } from '../../rules/site/waves/exposures.ts'
import { cem2002, growthTime, spm1984, youngVerhagen1996 } from '../../rules/site/waves/wave-height-laws.ts'
import { parsedDesign } from '../support/arbitraries.ts'
import { deriveAtOnce } from '../support/at-once.ts'
import { metricCatalog } from '../support/catalogs.ts'

const SEED = Number(process.env.LEADLINE_SEED ?? 20_251)

type Change = { site?: Record<string, unknown>; dock?: Record<string, unknown> }
const { wind: _wind, ...calm } = demoDesign.site

function dockOf({ site, dock }: Change, catalog = demoCatalog): Dock {
  const frame = catalog === demoCatalog ? demoDesign.dock.frame : catalog.frames[0]!.code
  return deriveAtOnce(
    parsedDesign({
      ...demoDesign,
      site: { ...calm, ...site },
      dock: { ...demoDesign.dock, frame, extras: {}, ...dock },
    }),
    catalog,
  )
}
const wavesOf = (change: Change, catalog = demoCatalog): Waves => dockOf(change, catalog).waves!
/** A level bed. */
const flat = (depth: number): Record<string, unknown> => ({
  soundings: [
    { distance: -3, depth: -0.9 },
    { distance: 0, depth: 0 },
    ...[0.5, 3, 6, 9, 12, 15].map((distance) => ({ distance, depth })),
  ],
})
const codes = (dock: Dock): string[] => dock.findings.map((f) => f.code)

describe('the waves of the demo', () => {
  const waves = deriveAtOnce(demoDesign, demoCatalog).waves!

  it('are those worked by hand: 10 m/s over 400 m', () => {
    // UA = 0.71 · 10^1.23 = 12.05753 m/s; UA²/g = 14.81997 m; gF/UA² = 26.99061, its roots 5.195246 and 2.999652.
    // H = 14.81997 · 0.283 · tanh(0.00565 · 5.195246) = 4.194052 · 0.02934471 = 0.123073 m.
    // T = 12.05753/9.81 · 7.54 · tanh(0.0379 · 2.999652) = 9.267482 · 0.1131993 = 1.04907 s.
    expect(waves.height).toBeCloseTo(0.123073, 5)
    expect(waves.period).toBeCloseTo(1.04907, 4)
    // Deepest legs 10.79249 m out, on the slope from 0.9 m at 8 m to 1.4 m at 12 m.
    expect(waves.depth).toBeCloseTo(0.9 + 0.125 * (10.79249 - 8), 4)
    // L0 = 9.80665 · T²/2π = 1.717710 m; 2πd/L = 4.57, its tanh 0.999785.
    expect(waves.length).toBeCloseTo(1.71771 * 0.999785, 3)
    expect(waves.speed).toBeCloseTo(waves.length / 1.04907, 4)
    expect(waves.tenth).toBeCloseTo(1.27 * 0.123073, 5)
    expect(waves.highest).toBeCloseTo(1.8 * 0.123073, 5)
    // Deep water, eq. 3-35: 68.8 · 2.999652² · 12.05753/9.81 = 760.89 s: under thirteen minutes.
    expect(waves.duration).toBeCloseTo(760.89, 1)
  })

  it('ask for a deck of 0.4396 m re-set when the lake moves, 0.6896 m left all season', () => {
    // Crest 0.7 · 1.27 · 0.123073 = 0.109412 m; 6 in = 0.1524 m clear; planks and rail 7 in = 0.1778 m.
    expect(waves.crest).toBeCloseTo(0.109412, 5)
    expect(waves.recommendedDeckHeight).toBeCloseTo(0.109412 + 0.1524 + 0.1778, 5)
    expect(waves.recommendedAllSeason).toBeCloseTo(0.25 + 0.109412 + 0.1524 + 0.1778, 5)
    // The deck of the demo is at 0.45 m: its underside at 0.2722 m.
    expect(waves.underside).toBeCloseTo(0.2722, 6)
    expect(waves.clear).toBeCloseTo(0.2722 - 0.109412, 5)
    expect(waves.clearHigh).toBeCloseTo(0.2722 - 0.25 - 0.109412, 5)
  })

  it('have their working as reasons that add up', () => {
    const { reasons } = deriveAtOnce(demoDesign, demoCatalog)
    const sum = (rule: string): number =>
      reasons.waves.find((r) => r.rule === rule)!.terms.reduce((all, t) => all + Number(t.value), 0)
    expect(sum('deck-re-set')).toBeCloseTo(waves.recommendedDeckHeight, 5)
    expect(sum('deck-all-season')).toBeCloseTo(waves.recommendedAllSeason, 5)
    expect(reasons.waves.map((r) => r.rule)).toEqual([
      'wave-height',
      'wave-crest',
      'deck-re-set',
      'deck-all-season',
    ])
    for (const reason of reasons.waves) expect(reason.basis).toContain('Shore Protection Manual 1984')
  })
})

describe('waves', () => {
  it('are not told of without wind and wakes, nor without legs', () => {
    expect(dockOf({}).waves).toBeNull()
    expect(dockOf({ site: { wind: { speed: 0, fetch: 1000 } } }).waves).toBeNull()
    expect(dockOf({ site: { wind: { speed: 10, fetch: 0 } } }).waves).toBeNull()
    expect(dockOf({ site: { wind: { speed: 10, fetch: 400 } } }).waves).not.toBeNull()
    expect(dockOf({ site: { wake: 0.1 } }).waves).not.toBeNull()
  })

  it('stand at most 0.78 of the depth high, their crests 0.546 of it over still water (ASCE 7-16 5.4.4 and earlier, memory)', () => {
    // 3 ft of water: 2.34 ft high, crest 1.638 ft.
    const waves = wavesOf({ site: { ...flat(0.9144), wind: { speed: 22, fetch: 15_000 } } })
    expect(waves.height / 0.3048).toBeCloseTo(2.34, 4)
    expect(waves.crest / 0.3048).toBeCloseTo(1.638, 4)
    expect(waves.breaks).toBe(true)
    expect(waves.open).toBeGreaterThan(waves.height)
    // And 0.25 m more of water lets higher ones stand.
    expect(waves.crestHigh).toBeCloseTo(0.546 * (0.9144 + 0.25), 5)
  })

  it('are lower than a wake where that is higher; as told a wake is a height, the period that its loads go by is assumed', () => {
    const wake = wavesOf({ site: { wake: 0.3 } })
    expect(wake).toMatchObject({ height: 0, period: 0, length: 0, speed: 0, wake: 0.3 })
    expect(wake.crest).toBeCloseTo(0.21, 6)
    const both = wavesOf({ site: { wake: 0.3, wind: { speed: 10, fetch: 400 } } })
    expect(both.crest).toBeCloseTo(0.21, 6)
    expect(both.height).toBeCloseTo(0.123073, 5)
    // One in ten of 0.123 m is 0.156 m: a wake of 0.15 m is under it.
    expect(wavesOf({ site: { wake: 0.15, wind: { speed: 10, fetch: 400 } } }).crest).toBeCloseTo(0.109412, 5)
  })

  it('ask for no other deck because of the deck that is there', () => {
    const at = (deckHeight: number) =>
      wavesOf({ site: { wind: { speed: 15, fetch: 1800 } }, dock: { deckHeight } })
    for (const deckHeight of [0.3, 0.6, 1.2]) {
      expect(at(deckHeight).recommendedDeckHeight).toBe(at(0.45).recommendedDeckHeight)
      expect(at(deckHeight).recommendedAllSeason).toBe(at(0.45).recommendedAllSeason)
    }
  })

  it('go by the clearance and the frame of the shop', () => {
    const site = { wind: { speed: 15, fetch: 1800 } }
    for (const catalog of [demoCatalog, metricCatalog]) {
      const { crest, underside, recommendedDeckHeight } = wavesOf({ site }, catalog)
      const over = recommendedDeckHeight - crest - (demoDesign.dock.deckHeight - underside)
      expect(over).toBeCloseTo(catalog.rules.waveClearance!.value, 5)
    }
    expect(demoCatalog.rules.waveClearance!.value).not.toBe(metricCatalog.rules.waveClearance!.value)
  })

  it('find nothing against a deck at the height that they ask for', () => {
    const site = { wind: { speed: 15, fetch: 1800 } }
    const low = dockOf({ site })
    expect(codes(low)).toContain('crest-reaches-frame')
    const { recommendedDeckHeight, recommendedAllSeason } = low.waves!
    const set = dockOf({ site, dock: { deckHeight: recommendedDeckHeight } })
    expect(codes(set)).not.toContain('crest-reaches-frame')
    const left = dockOf({ site, dock: { deckHeight: recommendedAllSeason } })
    expect(codes(left)).not.toContain('deck-awash')
    expect(left.waves!.clearHigh).toBeCloseTo(0.1524, 5)
  })
})

/** note, a site that has it, a neighbor that does not. */
const NOTES: readonly [WaveNote, Record<string, unknown>, Record<string, unknown>][] = [
  ['assumed-deep', { wind: { speed: 10, fetch: 400 } }, { wind: { speed: 10, fetch: 400, depth: 4 } }],
  // gF/U² = 50 at 509.7 m.
  ['short-fetch', { wind: { speed: 10, fetch: 509 } }, { wind: { speed: 10, fetch: 510 } }],
  // 0.78 · 0.5510 m = 0.4298 m, the height that 15 m/s raises over 1,800 m; 1.8 times it at 0.9919 m.
  [
    'depth-breaks',
    { ...flat(0.55), wind: { speed: 15, fetch: 1800 } },
    { ...flat(0.552), wind: { speed: 15, fetch: 1800 } },
  ],
  [
    'highest-break',
    { ...flat(0.991), wind: { speed: 15, fetch: 1800 } },
    { ...flat(0.993), wind: { speed: 15, fetch: 1800 } },
  ],
  // Over 300 m the 1.8-fold of what 12 m/s raises is 0.145 of its length, of 10 m/s 0.137.
  ['steep', { wind: { speed: 12, fetch: 300 } }, { wind: { speed: 10, fetch: 300 } }],
  // H L²/d³ = 26 in about 0.58 m for this wind.
  [
    'shallow-long',
    { ...flat(0.6), wind: { speed: 15, fetch: 1800 } },
    { ...flat(0.9), wind: { speed: 15, fetch: 1800 } },
  ],
]

describe('what is said about waves', () => {
  it.each(NOTES)('%s', (note, site, neighbor) => {
    expect(wavesOf({ site }).notes).toContain(note)
    expect(wavesOf({ site: neighbor }).notes).not.toContain(note)
  })
})

const blowing = fc.record({
  speed: fc.double({ min: 1, max: 30, noNaN: true }),
  fetch: fc.double({ min: 20, max: 20_000, noNaN: true }),
  depth: fc.double({ min: 0.2, max: 40, noNaN: true }),
})
const more = fc.double({ min: 1.001, max: 3, noNaN: true })

describe(`on random sites (seed ${SEED})`, () => {
  it('no figure is other than finite, whatever a site may state: a breath of wind, a fetch of 1000 km, a wake of 5 m', () => {
    const speed = fc.oneof(
      fc.constantFrom(1e-300, 5e-324, 1e-160, 1e-125, 1e-60, 1e-9, 80),
      fc.double({ min: 0, max: 80, noNaN: true }),
    )
    const fetch = fc.oneof(fc.constantFrom(0, 1e-7, 1e6), fc.double({ min: 0, max: 1e6, noNaN: true }))
    const along = fc.option(
      fc.oneof(fc.constantFrom(0, 1e-7, 1000), fc.double({ min: 0, max: 20, noNaN: true })),
    )
    const wake = fc.constantFrom(0, 1e-7, 0.3, 5)
    fc.assert(
      fc.property(
        speed,
        fetch,
        along,
        wake,
        fc.constantFrom(0, 0.01, 1, 2),
        (speed, fetch, depth, wake, deep) => {
          const waves = dockOf({
            site: { ...flat(deep), wind: { speed, fetch, depth }, wake },
            dock: { start: 1, sections: 2 },
          }).waves
          const figures = (value: unknown): void => {
            if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true)
            else if (value && typeof value === 'object') Object.values(value).forEach(figures)
          }
          figures(waves)
        },
      ),
      { seed: SEED + 4, numRuns: 120 },
    )
  })

  it('no law grows lower or shorter waves where wind, fetch or depth grow', () => {
    fc.assert(
      fc.property(blowing, more, fc.constantFrom('speed', 'fetch', 'depth'), (one, factor, what) => {
        const grown = { ...one, [what]: one[what as 'speed'] * factor }
        for (const law of [spm1984, youngVerhagen1996, cem2002]) {
          const [a, b] = [law(one), law(grown)]
          expect(b.height).toBeGreaterThanOrEqual(a.height * (1 - 1e-9))
          expect(b.period).toBeGreaterThanOrEqual(a.period * (1 - 1e-9))
        }
      }),
      { seed: SEED, numRuns: 2000 },
    )
  })

  it('no depth along the fetch is the limit of ever more of it', () => {
    fc.assert(
      fc.property(blowing, ({ speed, fetch }) => {
        for (const law of [spm1984, youngVerhagen1996, cem2002]) {
          const [a, b] = [law({ speed, fetch, depth: 1e5 }), law({ speed, fetch, depth: null })]
          expect(a.height / b.height).toBeCloseTo(1, 3)
          expect(a.period / b.period).toBeCloseTo(1, 3)
        }
      }),
      { seed: SEED + 1, numRuns: 500 },
    )
  })

  it('waves over a longer way take longer to grow', () => {
    fc.assert(
      fc.property(blowing, more, (one, factor) => {
        for (const depth of [one.depth, null]) {
          const time = (fetch: number) => growthTime({ ...one, depth, fetch })
          expect(time(one.fetch * factor)).toBeGreaterThanOrEqual(time(one.fetch))
        }
      }),
      { seed: SEED + 2, numRuns: 500 },
    )
  })

  it('none stands higher than 0.78 of the depth, and the deck over them is never asked lower by more wind or a higher lake', () => {
    fc.assert(
      fc.property(
        blowing,
        fc.integer({ min: 10, max: 250 }),
        fc.integer({ min: 0, max: 60 }),
        more,
        ({ speed, fetch }, deep, rise, factor) => {
          const at = (wind: number, high: number): Waves =>
            wavesOf({
              site: {
                ...flat(deep / 100),
                levels: { low: -0.1, high: high / 100 },
                wind: { speed: wind, fetch },
              },
              dock: { start: 1, sections: 3 },
            })
          const a = at(speed, rise)
          for (const height of [a.height, a.tenth, a.highest])
            expect(height).toBeLessThanOrEqual(0.78 * a.depth + 1e-6)
          expect(a.height).toBeLessThanOrEqual(a.tenth)
          expect(a.tenth).toBeLessThanOrEqual(a.highest)
          expect(a.recommendedAllSeason).toBeGreaterThanOrEqual(a.recommendedDeckHeight)
          const b = at(Math.min(80, speed * factor), rise)
          expect(b.recommendedDeckHeight).toBeGreaterThanOrEqual(a.recommendedDeckHeight)
          const c = at(speed, rise + 5)
          expect(c.recommendedAllSeason).toBeGreaterThanOrEqual(a.recommendedAllSeason + 0.05 - 1e-6)
        },
      ),
      { seed: SEED + 3, numRuns: 200 },
    )
  })
})

/** Rows of a table of the guide by the name in their first cell: figures as printed. */
function guideTable(first: string): Map<string, string[]> {
  const lines = readFileSync('public/guide/waves.md', 'utf8').split('\n')
  const start = lines.findIndex((line) => line.includes(first))
  const end = lines.findIndex((line, i) => i > start && !line.startsWith('|'))
  return new Map(
    lines.slice(start + 2, end).map((line) => {
      const [name, ...cells] = line
        .split('|')
        .slice(1, -1)
        .map((cell) => cell.trim())
      return [name!, cells]
    }),
  )
}

describe('the guide', () => {
  const NAMES = {
    sheltered: 'Sheltered cove',
    small: 'Open, small lake',
    wide: 'Open, wide lake',
    open: 'Exposed, big lake',
  } as const
  const lake = guideTable('H out on the lake')
  const dock = guideTable('H at the dock')

  it.each(Object.entries(EXPOSURES))('prints what is worked out for %s water', (exposure, wind) => {
    const name = NAMES[exposure as keyof typeof NAMES]
    const w = wavesOf({ site: { wind } })
    expect(lake.get(name)).toEqual([
      String(wind.speed),
      String(wind.fetch),
      w.open.toFixed(3),
      w.period.toFixed(2),
      (w.duration / 60).toFixed(0),
      w.laws.cem2002.height.toFixed(3),
      w.laws.youngVerhagen1996.height.toFixed(3),
    ])
    expect(dock.get(name)).toEqual(
      [w.height, w.crest, w.crestHigh, w.recommendedDeckHeight, w.recommendedAllSeason].map((n) =>
        n.toFixed(3),
      ),
    )
  })

  it('names every note, and no other', () => {
    expect([...guideTable('| note').keys()].map((code) => code.replaceAll('`', '')).sort()).toEqual(
      NOTES.map(([note]) => note).sort(),
    )
  })
})
