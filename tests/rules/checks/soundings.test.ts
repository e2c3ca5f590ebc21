/**
 * Checks of the soundings, at their limits: sizes worked by hand, each check by itself.
 * That each is raised at all, and by which dock: `findings.test.ts`.
 *
 * Without more words: three sections of 4 x 8 ft from 3 m on, 2.4638 m apart, without a ramp, in 1.2 m of level water over sand, deck
 * 0.45 m up, the lake 0.3 m lower at its lowest and 0.25 m higher at its highest.
 */
import { describe, expect, it } from 'vitest'
import { reachOf } from '../../../rules/checks/reach.ts'
import { beyondError, soundingPairs } from '../../../rules/checks/sounding-pairs.ts'
import { type Catalog, demoCatalog } from '../../../rules/index.ts'
import { found } from '../../support/found.ts'
import { kitOf } from '../../support/level-dock.ts'

describe('soundings', () => {
  it('far apart count under the dock alone, the widest of them', () => {
    const at = (...distances: number[]) =>
      found(
        'soundings-far-apart',
        kitOf({}, { soundings: distances.map((distance) => ({ distance, depth: 1.2 })) }),
      )
    // The dock covers 3 to 10.366 m: 20 ft = 6.096 m.
    expect(at(0, 6, 12, 60)).toEqual([])
    expect(at(0, 2, 8.2, 14.5)).toEqual([
      { parts: [], values: { from: 8.2, to: 14.5, gap: 6.3, most: 6.096 }, patch: null },
    ])
    expect(at(0, 2, 8.3, 14.4)).toEqual([
      { parts: [], values: { from: 2, to: 8.3, gap: 6.3, most: 6.096 }, patch: null },
    ])
    // Up to where the dock begins, and from where it ends.
    expect(at(-9, 0, 3, 7, 10.4, 60)).toEqual([])
    expect(at(0, 6, 10.3, 60)).toHaveLength(1)
  })

  it('are as far apart as the shop lets them, the water’s edge among them', () => {
    const at = (catalog: Catalog, ...distances: number[]) =>
      found(
        'soundings-far-apart',
        kitOf({}, { soundings: distances.map((distance) => ({ distance, depth: 1.2 })) }, catalog),
      )
    // From the edge to the first at 6.2 m.
    expect(at(demoCatalog, 6.2, 9, 12)).toMatchObject([{ values: { from: 0, to: 6.2, gap: 6.2 } }])
    const near = structuredClone(demoCatalog) as unknown as { rules: { soundingsGap: { value: number } } }
    near.rules.soundingsGap.value = 0.5
    const steps = Array.from({ length: 26 }, (_, i) => i * 0.5)
    expect(at(near as unknown as Catalog, ...steps)).toEqual([])
    const wider = [...steps.filter((x) => x < 5), 5.3, ...steps.filter((x) => x > 5.4)]
    expect(at(near as unknown as Catalog, ...wider)).toMatchObject([
      { values: { from: 4.5, to: 5.3, gap: 0.8, most: 0.5 } },
    ])
  })

  it('over the deck count out from the edge as far as the dock goes', () => {
    const with3 = (distance: number, depth: number) =>
      found(
        'soundings-over-deck',
        kitOf(
          {},
          {
            soundings: [
              ...[0, 2, 6, 12].map((x) => ({ distance: x, depth: 1.2 })),
              { distance, depth, offset: 2 },
            ],
          },
        ),
      )
    expect(with3(5, -0.45)).toEqual([])
    expect(with3(5, -0.46)).toEqual([
      { parts: [], values: { count: 1, x: 5, y: 2, height: 0.46, deck: 0.45 }, patch: null },
    ])
    expect(with3(10.3, -1)).toHaveLength(1)
    expect(with3(10.4, -1)).toEqual([])
    expect(with3(-1, -1)).toEqual([])
  })

  it('that the legs pass, or stand far aside of, are told with those legs', () => {
    // Legs at the third section's end stand at 10.366 - 0.0873 = 10.2787 m.
    const to = (distance: number) =>
      found(
        'soundings-passed',
        kitOf({}, { soundings: [0, 5, distance].map((x) => ({ distance: x, depth: 1.2 })) }),
      )
    expect(to(10.28)).toEqual([])
    expect(to(10.27)).toEqual([
      { parts: ['s3.end.left', 's3.end.right'], values: { last: 10.27, reach: 10.27869 }, patch: null },
    ])
    // 10 ft to the side of the line: legs 0.522287 m off the middle.
    const beside = (offset: number) =>
      found(
        'soundings-aside',
        kitOf({}, { soundings: [0, 60].map((distance) => ({ distance, offset, depth: 1.2 })) }),
      )
    expect(beside(2.5)).toEqual([])
    expect(beside(2.53)[0]).toMatchObject({ values: { off: 3.05229, most: 3.048 } })
    expect(beside(2.53)[0]!.parts.every((leg) => leg.endsWith('.right'))).toBe(true)
    // A line that runs aslant is taken by its middle, 3 m: 3.52229 m off, and not by its nearer end.
    const aslant = [
      { distance: 0, offset: 2.5, depth: 1.2 },
      { distance: 60, offset: 3.5, depth: 1.2 },
    ]
    expect(found('soundings-aside', kitOf({}, { soundings: aslant }))).toMatchObject([
      { values: { off: 3.52229 } },
    ])
    expect(beside(-2.53)[0]!.parts.every((leg) => leg.endsWith('.left'))).toBe(true)
  })

  it('that begin out of the dock’s foot leave the bank to be guessed, but behind a wall', () => {
    const at = (start: number, site = {}) => found('bank-not-sounded', kitOf({ start }, site))
    const inland = { soundings: [-0.5, 60].map((distance) => ({ distance, depth: 1.2 })) }
    expect(at(0)).toEqual([])
    expect(at(-0.5)).toEqual([{ parts: [], values: { first: 0, reach: -0.5 }, patch: null }])
    expect(at(-0.5, inland)).toEqual([])
    // Within 0.15 m it is the place that was measured.
    expect(at(-0.65, inland)).toEqual([])
    expect(at(-0.66, inland)).toMatchObject([{ values: { first: -0.5, reach: -0.66 } }])
    expect(at(-0.15)).toEqual([])
    expect(at(-0.16)).toMatchObject([{ values: { first: 0, reach: -0.16 } }])
    expect(at(-0.5, { shore: { kind: 'wall', height: 0.3 } })).toEqual([])
  })

  it('that are too few are those under water', () => {
    const wet = (...depths: number[]) =>
      found('soundings-few', kitOf({}, { soundings: depths.map((depth, distance) => ({ distance, depth })) }))
    expect(wet(0, 1, 1, 1)).toEqual([])
    expect(wet(-0.5, 0, 1, 1)).toEqual([{ parts: [], values: { wet: 2, least: 3 }, patch: null }])
  })
})

