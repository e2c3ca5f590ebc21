import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { english, feetInches, fixed } from '../../rules/index.ts'
import { bareUnit, type LengthUnit, parseLength } from '../../src/units/parse.ts'
import { keyStep, snap } from '../../src/units/steps.ts'

const FT = 0.3048
const IN = 0.0254

const good: readonly (readonly [text: string, bare: LengthUnit, meters: number])[] = [
  ["7'2", 'ft', 7 * FT + 2 * IN],
  ['7 ft 2 1/2', 'ft', 7 * FT + 2.5 * IN],
  ['7\' 2-1/2"', 'ft', 7 * FT + 2.5 * IN],
  ['7\'-2"', 'ft', 7 * FT + 2 * IN],
  ['7’ 2”', 'ft', 7 * FT + 2 * IN],
  ['7′2″', 'm', 7 * FT + 2 * IN],
  ["7'2''", 'ft', 7 * FT + 2 * IN],
  ['7 ft. 2 in.', 'ft', 7 * FT + 2 * IN],
  ['7feet2inches', 'ft', 7 * FT + 2 * IN],
  ['1 foot', 'm', FT],
  ['86"', 'ft', 86 * IN],
  ['4 pi 2 po', 'm', 4 * FT + 2 * IN],
  ['3 pieds', 'm', 3 * FT],
  ['7 pies 2 pulg.', 'm', 7 * FT + 2 * IN],
  ['2 Fuß', 'm', 2 * FT],
  ['1,5 mètres', 'ft', 1.5],
  ['86 in', 'm', 86 * IN],
  ['1 inch', 'ft', IN],
  ['2 1/2 in', 'ft', 2.5 * IN],
  ['2½"', 'ft', 2.5 * IN],
  ['7\' 2½"', 'ft', 7 * FT + 2.5 * IN],
  ['½ in', 'ft', 0.5 * IN],
  ['3/8"', 'ft', 0.375 * IN],
  ['1 1⁄4 in', 'ft', 1.25 * IN],
  ['7.2ft', 'm', 7.2 * FT],
  ['7,2ft', 'm', 7.2 * FT],
  ['7 2', 'ft', 7 * FT + 2 * IN],
  ['7 2 1/2', 'ft', 7 * FT + 2.5 * IN],
  ['7 2 in', 'ft', 7 * FT + 2 * IN],
  ['7', 'ft', 7 * FT],
  ['7½', 'ft', 7.5 * FT],
  ['.5', 'ft', 0.5 * FT],
  ['7,2 m', 'ft', 7.2],
  ['2.1m', 'ft', 2.1],
  ['2.1', 'm', 2.1],
  ['2,1', 'm', 2.1],
  ['210 cm', 'ft', 2.1],
  ['210cm', 'm', 2.1],
  ['2100 mm', 'm', 2.1],
  ['2 m 10 cm', 'ft', 2.1],
  ['2m10', 'm', 2.1],
  ['3 metres', 'm', 3],
  ['45', 'cm', 0.45],
  ['-3', 'm', -3],
  ['−0.9 m', 'm', -0.9],
  ["-7'2", 'ft', -(7 * FT + 2 * IN)],
  ['  1\u00a0m ', 'm', 1],
  ['0', 'ft', 0],
]

const bad: readonly (readonly [text: string, bare: LengthUnit, fault: string])[] = [
  ['', 'ft', 'empty'],
  ['   ', 'm', 'empty'],
  ['deep', 'ft', 'not-a-length'],
  ['7 yards', 'ft', 'not-a-length'],
  ['7-2', 'ft', 'not-a-length'],
  ['7 2', 'm', 'not-a-length'],
  ['1.234.5', 'm', 'not-a-length'],
  ['1,234.5', 'm', 'not-a-length'],
  ['1e3', 'm', 'not-a-length'],
  ['7 ft 2 in 1 in', 'ft', 'not-a-length'],
  ['7.5 ft 2 in', 'ft', 'not-a-length'],
  ['1/0', 'ft', 'not-a-length'],
  ['--7', 'ft', 'not-a-length'],
  ['7 ft 12 in', 'ft', 'inches-over'],
  ['2 m 100 cm', 'm', 'inches-over'],
  ['7 ft 2 cm', 'ft', 'units-mixed'],
  ['2 m 2 in', 'm', 'units-mixed'],
]

describe('a length as typed', () => {
  it.each(good)('reads %j (plain numbers in %s)', (text, bare, meters) => {
    const read = parseLength(text, bare)
    expect(read.ok).toBe(true)
    if (read.ok) expect(read.meters).toBeCloseTo(meters, 12)
  })

  it.each(bad)('refuses %j (plain numbers in %s): %s', (text, bare, fault) => {
    expect(parseLength(text, bare)).toEqual({ ok: false, fault })
  })

  it('reads back every sixteenth of an inch that it writes', () => {
    fc.assert(
      fc.property(fc.integer({ min: -200_000, max: 200_000 }), (sixteenths) => {
        const meters = (sixteenths / 16) * IN
        const read = parseLength(feetInches(meters, english('imperial'), 16), 'ft')
        return read.ok && Math.abs(read.meters - meters) < 1e-9
      }),
      { numRuns: 2000 },
    )
  })

  it('reads back every length to the fraction that the screen shows', () => {
    fc.assert(
      fc.property(fc.double({ min: -100, max: 300, noNaN: true }), (meters) => {
        const inches = parseLength(feetInches(meters, english('imperial')), bareUnit('imperial'))
        const metric = parseLength(`${fixed(meters, 2)} m`, bareUnit('metric'))
        return (
          inches.ok &&
          metric.ok &&
          Math.abs(inches.meters - meters) <= IN / 8 + 1e-9 &&
          Math.abs(metric.meters - meters) <= 0.005 + 1e-9
        )
      }),
      { numRuns: 2000 },
    )
  })

  it('never throws, whatever is typed', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        const read = parseLength(text, 'ft')
        return read.ok ? Number.isFinite(read.meters) : read.fault.length > 0
      }),
      { numRuns: 3000 },
    )
  })
})

describe('a length as dragged', () => {
  it('rests on half inches or centimeters', () => {
    expect(snap(0.4571, 'imperial')).toBeCloseTo(0.4572, 10)
    expect(snap(0.4571, 'metric')).toBe(0.46)
    expect(Object.is(snap(-0.001, 'metric'), 0)).toBe(true)
  })

  it('moves by an inch or a centimeter at a key, by six inches or ten centimeters with Shift', () => {
    expect([keyStep('imperial', false), keyStep('imperial', true)]).toEqual([0.0254, 0.1524])
    expect([keyStep('metric', false), keyStep('metric', true)]).toEqual([0.01, 0.1])
  })
})
