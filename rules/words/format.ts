/** Figures in words: SI, and the feet, inches and fractions that the trade reads. */
import type { Figure } from '../dock.ts'

export type Units = 'metric' | 'imperial'

const FOOT = 0.3048
const INCH = 0.0254
const POUND = 0.45359237
const MILE = 5280 * FOOT
const MILE_PER_HOUR = MILE / 3600
/** N, at standard gravity. */
const POUND_FORCE = POUND * 9.80665

/** Feet, inches and fractions of an inch to 1/`part`: `4 ft 2 1/4 in`. Exact halves go away from zero. */
export function feetInches(meters: number, part = 4): string {
  const sign = meters < 0 ? '-' : ''
  const parts = Math.round((Math.abs(meters) / INCH) * part + 1e-9)
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
  if (feet === 0) return `${parts === 0 ? '' : sign}${inchText} in`
  return inches === 0 && fraction === '' ? `${sign}${feet} ft` : `${sign}${feet} ft ${inchText} in`
}

/** A length in one word or two: `1.23 m` or `4 ft 1/2 in`. */
export const formatLength = (meters: number, units: Units): string =>
  units === 'imperial' ? feetInches(meters) : `${fixed(meters, 2)} m`

export const formatMass = (kg: number, units: Units): string =>
  units === 'imperial' ? `${fixed(kg / POUND, 1)} lb` : `${fixed(kg, 1)} kg`

/** Distances over water, in the unit that they are told in: `1.8 km`, `400 m`; `1.1 mi`, `980 ft`. */
export function formatDistance(meters: number, units: Units): string {
  const [small, large, most, round] = units === 'imperial' ? [FOOT, MILE, 1000, 10] : [1, 1000, 1000, 1]
  if (meters / small < most)
    return `${Math.round(meters / small / round) * round} ${units === 'imperial' ? 'ft' : 'm'}`
  const far = meters / large
  return `${short(far, far < 1 ? 2 : 1)} ${units === 'imperial' ? 'mi' : 'km'}`
}

/** `22 mph`, `10 m/s`. */
export const formatSpeed = (speed: number, units: Units): string =>
  units === 'imperial' ? `${fixed(speed / MILE_PER_HOUR, 0)} mph` : `${short(speed, 1)} m/s`

/** `1.4 s`, `8 min`, `3.5 h`. */
export const formatTime = (seconds: number): string =>
  seconds < 100
    ? `${fixed(seconds, 1)} s`
    : seconds < 7200
      ? `${fixed(seconds / 60, 0)} min`
      : `${short(seconds / 3600, 1)} h`

/** Rise over run as `1 in 8.3`. */
export const formatSlope = (slope: number): string =>
  Math.abs(slope) < 0.005 ? 'level' : `1 in ${fixed(1 / Math.abs(slope), 1)}`

/** The tag of a language (BCP 47) that formats take: a page may say `en_US`, nothing, or anything; English where it is none. */
export function localeOf(lang: string): string {
  if (lang === 'en') return lang
  try {
    return Intl.getCanonicalLocales(lang.replaceAll('_', '-'))[0] ?? 'en'
  } catch {
    return 'en'
  }
}

/** Making a number format costs more than using it: one for each currency and language. */
const moneyFormats = new Map<string, Intl.NumberFormat>()

export function formatMoney(minor: number, currency: string, lang = 'en'): string {
  const key = `${lang} ${currency}`
  let format = moneyFormats.get(key)
  if (!format) {
    format = new Intl.NumberFormat(localeOf(lang), { style: 'currency', currency })
    moneyFormats.set(key, format)
  }
  return format.format(minor / 10 ** (format.resolvedOptions().maximumFractionDigits ?? 2))
}

export function formatFigure({ value, unit }: Figure, units: Units): string {
  if (typeof value === 'object')
    return value.map((one) => formatFigure({ value: one, unit }, units)).join(', ')
  if (typeof value === 'string') return value
  switch (unit) {
    case 'm':
      return formatLength(value, units)
    case 'kg':
      return formatMass(value, units)
    case 'fetch':
      return formatDistance(value, units)
    case 'm/s':
      return formatSpeed(value, units)
    case 's':
      return formatTime(value)
    case 'slope':
      return formatSlope(value)
    case 'deg':
      return `${fixed(value, 1)}°`
    case 'mm':
      return units === 'imperial' ? `${fixed(value / (INCH * 1000), 2)} in` : `${fixed(value, 1)} mm`
    case 'N':
      return units === 'imperial' ? `${fixed(value / POUND_FORCE, 0)} lb` : `${fixed(value / 1000, 2)} kN`
    case 'Nm':
      return units === 'imperial'
        ? `${fixed(value / (POUND_FORCE * FOOT), 0)} lb·ft`
        : `${fixed(value / 1000, 2)} kN·m`
    case 'Pa':
      return units === 'imperial'
        ? `${fixed((value * FOOT ** 2) / POUND_FORCE, 0)} lb/ft²`
        : `${fixed(value / 1000, 1)} kPa`
    case 'share':
      return `${fixed(value * 100, 0)} %`
    case 'factor':
      return fixed(value, 2)
    default:
      return String(value)
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
