/** Small lengths that are set or read with care: sixteenths of an inch, millimeters. */
import { feetInches, formatFigure, type Reader } from '../../rules/index.ts'

/** A sixteenth of an inch, m. */
const SIXTEENTH = 0.0254 / 16

export const fine = (meters: number, reader: Reader): string =>
  reader.units === 'imperial'
    ? feetInches(meters, reader, 16)
    : formatFigure({ value: meters * 1000, unit: 'mm' }, reader)

/** No less than it is: what is not exceeded. */
export const fineUp = (meters: number, reader: Reader): string => {
  const step = reader.units === 'imperial' ? SIXTEENTH : 0.001
  return fine(Math.max(1, Math.ceil(meters / step - 1e-6)) * step, reader)
}
