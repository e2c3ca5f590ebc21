/** Tables: columns as wide as what is in them, one of them taking the rest; rows that are never cut, heads that come again. mm. */
import { label, line, lineHeight, rect, tick } from './blocks.ts'
import { type Block, block } from './flow.ts'
import type { Anchor, Ink, Mark } from './marks.ts'
import { GRAY, HAIR, INK, LEADING, RULE, SIZE, TINT } from './style.ts'
import { CAP_HEIGHT, textWidth, wrapText } from './text.ts'

export interface Column {
  readonly title: string
  readonly align?: 'start' | 'end'
  /** Takes what the others leave, and breaks its text. One to a table. */
  readonly flex?: boolean
  /** A box to tick in each row; no text. */
  readonly tick?: boolean
  /** To be written in by hand: tinted. */
  readonly write?: boolean
  /** No narrower than this. */
  readonly least?: number
  readonly bold?: boolean
}

const PAD = 1.6

export interface TableStyle {
  readonly size?: number
  /** Row height at least, for what is filled in by hand. */
  readonly row?: number
  /** All rows that this one is to line up with, of other tables too. */
  readonly like?: readonly (readonly string[])[]
  /** Of several tables that stand under one head: `tableHead` of all their rows. */
  readonly head?: Block
  /** Rows with the one above as one: no line between them. */
  readonly joins?: (row: number) => boolean
}

/** Where columns stand, and what is written in them. */
interface Layout {
  readonly widths: readonly number[]
  readonly cell: (text: string, c: number, x: number, y: number, bold: boolean, ink?: Ink) => Mark[]
  readonly lines: (text: string, c: number, bold: boolean) => number
}

function layoutOf(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  width: number,
  size: number,
): Layout {
  const widths = widthsOf(columns, rows, width, size)
  const lefts = widths.map((_, c) => widths.slice(0, c).reduce((a, b) => a + b, 0))
  const high = lineHeight(size)
  const broken = (text: string, c: number, bold: boolean): readonly string[] =>
    text === '' ? [] : wrapText(text, Math.max(widths[c]! - 2 * PAD, 4), size, bold ? 'bold' : 'regular')
  return {
    widths,
    lines: (text, c, bold) => broken(text, c, bold).length,
    cell: (text, c, x, y, bold, ink = INK) => {
      const anchor: Anchor = columns[c]!.align ?? 'start'
      const at = x + lefts[c]! + (anchor === 'end' ? widths[c]! - PAD : PAD)
      return broken(text, c, bold).map((one, i) =>
        label([at, y + ((LEADING + CAP_HEIGHT) / 2) * size + i * high], one, {
          size,
          weight: bold ? 'bold' : 'regular',
          anchor,
          ink,
        }),
      )
    },
  }
}

const TABLE = SIZE.small + 0.25

/** A table's head by itself, over all `rows` of the tables that stand under it. */
export function tableHead(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  width: number,
  size: number = TABLE,
): Block {
  const { cell, lines } = layoutOf(columns, rows, width, size)
  const high = lineHeight(size)
  const most = Math.max(1, ...columns.map(({ title }, c) => lines(title, c, true)))
  const height = most * high + 1.6
  return block(
    height,
    (x, y) => [
      ...columns.flatMap(({ title }, c) =>
        cell(title, c, x, y + (most - lines(title, c, true)) * high, true, GRAY),
      ),
      line([x, y + height], [x + width, y + height], RULE),
    ],
    { before: 3 },
  )
}

export function table(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  width: number,
  { size = TABLE, row = 0, like = rows, head, joins = () => false }: TableStyle = {},
): readonly Block[] {
  const { widths, cell, lines } = layoutOf(columns, like, width, size)
  const high = lineHeight(size)
  const own = head ?? tableHead(columns, like, width, size)
  const bold = (c: number): boolean => columns[c]!.bold ?? false
  return rows.map((cells, r) => {
    const most = Math.max(1, ...cells.map((text, c) => lines(text, c, bold(c))))
    const height = Math.max(row, most * high + 1.4)
    return block(
      height,
      (x, y) => {
        let left = x
        const marks = cells.flatMap((text, c) => {
          const at = left
          left += widths[c]!
          const { tick: box, write } = columns[c]!
          if (box) return [tick([at + PAD, y + height / 2 - 1.7])]
          const field = write ? [rect([at + 0.6, y + 0.5], widths[c]! - 1.2, height - 1, null, TINT)] : []
          return [...field, ...cell(text, c, x, y + (most === 1 ? (height - high) / 2 : 0.7), bold(c))]
        })
        return joins(r + 1) ? marks : [...marks, line([x, y + height], [x + width, y + height], HAIR)]
      },
      // Rows that are one stay on one sheet.
      { head: own, keep: joins(r + 1) },
    )
  })
}

function widthsOf(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  width: number,
  size: number,
): number[] {
  const own = columns.map(({ title, tick: box, least = 0, bold = false }, c) => {
    if (box) return 3.4 + 2 * PAD
    const word = Math.max(0, ...title.split(' ').map((part) => textWidth(part, size, 'bold')))
    const cells = rows.map((row) => textWidth(row[c] ?? '', size, bold ? 'bold' : 'regular'))
    return Math.max(least, word, ...cells) + 2 * PAD
  })
  const flex = columns.findIndex((column) => column.flex)
  const rest = width - own.reduce((sum, w, c) => sum + (c === flex ? 0 : w), 0)
  if (flex >= 0 && rest >= 12) return own.map((w, c) => (c === flex ? rest : w))
  const sum = own.reduce((a, b) => a + b, 0)
  // Without one that gives, or with too little left for it: all in proportion.
  return own.map((w) => (w * width) / sum)
}