describe('pairs of soundings', () => {
  /** A grid of 14 x 13 places 1 m apart, each moved a little its own way: more than are all compared. */
  const many = Array.from({ length: 182 }, (_, i) => ({
    distance: (i % 14) + 0.1 * Math.sin(7 * i),
    offset: Math.floor(i / 14) - 6 + 0.1 * Math.sin(11 * i),
    depth: 1 + 0.01 * (i % 5),
  }))

  it('of many over an area hold every sounding’s nearest neighbor, and none farther than asked for', () => {
    // The nearest neighbor is always along an edge of a Delaunay triangulation.
    const pairs = soundingPairs(kitOf({}, { soundings: many }), 1.5)
    const key = (a: { distance: number; offset: number }) => `${a.distance.toFixed(4)} ${a.offset.toFixed(4)}`
    const told = new Set(pairs.flatMap(({ a, b }) => [`${key(a)} ${key(b)}`, `${key(b)} ${key(a)}`]))
    for (const one of many) {
      const away = (other: typeof one) => Math.hypot(one.distance - other.distance, one.offset - other.offset)
      const nearest = many.filter((other) => other !== one).reduce((p, q) => (away(q) < away(p) ? q : p))
      expect(told.has(`${key(one)} ${key(nearest)}`), key(one)).toBe(true)
    }
    for (const { a, b, apart } of pairs) {
      expect(apart).toBeLessThanOrEqual(1.5)
      expect(apart).toBeCloseTo(Math.hypot(a.distance - b.distance, a.offset - b.offset), 9)
      for (const end of [a, b]) {
        const given = many.find((one) => key(one) === key(end))!
        expect(end.depth).toBeCloseTo(given.depth, 6)
      }
    }
    // A planar graph: each edge once.
    expect(new Set(pairs.map(({ a, b }) => [key(a), key(b)].sort().join())).size).toBe(pairs.length)
  })

  it('of many on a line are those next to each other, of few all', () => {
    const line = (n: number) =>
      soundingPairs(
        kitOf({}, { soundings: Array.from({ length: n }, (_, i) => ({ distance: (i * 7) % n, depth: 1 })) }),
        2,
      ).map(({ a, b }) => Math.abs(a.distance - b.distance))
    // 151 next to each other: 150 pairs; of 20 within 2 m: 19 and 18.
    expect(line(151)).toEqual(Array(150).fill(1))
    expect(line(20).sort()).toEqual([...Array(19).fill(1), ...Array(18).fill(2)])
    // On a line across the dock by their offsets.
    const across = soundingPairs(
      kitOf(
        {},
        {
          soundings: Array.from({ length: 151 }, (_, i) => ({
            distance: 0,
            offset: ((i * 7) % 151) - 75,
            depth: 1,
          })),
        },
      ),
      2,
    )
    expect(across.map(({ a, b }) => Math.abs(a.offset - b.offset))).toEqual(Array(150).fill(1))
    // 150 are few yet: 149 and 148.
    expect(line(150)).toHaveLength(297)
  })

  it('differ beyond three standard errors of their difference', () => {
    const at = (depth: number) => ({ distance: 0, offset: 0, depth })
    // 0.5 − 3 · √2 · 0.1 = 0.0757
    expect(beyondError({ a: at(1), b: at(1.5), apart: 1 }, 0.1)).toBeCloseTo(0.075736, 6)
    expect(beyondError({ a: at(1.5), b: at(1), apart: 1 }, 0.1)).toBeCloseTo(0.075736, 6)
  })
})

describe('what a dock covers', () => {
  it('goes from where its ramp rests to its lakeward end', () => {
    const kit = kitOf(
      { ramp: true, start: 1, deckHeight: 0.6 },
      {
        soundings: [
          { distance: -6, depth: -1.2 },
          { distance: 0, depth: 0 },
          { distance: 60, depth: 12 },
        ],
      },
    )
    const reach = reachOf(kit)!
    // Tilted, the ramp reaches less far ashore than it is long; two sections of 2.4384 m and a gap of 0.0254 m from 1 m on.
    expect(reach.x0).toBe(kit.ramp!.contact!.x)
    expect(reach.x0).toBeGreaterThan(1 - 2.4384)
    expect(reach.x1).toBeCloseTo(1 + 2 * 2.4384 + 0.0254, 6)
    expect(reachOf(kitOf())).toEqual({ x0: 3, x1: expect.closeTo(3 + 3 * 2.4384 + 2 * 0.0254, 6) })
    expect(reachOf(kitOf({ frame: 'no-frame' }))).toBeNull()
  })
})
