/** Speeds of wind as they are typed and told, and distances over water. */
import { describe, expect, it } from 'vitest'
import { english, formatDistance, formatFigure, formatSpeed, formatTime } from '../../rules/index.ts'
import { parseLength } from '../../src/units/parse.ts'
import { parseSpeed } from '../../src/units/speed.ts'
import { snapUp } from '../../src/units/steps.ts'

describe('a speed', () => {
  it.each([
    ['22 mph', 9.83488],
    ['22', 9.83488],
    [' 10 m/s ', 10],
    ['10,5 m/s', 10.5],
    ['20 kn', 10.28889],
    ['20 KNOTS', 10.28889],
    ['36 km/h', 10],
    ['.5', 0.22352],
  ])('typed as "%s" is %f m/s on a screen in feet', (typed, speed) => {
    expect(parseSpeed(typed, 'imperial')).toBeCloseTo(speed, 4)
  })

  it('without a unit is in that of the screen', () => {
    expect(parseSpeed('10', 'metric')).toBe(10)
  })

  it.each(['', 'fast', '10 ft', '-3', '1 2', '10 m/s 3', 'mph'])('is not what "%s" says', (typed) => {
    expect(parseSpeed(typed, 'imperial')).toBeNull()
  })

  it('is told in miles per hour or meters a second', () => {
    expect(formatSpeed(10, english('imperial'))).toBe('22 mph')
    expect(formatSpeed(10, english('metric'))).toBe('10 m/s')
    expect(formatSpeed(9.83488, english('metric'))).toBe('9.8 m/s')
  })
})

describe('a distance over water', () => {
  it.each([
    [120, '390 ft', '120 m'],
    [300, '980 ft', '300 m'],
    [400, '0.25 mi', '400 m'],
    [1800, '1.1 mi', '1.8 km'],
    [15_000, '9.3 mi', '15 km'],
  ])('of %f m is told as %s or %s', (m, imperial, metric) => {
    expect(formatDistance(m, english('imperial'))).toBe(imperial)
    expect(formatDistance(m, english('metric'))).toBe(metric)
    expect(formatFigure({ value: m, unit: 'fetch' }, english('metric'))).toBe(metric)
  })

  it('is typed in miles and kilometers as well', () => {
    expect(parseLength('1.5 mi', 'ft')).toEqual({ ok: true, meters: 1.5 * 1609.344 })
    expect(parseLength('2 miles', 'ft')).toEqual({ ok: true, meters: 3218.688 })
    expect(parseLength('1,8 km', 'm')).toEqual({ ok: true, meters: 1800 })
    expect(parseLength('2 km 300', 'm').ok).toBe(false)
  })
})

describe('a time', () => {
  it.each([
    [1.049, '1.0 s'],
    [456, '8 min'],
    [12_600, '3.5 h'],
  ])('of %f s is told as %s', (s, told) => {
    expect(formatTime(s, english('metric'))).toBe(told)
  })
})

describe('a height that must clear something', () => {
  it('comes to rest on the next half inch or centimeter, never under it', () => {
    expect(snapUp(0.439612, 'metric')).toBe(0.44)
    expect(snapUp(0.439612, 'imperial')).toBeCloseTo(17.5 * 0.0254, 7)
    expect(snapUp(0.44, 'metric')).toBe(0.44)
  })
})
