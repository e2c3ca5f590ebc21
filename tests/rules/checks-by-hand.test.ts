/**
 * Checks at their limits, and what they leave alone: sizes worked by hand, each check by itself. That each is raised at all, and by
 * which dock: `findings.test.ts`.
 *
 * Without more words: three sections of 4 x 8 ft from 3 m on, 2.4638 m apart, without a ramp, in 1.2 m of level water over sand, deck
 * 0.45 m up, the lake 0.3 m lower at its lowest and 0.25 m higher at its highest.
 */
import { describe, expect, it } from 'vitest'
import { reachOf } from '../../rules/checks/reach.ts'
import { beyondError, soundingPairs } from '../../rules/checks/sounding-pairs.ts'
import { type Catalog, CHECKS, demoCatalog } from '../../rules/index.ts'
import type { Kit } from '../../rules/kit.ts'
import { kitOf, level } from '../support/level-dock.ts'

const found = (code: string, kit: Kit) =>
  CHECKS.find((check) => check.code === code)!
    .find({ ...kit, waves: null })
    .map(({ parts, values, remedy }) => ({
      parts,
      values: Object.fromEntries(
        Object.entries(values).map(([name, { value }]) => [
          name,
          typeof value === 'number' ? Math.round(value * 1e5) / 1e5 : value,
        ]),
      ),
      patch: remedy?.patch ?? null,
    }))
const put = (path: string, value: unknown) => [{ op: 'replace', path, value }]
const drop = (path: string) => [{ op: 'remove', path }]

describe('a boat aground', () => {
  /** Deeper by 0.1 in 1 outward and to the left, nothing at the line's own edge. */
  const falling = {
    soundings: [
      { distance: 0, depth: 0 },
      { distance: 60, depth: 6 },
    ],
    crossSlope: 0.1,
  }
  const boat = (side: 'left' | 'right', draught: number) => ({
    boat: { length: 5, height: 1, draught, mass: 400, side },
  })

  it('is asked at the shallower corner on its own side, at the low level', () => {
    // The third section begins at 3 + 2 x 2.4638 = 7.9276 m: 0.79276 m there, 0.06096 more on the left edge, less on the right; less 0.3.
    const left = kitOf(boat('left', 0.6), falling)
    expect(found('boat-aground', left)).toMatchObject([
      { parts: ['s3'], values: { depth: 0.55372, draught: 0.6 } },
    ])
    const right = kitOf(boat('right', 0.6), falling)
    expect(found('boat-aground', right)).toMatchObject([{ values: { depth: 0.4318, draught: 0.6 } }])
    expect(found('boat-aground', kitOf(boat('left', 0.5537), falling))).toEqual([])
    expect(found('boat-aground', kitOf({}, falling))).toEqual([])
  })

  it('is helped by as many sections as it takes, each 0.24638 m deeper, on a straight dock alone', () => {
    // On the left 0.55372 + n x 0.24638 >= 1: two; on the right 0.4318: three.
    expect(found('boat-aground', kitOf(boat('left', 1), falling))[0]!.patch).toEqual(put('/dock/sections', 5))
    expect(found('boat-aground', kitOf(boat('right', 1), falling))[0]!.patch).toEqual(
      put('/dock/sections', 6),
    )
    // Twelve more are 2.95656 m deeper, 3.51028 m.
    expect(found('boat-aground', kitOf(boat('left', 3.51), falling))[0]!.patch).toEqual(
      put('/dock/sections', 15),
    )
    expect(found('boat-aground', kitOf(boat('left', 3.52), falling))[0]!.patch).toBeNull()
    const headed = kitOf({ ...boat('left', 1), head: { shape: 'left', sections: 1 } }, falling)
    expect(found('boat-aground', headed)[0]!.patch).toBeNull()
    const planned = kitOf({ ...boat('left', 1), sections: undefined, plan: [{ id: 'a', on: null }] }, falling)
    expect(found('boat-aground', planned)[0]!.patch).toBeNull()
  })
})

