/** A table from a spreadsheet or a logger, and whether it has a heading. */
import { cellsOf, partedBy } from '../../rules/pasted-table.ts'
import { readCell } from './cell.ts'
import { faulty, MOST_ROWS, type Row, type TableRead } from './table.ts'

/** A heading has at most so many lines: names, and units under them. */
const HEADING = 2
const MOST_COLUMNS = 40

export function readTextTable(text: string): TableRead {
  const lines = text.split(/\r\n|\r|\n/)
  // What a logger remarks.
  const told = (line: string): boolean => line.trim() !== '' && !/^\s*(?:#|\/\/)/.test(line)
  const some = lines.filter(told)
  if (some.length === 0) return faulty('empty')
  const parted = partedBy(some)
  const all = lines
    .map((line, i) => ({ line, at: i + 1 }))
    .filter(({ line }) => told(line))
    .map(({ line, at }): Row => ({ at, cells: cellsOf(line, parted).slice(0, MOST_COLUMNS) }))
  const headings = headingsOf(all)
  const rows = all.slice(headings)
  const columns = rows.slice(0, MOST_ROWS).reduce((most, { cells }) => Math.max(most, cells.length), 0)
  if (columns < 2) return faulty('one-column', all[headings]?.at ?? 1)
  const head = Array.from({ length: columns }, (_, k) =>
    all
      .slice(0, headings)
      .map(({ cells }) => cells[k] ?? '')
      .join(' ')
      .trim(),
  )
  return {
    ok: true,
    table: {
      format: 'text',
      parted,
      head,
      rows: rows.slice(0, MOST_ROWS),
      passed: Math.max(0, rows.length - MOST_ROWS),
    },
  }
}

/** Lines at the beginning without a figure that could be a length. */
function headingsOf(rows: readonly Row[]): number {
  const hasFigure = ({ cells }: Row): boolean => cells.some((cell) => readCell(cell, 'm').ok)
  const first = rows.slice(0, HEADING + 1).findIndex(hasFigure)
  return first === -1 ? 0 : Math.min(first, HEADING)
}
