/**
 * A T, a wide end and a six-section U worked by hand on the demo shop's 4 x 8 ft frames, over a level bed 29 in deep with the deck 21 in up:
 * every leg, brace, joint, tie and part. Measures and unit masses as in `worked-docks.test.ts`.
 *
 * What all legs share: bed −0.7366, set height 0.5334 + 0.7366 = 1.27, reserve 6 in, required 1.27 + 0.1524 − 0.00635 = 1.41605, so 5 ft
 * with 1.524 + 0.00635 − 1.27 = 0.26035 over the deck. Where a pair of them has a brace it is the short one: underside 0.3556, m = −0.1905,
 * holes at m ∓ 0.249430, clearances 0.18872 and 0.27127; level pairs alternate, the first has its low end left.
 *
 * The first section starts at 8; pitch 2.4638, so sections start at 8, 10.4638, 12.9276 and end 2.4384 on: 10.4384, 12.9022, 15.366. Legs of
 * an end 2.351087 on from its start, 0.522287 to each side.
 */
import { describe, expect, it } from 'vitest'
import { demoCatalog } from '../../../rules/index.ts'
import { deriveAtOnce } from '../../support/at-once.ts'
import { expectBraces, expectLegs, expectParts, parsed } from '../../support/by-hand.ts'
import { validate } from '../../support/validate.ts'
import { overLevelBed } from '../../support/worked-designs.ts'

const design = (dock: object) => parsed(overLevelBed(dock))

const ALIKE = [-0.7366, 1.27, 0.1524, 1.41605, 1.524, 0.26035] as const
type Place = readonly [leg: string, x: number, y: number]
/** Both legs of an edge across the dock. */
const across = (edge: string, x: number): Place[] => [
  [`${edge}.left`, x, 0.522287],
  [`${edge}.right`, x, -0.522287],
]
const legs = (...places: Place[]) => places.map(([id, x, y]) => [id, x, y, ...ALIKE] as const)
/** All with the short brace, low ends in turn. */
const braced = (...pairs: string[]) =>
  pairs.map(
    (pair, i) =>
      [
        pair,
        'brace-42',
        0.498861,
        `${pair}.${i % 2 === 0 ? 'left' : 'right'}`,
        -0.43993,
        0.05893,
        0.18872,
        0.27127,
      ] as const,
  )

const check = (dock: object) => {
  const asked = design(dock)
  const made = deriveAtOnce(asked, demoCatalog)
  it('has no stop and keeps every law', () => {
    expect(made.findings.filter(({ severity }) => severity === 'stop')).toEqual([])
    expect(validate(made, asked, demoCatalog)).toEqual([])
  })
  return made
}
const jointsOf = ({ joints }: ReturnType<typeof check>) => joints.map(({ kind, id }) => `${kind} ${id}`)

const item = (id: string, on: string, edge: string, mate = 'start', along = 0) => ({
  id,
  on,
  edge,
  with: mate,
  along,
})
/** 8 ft less 4 ft: flush with the far end of a side. */
const FLUSH = 1.2192

