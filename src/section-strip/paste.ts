/**
 * Two columns from a spreadsheet: distance and depth. Decimals may have a comma wherever the comma does not part columns. A heading is
 * passed over. Lengths may be typed in any way that a field takes.
 */
import { cellsOf, partedBy } from '../../rules/pasted-table.ts'
import { type LengthFault, type LengthUnit, parseLength } from '../units/parse.ts'

export interface PastedCell {
  readonly text: string
  /** m; null where it could not be read. */
  readonly meters: number | null
  readonly fault: LengthFault | null
}

export interface PastedRow {
  readonly distance: PastedCell
  readonly depth: PastedCell
}

/** Whether a text is more than one cell. */
export const isGrid = (text: string): boolean => /[\t\n;]/.test(text.trim())

export function readPaste(text: string, bare: LengthUnit): PastedRow[] {
  const lines = text
    .replace(/\r\n?/g, '\n')
    .split('\n')
    .filter((line) => line.trim() !== '')
  const parted = partedBy(lines)
  const rows = lines.map((line) => {
    const [distance = '', depth = ''] = cellsOf(line, parted)
    return { distance: readCell(distance, bare), depth: readCell(depth, bare) }
  })
  // A heading has no figure at all; a mistyped row has at least one.
  const isHeading = (row: PastedRow): boolean => !/\d/.test(row.distance.text + row.depth.text)
  return rows[0] && isHeading(rows[0]) ? rows.slice(1) : rows
}

function readCell(text: string, bare: LengthUnit): PastedCell {
  const read = parseLength(text, bare)
  return read.ok ? { text, meters: read.meters, fault: null } : { text, meters: null, fault: read.fault }
}
