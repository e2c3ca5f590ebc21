/**
 * What speaks against the columns as they are taken: told where they are chosen, with an example, before anything is taken in. Nothing is put
 * right here, and nothing refused: a shop's list may be as it is.
 */

import { EXACT } from '../../../rules/index.ts'
import type { Row } from '../../soundings-file/table.ts'
import { coinsOf, numberIn } from '../form/measure.ts'
import {
  isGroup,
  LENGTH_UNITS,
  lengthIn,
  massIn,
  type PriceRow,
  type Reading,
  readRows,
  sizesIn,
} from './read-row.ts'
import type { RowKind } from './row-kinds.ts'
import { type PriceTable, ROLES, type Role, roleOf } from './table.ts'
import type { Taken } from './take.ts'

interface Cell {
  /** Line of the list. */
  readonly at: number
  readonly cell: string
}

export type Doubt =
  | { readonly why: 'twice'; readonly role: Role; readonly columns: readonly number[] }
  /** Its heading says something else; it has amounts of money; half of its cells or more cannot be read as what it is taken as. */
  | (Cell & { readonly why: 'head' | 'money' | 'cells'; readonly role: Role; readonly column: number })
  /** A price with more decimals than the currency has: a mark of thousands, read as one of decimals. */
  | (Cell & { readonly why: 'coins'; readonly column: number; readonly price: number })
  /** Half of the rows or more would be left out; the one whose reason most have. */
  | { readonly why: 'rows'; readonly bad: number; readonly of: number; readonly first: Taken['left'][number] }
  /** No part of that kind measures so; m. */
  | {
      readonly why: 'size'
      readonly row: PriceRow
      readonly count: number
      readonly is: number
      readonly least: number
      readonly most: number
      /** The unit of plain sizes in which all of them would be ordinary, and what this one would be then. */
      readonly instead: { readonly unit: Reading['length']; readonly is: number } | null
    }

type Quantity = 'money' | 'mass' | 'measure' | 'text'
const QUANTITY: Readonly<Partial<Record<Role, Quantity>>> = {
  ...{ price: 'money', mass: 'mass', size: 'measure', length: 'measure', width: 'measure' },
  ...{ code: 'text', name: 'text', kind: 'text' },
}

/** Of the longest measure of such a part, ft: at the least, at the most. Wider than what docks have (common practice, from memory), for doubt alone. */
const ORDINARY: Readonly<Partial<Record<RowKind, readonly [number, number]>>> = {
  frame: [3, 40],
  leg: [1.5, 30],
  brace: [1, 24],
  'anchor-post': [1.5, 40],
  'deck-panel': [0.5, 20],
  'foot-pad': [0.25, 4],
  extra: [0.04, 30],
}

/** @param rows as `reading` reads them; `taken` of them */
export function doubtsOf(
  table: PriceTable,
  reading: Reading,
  rows: readonly PriceRow[],
  { left }: Pick<Taken, 'left'>,
): readonly Doubt[] {
  const { roles } = reading
  const twice = ROLES.flatMap((role): Doubt[] => {
    const columns = roles.flatMap((one, k) => (one === role && role !== 'none' ? [k] : []))
    return columns.length > 1 ? [{ why: 'twice', role, columns }] : []
  })
  const inColumns = roles.flatMap((role, k) => inColumn(role, k, table, reading) ?? [])
  const of = rows.filter(({ kind }) => kind !== 'leave').length
  return [...twice, ...inColumns, ...sizes(table, reading, rows), ...leftOut(left, of)]
}

/** The first thing that is wrong with it. */
function inColumn(role: Role, column: number, { head, rows }: PriceTable, reading: Reading): Doubt | null {
  const quantity = QUANTITY[role]
  // One of two alike is told of as such.
  if (!quantity || reading.roles.indexOf(role) !== column) return null
  const cells = rows
    .filter((row) => !isGroup(row))
    .map(({ at, cells }): Cell => ({ at, cell: (cells[column] ?? '').trim() }))
    .filter(({ cell }) => cell !== '')
  const [first] = cells
  if (!first) return null
  const half = (some: readonly Cell[]): boolean => 2 * some.length >= cells.length
  const said = QUANTITY[roleOf(head[column] ?? '')]
  if (said && said !== quantity) return { why: 'head', role, column, ...first }
  if (quantity === 'mass' || quantity === 'measure') {
    const signed = cells.filter(({ cell }) => /[$€£]/.test(cell))
    const cents = cells.filter(({ cell }) => /^\d[\d.,' ]*[.,]\d\d$/.test(cell))
    const isMoney = cents.length > 1 && cents.length === cells.length && !reading.roles.includes('price')
    const [money] = isMoney ? cents : signed
    if (money && (isMoney || half(signed))) return { why: 'money', role, column, ...money }
  }
  const unread = cells.filter(({ cell }) => !reads(role, cell, reading))
  if (unread[0] && half(unread)) return { why: 'cells', role, column, ...unread[0] }
  if (quantity !== 'money') return null
  const coins = coinsOf(reading.currency)
  for (const { at, cell } of cells) {
    const [, decimals = ''] = /^[^.,]*[.,](\d+)\D*$/.exec(cell) ?? []
    const price = (numberIn(cell) ?? 0) * coins
    // `1,249` is a thousand and more, `1.249` is one and a little.
    if (10 ** decimals.length > coins && price < 1e3 * coins) return { why: 'coins', column, at, cell, price }
  }
  return null
}

function reads(role: Role, cell: string, { length, mass }: Reading): boolean {
  switch (role) {
    case 'price':
      return (numberIn(cell) ?? -1) >= 0
    case 'mass':
      return massIn(cell, mass) !== null
    case 'size':
      return sizesIn(cell, length).length > 0
    case 'length':
    case 'width':
      return lengthIn(cell, length) !== null
    case 'name':
      return /\p{L}/u.test(cell) && numberIn(cell) === null
    default:
      return true
  }
}

function leftOut(left: Taken['left'], of: number): Doubt[] {
  const first = left
    .map((one) => ({ one, often: left.filter(({ why }) => why === one.why).length }))
    .sort((a, b) => b.often - a.often)[0]?.one
  return first && of > 1 && 2 * left.length >= of ? [{ why: 'rows', bad: left.length, of, first }] : []
}

const longest = ({ measures }: PriceRow): number => Math.max(...measures)

function sizes({ rows: table }: PriceTable, reading: Reading, rows: readonly PriceRow[]): Doubt[] {
  return Object.entries(ORDINARY).flatMap(([kind, range]): Doubt[] => {
    const [least, most] = [range[0] * EXACT.foot, range[1] * EXACT.foot]
    const isOdd = (row: PriceRow): boolean =>
      row.measures.length > 0 && (longest(row) < least - 1e-9 || longest(row) > most + 1e-9)
    const odd = rows.flatMap((row, i) => (row.kind === kind && isOdd(row) ? [{ row, of: table[i]! }] : []))
    const [first] = odd
    if (!first) return []
    const instead = LENGTH_UNITS.flatMap((unit) => {
      const again = readRows(
        odd.map(({ of }): Row => of),
        { ...reading, length: unit, kinds: Object.fromEntries(odd.map(({ of }) => [of.at, first.row.kind])) },
      )
      return again.some(isOdd) ? [] : [{ unit, is: longest(again[0]!) }]
    })[0]
    const is = longest(first.row)
    return [{ why: 'size', row: first.row, count: odd.length, is, least, most, instead: instead ?? null }]
  })
}
