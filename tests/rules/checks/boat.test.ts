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
import { berthsOf, hullBox, mooredOf } from '../../../rules/layout/berth.ts'
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

  it('is asked where it is shallowest anywhere under it, at the low level', () => {
    // The third section's middle is 9.1468 m out: 5 m of boat begin at 6.6468 m. On the left it is shallowest at the edge, 0.6096 m off:
    // 0.66468 + 0.06096 - 0.3; on the right at its far side, 0.35 x 5 + 0.1 m farther off: 0.66468 - 0.24596 - 0.3.
    const left = kitOf(boat('left', 0.6), falling)
    expect(found('boat-aground', left)).toMatchObject([
      { parts: ['s3'], values: { depth: 0.42564, draught: 0.6, short: 0.17436 } },
    ])
    const right = kitOf(boat('right', 0.6), falling)
    expect(found('boat-aground', right)).toMatchObject([
      { values: { depth: 0.11872, draught: 0.6, short: 0.48128 } },
    ])
    expect(found('boat-aground', kitOf(boat('left', 0.4256), falling))).toEqual([])
    expect(found('boat-aground', kitOf({}, falling))).toEqual([])
  })

  it('is helped by as many sections as it takes, each 0.24638 m deeper, on a straight dock alone', () => {
    // On the left 0.42564 + n x 0.24638 >= 1: three; on the right 0.11872: four.
    expect(found('boat-aground', kitOf(boat('left', 1), falling))[0]!.patch).toEqual(put('/dock/sections', 6))
    expect(found('boat-aground', kitOf(boat('right', 1), falling))[0]!.patch).toEqual(
      put('/dock/sections', 7),
    )
    // Twelve more are 2.95656 m deeper, 3.3822 m.
    expect(found('boat-aground', kitOf(boat('left', 3.38), falling))[0]!.patch).toEqual(
      put('/dock/sections', 15),
    )
    expect(found('boat-aground', kitOf(boat('left', 3.39), falling))[0]!.patch).toBeNull()
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
    // y = 0.6096 + 0.0254 + 2.4384 = 3.0734 m, middle of the head at 9.7564 m, the boat from 7.2564 m: 0.72564 + 0.30734 - 0.3. On the right
    // to y = -4.9234 m: 0.72564 - 0.49234 - 0.3 is the bank.
    expect(at('left', 'left')).toMatchObject([{ parts: ['h1'], values: { depth: 0.73298 } }])
    expect(at('right', 'right')).toMatchObject([{ parts: ['h1'], values: { depth: 0, short: 9.0667 } }])
  })
  it('lies at the run where nothing reaches out to its side', () => {
    // As without a head.
    expect(at('left', 'right')).toMatchObject([{ parts: ['s3'], values: { depth: 0.11872 } }])
    expect(at('right', 'left')).toMatchObject([{ parts: ['s3'], values: { depth: 0.42564 } }])
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
    const boat = { length, draught, side, height: 1, mass: 400 }
    const kit = kitOf({ ...dock, boat }, { ...site })
    // From the Dock as it is published, as a page has it.
    const [berth] = berthsOf(kit.design.dock, mooredOf(assessKit(kit).sections))
    return underKeel(berth!, kit.bed, -0.3)
  }
  const falling = {
    soundings: [
      { distance: 0, depth: 0 },
      { distance: 60, depth: 6 },
    ],
    crossSlope: 0.1,
  }
  it('is the least along its whole length and breadth, on its side', () => {
    // 5 m long: from 6.6468 m on: 0.66468 + 0.06096 - 0.3 - 0.2; on the right, 1.85 m farther off, 0.66468 - 0.24596 - 0.3 - 0.2. Longer: 0.1
    // shallower a meter of half its length.
    expect(under(5, 0.2, 'left', falling)).toBeCloseTo(0.22564, 5)
    expect(under(5, 0.2, 'right', falling)).toBeCloseTo(-0.08128, 5)
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
    // Its middle is 5.4638 m out, the boat begins at 2.9638 m: 0.29638 - 0.3 and a tenth of 6.7818 m, or of 5.5626 - 1.85 = 3.7126 m.
    expect(at('left')).toMatchObject([{ parts: ['e'], values: { depth: 0.67456, draught: 9 }, patch: null }])
    expect(at('right')).toMatchObject([{ parts: ['e'], values: { depth: 0.36764, draught: 9 }, patch: null }])
  })
})

