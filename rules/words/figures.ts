/** Figures in words: SI, and the feet, inches and fractions that the trade reads. */
import type { Figure } from '../dock.ts'
import en from './en/figures.json' with { type: 'json' }
import { inDigits, type Language, listOf, type Reader } from './language.ts'

/** Feet, inches and pounds, or meters and kilograms: of what is read and typed. Data is SI always. */
export type Units = 'metric' | 'imperial'

const FOOT = 0.3048
const INCH = 0.0254
const POUND = 0.45359237
const MILE = 5280 * FOOT
const MILE_PER_HOUR = MILE / 3600
/** N, at standard gravity. */
const POUND_FORCE = POUND * 9.80665

/** A unit's words around a number that is written with a point. */
function inUnit(unit: keyof typeof en, number: string, { language }: Pick<Reader, 'language'>): string {
  const template = language.words.figures?.[unit]
  return (typeof template === 'string' ? template : en[unit]).replace('{n}', inDigits(number, language))
}

/** A unit by itself, beside a field to be filled in. */
export const unitWord = (unit: keyof typeof en, reader: Pick<Reader, 'language'>): string =>
  inUnit(unit, '', reader).trim()

/** Feet, inches and fractions of an inch to 1/`part`: `4 ft 2 1/4 in`. Exact halves go away from zero. */
export function feetInches(meters: number, reader: Pick<Reader, 'language'>, part = 4): string {
  const parts = Math.round((Math.abs(meters) / INCH) * part + 1e-9)
  const sign = meters < 0 && parts > 0 ? '-' : ''
  const whole = Math.floor(parts / part)
  const feet = Math.floor(whole / 12)
  const inches = whole % 12
  let top = parts % part
  let bottom = part
  while (top > 0 && top % 2 === 0) {
    top /= 2
    bottom /= 2
  }
  const fraction = top > 0 ? `${top}/${bottom}` : ''
  const inchText = [inches > 0 || fraction === '' ? String(inches) : '', fraction].filter(Boolean).join(' ')
  if (feet === 0) return inUnit('in', `${sign}${inchText}`, reader)
  const ft = inUnit('ft', `${sign}${feet}`, reader)
  return inches === 0 && fraction === '' ? ft : `${ft} ${inUnit('in', inchText, reader)}`
}

/** A length in one word or two: `1.23 m` or `4 ft 1/2 in`. */
export const formatLength = (meters: number, reader: Reader): string =>
  reader.units === 'imperial' ? feetInches(meters, reader) : inUnit('m', fixed(meters, 2), reader)

/** A mass, kg, as the reader has it. */
export const formatMass = (kg: number, reader: Reader): string =>
  reader.units === 'imperial'
    ? inUnit('lb', fixed(kg / POUND, 1), reader)
    : inUnit('kg', fixed(kg, 1), reader)

/** Distances over water, in the unit that they are told in: `1.8 km`, `400 m`; `1.1 mi`, `980 ft`. */
export function formatDistance(meters: number, reader: Reader): string {
  const imperial = reader.units === 'imperial'
  const [small, large, most, round] = imperial ? [FOOT, MILE, 1000, 10] : [1, 1000, 1000, 1]
  if (meters / small < most)
    return inUnit(imperial ? 'ft' : 'm', String(Math.round(meters / small / round) * round), reader)
  const far = meters / large
  return inUnit(imperial ? 'mi' : 'km', short(far, far < 1 ? 2 : 1), reader)
}

/** `22 mph`, `10 m/s`. */
export const formatSpeed = (speed: number, reader: Reader): string =>
  reader.units === 'imperial'
    ? inUnit('mph', fixed(speed / MILE_PER_HOUR, 0), reader)
    : inUnit('m/s', short(speed, 1), reader)

/** `1.4 s`, `8 min`, `3.5 h`. */
export const formatTime = (seconds: number, reader: Pick<Reader, 'language'>): string =>
  seconds < 100
    ? inUnit('s', fixed(seconds, 1), reader)
    : seconds < 7200
      ? inUnit('min', fixed(seconds / 60, 0), reader)
      : inUnit('h', short(seconds / 3600, 1), reader)

