/** What a row of a price list says: code, name, price, weight, measures; and what is wrong with it. SI, money in the smallest coin. */
import { EXACT, type Units } from '../../../rules/index.ts'
import type { Row } from '../../soundings-file/table.ts'
import { type LengthUnit, parseLength } from '../../units/parse.ts'
import { coinsOf, numberIn } from '../form/measure.ts'
import { guessKind, isShare, type RowKind } from './row-kinds.ts'
import type { Role } from './table.ts'

/** In which a price list may measure. */
export const LENGTH_UNITS = ['ft', 'in', 'm', 'cm', 'mm'] as const satisfies readonly LengthUnit[]

export interface Reading {
  readonly roles: readonly Role[]
  /** Of plain numbers in it. */
  readonly length: (typeof LENGTH_UNITS)[number]
  readonly mass: 'lb' | 'kg'
  readonly currency: string
  /** What was said of single rows, by their line. */
  readonly kinds: Readonly<Record<number, RowKind>>
}

export interface PriceRow {
  readonly at: number
  readonly kind: RowKind
  readonly code: string
  readonly name: string
  /** Null: the row says none. */
  readonly price: number | null
  readonly mass: number | null
  /** Of tax or deposit; null: the row says none. */
  readonly share: number | null
  /** As they stand in the row, one to three. */
  readonly measures: readonly number[]
  /** Why nothing can be taken from it. */
  readonly fault: 'no-name' | 'no-price' | 'price' | 'no-share' | null
}

export function firstReading(
  roles: readonly Role[],
  units: Units,
  currency: string,
  head: readonly string[],
): Reading {
  const said = (role: Role): string => (head[roles.indexOf(role)] ?? '').toLowerCase()
  const measured = `${said('size')} ${said('length')} ${said('width')}`
  const length: Reading['length'] = /\bin(?:ch|ches)?\b|"/.test(measured)
    ? 'in'
    : /\bmm\b/.test(measured)
      ? 'mm'
      : /\bcm\b/.test(measured)
        ? 'cm'
        : units === 'imperial'
          ? 'ft'
          : 'm'
  const mass = /\bkg\b/.test(said('mass'))
    ? 'kg'
    : /\blb/.test(said('mass')) || units === 'imperial'
      ? 'lb'
      : 'kg'
  return { roles, length, mass, currency, kinds: {} }
}

/** A line with a name alone names the group of those below it. */
export function readRows(rows: readonly Row[], reading: Reading): PriceRow[] {
  let group = ''
  return rows.map((row) => {
    const read = readRow(row, reading, group)
    if (isGroup(row)) group = read.name
    return read
  })
}

/** A line with a name alone. */
export const isGroup = ({ cells }: Row): boolean => cells.filter((cell) => cell.trim() !== '').length === 1

function readRow(row: Row, reading: Reading, group: string): PriceRow {
  const { at, cells } = row
  const cell = (role: Role): string => {
    const k = reading.roles.indexOf(role)
    return k < 0 ? '' : (cells[k] ?? '').trim()
  }
  const alone = isGroup(row) ? (cells.find((one) => one.trim() !== '') ?? '').trim() : ''
  const name = cell('name') || cell('code') || alone
  const code = cell('code') || codeFrom(name)
  const share = shareIn(cells)
  const guessed = guessKind(name, cell('kind') || group, share)
  const kind = reading.kinds[at] ?? (alone === '' || isShare(guessed) ? guessed : 'leave')
  const told = cell('price')
  const amount = told === '' ? null : numberIn(told)
  const price = amount === null ? null : Math.round(amount * coinsOf(reading.currency))
  return {
    at,
    kind,
    code: code.slice(0, 60),
    name: name.slice(0, 120),
    price,
    mass: massIn(cell('mass'), reading.mass),
    share,
    measures: measuresOf(cell, name, reading.length),
    fault:
      name === ''
        ? 'no-name'
        : isShare(kind)
          ? share === null
            ? 'no-share'
            : null
          : told === ''
            ? 'no-price'
            : price === null || price < 0 || price > 1e8
              ? 'price'
              : null,
  }
}

/** The first figure with a percent sign in a row, as a share of 1. */
function shareIn(cells: readonly string[]): number | null {
  const [, figure] = /(\d+(?:[.,]\d+)?)\s*%/.exec(cells.join(' ')) ?? []
  const share = figure === undefined ? Number.NaN : Number(figure.replace(',', '.')) / 100
  return share >= 0 && share <= 1 ? Number(share.toFixed(6)) : null
}