/** A row of three to the left of the first section, and a fifth that hangs lakeward of the outermost, far off the dock's line. */
const hook = {
  sections: undefined,
  plan: [
    { id: 'a', on: null },
    { id: 'b', on: 'a', edge: 'left', with: 'start' },
    { id: 'c', on: 'b', edge: 'end', with: 'start' },
    { id: 'd', on: 'c', edge: 'end', with: 'start' },
    { id: 'e', on: 'd', edge: 'right', with: 'start' },
  ],
}

describe('a boat off the dock’s line', () => {
  it('is asked at its own side of its own section', () => {
    // The fifth lies about y = 0.635 + 2 x 2.4638 + 0.6096 = 6.1722 m, from x = 3 + 1.2192 + 0.0254 = 4.2446 m on.
    const falling = {
      soundings: [
        { distance: 0, depth: 0 },
        { distance: 60, depth: 6 },
      ],
      crossSlope: 0.1,
    }
    const at = (side: 'left' | 'right') =>
      found(
        'boat-aground',
        kitOf({ ...hook, boat: { length: 5, height: 1, draught: 9, mass: 400, side } }, falling),
      )
    // 0.42446 + 0.61722 - 0.3, half a width of 0.6096 m more or less to the side.
    expect(at('left')).toEqual([{ parts: ['e'], values: { depth: 0.80264, draught: 9 }, patch: null }])
    expect(at('right')).toEqual([{ parts: ['e'], values: { depth: 0.68072, draught: 9 }, patch: null }])
  })
})

describe('braces', () => {
  it('that the design leaves out are told as left out, not as too long', () => {
    const kit = kitOf({ reserve: 0.8, bracing: { none: ['s2.end'] } }, level(0.4))
    const notFit = found('brace-does-not-fit', kit).map(({ parts }) => parts[0])
    expect(notFit).toEqual(['s1.start', 's1.end', 's3.end'])
    expect(found('brace-left-out', kit)).toEqual([
      {
        parts: ['s2.end', 's2.end.left', 's2.end.right'],
        values: { pair: 's2.end' },
        patch: drop('/dock/bracing/none/0'),
      },
    ])
    // Where the trade needs none nothing is left out: legs of 4 ft.
    expect(found('brace-left-out', kitOf({ bracing: { none: ['s2.end'] } }, level(0.3)))).toEqual([])
  })
})

describe('codes and ids that are not there', () => {
  it('are told by what they stand for, and left out where nothing stands in their place', () => {
    const kit = kitOf({
      pad: 'no-pad',
      extras: { 'no/extra': 2 },
      overrides: { 's2.end.left': { stock: 1.5 }, 's9.end.left': { stock: 1.8288 } },
      bracing: { none: ['s2.end', 's8.end'] },
    })
    const lengths = demoCatalog.legs.map(({ length }) => Math.round(length * 1e6) / 1e6)
    expect(found('unknown-code', kit)).toEqual([
      {
        parts: [],
        values: { what: 'extra', code: 'no/extra', known: demoCatalog.extras.map(({ code }) => code) },
        patch: drop('/dock/extras/no~1extra'),
      },
      {
        parts: [],
        values: { what: 'foot-pad', code: 'no-pad', known: demoCatalog.pads.map(({ code }) => code) },
        patch: drop('/dock/pad'),
      },
      {
        parts: ['s2.end.left'],
        values: { what: 'leg-length', code: 1.5, known: lengths },
        patch: drop('/dock/overrides/s2.end.left'),
      },
    ])
    expect(found('unknown-id', kit)).toEqual([
      {
        parts: [],
        values: { id: 's9.end.left', what: 'leg' },
        patch: drop('/dock/overrides/s9.end.left'),
      },
      { parts: [], values: { id: 's8.end', what: 'leg-pair' }, patch: drop('/dock/bracing/none/1') },
    ])
    // A leg's length is known to a millimeter.
    const near = (stock: number) => kitOf({ overrides: { 's2.end.left': { stock } } })
    expect(found('unknown-code', near(1.8288 + 0.0009))).toEqual([])
    expect(found('unknown-code', near(1.8288 + 0.0011))).toHaveLength(1)
    for (const code of ['unknown-code', 'unknown-id']) expect(found(code, kitOf())).toEqual([])
  })

  it('are another frame only where all sections are to have it', () => {
    const kit = kitOf({
      sections: undefined,
      plan: [
        { id: 'a', on: null },
        { id: 'b', on: 'a', edge: 'end', with: 'start', frame: '9x9' },
      ],
    })
    expect(found('unknown-code', kit)).toMatchObject([{ parts: ['b'], values: { code: '9x9' }, patch: null }])
  })
})

