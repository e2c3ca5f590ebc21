/**
 * Checks of the deck, its frames, the step and the ramp, at their limits: sizes worked by hand, each check by itself.
 * That each is raised at all, and by which dock: `findings.test.ts`.
 *
 * Without more words: three sections of 4 x 8 ft from 3 m on, 2.4638 m apart, without a ramp, in 1.2 m of level water over sand, deck
 * 0.45 m up, the lake 0.3 m lower at its lowest and 0.25 m higher at its highest.
 */
import { describe, expect, it } from 'vitest'
import { found, put } from '../../support/found.ts'
import { kitOf, level } from '../../support/level-dock.ts'

describe('a deck that is high over a low lake', () => {
  const boat = { boat: { length: 5, height: 0.14, draught: 0.3, mass: 400, side: 'left' } }
  it('is lowered only as far as its high level lets it', () => {
    // 6 in over the high level: with that at 0.3 m at least 0.4524 m, and 30 in over the low one is 0.45722 m, so 0.4572 m; at 0.31 m 0.457224 m.
    const at = (high: number) => kitOf({ deckHeight: 0.5 }, { levels: { low: -0.3, high } })
    expect(found('deck-guard', at(0.3))).toEqual([
      { parts: [], values: { drop: 0.8, most: 0.762 }, patch: put('/dock/deckHeight', 0.4572) },
    ])
    expect(found('deck-guard', at(0.31))[0]!.patch).toBeNull()
    // 24 in over a boat's side of 0.14 m: 0.4496 m over a lake 0.3 m lower.
    const step = (high: number) => kitOf({ ...boat, deckHeight: 0.5 }, { levels: { low: -0.3, high } })
    expect(found('step-to-boat', step(0.28))).toEqual([
      { parts: [], values: { step: 0.66, most: 0.6096 }, patch: put('/dock/deckHeight', 0.4445) },
    ])
    expect(found('step-to-boat', step(0.3))[0]!.patch).toBeNull()
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
    expect(found('deck-guard', kitOf({ deckHeight: 0.45722 }))).toEqual([])
  })
})

describe('the deck over the high level', () => {
  it('is under it, near it within 6 in, or high enough', () => {
    // 0.25 m; with 0.1524 m 0.4024 m, to be raised to 0.41 m.
    const at = (deckHeight: number) => kitOf({ deckHeight })
    const raised = put('/dock/deckHeight', 0.4064)
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
    // A bank of 0.3 in 1: under the first section's end at -4 m 1.2 m up, under the second's at -1.5362 m 0.4572086 m.
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
