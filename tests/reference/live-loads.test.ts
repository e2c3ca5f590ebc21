/**
 * Loads against the sources that they name.
 *
 * - IRC 2018 table R301.5: decks 40 psf (1.92 kPa), guards 200 lb (read in code pages quoting earlier editions; unchanged).
 * - UFC 4-152-01 (28 July 2005) 7-3.3: landing floats 50 psf (244 kg/m²), read.
 * - ASCE 7-16 table 4.3-1: walkways and elevated platforms 60 psf (2.87 kPa), read second-hand for 7-22; eq. 26.10-1: q = 0.613 V²
 *   (N/m², m/s), 0.00256 V² (lb/ft², mi/h); from memory.
 */
import { describe, expect, it } from 'vitest'
import {
  boatWindBeam,
  boatWindBow,
  bumpEnergy,
  bumpForce,
  DECK_LOADS,
  GUARD_PUSH,
  GUST,
  WIND_DRAG,
  windPressure,
} from '../../rules/structure/strength/loads-published.ts'

describe('deck loads', () => {
  it.each([
    [40, 1.92],
    [50, 2.39],
    [60, 2.87],
  ])('%f psf is %f kPa', (psf, kPa) => {
    const load = DECK_LOADS.find((one) => one.psf === psf)!
    expect(load.pressure / 1000).toBeCloseTo(kPa, 1)
    expect(Math.abs(load.pressure / 1000 / kPa - 1)).toBeLessThan(0.003)
  })

  it('50 psf is 244 kg/m², as UFC 4-152-01 prints it', () => {
    expect(DECK_LOADS[1]!.pressure / 9.80665).toBeCloseTo(244, 0)
  })

  it('are led by that for decks of houses', () => {
    expect(DECK_LOADS[0]!.basis).toContain('IRC 2018')
  })

  it('the guard load of 200 lb is 890 N', () => {
    expect(GUARD_PUSH).toBeCloseTo(889.6, 1)
  })
})

describe('wind', () => {
  it('presses by 0.613 V² (ASCE 7-16 eq. 26.10-1), which is its 0.00256 V² in psf and mph', () => {
    expect(windPressure(20)).toBeCloseTo(245.2, 6)
    const mph = 0.44704
    for (const speed of [30, 60, 115])
      expect(Math.abs(windPressure(speed * mph) / 47.880259 / (0.00256 * speed ** 2) - 1)).toBeLessThan(0.002)
  })

  it('gusts to 1.44 of its ten-minute mean (Durst)', () => {
    expect(GUST).toBeCloseTo(1.44, 2)
  })

  it('takes hold of a slender pipe by 1.2 and of a square one by 2 (ASCE 7-16 figure 29.4-1)', () => {
    expect([WIND_DRAG.round, WIND_DRAG.square]).toEqual([1.2, 2])
  })

  it('on a 6 m boat 1.5 m high at 15 m/s is about a kilonewton from the side, and far less on its bow', () => {
    const boat = { length: 6, beam: 2.1, height: 1.5, mass: 1200 }
    // 0.613 · 225 · 1.2 · 0.7 · 9 m²
    expect(boatWindBeam(boat, 15)).toBeCloseTo(1042.7, 1)
    expect(boatWindBow(boat, 15)).toBeCloseTo(1042.7 * 0.5 * 0.35, 1)
  })
})

describe('a bump (½ m v², common practice in berthing design)', () => {
  it('of 1200 kg at 0.3 m/s holds 40.5 J, of which a spring of 20 kN/m makes 1273 N', () => {
    expect(bumpEnergy(1200)).toBeCloseTo(40.5, 9)
    const force = bumpForce(40.5, 20_000)
    expect(force).toBeCloseTo(1272.8, 1)
    // What the spring has taken up is what the boat brought.
    expect(force ** 2 / 20_000 / 2).toBeCloseTo(40.5, 9)
  })
})