describe('a T of three and two, by hand', () => {
  const dock = check({
    plan: [
      { id: 's1', on: null },
      item('s2', 's1', 'end'),
      item('s3', 's2', 'end'),
      item('h1', 's3', 'left', 'start', FLUSH),
      item('h2', 's3', 'right', 'start', FLUSH),
    ],
  })
  it('is what three sections with a T of two come to', () => {
    const numbers = deriveAtOnce(
      design({ sections: 3, ramp: false, head: { shape: 'tee', sections: 2 } }),
      demoCatalog,
    )
    expect({ ...numbers, fingerprint: null }).toEqual({ ...dock, fingerprint: null })
  })
  it('has every leg in its place', () => {
    // The heads' middle line 15.366 − 0.6096 = 14.7564; their legs 0.522287 to either side, 0.635 + 2.351087 off the dock's line. The left one
    // looks left, so its own left is shoreward; of the right one it is lakeward.
    expectLegs(
      dock,
      legs(
        ...across('s1.start', 8.087313),
        ...across('s1.end', 10.351087),
        ...across('s2.end', 12.814887),
        ...across('s3.end', 15.278687),
        ['h1.end.left', 14.234113, 2.986087],
        ['h1.end.right', 15.278687, 2.986087],
        ['h2.end.left', 15.278687, -2.986087],
        ['h2.end.right', 14.234113, -2.986087],
      ),
    )
  })
  it('has every brace and joint', () => {
    expectBraces(dock, braced('s1.start', 's1.end', 's2.end', 's3.end', 'h1.end', 'h2.end'))
    expect(jointsOf(dock)).toEqual(['hook s1~s2', 'hook s2~s3', 'hook s3~h1', 'hook s3~h2'])
    expect(dock.workOrder).toEqual(['s1', 's2', 's3', 'h1', 'h2'])
  })
  it('lists every part', () => {
    expectParts(dock, [
      ['frame', '4x8', 5, 0, 31288, 38900],
      ['leg', 'leg-5', 12, 0, 2853, 9650],
      ['foot-pad', 'pad-7x16', 12, 0, 1686, 2400],
      ['pad-bolt', 'bolt-3/8-pad', 12, 1, 70, 140],
      ['leg-cap', 'leg-cap', 12, 1, 50, 280],
      ['sleeve-cap', 'sleeve-cap', 8, 1, 60, 260], // 20 − 12
      ['set-bolt', 'bolt-1/2-set', 24, 2, 90, 180], // 1.2 → 2
      ['hook-bracket', 'hook-bracket', 8, 0, 950, 2150],
      ['hook-bolt', 'bolt-5/16-hook', 16, 1, 50, 110],
      ['brace', 'brace-42', 6, 0, 841, 3900],
      ['brace-clamp', 'brace-clamp', 12, 0, 360, 1250],
      ['brace-bolt', 'bolt-3/8-brace', 12, 1, 60, 130],
      ['deck-panel', 'panel-4x4', 10, 0, 17015, 14900],
      ['deck-clip', 'deck-clip', 20, 2, 60, 240],
    ])
    // 156.440 + 34.236 + 20.232 + 0.840 + 0.600 + 0.480 + 2.160 + 7.600 + 0.800 + 5.046 + 4.320 + 0.720 + 170.150 + 1.200
    expect(Math.round(dock.totals.mass * 1000)).toBe(404_824)
    // 194500 + 115800 + 28800 + 1680 + 3360 + 2080 + 4320 + 17200 + 1760 + 23400 + 15000 + 1560 + 149000 + 4800
    expect(dock.totals.price).toBe(563_260)
  })
})

describe('a wide end of three and two, by hand', () => {
  const dock = check({
    plan: [
      { id: 's1', on: null },
      item('s2', 's1', 'end'),
      item('s3', 's2', 'end'),
      item('h1', 's2', 'left', 'right'),
      item('h2', 's3', 'left', 'right'),
    ],
  })
  it('is what three sections with a wide end of two come to', () => {
    const numbers = deriveAtOnce(
      design({ sections: 3, ramp: false, head: { shape: 'wide', sections: 2 } }),
      demoCatalog,
    )
    expect({ ...numbers, fingerprint: null }).toEqual({ ...dock, fingerprint: null })
  })
  it('has every leg in its place: the sections beside the run on their far side alone', () => {
    // Side to side: middle at 0.6096 + 0.0254 + 0.6096 = 1.2446, far legs 0.522287 beyond it.
    expectLegs(
      dock,
      legs(
        ...across('s1.start', 8.087313),
        ...across('s1.end', 10.351087),
        ...across('s2.end', 12.814887),
        ...across('s3.end', 15.278687),
        ['h1.start.left', 10.551113, 1.766887],
        ['h1.end.left', 12.814887, 1.766887],
        ['h2.start.left', 13.014913, 1.766887],
        ['h2.end.left', 15.278687, 1.766887],
      ),
    )
  })
  it('has braces across the run alone, and a tie where the two beside it meet', () => {
    // Beside it legs stand 2.263774 and 0.200026 apart along: the braces of 42 to 63 in take neither.
    expectBraces(dock, braced('s1.start', 's1.end', 's2.end', 's3.end'))
    expect(jointsOf(dock)).toEqual(['hook s1~s2', 'hook s2~s3', 'hook s2~h1', 'hook s3~h2', 'tie h1~h2'])
  })
  it('lists every part', () => {
    expectParts(dock, [
      ['frame', '4x8', 5, 0, 31288, 38900],
      ['leg', 'leg-5', 12, 0, 2853, 9650],
      ['foot-pad', 'pad-7x16', 12, 0, 1686, 2400],
      ['pad-bolt', 'bolt-3/8-pad', 12, 1, 70, 140],
      ['leg-cap', 'leg-cap', 12, 1, 50, 280],
      ['sleeve-cap', 'sleeve-cap', 8, 1, 60, 260],
      ['set-bolt', 'bolt-1/2-set', 24, 2, 90, 180],
      ['hook-bracket', 'hook-bracket', 8, 0, 950, 2150],
      ['hook-bolt', 'bolt-5/16-hook', 16, 1, 50, 110],
      ['brace', 'brace-42', 4, 0, 841, 3900],
      ['brace-clamp', 'brace-clamp', 8, 0, 360, 1250],
      ['brace-bolt', 'bolt-3/8-brace', 8, 1, 60, 130],
      ['deck-panel', 'panel-4x4', 10, 0, 17015, 14900],
      ['deck-clip', 'deck-clip', 20, 2, 60, 240],
      ['accessory', 'tie-plate', 2, 0, 600, 1400],
    ])
    // As the T, less two braces with four clamps and bolts (1.682 + 1.440 + 0.240), and 1.200 of tie plates.
    expect(Math.round(dock.totals.mass * 1000)).toBe(402_662)
    // 563260 − 7800 − 5000 − 520 + 2800
    expect(dock.totals.price).toBe(552_740)
  })
})

