/**
 * Two columns from a spreadsheet: distance and depth. Tabs, semicolons, commas or blanks part the columns; decimals may have a comma
 * wherever the comma does not part columns. A heading is passed over. Lengths may be typed in any way that a field takes.
 */
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
  const split = splitter(lines)
  const rows = lines.map((line) => {
    const [distance = '', depth = ''] = split(line)
    return { distance: readCell(distance, bare), depth: readCell(depth, bare) }
  })
  // A heading has no figure at all; a mistyped row has at least one.
  const isHeading = (row: PastedRow): boolean => !/\d/.test(row.distance.text + row.depth.text)
  return rows[0] && isHeading(rows[0]) ? rows.slice(1) : rows
}

function readCell(text: string, bare: LengthUnit): PastedCell {
  const clean = text.trim().replace(/^"(.*)"$/s, (_, inner: string) => inner.replaceAll('""', '"'))
  const read = parseLength(clean, bare)
  return read.ok
    ? { text: clean, meters: read.meters, fault: null }
    : { text: clean, meters: null, fault: read.fault }
}

/** One way for the whole text: the strongest mark that each line has. */
function splitter(lines: readonly string[]): (line: string) => string[] {
  const all = (mark: RegExp): boolean => lines.every((line) => mark.test(line.trim()))
  if (all(/\t/)) return (line) => line.split('\t')
  if (all(/;/)) return (line) => line.split(';')
  // One comma in a line parts its columns; where blanks do that too, the commas are decimal.
  if (all(/^[^,]*,[^,]*$/) && !all(/\d\s+[-\d.,]/)) return (line) => line.split(',')
  if (all(/,\s/)) return (line) => line.split(/,\s+/)
  if (lines.some((line) => line.includes('\t'))) return (line) => line.split('\t')
  return (line) => line.trim().split(/\s+/)
}
