/** Tables: columns as wide as what is in them, one of them taking the rest; rows that are never cut, heads that come again. mm. */
import { label, lineHeight, tick } from './blocks.ts'
import { type Block, block } from './flow.ts'
import type { Anchor, Mark } from './marks.ts'
import { GRAY, HAIR, INK, LEADING, RULE, SIZE, TINT } from './style.ts'
import { CAP_HEIGHT, textWidth, wrapText } from './text.ts'

export interface Column {
  readonly title: string
  readonly align?: 'start' | 'end'
  /** Takes what the others leave, and breaks its text. One to a table. */
  readonly flex?: boolean
  /** A box to tick in each row; no text. */
  readonly tick?: boolean
  /** To be written in by hand: no narrower than this. */
  readonly least?: number
  readonly bold?: boolean
}

const PAD = 1.6

export interface TableStyle {
  readonly size?: number
  /** Row height at least, for what is filled in by hand. */
  readonly row?: number
  readonly zebra?: boolean
  /** All rows that this one is to line up with, of other tables too. */
  readonly like?: readonly (readonly string[])[]
  /** Goes on under a table that has its head already. */
  readonly headless?: boolean
}

export function table(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  width: number,
  { size = SIZE.small + 0.25, row = 0, zebra = false, like = rows, headless = false }: TableStyle = {},
): readonly Block[] {
  const widths = widthsOf(columns, like, width, size)
  const lefts = widths.map((_, c) => widths.slice(0, c).reduce((a, b) => a + b, 0))
  const high = lineHeight(size)
  const cell = (text: string, c: number, x: number, y: number, bold: boolean, ink = INK): Mark[] => {
    const { align = 'start' } = columns[c]!
    const at = align === 'end' ? x + lefts[c]! + widths[c]! - PAD : x + lefts[c]! + PAD
    const anchor: Anchor = align
    return linesOf(text, widths[c]! - 2 * PAD, size, bold).map((line, i) =>
      label([at, y + ((LEADING + CAP_HEIGHT) / 2) * size + i * high], line, {
        size,
        weight: bold ? 'bold' : 'regular',
        anchor,
        ink,
      }),
    )
  }
  const headLines = Math.max(
    1,
    ...columns.map(({ title }, c) => linesOf(title, widths[c]! - 2 * PAD, size, true).length),
  )
  const headHeight = headLines * high + 1.6
  const head = block(
    headHeight,
    (x, y) => [
      ...columns.flatMap(({ title }, c) => {
        const lines = linesOf(title, widths[c]! - 2 * PAD, size, true).length
        return cell(title, c, x, y + (headLines - lines) * high, true, GRAY)
      }),
      {
        kind: 'path',
        points: [
          [x, y + headHeight],
          [x + width, y + headHeight],
        ],
        closed: false,
        stroke: RULE,
        fill: null,
      },
    ],
    { before: 3 },
  )
  return rows.map((cells, r) => {
    const lines = Math.max(
      1,
      ...cells.map((text, c) => linesOf(text, widths[c]! - 2 * PAD, size, columns[c]!.bold ?? false).length),
    )
    const height = Math.max(row, lines * high + 1.4)
    return block(
      height,
      (x, y) => [
        ...(zebra && r % 2 === 1
          ? [
              {
                kind: 'path' as const,
                points: [
                  [x, y],
                  [x + width, y],
                  [x + width, y + height],
                  [x, y + height],
                ] as const,
                closed: true,
                stroke: null,
                fill: TINT,
              },
            ]
          : []),
        ...cells.flatMap((text, c) =>
          columns[c]!.tick
            ? [tick([x + lefts[c]! + PAD, y + height / 2 - 1.7])]
            : cell(text, c, x, y + (lines === 1 ? (height - high) / 2 : 0.7), columns[c]!.bold ?? false),
        ),
        {
          kind: 'path',
          points: [
            [x, y + height],
            [x + width, y + height],
          ],
          closed: false,
          stroke: HAIR,
          fill: null,
        },
      ],
      headless ? {} : { head },
    )
  })
}

const linesOf = (text: string, width: number, size: number, bold: boolean): readonly string[] =>
  text === '' ? [] : wrapText(text, Math.max(width, 4), size, bold ? 'bold' : 'regular')

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
