/** Papers of a season record: made of the record alone, without the dock that it was begun with. */
import type { ToldRecord, ToldSketch, ToldTable } from '../../rules/words/record-text.ts'
import { figure, heading, label, list, note, noteWidth, paragraph, rect } from '../paper/blocks.ts'
import { documentOf, head, type Maker, widthOf } from '../paper/document.ts'
import type { Block, Flow } from '../paper/flow.ts'
import type { Paper, Point } from '../paper/marks.ts'
import type { PaperOptions } from '../paper/options.ts'
import { ALERT, BOX, GRAY, INK, SIZE } from '../paper/style.ts'
import { type Column, largestFor, table } from '../paper/table.ts'
import { withUnset } from '../paper/unset.ts'

/** Of its letters, mm: as large as fits, to be read at arm's length. */
const LETTERS = [3.4, 3.2, 2.95, 2.75, 2.6] as const
/** Between columns, of each side, and of a row to write in, mm. */
const PAD = 1.1
const ROW = 6.4
/** Least to write in, mm. */
const WRITE = 15

/** @param maker the shop; where it is not known nobody */
export function recordPaper(told: ToldRecord, options: PaperOptions, maker: Maker): Paper {
  const width = widthOf(options)
  const aside = noteWidth(width)
  const flow: Flow = [
    ...head(told.title, null, options, maker),
    ...paragraph(told.of, width, { size: SIZE.heading, weight: 'bold', before: 1 }),
    ...told.lead.flatMap((text) => paragraph(text, width, { ink: GRAY, before: 0.8 })),
    ...told.cautions.map(
      (text): Block => ({
        ...note(paragraph(text, aside, { weight: 'bold', before: 0 }), ALERT),
        before: 1.6,
      }),
    ),
    ...(told.sketch ? sketchBlocks(told.sketch, width) : []),
    ...told.tables.flatMap((one) => tableBlocks(one, width)),
    ...told.lists.flatMap(({ title, items }) => [
      { ...heading(title, width), before: 4 },
      ...list(items, width),
    ]),
  ]
  return withUnset(documentOf(`${told.title}, ${told.of}`, flow, maker, options, null), options)
}

/** Highest, mm; and around the legs, for their numbers. */
const SKETCH = { height: 42, side: 16, over: 7 } as const
/** Side of a leg, and from it to its number, mm. */
const LEG = { side: 1.6, off: 3 } as const

/** Nothing where numbers would stand on one another. */
function sketchBlocks({ legs, lake, caption }: ToldSketch, width: number): readonly Block[] {
  const [xs, ys] = [legs.map(({ x }) => x), legs.map(({ y }) => y)]
  const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
  const room = [width - 2 * SKETCH.side, SKETCH.height - 2 * SKETCH.over] as const
  const scale = Math.min(room[0] / Math.max(x1 - x0, 0.1), room[1] / Math.max(y1 - y0, 0.1), 14)
  const height = (y1 - y0) * scale + 2 * SKETCH.over
  const whole = (x1 - x0) * scale + 2 * SKETCH.side
  const middle = (y0 + y1) / 2
  const at = ({ x, y }: ToldSketch['legs'][number]): Point => [
    SKETCH.side + (x - x0) * scale,
    SKETCH.over + (y1 - y) * scale,
  ]
  const numbers = legs.map((leg): Point => {
    const [x, y] = at(leg)
    return [x, y + (leg.y >= middle ? -LEG.off + SIZE.small * 0.5 : LEG.off + SIZE.small * 0.5)]
  })
  const crowded = numbers.some(([x, y], i) =>
    numbers.some(
      ([a, b], k) => k < i && Math.abs(a - x) < 2.2 * SIZE.small && Math.abs(b - y) < 1.5 * SIZE.small,
    ),
  )
  if (crowded) return []
  const marks = legs.flatMap((leg, i) => {
    const [x, y] = at(leg)
    return [
      rect([x - LEG.side / 2, y - LEG.side / 2], LEG.side, LEG.side, BOX, INK),
      label(numbers[i]!, String(leg.number), { size: SIZE.small, weight: 'bold', anchor: 'middle' }),
    ]
  })
  const lakeAt: Point = [whole - SKETCH.side + 4, height / 2 + SIZE.small * 0.35]
  const toLake = label(lakeAt, lake, { size: SIZE.small, ink: GRAY })
  return [figure({ marks: [...marks, toLake], width: whole, height }, width, caption)]
}

function tableBlocks({ columns: given, rows }: ToldTable, width: number): readonly Block[] {
  const columns = given.map(
    ({ title, end, bold, flex, write }): Column => ({
      title,
      align: end ? 'end' : 'start',
      ...{ bold: bold ?? false, flex: flex ?? false, write: write ?? false },
      ...(write && { least: WRITE }),
    }),
  )
  const size = largestFor(columns, rows, width, LETTERS, PAD)
  return table(columns, rows, width, { size, row: ROW, pad: PAD })
}