describe('a deck that is high over a low lake', () => {
  const boat = { boat: { length: 5, height: 0.14, draught: 0.3, mass: 400, side: 'left' } }
  it('is lowered only as far as its high level lets it', () => {
    // 6 in over the high level: with that at 0.3 m at least 0.4524 m, and 30 in over the low one is 0.462 m, so 0.46 m; at 0.31 m 0.4624 m.
    const at = (high: number) => kitOf({ deckHeight: 0.5 }, { levels: { low: -0.3, high } })
    expect(found('deck-guard', at(0.3))).toEqual([
      { parts: [], values: { drop: 0.8, most: 0.762 }, patch: put('/dock/deckHeight', 0.46) },
    ])
    expect(found('deck-guard', at(0.31))[0]!.patch).toBeNull()
    // 24 in over a boat's side of 0.14 m: 0.4496 m over a lake 0.3 m lower.
    const step = (high: number) => kitOf({ ...boat, deckHeight: 0.5 }, { levels: { low: -0.3, high } })
    expect(found('step-to-boat', step(0.28))).toEqual([
      { parts: [], values: { step: 0.66, most: 0.6096 }, patch: put('/dock/deckHeight', 0.44) },
    ])
    expect(found('step-to-boat', step(0.29))[0]!.patch).toBeNull()
    // A side 0.1904 m high is exactly 24 in down.
    const over = (height: number) => kitOf({ boat: { ...boat.boat, height }, deckHeight: 0.5 })
    expect(found('step-to-boat', over(0.1903))).toHaveLength(1)
    expect(found('step-to-boat', over(0.1904))).toEqual([])
    expect(found('step-to-boat', kitOf({ deckHeight: 3 }))).toEqual([])
  })

  it('is asked over dry ground where the lake has run dry, and over the lake as today where it falls no lower', () => {
    // 0.2 m of water, the lake 0.3 m lower: the fall ends at the bed, 0.2 m down.
    const dry = (deckHeight: number) => kitOf({ deckHeight }, level(0.2))
    expect(found('deck-guard', dry(0.57))).toMatchObject([{ values: { drop: 0.77 } }])
    expect(found('deck-guard', dry(0.56))).toEqual([])
    const steady = (deckHeight: number) => kitOf({ deckHeight }, { levels: { low: 0, high: 0.25 } })
    expect(found('deck-guard', steady(0.77))).toMatchObject([{ values: { drop: 0.77 } }])
    expect(found('deck-guard', steady(0.762))).toEqual([])
    expect(found('deck-guard', kitOf({ deckHeight: 0.462 }))).toEqual([])
  })
})

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
    expect(at(-0.51, inland)).toMatchObject([{ values: { first: -0.5, reach: -0.51 } }])
    expect(at(-0.5, { shore: { kind: 'wall', height: 0.3 } })).toEqual([])
  })

  it('that are too few are those under water', () => {
    const wet = (...depths: number[]) =>
      found('soundings-few', kitOf({}, { soundings: depths.map((depth, distance) => ({ distance, depth })) }))
    expect(wet(0, 1, 1, 1)).toEqual([])
    expect(wet(-0.5, 0, 1, 1)).toEqual([{ parts: [], values: { wet: 2, least: 3 }, patch: null }])
  })
})

