/** The bed from soundings off one line: what one more true sounding may do, and every law of the model, seen to fail on a broken one. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Sounding } from '../../rules/design/index.ts'
import { demoCatalog, demoDesign, makeBed } from '../../rules/index.ts'
import { parsedDesign } from '../support/arbitraries.ts'
import { deriveAtOnce } from '../support/at-once.ts'
import {
  disordered,
  type Model,
  missed,
  outOfRange,
  overmoved,
  oversteep,
  spoiled,
  steepest,
  triangulated,
  unlike,
  unmirrored,
} from '../support/beds/laws.ts'
import { between, falls, places, roughSurvey, siteOf, surveyOf, TRUE_BEDS } from '../support/beds/surveys.ts'
import { runs } from '../support/runs.ts'

const RUNS = runs(100)
const SEED = Number(process.env.LEADLINE_SEED ?? 20_251)

const survey: Sounding[] = (
  [
    [-3, -0.9],
    [0, 0],
    [4, 0.5],
    [8, 0.9],
    [12, 1.2],
    [18, 1.4],
  ] as const
).map(([distance, depth]) => ({ distance, offset: 0, depth }))
const moved = (list: readonly Sounding[], which: number, offset: number): Sounding[] =>
  list.map((s, i) => (i === which ? { ...s, offset } : s))

describe('the same depths sounded again, 2 m beside the line', () => {
  const again = [...survey, ...survey.filter((s) => s.distance > 0).map((s) => ({ ...s, offset: 2 }))]
  const startOf = (soundings: readonly Sounding[]): number => {
    const { site, dock } = demoDesign
    const levels = { low: -0.3, high: 0.25 }
    const design = parsedDesign({
      ...demoDesign,
      site: { ...site, soundings, levels },
      dock: { ...dock, deckHeight: 0.45, frame: '4x8', sections: 5, ramp: true, start: null },
    })
    return deriveAtOnce(design, demoCatalog).start!
  }

  it('leave the start of the dock at 1.05 m', () => {
    expect(startOf(survey)).toBe(1.05)
    expect(Math.abs(startOf(again) - 1.05)).toBeLessThanOrEqual(0.05)
  })

  it('move the water’s edge beside the line by less than 2 cm, and nothing else by more than 1 mm', () => {
    const [a, b] = [makeBed(siteOf(survey)), makeBed(siteOf(again))]
    expect(b.mode).toBe('area')
    expect(Math.abs(a.bedAt(0, 2) - b.bedAt(0, 2))).toBeLessThan(0.02)
    expect(unlike(a, b)).toBeLessThan(1e-3)
  })

  it('once moved it by a third of a meter', () => {
    expect(Math.abs(makeBed(siteOf(survey)).bedAt(0, 2) - triangulated(siteOf(again)).bedAt(0, 2))).toBe(0)
    expect(unlike(makeBed(siteOf(survey)), triangulated(siteOf(again)))).toBeGreaterThan(0.3)
  })
})

describe('a sounding that leaves the line', () => {
  const beds: [string, Sounding[]][] = [
    ['the demo’s', survey],
    ['level', survey.map((s) => ({ ...s, depth: 1 }))],
    ['level under water', survey.map((s) => (s.distance > 0 ? { ...s, depth: 1 } : s))],
    ['wet', survey.slice(2)],
  ]
  it.each(beds)('at 0.06 m instead of 0.049 m moves a bed like %s by less than 1 mm', (_, soundings) => {
    const modes = { line: 0, area: 0 }
    for (const [which] of soundings.entries())
      for (const crossSlope of [0, 0.1]) {
        const [on, off] = [0.049, 0.06].map((y) =>
          makeBed(siteOf(moved(soundings, which, y), { crossSlope })),
        )
        expect(on!.mode).toBe('line')
        // An end turns the line with it, and all is still on one line.
        modes[off!.mode]++
        // On a line all count as in its middle, though the cross slope has them this much higher there.
        expect(unlike(on!, off!)).toBeLessThan(1e-3 + crossSlope * 0.06)
      }
    expect(modes.area).toBeGreaterThanOrEqual(4)
  })
})

const random = { seed: SEED, numRuns: RUNS }

describe(`a bed of random soundings (seed ${SEED}, ${RUNS} surveys)`, () => {
  /** The greatest figure of a law over rough surveys. */
  const worst = (
    law: (model: Model, site: ReturnType<typeof siteOf>) => number,
    model: Model,
    crossSlopes: readonly number[] = [0],
  ): number => {
    let most = Number.NEGATIVE_INFINITY
    fc.assert(
      fc.property(roughSurvey, fc.constantFrom(...crossSlopes), (list, crossSlope) => {
        const soundings = list.map((s) => ({ ...s, depth: s.depth + crossSlope * s.offset }))
        most = Math.max(most, law(model, siteOf(soundings, { crossSlope })))
      }),
      random,
    )
    return most
  }
  const broken = (z: number, x: number, y: number): number => z + 1e-3 * x * y

  it('is as deep at every sounding as was sounded', () => {
    expect(worst(missed, makeBed, [0, 0.08])).toBeLessThan(1e-9)
    expect(worst(missed, spoiled(broken))).toBeGreaterThan(1e-9)
  })

  it('is continuous: no steeper anywhere than the closest soundings that differ', () => {
    // Soundings 0.6 m apart in depth may be a hair apart in distance: a cliff that was sounded. A crack is steeper by far.
    const cliff = ({ soundings }: ReturnType<typeof siteOf>): number =>
      Math.max(
        ...soundings.flatMap((a) =>
          [...soundings, { ...a, distance: 0, depth: 0 }].map((b) => (a === b ? 0 : steepness(a, b))),
        ),
      )
    const over: typeof steepest = (model, site) => steepest(model, site) / Math.max(1, cliff(site))
    const cracked = spoiled((z) => Math.round(z * 10) / 10)
    expect(worst(over, makeBed)).toBeLessThan(1 + 1e-6)
    expect(worst(over, cracked)).toBeGreaterThan(10)
  })

  it('is no steeper from all that is known than soundings are from each other, and leaves their range by less than a third of it', () => {
    expect(worst(oversteep, makeBed)).toBeLessThan(1e-9)
    expect(worst(outOfRange, makeBed)).toBeLessThan(1 / 3)
    expect(
      worst(
        oversteep,
        spoiled((z, x, y) => z + Math.sin(3 * x) * y),
      ),
    ).toBeGreaterThan(0.1)
    expect(
      worst(
        outOfRange,
        spoiled((z) => 2 * z),
      ),
    ).toBeGreaterThan(0.2)
  })

  it('is mirrored with its soundings, and does not depend on their order', () => {
    expect(worst(unmirrored, makeBed, [0, 0.08])).toBeLessThan(1e-9)
    expect(worst(disordered, makeBed, [0, 0.08])).toBe(0)
    expect(worst(unmirrored, spoiled(broken))).toBeGreaterThan(1e-3)
    const first = spoiled((z, _x, _y, site) => z + 1e-6 * site.soundings[0]!.depth)
    expect(worst(disordered, first)).toBeGreaterThan(1e-9)
  })

  it('is the same bed whether the same soundings are on one line or one of them is told apart to no purpose', () => {
    const again = (list: Sounding[]): Sounding[] => [...list, { ...list[2]!, offset: 3 }]
    fc.assert(
      fc.property(fc.uniqueArray(between(0.5, 16.9), { minLength: 2, maxLength: 9 }), falls, (xs, fall) => {
        const on = [
          { distance: -3, offset: 0, depth: -0.9 },
          { distance: 0, offset: 0, depth: 0 },
          ...xs.map((distance, i) => ({ distance, offset: 0, depth: fall * distance + 0.1 * (i % 3) })),
          { distance: 18, offset: 0, depth: 18 * fall },
        ]
        const [line, area] = [makeBed(siteOf(on)), makeBed(siteOf(again(on)))]
        expect([line.mode, area.mode]).toEqual(['line', 'area'])
        expect(unlike(line, area)).toBeLessThan(1e-8)
      }),
      random,
    )
  })
})

