/**
 * Limits of sag and words for sway.
 *
 * - International Building Code 2018 table 1604.3, floor members: l/360 live, l/240 dead and live; read. Cantilevers: footnote i, memory.
 * - Beam formulas of the AISC Manual, table 3-23 (exact): a 3 x 3 x 1/8 in tube of aluminum on 96 in under 40 psf on 2 ft bends to l/261.
 * - Sétra, Technical guide on footbridges (2006): 35 N sideways by a walker, comfort limit 0.3 m/s²; memory. The words are judgment.
 */
import { describe, expect, it } from 'vitest'
import { bendingProperties } from '../../rules/catalog/section-properties.ts'
import { SWAY_STIFFNESS, sagLimit, swayWord } from '../../rules/structure/strength/serviceability.ts'

const INCH = 0.0254

describe('sag (IBC 2018 table 1604.3)', () => {
  it('is held to span/360 under live load and span/240 under all', () => {
    expect(sagLimit(3.6, 'live')).toBeCloseTo(0.01, 12)
    expect(sagLimit(2.4, 'dead-and-live')).toBeCloseTo(0.01, 12)
    expect(sagLimit(1.2, 'dead-and-live', true)).toBeCloseTo(0.01, 12)
  })

  it('of a 3 x 3 x 1/8 in tube on 8 ft under 40 psf on 2 ft is span/261: too much as live load, little enough as all', () => {
    const side = 3 * INCH
    const stock = { shape: 'rect-tube', width: side, height: side, wall: INCH / 8, material: '' } as const
    const span = 96 * INCH
    const load = (40 * 4.4482216 * 2) / 0.3048
    const sag = (5 * load * span ** 4) / (384 * 10_100 * 6.894757e6 * bendingProperties(stock).Iy)
    expect(Math.abs(span / sag / 261 - 1)).toBeLessThan(0.002)
    expect(sag).toBeGreaterThan(sagLimit(span, 'live'))
    expect(sag).toBeLessThan(sagLimit(span, 'dead-and-live'))
  })
})

describe('sway', () => {
  it('is told by how stiff the deck is, not by how hard it was pushed', () => {
    for (const push of [50, 200, 890]) {
      expect(swayWord(push / (SWAY_STIFFNESS.notFelt + 1), push)).toBe('not-felt')
      expect(swayWord(push / (SWAY_STIFFNESS.notFelt - 1), push)).toBe('felt')
      expect(swayWord(-push / (SWAY_STIFFNESS.loose + 1), push)).toBe('felt')
      expect(swayWord(push / (SWAY_STIFFNESS.loose - 1), push)).toBe('loose')
    }
    expect(swayWord(0)).toBe('not-felt')
  })

  it('has its limits where a walker’s 35 N, doubled, gives 0.05 and 0.3 m/s² at once a second', () => {
    const stiffness = (acceleration: number) => (2 * 35 * (2 * Math.PI) ** 2) / acceleration
    expect(Math.abs(stiffness(0.05) / SWAY_STIFFNESS.notFelt - 1)).toBeLessThan(0.12)
    expect(Math.abs(stiffness(0.3) / SWAY_STIFFNESS.loose - 1)).toBeLessThan(0.12)
  })
})
