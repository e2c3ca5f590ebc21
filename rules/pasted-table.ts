/**
 * What parts the columns of a table that is pasted as text, one rule for all that take any: depths, surveys, gauges' records. Decided once
 * for the whole text, by what most lines have; lines without it (headings, remarks) are parted the same way.
 */
export type Separator = 'tab' | 'semicolon' | 'bar' | 'comma' | 'blank'

const MARKS = { tab: '\t', semicolon: ';', bar: '|', comma: ',' } as const
/** Lines that tell. */
const SAMPLE = 400
/** With a decimal comma: no year of a date that a comma comes after. */
const FIGURE = /^[-+]?(?!(?:19|20)\d\d,)\d+,\d+$/

/** The strongest mark that most lines have. */
export function partedBy(lines: readonly string[]): Separator {
  const sample = lines.slice(0, SAMPLE)
  const most = (is: (line: string) => boolean): boolean => sample.filter(is).length > sample.length / 2
  for (const mark of ['tab', 'semicolon', 'bar'] as const)
    if (most((line) => line.trim().includes(MARKS[mark]))) return mark
  return most((line) => line.includes(',')) && !most(isByBlanks) ? 'comma' : 'blank'
}

/** Blanks part its columns, and each comma is that of a decimal: `4,5 0,9`. */
function isByBlanks(line: string): boolean {
  const cells = line.trim().split(/\s+/)
  return cells.length > 1 && cells.every((cell) => !cell.includes(',') || FIGURE.test(cell))
}

/** A cell in quotes is what is in them, and may have the mark in it; a quote within a cell is one (`7' 2"`). */
export function cellsOf(line: string, parted: Separator): string[] {
  // Where wide gaps part the columns, single blanks are within a cell: `7 ft 2 in`.
  if (parted === 'blank') return line.trim().split(/\s{2,}/.test(line.trim()) ? /\s{2,}/ : /\s+/)
  const mark = MARKS[parted]
  // Most lines have nothing quoted, and a file has thousands.
  if (!line.includes('"')) return line.split(mark).map((cell) => cell.trim())
  const cells: string[] = []
  for (let rest = line; ; ) {
    const quoted = /^\s*"((?:[^"]|"")*)"\s*/.exec(rest)
    const isWhole = quoted !== null && (quoted[0].length === rest.length || rest[quoted[0].length] === mark)
    const next = rest.indexOf(mark)
    const end = isWhole ? quoted[0].length : next < 0 ? rest.length : next
    cells.push((isWhole ? quoted[1]!.replaceAll('""', '"') : rest.slice(0, end)).trim())
    if (end >= rest.length) return cells
    rest = rest.slice(end + 1)
  }
}
