/** A price list as it comes out of a spreadsheet: rows of cells, its heading, what its columns and rows seem to be. Guesses are shown before anything is taken. */
import { cellsOf, partedBy } from '../../../rules/pasted-table.ts'
import type { Row } from '../../soundings-file/table.ts'
import { numberIn } from '../form/measure.ts'

export interface PriceTable {
  /** Of each column, as it stands in the list; empty where it has none. */
  readonly head: readonly string[]
  readonly rows: readonly Row[]
  /** So many rows more than are taken in. */
  readonly passed: number
}

const MOST_ROWS = 500
const MOST_COLUMNS = 24
/** Characters. */
const MOST = 2_000_000

export const ROLES = ['code', 'name', 'price', 'size', 'length', 'width', 'mass', 'kind', 'none'] as const
export type Role = (typeof ROLES)[number]

/** Null where there is nothing to read. */
export function readPriceTable(text: string): PriceTable | null {
  const lines = text
    .slice(0, MOST)
    .replace(/^\uFEFF/, '')
    .replaceAll('\0', '')
    .split(/\r\n|\r|\n/)
  const told = lines.flatMap((line, i) => (line.trim() === '' ? [] : [{ line, at: i + 1 }]))
  if (told.length === 0) return null
  const parted = partedBy(told.map(({ line }) => line))
  const all = told.map(({ line, at }): Row => ({ at, cells: cellsOf(line, parted).slice(0, MOST_COLUMNS) }))
  const heading = headingOf(all)
  const rows = all.slice(heading)
  const columns = all.reduce((most, { cells }) => Math.max(most, cells.length), 0)
  return {
    head: Array.from({ length: columns }, (_, k) =>
      heading === 0 ? '' : (all[heading - 1]!.cells[k] ?? ''),
    ),
    rows: rows.slice(0, MOST_ROWS),
    passed: Math.max(0, rows.length - MOST_ROWS),
  }
}

/** Lines up to the one that names columns, which has no figure by itself; 0 where the list begins at once. */
function headingOf(rows: readonly Row[]): number {
  const named = rows.slice(0, 5).findIndex(({ cells }) => {
    const heads = rolesOf(cells)
    return (
      heads.includes('price') && heads.filter((role) => role !== 'none').length >= 2 && !cells.some(isFigure)
    )
  })
  return named + 1
}

const isFigure = (cell: string): boolean => cell.trim() !== '' && numberIn(cell) !== null

/** First match of the first that fits. */
const NAMES: readonly (readonly [Role, RegExp])[] = [
  [
    'code',
    /^(?:code|sku|item (?:no|#|code|number)|part (?:no|#|code|number)|part$|item$|model|art(?:ikel)?|no$|nr$|#)/,
  ],
  ['price', /price|cost|amount|retail|msrp|preis|each|\$|€|usd|eur/],
  ['mass', /weight|mass|\blbs?\b|\bkg\b|gewicht/],
  ['kind', /^(?:kind|type|category|group|class|section of|department)/],
  ['size', /size|dim|measure|l ?x ?w|w ?x ?l/],
  ['length', /length|\blong\b|länge/],
  ['width', /width|\bwide\b|breite/],
  ['name', /name|desc|product|title|bezeichnung|item|part/],
]

function rolesOf(heads: readonly string[]): Role[] {
  const roles: Role[] = heads.map(() => 'none')
  const plain = heads.map((head) =>
    head
      .toLowerCase()
      .replace(/[_\-./[\]:()]+/g, ' ')
      .trim(),
  )
  for (const [role, name] of NAMES) {
    const k = plain.findIndex((text, i) => roles[i] === 'none' && text !== '' && name.test(text))
    if (k >= 0 && !roles.includes(role)) roles[k] = role
  }
  return roles
}

/** What a heading says by itself. */
export const roleOf = (head: string): Role => rolesOf([head])[0] ?? 'none'

/** What the columns seem to be: by their names, else by what is in them. */
export function guessRoles({ head, rows }: PriceTable): Role[] {
  const roles = rolesOf(head)
  const cellsIn = (k: number): string[] => rows.slice(0, 60).map(({ cells }) => (cells[k] ?? '').trim())
  const share = (k: number, is: (cell: string) => boolean): number => {
    const some = cellsIn(k).filter((cell) => cell !== '')
    return some.length === 0 ? 0 : some.filter(is).length / some.length
  }
  const free = (): number[] => roles.flatMap((role, k) => (role === 'none' ? [k] : []))
  const put = (role: Role, k: number | undefined): void => {
    if (k !== undefined && !roles.includes(role)) roles[k] = role
  }
  const best = (score: (k: number) => number): number | undefined =>
    free()
      .filter((k) => score(k) > 0.6)
      .sort((a, b) => score(b) - score(a))[0]
  if (head.every((one) => one === '')) {
    put(
      'price',
      best(
        (k) =>
          share(k, (cell) => /^[$€£]/.test(cell)) ||
          share(k, (cell) => /[.,]\d\d$/.test(cell) && isFigure(cell)),
      ),
    )
    put(
      'price',
      free().findLast((k) => share(k, isFigure) > 0.8),
    )
    put(
      'code',
      best((k) => share(k, (cell) => /^\S{1,24}$/.test(cell) && !isFigure(cell))),
    )
  }
  // Names are the longest texts.
  const long = (k: number): number => {
    const cells = cellsIn(k).filter((cell) => !isFigure(cell))
    return cells.reduce((sum, cell) => sum + cell.length, 0)
  }
  put(
    'name',
    free()
      .filter((k) => long(k) > 0)
      .sort((a, b) => long(b) - long(a))[0],
  )
  return roles
}