/** Rise over run as `1 in 8.3`. */
export const formatSlope = (slope: number, reader: Pick<Reader, 'language'>): string =>
  Math.abs(slope) < 0.005
    ? inUnit('level', '', reader)
    : inUnit('slope', fixed(1 / Math.abs(slope), 1), reader)

/** Amounts in the smallest coin of a currency, as the language writes them. Made once for many: a format costs more than its use. */
export function moneyIn(currency: string, { tag }: Language): (minor: number) => string {
  const format = new Intl.NumberFormat(tag, { style: 'currency', currency })
  const coins = 10 ** (format.resolvedOptions().maximumFractionDigits ?? 2)
  return (minor) => format.format(minor / coins)
}

/** A finding's figure as the reader has it: in their units, language and digits. */
export function formatFigure({ value, unit }: Figure, reader: Reader): string {
  const imperial = reader.units === 'imperial'
  if (typeof value === 'object')
    return listOf(
      value.map((one) => formatFigure({ value: one, unit }, reader)),
      reader.language,
    )
  if (typeof value === 'string') return value
  switch (unit) {
    case 'm':
      return formatLength(value, reader)
    case 'm2':
      return imperial
        ? inUnit('ft2', fixed(value / FOOT ** 2, 0), reader)
        : inUnit('m2', fixed(value, 1), reader)
    case 'm-rough':
      return imperial
        ? inUnit('ft', String(Math.round(value / FOOT)), reader)
        : inUnit('m', fixed(value, 1), reader)
    case 'kg':
      return formatMass(value, reader)
    case 'fetch':
      return formatDistance(value, reader)
    case 'm/s':
      return formatSpeed(value, reader)
    case 's':
      return formatTime(value, reader)
    case 'slope':
      return formatSlope(value, reader)
    case 'deg':
      return inUnit('deg', fixed(value, 1), reader)
    case 'mm':
      return imperial
        ? inUnit('in', fixed(value / (INCH * 1000), 2), reader)
        : inUnit('mm', fixed(value, 1), reader)
    case 'N':
      return imperial
        ? inUnit('lb', fixed(value / POUND_FORCE, 0), reader)
        : inUnit('kN', fixed(value / 1000, 2), reader)
    case 'Nm':
      return imperial
        ? inUnit('lb-ft', fixed(value / (POUND_FORCE * FOOT), 0), reader)
        : inUnit('kNm', fixed(value / 1000, 2), reader)
    case 'Pa':
      return imperial
        ? inUnit('lb/ft2', fixed((value * FOOT ** 2) / POUND_FORCE, 0), reader)
        : inUnit('kPa', fixed(value / 1000, 1), reader)
    case 'share':
      return inUnit('share', fixed(value * 100, 0), reader)
    case 'share-fine':
      return inUnit('share', short(value * 100, 4), reader)
    case 'use':
      // No digit more than the figure is worth.
      return inUnit(
        'share',
        Math.abs(value - 1) > 0.005 ? String(Math.round(value * 100)) : fixed(value * 100, 1),
        reader,
      )
    case 'factor':
      return inDigits(fixed(value, 2), reader.language)
    case 'factor-rough':
      return inDigits(fixed(value, value < 10 ? 1 : 0), reader.language)
    default:
      return inDigits(String(value), reader.language)
  }
}

/** Fixed digits, without a minus before nothing. */
export function fixed(value: number, digits: number): string {
  const text = value.toFixed(digits)
  return /^-0\.?0*$/.test(text) ? text.slice(1) : text
}

/** Up to so many digits, none of them a last nought. */
const short = (value: number, digits: number): string => String(Number(value.toFixed(digits)))

/** Pounds to kilograms and feet to meters, exact by definition (NIST SP 811, B.8). */
export const EXACT = { foot: FOOT, inch: INCH, pound: POUND, mile: MILE } as const
