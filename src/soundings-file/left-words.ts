/** Why a row gives nothing, in words: what stands there, and what was expected, in the reader's units. */
import { type Reader, say } from '../../rules/index.ts'
import { count, meters, SCREEN, text } from '../words/index.ts'
import { SOUNDINGS_FILE } from '../words/soundings-file.ts'
import type { Table } from './table.ts'
import type { Left } from './understand.ts'

/** A cell may be as long as the file. */
const LONG = 30

export function columnName({ head }: Table, k: number, reader: Reader): string {
  const n = count(k + 1)
  return head[k]
    ? say(SOUNDINGS_FILE, reader, 'column.named', { n, name: text(head[k]) })
    : say(SOUNDINGS_FILE, reader, 'column', { n })
}

export function leftText({ row, column, why }: Left, table: Table, reader: Reader): string {
  const cell = row.cells[column ?? -1] ?? ''
  const told = say(SOUNDINGS_FILE, reader, `why.${why}`, {
    column: text(column === null ? '' : columnName(table, column, reader)),
    cell: text(cell.length > LONG ? `${cell.slice(0, LONG)}…` : cell),
    example: text(say(SCREEN, reader, `example.length.${reader.units}`)),
    most: meters(why === 'too-far' ? 20_000 : 300),
    least: meters(100),
  })
  const key = table.format === 'text' ? 'left.line' : 'left.point'
  return say(SOUNDINGS_FILE, reader, key, { at: count(row.at), why: text(told) })
}
