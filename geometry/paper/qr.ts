/** A QR code (ISO/IEC 18004) as marks: one filled path for each run of dark squares in a row. */
import { encode } from 'uqr'
import type { Mark, Point } from './marks.ts'

/** White around it that the standard asks for, in squares. */
const QUIET = 4

/** Bytes that the largest code holds at the lowest level of correction (ISO/IEC 18004, table 7: version 40-L). */
export const MOST_BYTES = 2953

/** Smallest square that is read back from a print at 200 dpi, mm: three dots (our tests do; no published source). */
const LEAST_SQUARE = 0.4

export interface Code {
  readonly text: string
  readonly ecc: 'L' | 'M'
}

/** The first of the texts whose squares are large enough in a code of that size; the last where none is. */
export function fittingCode(texts: readonly string[], size: number): Code {
  for (const text of texts)
    for (const ecc of ['M', 'L'] as const) if (squareOf(text, size, ecc) >= LEAST_SQUARE) return { text, ecc }
  return { text: texts.at(-1)!, ecc: 'M' }
}

function squareOf(text: string, size: number, ecc: 'L' | 'M'): number {
  try {
    // Which of the eight masks reads best changes no size, and takes most of the time to find.
    return size / (encode(text, { ecc, border: 0, maskPattern: 0 }).size + 2 * QUIET)
  } catch {
    // Longer than any code holds.
    return 0
  }
}

/**
 * @param size of the whole, its white border too, mm
 * @param ecc level of correction: what is handled and wet needs more than what is printed once and scanned
 * Throws where the text is too long for any code.
 */
export function qrMarks(text: string, [x, y]: Point, size: number, ecc: 'L' | 'M' = 'M'): Mark[] {
  const { data } = encode(text, { ecc, border: 0 })
  const unit = size / (data.length + 2 * QUIET)
  const marks: Mark[] = []
  data.forEach((row, r) => {
    for (let c = 0; c < row.length; c++) {
      if (!row[c]) continue
      let end = c
      while (row[end + 1]) end++
      const [left, right] = [x + (QUIET + c) * unit, x + (QUIET + end + 1) * unit]
      const [top, bottom] = [y + (QUIET + r) * unit, y + (QUIET + r + 1) * unit]
      marks.push({
        kind: 'path',
        closed: true,
        stroke: null,
        fill: '#000000',
        points: [
          [left, top],
          [right, top],
          [right, bottom],
          [left, bottom],
        ],
      })
      c = end
    }
  })
  return marks
}
