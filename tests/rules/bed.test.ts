/** The lake bed from soundings. */
import { describe, expect, it } from 'vitest'
import { demoDesign, makeBed } from '../../rules/index.ts'
import { errorsOf } from '../../rules/site/error-at.ts'
import { parsedDesign } from '../support/arbitraries.ts'

const bedOf = (site: Record<string, unknown>) =>
  makeBed(parsedDesign({ ...demoDesign, site: { ...demoDesign.site, ...site } }).site)
const line = [
  { distance: -2, depth: -0.5 },
  { distance: 0, depth: 0 },
  { distance: 4, depth: 0.6 },
  { distance: 8, depth: 1.4 },
]

describe('soundings on one line', () => {
  const bed = bedOf({ soundings: line })
  it.each([
    [2, -0.3, 'between two, in proportion'],
    [4, -0.6, 'at one, its depth'],
    [-1, 0.25, 'on the bank, its height'],
    [-6, 1.5, 'landward, on with the bank: 0.25 in 1'],
    [10, -1.8, 'lakeward, on with the last slope: 0.2 in 1'],
  ])('at %d m give %d m: %s', (x, z) => {
    expect(bed.bedAt(x, 0)).toBeCloseTo(z, 12)
    expect(bed.bedAt(x, 7)).toBeCloseTo(z, 12)
  })

  it('may come in any order', () => {
    const shuffled = bedOf({ soundings: [line[2], line[0], line[3], line[1]] })
    for (let x = -5; x < 12; x += 0.37) expect(shuffled.bedAt(x, 0)).toBe(bed.bedAt(x, 0))
  })

  it('that rise at the end go on level', () => {
    const hump = bedOf({ soundings: [...line, { distance: 12, depth: 1.1 }] })
    expect(hump.bedAt(30, 0)).toBeCloseTo(-1.1, 12)
  })

  it('with a cross slope are deeper to the left', () => {
    const tilted = bedOf({ soundings: line.map((s) => ({ ...s, offset: 1 })), crossSlope: 0.1 })
    expect(tilted.bedAt(4, 1)).toBeCloseTo(-0.6, 12)
    expect(tilted.bedAt(4, 3)).toBeCloseTo(-0.8, 12)
  })

  it('that begin in the water have the water edge added', () => {
    const wet = bedOf({ soundings: line.slice(2) })
    expect(wet.bedAt(0, 0)).toBe(0)
    expect(wet.bedAt(2, 0)).toBeCloseTo(-0.3, 12)
  })

  it('stand on firm bottom where it was sounded', () => {
    const soft = bedOf({ soundings: line.map((s, i) => (i === 2 ? { ...s, firm: 1 } : s)) })
    expect(soft.firmAt(4, 0)).toBeCloseTo(-1, 12)
    expect(soft.bedAt(4, 0)).toBeCloseTo(-0.6, 12)
    expect(soft.firmAt(2, 0)).toBeCloseTo(-0.5, 12)
    expect(soft.firmAt(8, 0)).toBeCloseTo(-1.4, 12)
  })

  it('tell the bottom of the nearest', () => {
    const mixed = bedOf({
      soundings: line.map((s, i) => (i === 3 ? { ...s, bottom: 'muck' } : s)),
      bottom: 'sand',
    })
    expect([mixed.bottomAt(5.9, 3), mixed.bottomAt(6.1, 3), mixed.bottomAt(40, 0)]).toEqual([
      'sand',
      'muck',
      'muck',
    ])
  })
})

