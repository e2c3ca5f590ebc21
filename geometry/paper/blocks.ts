/** Blocks that papers are made of: headings, paragraphs, lists, facts, tick boxes, figures, lines to write on. mm. */
import { type Block, block, together, withTag } from './flow.ts'
import type { Anchor, Ink, Mark, Point, Stroke, Tag, TextMark, Weight } from './marks.ts'
import { BOX, GRAY, HAIR, INK, LEADING, RULE, SIZE, TINT } from './style.ts'
import { CAP_HEIGHT, fitText, textWidth, wrapText } from './text.ts'

export interface TextStyle {
  readonly size?: number
  readonly weight?: Weight
  readonly ink?: Ink
  readonly anchor?: Anchor
  readonly tag?: Tag
}

/** One line of text on its baseline. */
export const label = (
  at: Point,
  text: string,
  { size = SIZE.body, weight = 'regular', ink = INK, anchor = 'start', tag }: TextStyle = {},
  angle = 0,
): TextMark => ({
  ...{ kind: 'text', at, text, size, weight, anchor, angle, ink },
  ...(tag && { tag }),
})

export const line = (from: Point, to: Point, stroke: Stroke = HAIR): Mark => ({
  kind: 'path',
  points: [from, to],
  closed: false,
  stroke,
  fill: null,
})

export const rect = (
  [x, y]: Point,
  width: number,
  height: number,
  stroke: Stroke | null = BOX,
  fill: Ink | null = null,
): Mark => ({
  kind: 'path',
  points: [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ],
  closed: true,
  stroke,
  fill,
})

/** Where the first baseline is under the top of a line. */
export const baselineOf = (size: number): number => ((LEADING + CAP_HEIGHT) / 2) * size

export const lineHeight = (size: number): number => LEADING * size

/** A line of its own that is not broken: cut where it must be. */
export const textLine = (text: string, width: number, style: TextStyle = {}): Block => {
  const { size = SIZE.body, weight = 'regular', anchor = 'start' } = style
  const across = anchor === 'start' ? 0 : anchor === 'end' ? width : width / 2
  return block(lineHeight(size), (x, y) => [
    label([x + across, y + baselineOf(size)], fitText(text, width, size, weight), style),
  ])
}

/** Text broken into lines; each of them a block, none alone at the foot of a sheet. */
export function paragraph(
  text: string,
  width: number,
  style: TextStyle & { readonly before?: number } = {},
): readonly Block[] {
  const { size = SIZE.body, weight = 'regular', before = 1.6 } = style
  const lines = wrapText(text, width, size, weight)
  const tag = style.tag ?? { role: 'P' }
  return lines.map((one, i) => ({
    ...textLine(one, width, { ...style, tag }),
    before: i === 0 ? before : 0,
    keep: lines.length > 1 && (i === 0 || i === lines.length - 2),
  }))
}

export const heading = (text: string, width: number): Block => {
  const tag: Tag = { role: 'H2' }
  const lines = wrapText(text, width, SIZE.heading, 'bold')
  return together(
    lines.map((one) => textLine(one, width, { size: SIZE.heading, weight: 'bold', tag })),
    { before: 7, keep: true },
  )
}

export const subheading = (text: string, width: number): Block => {
  const tag: Tag = { role: 'H3' }
  const lines = wrapText(text, width, SIZE.sub, 'bold')
  return together(
    lines.map((one) => textLine(one, width, { size: SIZE.sub, weight: 'bold', tag })),
    { before: 4.5, keep: true },
  )
}

/** A box to tick, drawn: the font has none. */
export const tick = ([x, y]: Point, size = 3.4): Mark => rect([x, y], size, size, { ...BOX, width: 0.25 })

/** Paragraphs behind a box to tick, a number or a dot. */
export function list(
  items: readonly string[],
  width: number,
  kind: 'tick' | 'dot' | 'number' = 'dot',
  style: TextStyle = {},
): readonly Block[] {
  const { size = SIZE.body } = style
  const inset = kind === 'dot' ? 3.6 : kind === 'tick' ? 6 : 6.4
  const all: Tag = { role: 'L' }
  return items.map((item, i) => {
    const own: Tag = { role: 'LI', in: all }
    const lines = paragraph(item, width - inset, { ...style, before: 0, tag: { role: 'LBody', in: own } })
    const body = together(lines)
    return block(
      body.height,
      (x, y) => [
        ...(kind === 'tick'
          ? [tick([x, y + lineHeight(size) / 2 - 1.7])]
          : kind === 'dot'
            ? [dot([x + 1, y + lineHeight(size) / 2], style.ink ?? INK)]
            : [
                label([x + inset - 2.2, y + baselineOf(size)], String(i + 1), {
                  ...style,
                  tag: { role: 'Lbl', in: own },
                  weight: 'bold',
                  anchor: 'end',
                }),
              ]),
        ...body.marks(x + inset, y),
      ],
      { before: kind === 'tick' ? 2 : 1.1 },
    )
  })
}

const dot = (at: Point, ink: Ink): Mark => ({ kind: 'circle', at, radius: 0.55, stroke: null, fill: ink })

export interface Fact {
  readonly label: string
  readonly value: string
}

