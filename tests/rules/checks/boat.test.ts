/**
 * Checks of the boat, at their limits: sizes worked by hand, each check by itself.
 * That each is raised at all, and by which dock: `findings.test.ts`.
 *
 * Without more words: three sections of 4 x 8 ft from 3 m on, 2.4638 m apart, without a ramp, in 1.2 m of level water over sand, deck
 * 0.45 m up, the lake 0.3 m lower at its lowest and 0.25 m higher at its highest.
 */
import { describe, expect, it } from 'vitest'
import { assessKit } from '../../../rules/assess-kit.ts'
import { underKeel } from '../../../rules/clearance/keel.ts'
import { found, put } from '../../support/found.ts'
import { kitOf } from '../../support/level-dock.ts'

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

describe('a boat at a head', () => {
  const falling = {
    soundings: [
      { distance: 0, depth: 0 },
      { distance: 60, depth: 6 },
    ],
    crossSlope: 0.1,
  }
  const at = (shape: 'left' | 'right' | 'tee', side: 'left' | 'right') =>
    found(
      'boat-aground',
      kitOf(
        {
          head: { shape, sections: shape === 'tee' ? 2 : 1 },
          boat: { length: 5, height: 1, draught: 9, mass: 400, side },
        },
        falling,
      ),
    )
  // The last section of the run ends at 10.366 m; a section beside it lies across, its outer edge there too: from x = 9.1468 m on.
  it('lies at the outer end of the section that reaches out to its side, as far out as the run', () => {
    // y = 0.6096 + 0.0254 + 2.4384 = 3.0734 m: 0.91468 + 0.30734 - 0.3.
    expect(at('left', 'left')).toMatchObject([{ parts: ['h1'], values: { depth: 0.92202 } }])
    expect(at('right', 'right')).toMatchObject([{ parts: ['h1'], values: { depth: 0.30734 } }])
  })
  it('lies at the run where nothing reaches out to its side', () => {
    // As without a head: 0.79276 - 0.06096 - 0.3 on the right.
    expect(at('left', 'right')).toMatchObject([{ parts: ['s3'], values: { depth: 0.4318 } }])
    expect(at('right', 'left')).toMatchObject([{ parts: ['s3'], values: { depth: 0.55372 } }])
  })
  it('lies at either end of a T', () => {
    const parts = (['left', 'right'] as const).map((side) => at('tee', side)[0]!.parts)
    expect(parts.flat().every((id) => id.startsWith('h'))).toBe(true)
    expect(parts[0]).not.toEqual(parts[1])
  })
})

describe('water under the keel', () => {
  /** Sections of the straight dock: the last from 7.9276 to 10.366 m, its middle at 9.1468 m. */
  const under = (
    length: number,
    draught: number,
    side: 'left' | 'right',
    site: Record<string, unknown>,
    dock: Record<string, unknown> = {},
  ) => {
    const kit = kitOf(dock, { ...site })
    const dockOf = assessKit(kit)
    return underKeel(dockOf.sections, kit.bed, { length, draught, side }, -0.3)
  }
  const falling = {
    soundings: [
      { distance: 0, depth: 0 },
      { distance: 60, depth: 6 },
    ],
    crossSlope: 0.1,
  }
  it('is the least along its whole length, on its side', () => {
    // 5 m long: from 6.6468 m on: 0.66468 + 0.06096 - 0.3 - 0.2; on the right 0.12192 less. Longer: 0.1 shallower a meter of half its length.
    expect(under(5, 0.2, 'left', falling)).toBeCloseTo(0.22564, 5)
    expect(under(5, 0.2, 'right', falling)).toBeCloseTo(0.10372, 5)
    expect(under(9, 0.2, 'left', falling)).toBeCloseTo(0.02564, 5)
  })
  it('is less than nothing where it touches', () => {
    expect(under(5, 0.6, 'left', falling)).toBeCloseTo(-0.17436, 5)
  })
  it('finds a shoal between its ends', () => {
    const shoal = {
      soundings: [
        [0, 1.2],
        [9, 1.2],
        [9.03, 0.7],
        [9.06, 1.2],
        [60, 1.2],
      ].map(([distance, depth]) => ({ distance, depth })),
    }
    expect(under(5, 0.2, 'left', shoal)).toBeCloseTo(0.2, 5)
  })
  it('is at the outer end of a head on its side', () => {
    // y = 3.0734 m, middle of the head at 9.7564 m: from 7.2564 m on: 0.72564 + 0.30734 - 0.3 - 0.2.
    const head = { head: { shape: 'left', sections: 1 } }
    expect(under(5, 0.2, 'left', falling, head)).toBeCloseTo(0.53298, 5)
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