describe('a shore', () => {
  it('with a bank of a height is level at its top', () => {
    const bank = bedOf({ soundings: line, shore: { kind: 'bank', height: 0.8 } })
    expect(bank.bedAt(-3, 0)).toBeCloseTo(0.75, 12)
    expect(bank.bedAt(-4, 0)).toBeCloseTo(0.8, 12)
  })

  it('with a wall is at its height behind the water edge, and as deep as sounded before it', () => {
    const wall = bedOf({
      soundings: [
        { distance: 0, depth: 0.5 },
        { distance: 4, depth: 0.9 },
      ],
      shore: { kind: 'wall', height: 0.7 },
    })
    expect(wall.bedAt(-0.001, 0)).toBe(0.7)
    expect(wall.bedAt(-50, 0)).toBe(0.7)
    expect(wall.bedAt(0, 0)).toBe(-0.5)
    expect(wall.bedAt(2, 0)).toBeCloseTo(-0.7, 12)
  })
})

describe('soundings off one line', () => {
  // The plane z = -0.15 x - 0.05 y, sampled unevenly: a shore that runs aslant.
  const plane = (x: number, y: number) => -0.15 * x - 0.05 * y
  const spots = [
    [-1, -3],
    [-1.2, 0.4],
    [-0.8, 3.1],
    [2.2, -2.7],
    [2.6, 0.3],
    [3.1, 2.9],
    [7.4, -3.2],
    [7.9, 0.1],
    [8.2, 3.3],
  ]
  const bed = bedOf({
    soundings: spots.map(([distance, offset]) => ({ distance, offset, depth: -plane(distance!, offset!) })),
  })

  const errors = errorsOf(bed)
  it('give back a plane within them, nearly: between two places the bed is straight along and across, not aslant', () => {
    expect(bed.mode).toBe('area')
    for (const [x, y] of spots) expect(bed.bedAt(x!, y!)).toBeCloseTo(plane(x!, y!), 9)
    for (let x = -0.7; x < 7; x += 0.31)
      for (let y = -2.5; y < 2.5; y += 0.29) {
        expect(Math.abs(bed.bedAt(x, y) - plane(x, y))).toBeLessThan(0.03)
        expect(Math.abs(bed.bedAt(x, y) - plane(x, y))).toBeLessThan(1.96 * errors.at(x, y))
      }
  })

  it('over a grid give back its plane within 5 mm', () => {
    const grid = bedOf({
      soundings: [-2, 0, 3, 7].flatMap((distance) =>
        [-3, 0, 2].map((offset) => ({ distance, offset, depth: -plane(distance, offset) })),
      ),
    })
    for (let x = -5; x < 12; x += 0.31)
      for (let y = -3; y <= 2; y += 0.23) expect(Math.abs(grid.bedAt(x, y) - plane(x, y))).toBeLessThan(5e-3)
  })

  it('go on lakeward with the slope there, and level to the sides', () => {
    expect(Math.abs(bed.bedAt(12, 3.3) - plane(12, 3.3))).toBeLessThan(0.02)
    expect(bed.bedAt(2.9, 20)).toBeGreaterThan(plane(2.9, 20))
    expect(bed.bedAt(2.9, 20)).toBe(bed.bedAt(2.9, 3.3))
  })

  it('keep the cross slope beside them', () => {
    const list = spots.map(([distance, offset]) => ({
      distance,
      offset: offset! / 10,
      depth: 0.1 * distance!,
    }))
    const tilted = bedOf({ soundings: list, crossSlope: 0.1 })
    expect(tilted.mode).toBe('area')
    expect(tilted.bedAt(4, 5) - tilted.bedAt(4, 2)).toBeCloseTo(-0.3, 9)
  })

  it('are continuous across the edge of what was sounded', () => {
    let before = bed.bedAt(-6, 1.234)
    for (let x = -6; x < 14; x += 0.001) {
      const z = bed.bedAt(x, 1.234)
      expect(Math.abs(z - before)).toBeLessThan(0.002)
      before = z
    }
  })

  it('on a line that is not square to the shore count as a line', () => {
    const oblique = bedOf({ soundings: line.map((s) => ({ ...s, offset: s.distance / 2 })) })
    expect(oblique.mode).toBe('line')
    expect(oblique.bedAt(4, -3)).toBeCloseTo(-0.6, 12)
  })
})
