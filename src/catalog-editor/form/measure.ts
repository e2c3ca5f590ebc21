/** Which quantity a number of the catalog is, in which unit a shop reads and types it, and how. SI inside, as the file has it. */
import { EXACT, type Language, type Units } from '../../../rules/index.ts'
import { parseLength } from '../../units/parse.ts'

export type Measure =
  | 'length'
  | 'mass'
  | 'density'
  | 'area'
  | 'force'
  | 'stiffness'
  | 'pressure'
  | 'weight'
  | 'degrees'
  | 'money'
  | 'share'
  | 'turning'
  | 'lean'
  | 'count'
  | 'number'

/** By how a description of the schema ends. */
const ENDS: readonly (readonly [RegExp, Measure])[] = [
  [/minor units/, 'money'],
  [/N·m\/rad\b/, 'turning'],
  [/N\/m3\b/, 'weight'],
  [/N\/m\b/, 'stiffness'],
  [/kg\/m3$/, 'density'],
  [/(?:^|, )m2$/, 'area'],
  [/, rad$/, 'lean'],
  [/(?:^|, )kg\b/, 'mass'],
  [/, Pa\b/, 'pressure'],
  [/, N\b/, 'force'],
  [/degrees$/i, 'degrees'],
  [/(?:^|, )m(?:$|;)/, 'length'],
]
const SHARES = /^Of (?:what is taxed|the total|the quantity|`waterWidth`)|^Off parts|chance that/

export const measureOf = (says: string, whole: boolean): Measure =>
  SHARES.test(says) ? 'share' : (ENDS.find(([end]) => end.test(says))?.[1] ?? (whole ? 'count' : 'number'))

interface UnitOf {
  readonly name: string
  /** So much SI is one of it. */
  readonly size: number
}

/** N of a pound, at standard gravity. */
const FORCE = EXACT.pound * 9.80665
const UNITS: Readonly<Record<Units, Readonly<Partial<Record<Measure, UnitOf>>>>> = {
  imperial: {
    mass: { name: 'lb', size: EXACT.pound },
    density: { name: 'lb/ft3', size: EXACT.pound / EXACT.foot ** 3 },
    area: { name: 'ft2', size: EXACT.foot ** 2 },
    force: { name: 'lbf', size: FORCE },
    stiffness: { name: 'lbf/in', size: FORCE / EXACT.inch },
    pressure: { name: 'ksi', size: (1000 * FORCE) / EXACT.inch ** 2 },
    weight: { name: 'lbf/ft3', size: FORCE / EXACT.foot ** 3 },
    turning: { name: 'lbf·ft/rad', size: FORCE * EXACT.foot },
  },
  metric: {
    mass: { name: 'kg', size: 1 },
    density: { name: 'kg/m3', size: 1 },
    area: { name: 'm2', size: 1 },
    force: { name: 'N', size: 1 },
    stiffness: { name: 'N/m', size: 1 },
    pressure: { name: 'MPa', size: 1e6 },
    weight: { name: 'N/m3', size: 1 },
    turning: { name: 'N·m/rad', size: 1 },
  },
}
const ALIKE: Readonly<Partial<Record<Measure, UnitOf>>> = {
  degrees: { name: '°', size: 1 },
  share: { name: '%', size: 0.01 },
  lean: { name: 'rad', size: 1 },
}

/** What figures of a field are in, and how they are told. */
export interface Scale {
  readonly measure: Measure
  readonly units: Units
  /** Longest that the field takes, m: decides whether a plain number is feet or inches, meters or millimeters. */
  readonly most: number
  readonly currency: string
  /** Whose decimal mark figures are told with. */
  readonly language: Pick<Language, 'tag' | 'decimal'>
}

/** Lengths of whole parts are in feet or meters, those of their pieces in inches or millimeters. */
const isLong = ({ most }: Scale): boolean => most >= 2.5

export const coinsOf = (currency: string): number => {
  try {
    const format = new Intl.NumberFormat('en', { style: 'currency', currency })
    return 10 ** (format.resolvedOptions().maximumFractionDigits ?? 2)
  } catch {
    // Three letters that are no currency yet: they are being typed.
    return 100
  }
}

/** What a plain number in the field is in; empty where it has no unit. */
export function unitOf(scale: Scale): string {
  const { measure, units, currency } = scale
  if (measure === 'money') return currency
  if (measure === 'length')
    return isLong(scale) ? (units === 'imperial' ? 'ft' : 'm') : units === 'imperial' ? 'in' : 'mm'
  return (UNITS[units][measure] ?? ALIKE[measure])?.name ?? ''
}

