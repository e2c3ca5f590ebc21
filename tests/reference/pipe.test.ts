/**
 * Pipe and tube against published tables.
 *
 * - Dimensions: ASME B36.10M (welded and seamless pipe), Schedule 40, read in public copies.
 * - Properties: R. L. Mott, Machine Elements in Mechanical Design, 4th ed., Table A16-6 (A, I, S, r for NPS 1-1/2 and 2; 3-4 figures).
 * - Aluminum weight a foot: 0.098 lb/in3 as the Aluminum Design Manual lists; NPS 1 is read from a metal dealer's table, NPS 1-1/2
 *   and 2 are from memory and equal to what follows from the dimensions.
 * - Square tube 3 x 2 x 1/4, sharp corners: a public structural table (its Ix is 0.5 % high).
 */
import { describe, expect, it } from 'vitest'
import { demoCatalog, sectionProperties } from '../../rules/index.ts'

const INCH = 0.0254
const POUND = 0.45359237
const FOOT = 0.3048

/** NPS, outside diameter and wall (in) of Schedule 40, ASME B36.10M. */
const SCHEDULE_40: Readonly<Record<string, readonly [od: number, wall: number]>> = {
  '1': [1.315, 0.133],
  '1-1/2': [1.9, 0.145],
  '2': [2.375, 0.154],
  '2-1/2': [2.875, 0.203],
  '3': [3.5, 0.216],
}

const pipe = (nps: string) => {
  const [od, wall] = SCHEDULE_40[nps]!
  return sectionProperties({
    shape: 'round-tube',
    diameter: od * INCH,
    wall: wall * INCH,
    material: '6061-T6',
  })
}
const off = (actual: number, published: number) => Math.abs(actual / published - 1)

describe('the demo shop’s pipe', () => {
  it.each([
    ['pipe-2', '2'],
    ['pipe-2.5', '2-1/2'],
    ['post-pipe', '2'],
  ])('%s is NPS %s Schedule 40 (ASME B36.10M)', (code, nps) => {
    const stock = demoCatalog.stock[code]
    if (stock?.shape !== 'round-tube') throw new Error(code)
    const [od, wall] = SCHEDULE_40[nps]!
    // The catalog keeps micrometers.
    expect(Math.abs(stock.diameter - od * INCH)).toBeLessThanOrEqual(0.5e-6 + 1e-12)
    expect(Math.abs(stock.wall - wall * INCH)).toBeLessThanOrEqual(0.5e-6 + 1e-12)
  })

  it('lets a leg slide in its sleeve', () => {
    const { 'pipe-2': leg, 'pipe-2.5': sleeve } = demoCatalog.stock
    if (leg?.shape !== 'round-tube' || sleeve?.shape !== 'round-tube') throw new Error('stock')
    const play = sleeve.diameter - 2 * sleeve.wall - leg.diameter
    expect(play).toBeGreaterThan(0.001)
    expect(play).toBeLessThan(0.004)
  })
})

describe('section properties of pipe (Mott, 4th ed., Table A16-6)', () => {
  // A in2, I in4, S in3, r in
  it.each([
    ['1-1/2', 0.799, 0.3099, 0.3262, 0.623],
    ['2', 1.075, 0.6658, 0.5607, 0.787],
    ['3', 2.228, 3.017, 1.724, 1.163],
  ])('NPS %s', (nps, A, I, S, r) => {
    const p = pipe(nps)
    const od = SCHEDULE_40[nps]![0] * INCH
    expect(off(p.area, A * INCH ** 2)).toBeLessThan(0.002)
    expect(off(p.Iy, I * INCH ** 4)).toBeLessThan(0.002)
    expect(p.Iz).toBe(p.Iy)
    expect(off(p.Iy / (od / 2), S * INCH ** 3)).toBeLessThan(0.002)
    expect(off(Math.sqrt(p.Iy / p.area), r * INCH)).toBeLessThan(0.002)
  })

  it.each([
    ['1', 0.58, 0.005],
    ['1-1/2', 0.94, 0.002],
    ['2', 1.264, 0.002],
  ])('weight of NPS %s in aluminum, lb/ft', (nps, published, tolerance) => {
    const density = (0.098 * POUND) / INCH ** 3
    expect(off((pipe(nps).area * density * FOOT) / POUND, published)).toBeLessThan(tolerance)
  })
})

describe('section properties of square-cornered tube', () => {
  it('3 x 2 x 1/4 in, standing and lying', () => {
    const p = sectionProperties({
      shape: 'rect-tube',
      width: 2 * INCH,
      height: 3 * INCH,
      wall: INCH / 4,
      material: '6061-T6',
    })
    expect(off(p.area, 2.25 * INCH ** 2)).toBeLessThan(0.006)
    // Bending up and down is about the width axis: the strong way of a tube that stands.
    expect(off(p.Iy, 2.56 * INCH ** 4)).toBeLessThan(0.006)
    expect(off(p.Iz, 1.3 * INCH ** 4)).toBeLessThan(0.006)
    const lying = sectionProperties({
      shape: 'rect-tube',
      width: 3 * INCH,
      height: 2 * INCH,
      wall: INCH / 4,
      material: '6061-T6',
    })
    expect(lying.Iy).toBeCloseTo(p.Iz, 15)
    expect(lying.Iz).toBeCloseTo(p.Iy, 15)
  })
})
