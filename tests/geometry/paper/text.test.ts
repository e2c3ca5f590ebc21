/** Widths of text: those of the font files, and lines that keep within them. */
import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CAP_HEIGHT, fitText, printable, textWidth, wrapText } from '../../../geometry/paper/text.ts'
import { fontOf, METRICS_FILE, metricsFile } from '../../../src/build/metrics.ts'

const letters = fc.string({ unit: fc.constantFrom(...'aWil. 0189½äÅ–éñ'), maxLength: 60 })

describe('text widths', () => {
  it('are kept as the build makes them from the font files', () => {
    expect(readFileSync(METRICS_FILE, 'utf8')).toBe(metricsFile())
  })

  it.each(['regular', 'bold'] as const)('are the advances of the %s font, letter by letter', (weight) => {
    const font = fontOf(weight)
    fc.assert(
      fc.property(letters, (text) => {
        const units = [...text].reduce((sum, letter) => sum + font.charToGlyph(letter).advanceWidth, 0)
        expect(textWidth(text, 10, weight)).toBeCloseTo((units / 2048) * 10, 9)
      }),
      { numRuns: 200, seed: 5 },
    )
  })

  it.each(['regular', 'bold'] as const)(
    'of all digits are alike in the %s font, so that columns of figures stand',
    (weight) => {
      const widths = new Set([...'0123456789'].map((digit) => textWidth(digit, 1, weight)))
      expect(widths.size).toBe(1)
    },
  )

  it('know how high capitals are', () => {
    expect(CAP_HEIGHT).toBeCloseTo(1456 / 2048, 9)
  })
})

describe('letters that the font lacks', () => {
  it('are a question mark, and what was composed of two is one', () => {
    expect(printable('Dock 船 🛶\n½')).toBe('Dock ? ? ½')
    expect(printable('Cafe\u0301')).toBe('Café')
  })
})

describe('lines', () => {
  it('are none wider than asked, and lose no letter', () => {
    fc.assert(
      fc.property(letters, fc.integer({ min: 12, max: 80 }), (text, width) => {
        const lines = wrapText(text, width, 4)
        for (const line of lines) expect(textWidth(line, 4)).toBeLessThanOrEqual(width + 1e-5)
        expect(lines.join('').replace(/ /g, '')).toBe(text.replace(/ /g, ''))
      }),
      { numRuns: 300, seed: 5 },
    )
  })

  it('break where a line break is', () => {
    expect(wrapText('one two\nthree', 100, 4)).toEqual(['one two', 'three'])
  })

  it('that are cut to fit say so, and fit', () => {
    expect(fitText('Aluminum', 100, 4)).toBe('Aluminum')
    const cut = fitText('Aluminum frame, 4 by 8', 20, 4)
    expect(cut).toMatch(/^Alum.*…$/)
    expect(textWidth(cut, 4)).toBeLessThanOrEqual(20)
  })
})
