/** The table of legs, in as many parts as it takes. */

import { cornerWord, formatLength } from '../../rules/index.ts'
import { braceHoles, legNumber } from '../../rules/leg-places.ts'
import type { DrawingWords } from '../../rules/words/drawing.ts'
import type { Drawn } from '../drawn.ts'
import { label, line } from '../paper/blocks.ts'
import type { Mark, Point, Weight } from '../paper/marks.ts'
import { HAIR, INK, TINT } from '../paper/style.ts'
import { fitText, textWidth } from '../paper/text.ts'

/** Heights and letters, mm. */
const ROW = 4.6
/** Over the head. */
const TITLE = 8
const HEAD = 9
const SIZE = 2.6
const PAD = 1.9

/** Columns of figures, at the right of their cells. */
const isFigure = (column: number): boolean => column >= 2 && column !== 8

/** All its rows, at the widths of the widest; put on sheets in as many parts as it takes. */
export interface LegTable {
  /** How many rows go into a height, mm. */
  rowsIn(height: number): number
  readonly rows: number
  /** Height of so many rows with their head, mm. */
  heightOf(rows: number): number
  /** Rows from one on, upper left corner at `at`. */
  marks(title: string, from: number, count: number, at: Point): Mark[]
}

export function legTable(drawn: Drawn, t: DrawingWords): LegTable {
  const rows = rowsOf(drawn, t)
  const columns = columnsOf(headOf(t), rows)
  return {
    rows: rows.length,
    rowsIn: (height) => Math.max(0, Math.floor((height - TITLE - HEAD) / ROW + 1e-9)),
    heightOf: (count) => TITLE + HEAD + count * ROW,
    marks: (title, from, count, at) => tableMarks(title, columns, rows.slice(from, from + count), at),
  }
}

const headOf = (t: DrawingWords): string[] => [
  t('number'),
  t('leg'),
  t('station'),
  t('bed'),
  t('set-height'),
  t('set-height-frame'),
  t('length'),
  t('above-deck'),
  t('brace'),
  t('brace-hole'),
]

function rowsOf(drawn: Drawn, t: DrawingWords): string[][] {
  const { dock } = drawn
  const length = (value: number | null): string => (value === null ? '' : formatLength(value, drawn))
  return dock.legs.map((leg) => {
    const holes = braceHoles(dock, leg)
    return [
      String(legNumber(dock, leg.id)),
      `${leg.section} ${cornerWord(leg.corner, drawn)}`,
      length(leg.x),
      length(-leg.bed),
      length(leg.setHeight),
      length(leg.setHeightFrame),
      leg.stock === null ? t('none-found') : length(leg.stock),
      length(leg.aboveDeck),
      holes.map(({ end, code }) => t(`${end}-here`, { code })).join(', '),
      holes.map(({ up }) => length(up)).join(', '),
    ]
  })
}

interface TableColumn {
  /** Its head in two lines, broken where they are most even. */
  readonly head: readonly [string, string]
  /** mm, with its padding. */
  readonly width: number
}

/** Wide enough for the longest cell, and for the head in two lines. */
const columnsOf = (head: readonly string[], rows: readonly (readonly string[])[]): TableColumn[] =>
  head.map((title, c) => {
    const lines = evenHalves(title)
    const cells = rows.map((row) => textWidth(row[c]!, SIZE))
    const longest = Math.max(...lines.map((line) => textWidth(line, SIZE, 'bold')))
    const width = Math.max(longest, ...cells) + 2 * PAD
    const one = textWidth(title, SIZE, 'bold') <= width - 2 * PAD
    return { head: one ? ['', title] : lines, width }
  })

function tableMarks(
  title: string,
  columns: readonly TableColumn[],
  rows: readonly (readonly string[])[],
  [left, top]: Point,
): Mark[] {
  const marks: Mark[] = []
  const right = left + columns.reduce((sum, { width }) => sum + width, 0)
  marks.push(label([left, top + 3.4], title, { size: 3.4, weight: 'bold' }))
  const headTop = top + TITLE
  for (const [i, y] of [headTop + 3, headTop + 6.6].entries())
    marks.push(
      ...rowMarks(
        columns.map(({ head }) => head[i]!),
        columns,
        [left, y],
        'bold',
      ),
    )
  marks.push(line([left, headTop + HEAD - 0.8], [right, headTop + HEAD - 0.8], { width: 0.35, ink: INK }))
  let y = headTop + HEAD
  for (const [r, row] of rows.entries()) {
    if (r % 2 === 1)
      marks.push({
        kind: 'path',
        closed: true,
        stroke: null,
        fill: TINT,
        points: [
          [left, y],
          [right, y],
          [right, y + ROW],
          [left, y + ROW],
        ],
      })
    marks.push(...rowMarks(row, columns, [left, y + 3.3], 'regular'))
    marks.push(line([left, y + ROW], [right, y + ROW], HAIR))
    y += ROW
  }
  return marks
}

/** The cells of one row, on a line through `at`. */
function rowMarks(
  cells: readonly string[],
  columns: readonly TableColumn[],
  [left, y]: Point,
  weight: Weight,
): Mark[] {
  let x = left
  return columns.map(({ width }, c) => {
    const at: Point = [isFigure(c) ? x + width - PAD : x + PAD, y]
    x += width
    return label(at, fitText(cells[c]!, width - PAD, SIZE, weight), {
      size: SIZE,
      weight,
      anchor: isFigure(c) ? 'end' : 'start',
      ink: INK,
    })
  })
}

/** Text in the two lines that are least wide. */
function evenHalves(text: string): readonly [string, string] {
  const words = text.split(' ')
  const wide = (line: readonly string[]): number => textWidth(line.join(' '), SIZE, 'bold')
  let best = words.length
  for (let i = words.length - 1; i > 0; i--) {
    const [now, then] = [i, best].map((at) => Math.max(wide(words.slice(0, at)), wide(words.slice(at))))
    if (now! < then!) best = i
  }
  return best === words.length ? ['', text] : [words.slice(0, best).join(' '), words.slice(best).join(' ')]
}