/** A code of the letters and figures of a name. */
export const codeFrom = (name: string): string =>
  name
    .toLowerCase()
    .normalize('NFKD')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 40)

export function massIn(text: string, bare: 'lb' | 'kg'): number | null {
  const [, number, unit = ''] = /^([^a-z]*)([a-z]*)\.?$/i.exec(text.trim()) ?? []
  const value = number === undefined || number.trim() === '' ? null : numberIn(number)
  if (value === null || value < 0) return null
  const kg = /^lb/i.test(unit) || (unit === '' && bare === 'lb') ? value * EXACT.pound : value
  return kg <= 2000 ? Number(kg.toPrecision(10)) : null
}

function measuresOf(cell: (role: Role) => string, name: string, bare: LengthUnit): number[] {
  const [width, length] = [lengthIn(cell('width'), bare), lengthIn(cell('length'), bare)]
  if (width !== null && length !== null) return [width, length]
  const sized = sizesIn(cell('size'), bare)
  if (sized.length > 0) return sized
  return length !== null ? [length] : sizesIn(name, bare)
}

export function lengthIn(text: string, bare: LengthUnit): number | null {
  const read = parseLength(text, bare)
  return read.ok && read.meters > 0 ? Number(read.meters.toPrecision(10)) : null
}

const ONE = String.raw`\d+(?:[ -]\d+\/\d+|\/\d+|[.,]\d+)?\s*(?:feet|foot|ft|inches|inch|in|mm|cm|m|['′’"″”])?\.?(?:\s*\d+(?:[ -]\d+\/\d+|\/\d+)?\s*(?:inches|inch|in|["″”])\.?)?`
const TIMES = String.raw`\s*(?:x|×|by|\*)\s*`
/** `4 x 8 ft`, `4' x 8'`, `2 x 8 x 24 in`. */
const SEVERAL = new RegExp(`(?<![\\w.])(${ONE})${TIMES}(${ONE})(?:${TIMES}(${ONE}))?(?!\\w)`, 'i')
/** `5 ft`, `7'`: a number by itself is no length. */
const SINGLE =
  /(?<![\w./])\d+(?:[ -]\d+\/\d+|\/\d+|[.,]\d+)?\s*(?:feet|foot|ft|inches|inch|in|mm|cm|m|['′’"″”])\.?(?:\s*\d+(?:[ -]\d+\/\d+|\/\d+)?\s*(?:inches|inch|in|["″”]))?(?!\w)/i

/** What says only which measure it is. */
const WHICH =
  /\b(?:dia(?:m(?:eter)?)?|round|square|wide|width|long|length|high|tall|height|deep|depth)\b\.?|(?<=[\d'"′’″”])\s?[wlhd]\b\.?/gi
const ROUND = /\bdia(?:m(?:eter)?)?\b|\bround\b|[øØ⌀]/i

/** Measures within a text; the unit of the last is that of those before it that have none. Of what is round the diameter comes twice. */
export function sizesIn(text: string, bare: LengthUnit): number[] {
  const read = measuresIn(
    text
      .replace(WHICH, ' ')
      .replace(/[øØ⌀]/g, ' ')
      .replace(/\s{2,}/g, ' ')
      .trim(),
    bare,
  )
  const [across, up] = read
  return ROUND.test(text) && across !== undefined && read.length < 3
    ? up === undefined
      ? [across, across]
      : [across, across, up]
    : read
}

function measuresIn(text: string, bare: LengthUnit): number[] {
  const several = SEVERAL.exec(text)
  if (!several) {
    const whole = lengthIn(text, bare)
    const single = SINGLE.exec(text)?.[0]
    const one = whole ?? (single === undefined ? null : lengthIn(single, bare))
    return one === null ? [] : [one]
  }
  const parts = several.slice(1).filter((part): part is string => part !== undefined)
  const unit = /(feet|foot|ft|inches|inch|in|mm|cm|m|['′’"″”])\.?\s*$/i.exec(parts.at(-1)!)?.[1]
  const lengths = parts.map((part) =>
    lengthIn(/[a-z'′’"″”]/i.test(part) || !unit ? part : `${part} ${unit}`, bare),
  )
  return lengths.every((one): one is number => one !== null) ? lengths : []
}
