/** Tables: columns as wide as what is in them, one of them taking the rest; rows that are never cut, heads that come again. mm. */
import { label, line, lineHeight, rect, tick } from './blocks.ts'
import { type Block, block } from './flow.ts'
import type { Anchor, Ink, Mark, Tag } from './marks.ts'
import { FIELD, GRAY, HAIR, INK, LEADING, RULE, SIZE, TINT } from './style.ts'
import { CAP_HEIGHT, textWidth, wrapText } from './text.ts'

export interface Column {
  readonly title: string
  /** Figures stand at the end of their cells, and are not broken. */
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
/** A box to tick, mm. */
const TICK = 3.4

export interface TableStyle {
  readonly size?: number
  /** White at the left and right of each cell, mm. */
  readonly pad?: number
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
  readonly cell: (text: string, c: number, x: number, y: number, bold: boolean, tag: Tag, ink?: Ink) => Mark[]
  readonly lines: (text: string, c: number, bold: boolean) => number
}

function layoutOf(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  width: number,
  size: number,
  pad: number,
): Layout {
  const widths = widthsOf(columns, rows, width, size, pad)
  const lefts = widths.map((_, c) => widths.slice(0, c).reduce((a, b) => a + b, 0))
  const high = lineHeight(size)
  const broken = (text: string, c: number, bold: boolean): readonly string[] =>
    text === '' ? [] : wrapText(text, Math.max(widths[c]! - 2 * pad, 4), size, bold ? 'bold' : 'regular')
  return {
    widths,
    lines: (text, c, bold) => broken(text, c, bold).length,
    cell: (text, c, x, y, bold, tag, ink = INK) => {
      const anchor: Anchor = columns[c]!.align ?? 'start'
      const at = x + lefts[c]! + (anchor === 'end' ? widths[c]! - pad : pad)
      return broken(text, c, bold).map((one, i) =>
        label([at, y + ((LEADING + CAP_HEIGHT) / 2) * size + i * high], one, {
          size,
          weight: bold ? 'bold' : 'regular',
          anchor,
          ink,
          tag,
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
  pad: number = PAD,
): Block {
  const { cell, lines } = layoutOf(columns, rows, width, size, pad)
  const high = lineHeight(size)
  const most = Math.max(1, ...columns.map(({ title }, c) => lines(title, c, true)))
  const height = most * high + 1.6
  const all: Tag = { role: 'Table', columns: columns.length }
  const tags = rowTags('TH', columns.length, all)
  return block(
    height,
    (x, y) => [
      ...columns.flatMap(({ title }, c) =>
        cell(title, c, x, y + (most - lines(title, c, true)) * high, true, tags[c]!, GRAY),
      ),
      line([x, y + height], [x + width, y + height], RULE),
    ],
    { before: 3, table: all },
  )
}

/** Cells of a row of their own. */
function rowTags(role: 'TH' | 'TD', n: number, table: Tag | undefined): readonly Tag[] {
  const cells: Tag[] = []
  const row: Tag = { role: 'TR', ...(table && { in: table }), cells }
  for (let i = 0; i < n; i++) cells.push({ role, in: row })
  return cells
}

export function table(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  width: number,
  { size = TABLE, pad = PAD, row = 0, like = rows, head, joins = () => false }: TableStyle = {},
): readonly Block[] {
  const { widths, cell, lines } = layoutOf(columns, like, width, size, pad)
  const high = lineHeight(size)
  const own = head ?? tableHead(columns, like, width, size, pad)
  const bold = (c: number): boolean => columns[c]!.bold ?? false
  return rows.map((cells, r) => {
    const most = Math.max(1, ...cells.map((text, c) => lines(text, c, bold(c))))
    const height = Math.max(row, most * high + 1.4)
    const tags = rowTags('TD', cells.length, own.table)
    return block(
      height,
      (x, y) => {
        let left = x
        const marks = cells.flatMap((text, c) => {
          const at = left
          left += widths[c]!
          const { tick: box, write } = columns[c]!
          if (box) return [tick([at + (widths[c]! - TICK) / 2, y + (height - TICK) / 2], TICK)]
          const field = write ? [rect([at + 0.6, y + 0.4], widths[c]! - 1.2, height - 0.8, FIELD, TINT)] : []
          return [
            ...field,
            ...cell(text, c, x, y + (most === 1 ? (height - high) / 2 : 0.7), bold(c), tags[c]!),
          ]
        })
        return joins(r + 1) ? marks : [...marks, line([x, y + height], [x + width, y + height], HAIR)]
      },
      // Rows that are one stay on one sheet.
      { head: own, keep: joins(r + 1) },
    )
  })
}

/** The first of `sizes` (mm, largest first) at which no cell of a table is broken; the last where none is so small. */
export const largestFor = (
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  width: number,
  sizes: readonly number[],
  pad: number = PAD,
): number =>
  sizes.find(
    (size) => wholeWidths(columns, rows, size, pad).own.reduce((sum, one) => sum + one, 0) <= width + 1e-9,
  ) ?? sizes.at(-1)!

/** Of each column, mm: with no word broken (`bare`), with no cell broken (`own`). */
function wholeWidths(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  size: number,
  pad: number,
) {
  const longest = (text: string, bold: boolean): number =>
    Math.max(0, ...text.split(' ').map((part) => textWidth(part, size, bold ? 'bold' : 'regular')))
  const box = (title: string): number => Math.max(TICK, longest(title, true)) + 2 * pad
  // Narrower than its longest word no column is.
  const bare = columns.map(({ title, tick: ticked, least = 0, bold = false, align }, c) => {
    if (ticked) return box(title)
    const cells = rows.map((row) => {
      const text = row[c] ?? ''
      return align === 'end' ? textWidth(text, size, bold ? 'bold' : 'regular') : longest(text, bold)
    })
    return Math.max(least, longest(title, true), ...cells) + 2 * pad
  })
  const own = columns.map(({ tick: ticked, bold = false }, c) => {
    if (ticked) return bare[c]!
    const cells = rows.map((row) => textWidth(row[c] ?? '', size, bold ? 'bold' : 'regular'))
    return Math.max(bare[c]! - 2 * pad, ...cells) + 2 * pad
  })
  return { bare, own }
}

function widthsOf(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  width: number,
  size: number,
  pad: number,
): number[] {
  const { bare, own } = wholeWidths(columns, rows, size, pad)
  const flex = columns.findIndex((column) => column.flex)
  const rest = width - own.reduce((sum, w, c) => sum + (c === flex ? 0 : w), 0)
  if (flex >= 0 && rest >= 12) return own.map((w, c) => (c === flex ? rest : w))
  const total = (of: readonly number[]): number => of.reduce((a, b) => a + b, 0)
  const [sum, least] = [total(own), total(bare)]
  // Without one that gives, or with too little left for it: who has more than a word gives, each its share; or all take.
  if (sum > width && least < width)
    return own.map((w, c) => bare[c]! + ((w - bare[c]!) * (width - least)) / (sum - least))
  return own.map((w) => (w * width) / sum)
}