describe('legs', () => {
  const falling = {
    soundings: [
      { distance: 0, depth: 1.2 },
      { distance: 5, depth: 1.2 },
      { distance: 9, depth: 4 },
      { distance: 60, depth: 4 },
    ],
  }
  it('too short for the last sections end the run before them, down to one, on a straight dock', () => {
    // Longest leg: in up to 2.45195 m of water; at s1's and s2's ends 5.351 m and 7.815 m out it is 1.45 m and 3.17 m deep.
    const kit = kitOf({}, falling)
    expect(found('leg-none-long-enough', kit)[0]).toMatchObject({
      parts: ['s2.end.left', 's2.end.right', 's3.end.left', 's3.end.right'],
      patch: put('/dock/sections', 1),
    })
    expect(found('leg-none-long-enough', kitOf({}, level(3)))[0]!.patch).toBeNull()
    const headed = kitOf({ head: { shape: 'left', sections: 1 } }, falling)
    expect(found('leg-none-long-enough', headed)[0]!.patch).toBeNull()
    expect(found('leg-none-long-enough', kitOf())).toEqual([])
  })

  it('on muck are put on mud pads, in the place of the pad that the design names', () => {
    const named = kitOf({ pad: 'pad-7x16' }, { bottom: 'muck' })
    expect(found('muck-without-mud-pad', named)[0]!.patch).toEqual(put('/dock/pad', 'mud-pad-14'))
    const none = structuredClone(demoCatalog) as { -readonly [K in keyof Catalog]: Catalog[K] }
    none.pads = none.pads.filter(({ mud }) => !mud)
    expect(found('muck-without-mud-pad', kitOf({}, { bottom: 'muck' }, none))[0]!.patch).toBeNull()
  })
})

describe('an extra', () => {
  it('on rock that stands at a place of its own is left to the hand that put it there', () => {
    const placed = [{ code: 'anchor-post', section: 's2', edge: 'left', along: 1 }]
    const [told] = found('auger-on-rock', kitOf({ placed }, { bottom: 'rock' }))
    expect(told).toMatchObject({ patch: null })
    expect(told!.parts).toHaveLength(1)
    expect(found('auger-on-rock', kitOf({ placed }))).toEqual([])
  })
})

describe('a step', () => {
  it('is high up from the shore and down to it alike', () => {
    // 8 in from the ground 10 mm behind the frame's edge: a wall of 0.7 m under a deck at 0.45 m is 0.25 m up, of 0.65 m 0.2 m.
    const wall = (height: number, start = 0) =>
      found('step-high', kitOf({ start }, { ...level(1.2), shore: { kind: 'wall', height } }))
    expect(wall(0.65)).toEqual([])
    expect(wall(0.7)).toEqual([{ parts: ['s1'], values: { step: -0.25, most: 0.2032 }, patch: null }])
    expect(wall(0.2)).toMatchObject([{ values: { step: 0.25 } }])
  })
})