/** Digits that a shop could have meant. */
const plain = (value: number, digits = 8): string => String(Number(value.toPrecision(digits)))

/** As it stands in the field, with all that the file has of it, and the reader's decimal mark. */
export const shownIn = (scale: Scale, value: number): string =>
  withPoint(scale, value).replaceAll('.', scale.language.decimal)

function withPoint(scale: Scale, value: number): string {
  const { measure, units, currency } = scale
  if (measure === 'length')
    return units === 'imperial' ? inFeet(value, isLong(scale)) : inMeters(value, isLong(scale))
  if (measure === 'money') {
    const coins = coinsOf(currency)
    return (value / coins).toFixed(Number.isInteger(value) ? Math.round(Math.log10(coins)) : 4)
  }
  const unit = UNITS[units][measure] ?? ALIKE[measure]
  // Of a unit that is not the file's own a shop has no more digits.
  return unit && unit.size !== 1 ? plain(value / unit.size, 6) : plain(value)
}

const inMeters = (m: number, long: boolean): string => (long ? `${plain(m)} m` : `${plain(m * 1000)} mm`)

/** To a ten-thousandth of an inch: finer than anything is sawn or drilled. */
function inFeet(m: number, long: boolean): string {
  const sign = m < 0 ? '-' : ''
  const inches = Math.round((Math.abs(m) / EXACT.inch) * 1e4) / 1e4
  const feet = Math.floor(inches / 12)
  const rest = Math.round((inches - 12 * feet) * 1e4) / 1e4
  if (!long || feet === 0) return `${sign}${inches} in`
  return rest === 0 ? `${sign}${feet} ft` : `${sign}${feet} ft ${rest} in`
}

/** The value of a text, SI; null where it is none. Decimals are parted by a comma or a point, whatever the reader's own mark is. */
export function readIn(scale: Scale, typed: string): number | null {
  const { measure, units, currency, language } = scale
  const { decimal } = language
  // A third mark, as some languages have, is read as the point.
  const text = decimal === ',' ? typed : typed.replaceAll(decimal, '.')
  if (measure === 'length') {
    const bare = unitOf(scale)
    const read = parseLength(joined(text), bare === 'ft' || bare === 'in' || bare === 'm' ? bare : 'mm')
    return read.ok ? kept(read.meters) : null
  }
  const unit = UNITS[units][measure] ?? ALIKE[measure]
  const value = numberIn(text.replace(unit?.name ?? currency, ''), groupOf(language.tag))
  if (value === null) return null
  if (measure === 'money') {
    const coins = value * coinsOf(currency)
    // A fraction of the smallest coin is a slip, not a price.
    return Math.abs(coins - Math.round(coins)) < 1e-6 ? Math.round(coins) : null
  }
  return unit ? kept(value * unit.size) : value
}

/** As a Design keeps lengths; relative, for pressures are large. */
const kept = (value: number): number => Number(value.toPrecision(10)) + 0

/** `1.234,5` and `1,234.5` without the marks of thousands. A length with one mark alone has it for its decimals, as on the dock's page: `2.438 m`. */
const joined = (text: string): string =>
  text
    .replace(/\d{1,3}(?:\.\d{3})+,\d+/g, (number) => number.replaceAll('.', ''))
    .replace(/\d{1,3}(?:,\d{3})+\.\d+/g, (number) => number.replaceAll(',', ''))

/** What parts thousands in a language: a comma, a point, or something that is neither. */
const groupOf = (tag: string): string =>
  new Intl.NumberFormat(tag).formatToParts(123456).find(({ type }) => type === 'group')?.value ?? ','

/**
 * `1,249.50`, `1.249,50`, `1249,5`, `$ 1 249`: of two kinds of marks the last one parts the decimals, one alone does unless it is `group` and
 * three digits follow.
 */
export function numberIn(typed: string, group = ','): number | null {
  const bare = typed.replace(/[\s\u00a0\u202f'’$€£]|[A-Z]{3}/g, '').replace(/[−–]/g, '-')
  const marks = bare.match(/[.,]/g) ?? []
  const last = Math.max(bare.lastIndexOf('.'), bare.lastIndexOf(','))
  const mark = bare[last]
  const thousands =
    marks.length > 1
      ? marks.every((one) => one === mark)
      : mark === group && /^-?[1-9]\d{0,2}[.,]\d{3}$/.test(bare)
  const whole =
    last < 0 || thousands
      ? bare.replace(/[.,]/g, '')
      : `${bare.slice(0, last).replace(/[.,]/g, '')}.${bare.slice(last + 1)}`
  if (!/^[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?$/i.test(whole)) return null
  const value = Number(whole)
  return Number.isFinite(value) ? value : null
}
