/**
 * Lengths as people type them: `7'2`, `7 ft 2 1/2`, `7' 2-1/2"`, `86"`, `7.2ft`, `7,2 m`, `210 cm`, `2m10`, `7 2` (feet and inches),
 * `7½`, or a plain number in the unit of the screen. Comma and point both part the decimals; thousands are not parted.
 */
import { EXACT, type Units } from '../../rules/index.ts'

/** m, exact by definition (NIST SP 811, B.8). */
const METERS = {
  ft: EXACT.foot,
  in: EXACT.inch,
  mi: EXACT.mile,
  m: 1,
  cm: 0.01,
  mm: 0.001,
  km: 1000,
} as const
export type LengthUnit = keyof typeof METERS

/** The unit that may follow another within one length. */
const SMALLER: Readonly<Partial<Record<LengthUnit, 'in' | 'cm'>>> = { ft: 'in', m: 'cm' }

/** Why a text is no length; words come from the language file by this. */
export type LengthFault = 'empty' | 'not-a-length' | 'inches-over' | 'units-mixed'

export type ParsedLength =
  | { readonly ok: true; readonly meters: number }
  | { readonly ok: false; readonly fault: LengthFault }

const UNIT_WORDS: Readonly<Record<string, LengthUnit>> = {
  "'": 'ft',
  ft: 'ft',
  foot: 'ft',
  feet: 'ft',
  '"': 'in',
  in: 'in',
  inch: 'in',
  inches: 'in',
  m: 'm',
  meter: 'm',
  meters: 'm',
  metre: 'm',
  metres: 'm',
  cm: 'cm',
  mm: 'mm',
  mi: 'mi',
  mile: 'mi',
  miles: 'mi',
  km: 'km',
  // As they are written in the languages that come along.
  pi: 'ft',
  pied: 'ft',
  pieds: 'ft',
  po: 'in',
  pouce: 'in',
  pouces: 'in',
  pie: 'ft',
  pies: 'ft',
  pulg: 'in',
  pulgada: 'in',
  pulgadas: 'in',
  fuß: 'ft',
  zoll: 'in',
  mètre: 'm',
  mètres: 'm',
  metro: 'm',
  metros: 'm',
}

const FRACTIONS: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅓': '1/3',
  '⅔': '2/3',
}

/** The typographers' signs in their typewriter forms. */
const plain = (text: string): string =>
  text
    .toLowerCase()
    // Marks of direction, which a language has about a number.
    .replace(/[\u200e\u200f\u061c]/g, '')
    .replace(/[½¼¾⅛⅜⅝⅞⅓⅔]/g, (sign) => ` ${FRACTIONS[sign]}`)
    .replace(/[′’‘`]/g, "'")
    .replace(/[″“”]/g, '"')
    .replace(/''/g, '"')
    .replace(/⁄/g, '/')
    .replace(/[−–]/g, '-')
    .replace(/\s+/g, ' ')
    .trim()

interface Quantity {
  readonly value: number
  /** A whole number, so that a smaller unit may follow. */
  readonly whole: boolean
  readonly unit: LengthUnit | null
}

/** A whole number with a fraction, a fraction, or a decimal; then its unit, if any. */
const QUANTITY =
  /^(?:(\d+)(?: |-| - )(\d+)\/(\d+)|(\d+)\/(\d+)|(\d+(?:[.,]\d+)?|[.,]\d+)) ?('|"|\p{L}+\.?)?(?: ?-)? ?/u

function quantities(text: string): Quantity[] | null {
  const list: Quantity[] = []
  for (let rest = text; rest !== ''; ) {
    const found = QUANTITY.exec(rest)
    if (!found) return null
    const [all, whole, top1, bottom1, top2, bottom2, decimal, word] = found
    const unit = word === undefined ? null : UNIT_WORDS[word.replace('.', '')]
    if (unit === undefined) return null
    const fraction = Number(top1 ?? top2 ?? 0) / Number(bottom1 ?? bottom2 ?? 1)
    const value = Number(whole ?? 0) + Number((decimal ?? '0').replace(',', '.')) + fraction
    if (!Number.isFinite(value)) return null
    list.push({ value, whole: decimal !== undefined && /^\d+$/.test(decimal), unit })
    // A hyphen parts two quantities only after a unit (7'-2"); 7-2 could mean anything.
    if (unit === null && all.trimEnd().endsWith('-')) return null
    rest = rest.slice(all.length)
  }
  return list
}

/** `bare`: the unit of a plain number. In feet, two plain numbers are feet and inches. */
export function parseLength(text: string, bare: LengthUnit): ParsedLength {
  const wrong = (fault: LengthFault): ParsedLength => ({ ok: false, fault })
  let clean = plain(text)
  if (clean === '') return wrong('empty')
  const sign = clean[0] === '-' ? -1 : 1
  clean = clean.replace(/^[-+] ?/, '')
  const list = quantities(clean)
  const [large, small, ...more] = list ?? []
  if (!large || more.length > 0) return wrong('not-a-length')
  const largeUnit = large.unit ?? bare
  // More digits than a number has; and no -0.
  const length = (meters: number): ParsedLength =>
    Number.isFinite(meters) ? { ok: true, meters: sign * meters + 0 } : wrong('not-a-length')
  if (!small) return length(large.value * METERS[largeUnit])
  // Plain numbers in a row are feet and inches only; after meters a plain number is centimeters.
  const follows = SMALLER[largeUnit]
  if (
    !large.whole ||
    follows === undefined ||
    (large.unit === null && (bare !== 'ft' || small.unit === 'ft'))
  )
    return wrong('not-a-length')
  const smallUnit = small.unit ?? follows
  if (smallUnit !== follows) return wrong('units-mixed')
  if (small.value >= (smallUnit === 'in' ? 12 : 100)) return wrong('inches-over')
  return length(large.value * METERS[largeUnit] + small.value * METERS[smallUnit])
}

/** What a plain number means on a screen in these units. */
export const bareUnit = (units: Units): LengthUnit => (units === 'imperial' ? 'ft' : 'm')