describe('boats at edges of their own', () => {
  const size = { length: 5, beam: 2, height: 1, draught: 0.3, mass: 400 }
  const at = (place: Record<string, unknown>, id = 'a') => ({ id, ...size, ...place })
  const boxes = (dock: Record<string, unknown>) => {
    const { design, layout } = kitOf(dock)
    return berthsOf(design.dock, layout.placed).map((berth) => hullBox(berth))
  }
  const close = (box: Record<string, number>) =>
    Object.fromEntries(Object.entries(box).map(([name, value]) => [name, expect.closeTo(value, 6)]))

  it('lie a hand’s breadth off them, along them, about their middle or where it is said', () => {
    // The third section: 7.9276 to 10.366 m, half a width of 0.6096 m; 0.1 m off.
    expect(boxes({ boats: [at({ section: 's3', edge: 'left' })] })).toEqual([
      close({ x0: 6.6468, x1: 11.6468, y0: 0.7096, y1: 2.7096 }),
    ])
    expect(boxes({ boats: [at({ section: 's3', edge: 'left', along: 0 })] })).toEqual([
      close({ x0: 5.4276, x1: 10.4276, y0: 0.7096, y1: 2.7096 }),
    ])
    // Across the end, from its left corner: half a meter from there its middle is at y = 0.1096 m.
    expect(boxes({ boats: [at({ section: 's3', edge: 'end', along: 0.5 })] })).toEqual([
      close({ x0: 10.466, x1: 12.466, y0: -2.3904, y1: 2.6096 }),
    ])
  })
  it('and the one at the lake end are as many as there are', () => {
    const boat = { ...size, side: 'right' }
    expect(boxes({ boat, boats: [at({ section: 's3', edge: 'left' })] })).toEqual([
      close({ x0: 6.6468, x1: 11.6468, y0: -2.7096, y1: -0.7096 }),
      close({ x0: 6.6468, x1: 11.6468, y0: 0.7096, y1: 2.7096 }),
    ])
  })
  it('whose section is gone, or is the ramp, are told of and go where they float', () => {
    const gone = kitOf({ boats: [at({ section: 's7', edge: 'left', along: 1 })] })
    expect(found('unknown-id', gone)).toMatchObject([
      {
        values: { id: 's7', what: 'boat-section' },
        patch: [
          { op: 'replace', path: '/dock/boats/0/section', value: 's3' },
          { op: 'replace', path: '/dock/boats/0/edge', value: 'left' },
          { op: 'remove', path: '/dock/boats/0/along' },
        ],
      },
    ])
    expect(boxes({ boats: [at({ section: 's7', edge: 'left' })] })).toEqual([])
    const onRamp = kitOf({ ramp: true, boats: [at({ section: 's1', edge: 'left' })] })
    expect(found('unknown-id', onRamp)).toHaveLength(1)
    // 1.2 m of water, 0.3 m lower: none floats anywhere.
    const nowhere = kitOf({ boats: [{ ...at({ section: 's7', edge: 'left' }), draught: 0.95 }] })
    expect(found('unknown-id', nowhere)[0]!.patch).toEqual([{ op: 'remove', path: '/dock/boats/0' }])
  })
  it('aground go to the edge farthest out that is free and deep enough', () => {
    // A bed that falls 0.1 in 1: at the first section's start edge it is 0.3 m deep less the lake's 0.3.
    const falling = { soundings: [0, 60].map((distance) => ({ distance, depth: distance / 10 })) }
    const boats = [at({ section: 's1', edge: 'start' }), at({ section: 's3', edge: 'left' }, 'b')]
    expect(found('boat-aground', kitOf({ boats }, falling))).toMatchObject([
      {
        parts: ['s1'],
        patch: [
          { path: '/dock/boats/0/section', value: 's3' },
          { path: '/dock/boats/0/edge', value: 'right' },
        ],
      },
    ])
  })
  it('are stepped down to at the lowest side of them', () => {
    const low = [
      at({ section: 's3', edge: 'left' }),
      { ...at({ section: 's3', edge: 'right' }, 'b'), height: 0.1 },
    ]
    // 0.45 + 0.3 - 0.1.
    expect(found('step-to-boat', kitOf({ boats: low }))).toMatchObject([{ values: { step: 0.65 } }])
    expect(found('step-to-boat', kitOf({ boats: low.slice(0, 1) }))).toEqual([])
  })
})