describe(`one more true sounding between the first and the last (seed ${SEED})`, () => {
  const most = (bed: keyof typeof TRUE_BEDS, model: Model): number => {
    let over = Number.NEGATIVE_INFINITY
    fc.assert(
      fc.property(
        TRUE_BEDS[bed]!,
        places,
        fc.tuple(between(-2.95, 17.95), fc.oneof(fc.constantFrom(0, 2), between(-6, 6))),
        (truth, list, at) => {
          const before = surveyOf(truth, unique(list))
          const [more] = surveyOf(truth, [at])
          fc.pre(!before.some((s) => s.distance === at[0] && s.offset === at[1]))
          // That the water's edge is where x = 0 is denied by a sounding there: then all is told anew.
          fc.pre(at[0] !== 0 || Math.abs(more!.depth) < 0.1)
          over = Math.max(over, overmoved(model, siteOf(before), more!))
        },
      ),
      random,
    )
    return over
  }

  it.each(Object.keys(TRUE_BEDS))(
    'moves a bed sounded from a %s nowhere by more than it surprises',
    (bed) => {
      expect(most(bed, makeBed)).toBeLessThan(1e-6)
      expect(most(bed, triangulated)).toBeGreaterThan(0.05)
    },
  )
})

describe('many soundings', () => {
  /** Spread evenly, by the golden ratio and the root of 2. */
  const spread = (n: number, z: (x: number, y: number) => number): Sounding[] =>
    Array.from({ length: n }, (_, i) => {
      const [distance, offset] = [(21 * i * 0.6180339887) % 21, (8 * i * 0.4142135623) % 8].map(
        (v, k) => Math.round((v - (k === 0 ? 3 : 4)) * 1e6) / 1e6,
      ) as [number, number]
      return { distance, offset, depth: -z(distance, offset) }
    })
  const bowl = (x: number, y: number): number => -0.1 * (40 - Math.hypot(x - 40, y))
  const ripples = (x: number, y: number): number => -0.1 * x - 0.1 * Math.sin(2 * x + y)

  it('keep the same laws', () => {
    for (const n of [151, 600]) {
      const site = siteOf(spread(n, ripples))
      expect(makeBed(site).triangulation).not.toBeNull()
      expect(missed(makeBed, site)).toBeLessThan(1e-9)
      expect(unmirrored(makeBed, site)).toBeLessThan(1e-9)
      expect(disordered(makeBed, site)).toBe(0)
      // Means a hair apart in distance make steps of millimeters; a crack of a decimeter would be 500.
      expect(steepest(makeBed, site)).toBeLessThan(20)
    }
  })

  it('do not tell another bed where they come to be many', () => {
    const at = (n: number, z: typeof bowl) => makeBed(siteOf(spread(n, z)))
    expect(at(150, bowl).triangulation).toBeNull()
    for (const [z, most] of [
      [bowl, 0.01],
      [ripples, 0.2],
    ] as const) {
      const [few, many] = [at(150, z), at(151, z)]
      for (let x = -2.5; x < 17.5; x += 0.37)
        for (let y = -3.5; y < 3.5; y += 0.41)
          expect(Math.abs(few.bedAt(x, y) - many.bedAt(x, y))).toBeLessThan(most)
    }
  })

  it('move a smooth bed by no more than a new one surprises, and 5 mm', () => {
    const site = siteOf(spread(400, bowl))
    for (const [distance, offset] of [
      [5.1, 0.7],
      [11.3, -2.2],
      [0.4, 3.1],
      [-1.1, -0.3],
    ] as const)
      expect(overmoved(makeBed, site, { distance, offset, depth: -bowl(distance, offset) })).toBeLessThan(
        5e-3,
      )
  })
})

const unique = (list: readonly (readonly [number, number])[]): (readonly [number, number])[] =>
  list.filter(([x, y], i) => list.findIndex(([a, b]) => a === x && b === y) === i)

const steepness = (a: Sounding, b: Sounding): number =>
  Math.abs(a.depth - b.depth) /
  Math.min(Math.abs(a.distance - b.distance) || 9, Math.abs(a.offset - b.offset) || 9)