describe('frames over the bed', () => {
  // Deck 0.45 m less 0.1778 m to the underside: 0.2722 m; 4 in = 0.1016 m are asked for.
  const under = (depth: number, start = 3) => kitOf({ start }, level(depth))
  it('lie in it over the underside, near it within 4 in, and clear from there', () => {
    expect(found('frame-in-bed', under(-0.2723))).toEqual([
      { parts: ['s1', 's2', 's3'], values: { sections: ['s1', 's2', 's3'], depth: 0.0001 }, patch: null },
    ])
    expect(found('frame-in-bed', under(-0.2722))).toEqual([])
    expect(found('frame-near-bed', under(-0.2722))).toHaveLength(1)
    expect(found('frame-near-bed', under(-0.1707))).toEqual([
      {
        parts: ['s1', 's2', 's3'],
        values: { sections: ['s1', 's2', 's3'], clear: 0.1015, least: 0.1016 },
        patch: null,
      },
    ])
    expect(found('frame-near-bed', under(-0.1706))).toEqual([])
    expect(found('frame-near-bed', under(-0.2723))).toEqual([])
  })

  it('are told by the worst of several', () => {
    // A bank of 0.3 in 1: under the first section's end at -4 m 1.2 m up, under the second's at -1.5362 m 0.46086 m.
    const bank = {
      soundings: [
        { distance: -6, depth: -1.8 },
        { distance: 0, depth: 0 },
        { distance: 60, depth: 18 },
      ],
    }
    expect(found('frame-in-bed', kitOf({ start: -4, sections: 2 }, bank))).toMatchObject([
      { parts: ['s1', 's2'], values: { depth: 0.9278 } },
    ])
    // Only near it: 0.2722 - 0.27 = 0.0022 m at -0.9 m, the underside clear by 0.2722 - 0.18 = 0.0922 m at -0.6 m.
    expect(found('frame-near-bed', kitOf({ start: -0.9, sections: 1 }, bank))).toMatchObject([
      { values: { clear: 0.0022 } },
    ])
  })

  it('are told by the worst of them', () => {
    // A bank of 0.3 in 1 down to the edge: the first section, from -1.2 m on, lies 0.36 - 0.2722 m in it, the others are clear.
    const bank = {
      soundings: [
        { distance: -3, depth: -0.9 },
        { distance: 0, depth: 0 },
        { distance: 1, depth: 1 },
        { distance: 60, depth: 1 },
      ],
    }
    expect(found('frame-in-bed', kitOf({ start: -1.2 }, bank))).toMatchObject([
      { parts: ['s1'], values: { depth: 0.0878 }, patch: put('/dock/start', null) },
    ])
  })
})

describe('the deck over the high level', () => {
  it('is under it, near it within 6 in, or high enough', () => {
    // 0.25 m; with 0.1524 m 0.4024 m, to be raised to 0.41 m.
    const at = (deckHeight: number) => kitOf({ deckHeight })
    const raised = put('/dock/deckHeight', 0.41)
    expect(found('deck-under-level', at(0.25))).toEqual([
      { parts: [], values: { deck: 0.25, high: 0.25 }, patch: raised },
    ])
    expect(found('deck-under-level', at(0.2501))).toEqual([])
    expect(found('deck-near-level', at(0.25))).toEqual([])
    expect(found('deck-near-level', at(0.2501))).toEqual([
      { parts: [], values: { over: 0.0001, least: 0.1524 }, patch: raised },
    ])
    expect(found('deck-near-level', at(0.4023))).toHaveLength(1)
    expect(found('deck-near-level', at(0.4024))).toEqual([])
  })
})

