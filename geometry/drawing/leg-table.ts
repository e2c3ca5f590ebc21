/** The table of legs, over as many sheets as it takes. */

import { cornerWord, formatLength } from '../../rules/index.ts'
import type { DrawingWords } from '../../rules/words/drawing.ts'
import type { Drawn } from '../drawn.ts'
import { label, line } from '../paper/blocks.ts'
import type { Mark, Point, Weight } from '../paper/marks.ts'
import { HAIR, INK, TINT } from '../paper/style.ts'
import { fitText, textWidth } from '../paper/text.ts'
import { withDetails } from './place-details.ts'
import { type Draft, type DrawingOf, draft, roomOn } from './sheet.ts'
import type { View } from './view.ts'

/** Heights and letters, mm. */
const ROW = 5
/** Over the head. */
const TITLE = 8
const HEAD = 9
const SIZE = 2.6
const PAD = 2.4

/** Columns of figures, at the right of their cells. */
const isFigure = (column: number): boolean => column >= 2 && column <= 7

export function legTable(drawn: Drawn, about: DrawingOf, details: readonly View[]): Draft[] {
  const { options, t } = about
  const room = roomOn(options)
  const rows = rowsOf(drawn, t)
  const columns = columnsOf(headOf(t), rows)
  const width = columns.reduce((sum, one) => sum + one.width, 0)
  const fits = Math.max(1, Math.floor((room.y1 - room.y0 - TITLE - HEAD) / ROW))
  const of = Math.max(1, Math.ceil(rows.length / fits))
  const sheets = Array.from({ length: of }, (_, i) =>
    tableSheet(
      of > 1 ? t('continued', { title: t('legs'), n: i + 1, of }) : t('legs'),
      columns,
      rows.slice(i * fits, (i + 1) * fits),
      [room.x0, room.y0],
    ),
  )
  const aside = room.x0 + width + 8
  const under = room.y0 + TITLE + HEAD + Math.min(rows.length, fits) * ROW + 6
  return withDetails(sheets, details, about, aside, under)
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
]

function rowsOf(drawn: Drawn, t: DrawingWords): string[][] {
  const { dock } = drawn
  const length = (value: number | null): string => (value === null ? '' : formatLength(value, drawn))
  return dock.legs.map((leg, i) => {
    const brace = dock.pairs.find(({ legs }) => legs.includes(leg.id))?.brace
    return [
      String(i + 1),
      `${leg.section} ${cornerWord(leg.corner, drawn)}`,
      length(leg.x),
      length(-leg.bed),
      length(leg.setHeight),
      length(leg.setHeightFrame),
      leg.stock === null ? t('none-found') : length(leg.stock),
      length(leg.aboveDeck),
      brace ? t(brace.low === leg.id ? 'low-here' : 'high-here', { code: brace.code }) : '',
    ]
  })
}

interface TableColumn {
  /** Its head in two lines, broken where they are most even. */
  readonly head: readonly [string, string]
  /** mm, with its padding. */
  readonly width: number
}

/** Wide enough for the longest cell and for the longest word of the head. */
const columnsOf = (head: readonly string[], rows: readonly (readonly string[])[]): TableColumn[] =>
  head.map((title, c) => {
    const cells = rows.map((row) => textWidth(row[c]!, SIZE))
    const longest = Math.max(...title.split(' ').map((word) => textWidth(word, SIZE, 'bold')))
    const width = Math.max(longest, ...cells) + 2 * PAD
    return { head: halves(title, width - 2 * PAD), width }
  })

/** One sheet of the table, its upper left corner at `at`. */
function tableSheet(
  title: string,
  columns: readonly TableColumn[],
  rows: readonly (readonly string[])[],
  [left, top]: Point,
): Draft {
  const sheet = draft(title)
  const right = left + columns.reduce((sum, { width }) => sum + width, 0)
  sheet.marks.push(label([left, top + 3.4], title, { size: 3.4, weight: 'bold' }))
  const headTop = top + TITLE
  for (const [i, y] of [headTop + 3, headTop + 6.6].entries())
    sheet.marks.push(
      ...rowMarks(
        columns.map(({ head }) => head[i]!),
        columns,
        [left, y],
        'bold',
      ),
    )
  sheet.marks.push(
    line([left, headTop + HEAD - 0.8], [right, headTop + HEAD - 0.8], { width: 0.35, ink: INK }),
  )
  let y = headTop + HEAD
  for (const [r, row] of rows.entries()) {
    if (r % 2 === 1)
      sheet.marks.push({
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
    sheet.marks.push(...rowMarks(row, columns, [left, y + 3.5], 'regular'))
    sheet.marks.push(line([left, y + ROW], [right, y + ROW], HAIR))
    y += ROW
  }
  return sheet
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

/** Text in two lines no wider than `width`, the second one empty where one is enough. */
function halves(text: string, width: number): readonly [string, string] {
  if (textWidth(text, SIZE, 'bold') <= width + 0.01) return ['', text]
  const words = text.split(' ')
  for (let i = words.length - 1; i > 0; i--) {
    const first = words.slice(0, i).join(' ')
    if (textWidth(first, SIZE, 'bold') <= width + 0.01) return [first, words.slice(i).join(' ')]
  }
  return [words[0]!, words.slice(1).join(' ')]
}