describe('a U of six sections, open to the shore, by hand', () => {
  const dock = check({
    plan: [
      { id: 's1', on: null },
      item('s2', 's1', 'end'),
      item('h1', 's2', 'left', 'start', FLUSH),
      item('h2', 'h1', 'end'),
      item('h3', 'h2', 'left', 'start', FLUSH),
      item('h4', 'h3', 'end'),
    ],
  })
  it('lies as drawn: out two, across two, back two', () => {
    // Across: middle line 12.9022 − 0.6096 = 12.2926, from 0.635; h2 ends at 0.635 + 2.4638 + 2.4384 = 5.5372. Back: from its shoreward edge,
    // 12.2926 − 0.6096 − 0.0254 = 11.6576, flush with its end: 5.5372 − 0.6096 = 4.9276.
    expect(dock.sections.map(({ id, x, y, heading }) => [id, x, y, heading])).toEqual([
      ['s1', 8, 0, 0],
      ['s2', 10.4638, 0, 0],
      ['h1', 12.2926, 0.635, 90],
      ['h2', 12.2926, 3.0988, 90],
      ['h3', 11.6576, 4.9276, 180],
      ['h4', 9.1938, 4.9276, 180],
    ])
  })
  it('has every leg in its place', () => {
    // Across: 0.635 + 2.351087 and 3.0988 + 2.351087. Back: 11.6576 − 2.351087 and 9.1938 − 2.351087; its own left is the dock's right.
    expectLegs(
      dock,
      legs(
        ...across('s1.start', 8.087313),
        ...across('s1.end', 10.351087),
        ...across('s2.end', 12.814887),
        ['h1.end.left', 11.770313, 2.986087],
        ['h1.end.right', 12.814887, 2.986087],
        ['h2.end.left', 11.770313, 5.449887],
        ['h2.end.right', 12.814887, 5.449887],
        ['h3.end.left', 9.306513, 4.405313],
        ['h3.end.right', 9.306513, 5.449887],
        ['h4.end.left', 6.842713, 4.405313],
        ['h4.end.right', 6.842713, 5.449887],
      ),
    )
  })
  it('has every brace and joint, and nothing to tie', () => {
    expectBraces(dock, braced('s1.start', 's1.end', 's2.end', 'h1.end', 'h2.end', 'h3.end', 'h4.end'))
    expect(jointsOf(dock)).toEqual(['hook s1~s2', 'hook s2~h1', 'hook h1~h2', 'hook h2~h3', 'hook h3~h4'])
    expect(dock.workOrder).toEqual(['s1', 's2', 'h1', 'h2', 'h3', 'h4'])
  })
  it('lists every part', () => {
    expectParts(dock, [
      ['frame', '4x8', 6, 0, 31288, 38900],
      ['leg', 'leg-5', 14, 0, 2853, 9650],
      ['foot-pad', 'pad-7x16', 14, 0, 1686, 2400],
      ['pad-bolt', 'bolt-3/8-pad', 14, 1, 70, 140],
      ['leg-cap', 'leg-cap', 14, 1, 50, 280],
      ['sleeve-cap', 'sleeve-cap', 10, 1, 60, 260], // 24 − 14
      ['set-bolt', 'bolt-1/2-set', 28, 2, 90, 180],
      ['hook-bracket', 'hook-bracket', 10, 0, 950, 2150],
      ['hook-bolt', 'bolt-5/16-hook', 20, 1, 50, 110],
      ['brace', 'brace-42', 7, 0, 841, 3900],
      ['brace-clamp', 'brace-clamp', 14, 0, 360, 1250],
      ['brace-bolt', 'bolt-3/8-brace', 14, 1, 60, 130],
      ['deck-panel', 'panel-4x4', 12, 0, 17015, 14900],
      ['deck-clip', 'deck-clip', 24, 2, 60, 240],
    ])
    // 187.728 + 39.942 + 23.604 + 0.980 + 0.700 + 0.600 + 2.520 + 9.500 + 1.000 + 5.887 + 5.040 + 0.840 + 204.180 + 1.440
    expect(Math.round(dock.totals.mass * 1000)).toBe(483_961)
    // 233400 + 135100 + 33600 + 1960 + 3920 + 2600 + 5040 + 21500 + 2200 + 27300 + 17500 + 1820 + 178800 + 5760
    expect(dock.totals.price).toBe(670_500)
  })
})