/** Facts in a row: small gray labels, the values under them, in as many columns as fit; more rows where they must. */
export function facts(
  all: readonly Fact[],
  width: number,
  columns = Math.min(4, all.length),
  style: TextStyle = {},
): Block {
  const size = style.size ?? SIZE.sub
  const gap = 5
  const cell = (width - gap * (columns - 1)) / Math.max(1, columns)
  const rows = Array.from({ length: Math.ceil(all.length / Math.max(1, columns)) }, (_, r) =>
    all.slice(r * columns, (r + 1) * columns),
  )
  const blocks = rows.map((row, r) => {
    const cells = row.map((fact) => {
      const tag: Tag = { role: 'P' }
      return [
        ...wrapText(fact.label, cell, SIZE.small).map((one) =>
          textLine(one, cell, { size: SIZE.small, ink: GRAY, tag }),
        ),
        ...wrapText(fact.value, cell, size, 'bold').map((one) =>
          textLine(one, cell, { size, weight: 'bold', ...style, tag }),
        ),
      ]
    })
    const parts = cells.map((one) => together(one))
    return block(
      Math.max(...parts.map(({ height }) => height)),
      (x, y) => parts.flatMap((one, c) => one.marks(x + c * (cell + gap), y)),
      { before: r === 0 ? 0 : 2.6 },
    )
  })
  return together(blocks, { before: 3 })
}

/** Label at the left, value at the right, a hairline under each: sums, and what is told of a thing. */
export function keyValues(
  all: readonly (Fact & { readonly strong?: boolean })[],
  width: number,
  style: TextStyle = {},
): readonly Block[] {
  const size = style.size ?? SIZE.body
  return all.map(({ label: key, value, strong = false }) => {
    const weight: Weight = strong ? 'bold' : 'regular'
    const tag: Tag = { role: 'P' }
    const room = width - textWidth(value, size, weight) - 4
    const lines = wrapText(key, Math.max(room, width * 0.4), size, weight)
    const height = lines.length * lineHeight(size) + 1.2
    return block(height, (x, y) => [
      ...(strong ? [line([x, y], [x + width, y], RULE)] : []),
      ...lines.map((one, i) =>
        label([x, y + 0.6 + baselineOf(size) + i * lineHeight(size)], one, {
          size,
          weight,
          ink: strong ? INK : GRAY,
          tag,
        }),
      ),
      label([x + width, y + 0.6 + baselineOf(size)], value, { size, weight, anchor: 'end', tag }),
      ...(strong ? [] : [line([x, y + height], [x + width, y + height])]),
    ])
  })
}

/** What a part of a table is about, on a tinted band; at the right what it comes to. */
export function band(
  text: string,
  sum: string,
  width: number,
  more: { readonly head?: Block; readonly name?: string } = {},
): Block {
  const size = SIZE.small + 0.35
  const room = width - 3.2 - (sum === '' ? 0 : textWidth(sum, size, 'bold') + 4)
  const lines = wrapText(text, room, size, 'bold')
  const height = lines.length * lineHeight(size) + 1.6
  return block(
    height,
    (x, y) => [
      rect([x, y], width, height, null, TINT),
      ...lines.map((one, i) =>
        label([x + 1.6, y + 0.8 + baselineOf(size) + i * lineHeight(size)], one, { size, weight: 'bold' }),
      ),
      label([x + width - 1.6, y + 0.8 + baselineOf(size)], sum, { size, weight: 'bold', anchor: 'end' }),
    ],
    { before: 2.6, keep: true, ...more },
  )
}

/** A picture that is given in its own frame, its upper left corner at 0, 0. */
export function figure(
  picture: { readonly marks: readonly Mark[]; readonly width: number; readonly height: number },
  width: number,
  caption = '',
  alt = caption,
): Block {
  const tag: Tag = { role: 'Figure', alt }
  const under = caption === '' ? [] : wrapText(caption, width, SIZE.small)
  const inset = (width - picture.width) / 2
  return block(
    picture.height + (under.length > 0 ? 1.2 + under.length * lineHeight(SIZE.small) : 0),
    (x, y) => [
      ...withTag(moved(picture.marks, x + inset, y), tag, true),
      ...under.map((one, i) =>
        label(
          [x + width / 2, y + picture.height + 1.2 + baselineOf(SIZE.small) + i * lineHeight(SIZE.small)],
          one,
          { size: SIZE.small, ink: GRAY, anchor: 'middle', tag: { role: 'Caption', in: tag } },
        ),
      ),
    ],
    { before: 3 },
  )
}

/** Marks as they are, elsewhere. */
export const moved = (marks: readonly Mark[], dx: number, dy: number): readonly Mark[] =>
  marks.map((mark) =>
    mark.kind === 'path'
      ? { ...mark, points: mark.points.map(([x, y]) => [x + dx, y + dy] as const) }
      : { ...mark, at: [mark.at[0] + dx, mark.at[1] + dy] as const },
  )

/** Lines to write on, a small label under each: signatures, who and when. */
export function writeOn(labels: readonly string[], width: number, height = 11): Block {
  const gap = 8
  const cell = (width - gap * (labels.length - 1)) / labels.length
  return block(
    height + lineHeight(SIZE.small) + 0.6,
    (x, y) =>
      labels.flatMap((text, i) => {
        const left = x + i * (cell + gap)
        return [
          line([left, y + height], [left + cell, y + height], { width: 0.2, ink: INK }),
          label([left, y + height + 0.6 + baselineOf(SIZE.small)], fitText(text, cell, SIZE.small), {
            size: SIZE.small,
            ink: GRAY,
          }),
        ]
      }),
    { before: 3 },
  )
}

/** A note with a bar at its left. */
export function note(blocks: readonly Block[], ink: Ink): Block {
  const body = together(blocks)
  const pad = 0.8
  return block(
    body.height + 2 * pad,
    (x, y) => [rect([x, y], 1, body.height + 2 * pad, null, ink), ...body.marks(x + 1 + 3, y + pad)],
    { before: 3.5 },
  )
}
/** How wide what is in a note may be. */
export const noteWidth = (width: number): number => width - 7
