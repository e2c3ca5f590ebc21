/** What was found, and notes, each on the last sheet of the drawing that has room for it, else on a sheet of its own. */
import type { Box } from '../drawing/cells.ts'
import { freePlace } from '../drawing/free-place.ts'
import { type Draft, draft } from '../drawing/sheet.ts'
import { paragraph, subheading } from '../paper/blocks.ts'
import { type Block, heightOf, together } from '../paper/flow.ts'
import type { PaperOf } from '../paper/paper-of.ts'
import { SIZE } from '../paper/style.ts'
import { foundBlocks } from './found.ts'

/** Widths that it is tried in, mm: in a corner, beside a table, under one, in a band over the title block. */
const WIDTHS = [110, 90, 150, 75, 240]

export const putFound = (drafts: Draft[], of: PaperOf, room: Box, title: string): void =>
  putBlocks(drafts, (width) => foundBlocks(of, width), room, title)

/** What the design notes, in its own lines. */
export function putNotes(drafts: Draft[], { design }: PaperOf, room: Box, title: string): void {
  const lines = (design.job?.notes ?? '').split(/\r?\n/).filter((one) => one.trim() !== '')
  const blocks = (width: number): Block[] =>
    lines.length === 0
      ? []
      : [
          subheading(title, width),
          ...lines.flatMap((one) => paragraph(one, width, { size: SIZE.small, before: 0.6 })),
        ]
  putBlocks(drafts, blocks, room, title)
}

function putBlocks(
  drafts: Draft[],
  blocksIn: (width: number) => readonly Block[],
  room: Box,
  title: string,
): void {
  if (blocksIn(WIDTHS[0]!).length === 0) return
  for (const sheet of [...drafts].reverse())
    for (const width of WIDTHS) {
      const blocks = blocksIn(width)
      const height = heightOf(blocks)
      const at = freePlace(sheet, width, height, room)
      if (!at) continue
      const [x0, y0] = at
      sheet.marks.push(...together(blocks).marks(x0, y0))
      sheet.taken.push({ x0, y0, x1: x0 + width, y1: y0 + height })
      return
    }
  drafts.push(...ownSheets(blocksIn, room, title))
}

/** In two columns, as many sheets as it takes. */
function ownSheets(blocksIn: (width: number) => readonly Block[], room: Box, title: string): Draft[] {
  const gap = 8
  const width = (room.x1 - room.x0 - gap) / 2
  const sheets: Draft[] = []
  let [column, top] = [2, room.y0]
  for (const block of blocksIn(width)) {
    if (top > room.y0) top += block.before
    if (column > 1 || top + block.height > room.y1) {
      column++
      top = room.y0
      if (column > 1) {
        sheets.push(draft(title))
        column = 0
      }
    }
    sheets.at(-1)!.marks.push(...block.marks(room.x0 + column * (width + gap), top))
    top += block.height
  }
  return sheets
}