describe('pads', () => {
  it('on a slope are asked both ways, from a slope of 0.35 on', () => {
    // 0.3 across and 0.18 along: 0.34986; 0.3 and 0.181: 0.35037.
    const at = (along: number, crossSlope: number) =>
      found(
        'pad-on-slope',
        kitOf(
          { deckHeight: 3 },
          { soundings: [0, 20].map((x) => ({ distance: x, depth: 1 + along * x })), crossSlope },
        ),
      )
    expect(at(0.18, 0.3)).toEqual([])
    expect(at(0.181, 0.3)).toMatchObject([{ values: { slope: 0.35037, most: 0.35 } }])
    expect(at(0.35, 0)).toEqual([])
    expect(at(0.351, 0)[0]!.parts).toHaveLength(8)
    expect(at(0, 0.351)[0]!.values.slope).toBe(0.351)
  })

  it('lie on one another only where they do', () => {
    const wide = (pad: string) => kitOf({ pad, head: { shape: 'wide', sections: 2 } })
    // Side by side 0.200026 m apart: pads 0.4064 m wide that way overlap by 0.206374 m where legs stand beside each other.
    for (const { values } of found('pads-overlap', wide('pad-7x16')))
      expect(Number(values.by)).toBeGreaterThan(0)
    expect(found('pads-overlap', kitOf())).toEqual([])
    // Two sections side by side across the dock: legs 2 x 0.087313 + 0.0254 = 0.200026 m apart along it, where pads are
    // 0.4064 m wide: by 0.20637 m there, by all of their 0.1778 m the other way, which is less.
    const across = kitOf({
      sections: undefined,
      plan: [
        { id: 'a', on: null },
        { id: 'b', on: 'a', edge: 'left', with: 'start' },
        { id: 'c', on: 'a', edge: 'left', with: 'start', along: 1.2446 },
      ],
    })
    expect(found('pads-overlap', across)).toEqual([
      {
        parts: ['b.end.right', 'c.end.left'],
        values: { a: 'b.end.right', b: 'c.end.left', by: 0.1778 },
        patch: null,
      },
    ])
  })
})

describe('braces near what they must clear', () => {
  it('are told of each by itself, up to an inch more than the least', () => {
    // (0.2722 + d - 0.49886) / 2 - 0.0254 over the bed: 0.0762 + 0.0254 at d = 0.48066; firm bottom lies 0.3 m under it.
    const soft = (depth: number) => ({
      soundings: [0, 60].map((distance) => ({ distance, depth, firm: depth + 0.3 })),
    })
    expect(found('brace-near-bed', kitOf({}, soft(0.4805)))).toHaveLength(4)
    expect(found('brace-near-bed', kitOf({}, soft(0.4808)))).toEqual([])
    // Over the pad 0.08255 less: 0.0254 + 0.0254 at d = 0.54416.
    expect(found('brace-near-pad', kitOf({ reserve: 0.4 }, level(0.544)))).toHaveLength(4)
    expect(found('brace-near-pad', kitOf({ reserve: 0.4 }, level(0.5443)))).toEqual([])
    for (const code of ['brace-near-bed', 'brace-near-pad', 'brace-near-frame'])
      expect(found(code, kitOf())).toEqual([])
  })
})

describe('legs far over the deck', () => {
  it('are told from 24 in on, by the tallest', () => {
    // 1.2 m of water, no reserve worth the name: set height 1.65 m, 1.65 + reserve - 0.00635 asked for. By hand 8 ft: 2.4384 + 0.00635 - 1.65 = 0.79475 m.
    const by = (stock: number) =>
      found('leg-tall-above-deck', kitOf({ overrides: { 's2.end.left': { stock } } }))
    expect(by(2.4384)).toEqual([
      {
        parts: ['s2.end.left'],
        values: { legs: ['s2.end.left'], above: 0.79475, most: 0.6096 },
        patch: null,
      },
    ])
    expect(by(2.1336)).toEqual([])
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

describe('a ramp on a wall', () => {
  it('is told by how much it lies on it, and never by less than nothing', () => {
    // Its end comes down about 2.43 m from the hinge: with that at 2.35 m some 0.08 m behind the wall's face, at 2.42 m 0.01 m. 6 in are asked.
    const at = (start: number) =>
      found(
        'ramp-bearing-short',
        kitOf({ ramp: true, start, deckHeight: 0.7 }, { shore: { kind: 'wall', height: 0.45 } }),
      )
    const lies = (start: number) => Number(at(start)[0]!.values.bearing)
    expect(lies(2.35)).toBeGreaterThan(0.07)
    expect(lies(2.35)).toBeLessThan(0.09)
    expect(lies(2.35) - lies(2.4)).toBeCloseTo(0.05, 3)
    expect(at(2.35)[0]).toMatchObject({ parts: ['s1'], values: { least: 0.1524 } })
    expect(at(2.2)).toEqual([])
  })
})
