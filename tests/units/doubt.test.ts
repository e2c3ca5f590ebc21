import { describe, expect, it } from 'vitest'
import { doubtOf } from '../../src/units/doubt.ts'

const FOOT = 0.3048

describe('a length that is asked about', () => {
  it('is a plain number of feet that reads like inches, or of meters like centimeters', () => {
    expect(doubtOf('depth', 18 * FOOT, '18', 'imperial')).toEqual({
      why: 'smaller-unit',
      instead: 18 * 0.0254,
    })
    expect(doubtOf('height', 12 * FOOT, ' 12 ', 'imperial')?.instead).toBeCloseTo(FOOT, 9)
    expect(doubtOf('depth', 150, '150', 'metric')).toEqual({ why: 'smaller-unit', instead: 1.5 })
    for (const [typed, feet] of [
      ['11', 11],
      ['18 ft', 18],
      ["18'", 18],
    ] as const)
      expect(doubtOf('depth', feet * FOOT, typed, 'imperial')).toBeNull()
    expect(doubtOf('distance', 18 * FOOT, '18', 'imperial')).toBeNull()
    expect(doubtOf('depth', 18, '18', 'metric')).toBeNull()
  })

  it('is deeper than 60 ft, farther than 1,000 ft, higher than 30 ft', () => {
    for (const [kind, most] of [
      ['depth', 60],
      ['distance', 1000],
      ['height', 30],
    ] as const) {
      expect(doubtOf(kind, most * FOOT, `${most} ft`, 'imperial')).toBeNull()
      expect(doubtOf(kind, (most + 1) * FOOT, `${most + 1} ft`, 'imperial')).toEqual({ why: kind })
      expect(doubtOf(kind, -(most + 1) * FOOT, `${most + 1} ft`, 'imperial')).toEqual({ why: kind })
    }
  })
})
