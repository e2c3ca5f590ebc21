/**
 * Checks of legs, their pads and braces, at their limits: sizes worked by hand, each check by itself.
 * That each is raised at all, and by which dock: `findings.test.ts`.
 *
 * Without more words: three sections of 4 x 8 ft from 3 m on, 2.4638 m apart, without a ramp, in 1.2 m of level water over sand, deck
 * 0.45 m up, the lake 0.3 m lower at its lowest and 0.25 m higher at its highest.
 */
import { describe, expect, it } from 'vitest'
import { type Catalog, demoCatalog } from '../../../rules/index.ts'
import { drop, found, put } from '../../support/found.ts'
import { kitOf, level } from '../../support/level-dock.ts'

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
