/** Papers of a season record: made of the record alone, without the dock that it was begun with. */
import type { ToldRecord, ToldTable } from '../../rules/words/record-text.ts'
import { heading, list, note, noteWidth, paragraph } from '../paper/blocks.ts'
import { documentOf, head, type Maker, widthOf } from '../paper/document.ts'
import type { Block, Flow } from '../paper/flow.ts'
import type { Paper } from '../paper/marks.ts'
import type { PaperOptions } from '../paper/options.ts'
import { ALERT, GRAY, SIZE } from '../paper/style.ts'
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
    ...told.tables.flatMap((one) => tableBlocks(one, width)),
    ...told.lists.flatMap(({ title, items }) => [
      { ...heading(title, width), before: 4 },
      ...list(items, width),
    ]),
  ]
  return withUnset(documentOf(`${told.title}, ${told.of}`, flow, maker, options, null), options)
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
