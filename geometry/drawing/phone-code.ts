/** The square code that opens the dock on a phone, on the last sheet of the drawing that has room for it. */
import type { DrawingWords } from '../../rules/words/drawing.ts'
import { label } from '../paper/blocks.ts'
import type { Mark, Point } from '../paper/marks.ts'
import { MOST_BYTES, qrMarks } from '../paper/qr.ts'
import { GRAY } from '../paper/style.ts'
import { type Box, overlap } from './cells.ts'
import { boxOf } from './labels.ts'
import { type Draft, draft } from './sheet.ts'

/** Small squares of a long address still are a third of a mm. */
const SIZE = 46
const WORDS = 5
const STEP = 4
const AIR = 2

/** Bytes of UTF-8 (RFC 3629). */
const bytesOf = (text: string): number =>
  [...text].reduce((sum, letter) => {
    const point = letter.codePointAt(0)!
    return sum + (point < 0x80 ? 1 : point < 0x800 ? 2 : point < 0x10000 ? 3 : 4)
  }, 0)

/** Puts it on one of the sheets, or on one of its own where all are full; nothing where no code holds the address. */
export function putPhoneCode(drafts: Draft[], link: string, room: Box, t: DrawingWords): void {
  if (bytesOf(link) > MOST_BYTES) return
  let sheet = drafts.at(-1)
  let at: Point | null = null
  for (const one of [...drafts].reverse()) {
    at = freePlace(one, room)
    sheet = one
    if (at) break
  }
  if (!sheet || !at) {
    sheet = draft(t('phone'))
    at = [room.x0, room.y0]
    drafts.push(sheet)
  }
  const [x, y] = at
  sheet.marks.push(...qrMarks(link, at, SIZE, 'L'))
  sheet.marks.push(
    label([x + SIZE / 2, y + SIZE + 2.6], t('phone'), { size: 2.6, ink: GRAY, anchor: 'middle' }),
  )
  sheet.taken.push({ x0: x, y0: y, x1: x + SIZE, y1: y + SIZE + WORDS })
}

/** From the lower right, above the scale bar. */
function freePlace(sheet: Draft, room: Box): Point | null {
  const boxes = sheet.marks.map(extentOf)
  // Labels stand near what they are about.
  for (const { at } of sheet.labels)
    boxes.push({ x0: at[0] - 8, x1: at[0] + 8, y0: at[1] - 6, y1: at[1] + 6 })
  for (let y = room.y1 - SIZE - WORDS - 10; y >= room.y0; y -= STEP)
    for (let x = room.x1 - SIZE; x >= room.x0; x -= STEP) {
      const box = { x0: x - AIR, x1: x + SIZE + AIR, y0: y - AIR, y1: y + SIZE + WORDS + AIR }
      if (!boxes.some((other) => overlap(box, other))) return [x, y]
    }
  return null
}

function extentOf(mark: Mark): Box {
  switch (mark.kind) {
    case 'text':
      return boxOf(mark)
    case 'circle':
      return {
        x0: mark.at[0] - mark.radius,
        x1: mark.at[0] + mark.radius,
        y0: mark.at[1] - mark.radius,
        y1: mark.at[1] + mark.radius,
      }
    case 'image':
      return { x0: mark.at[0], y0: mark.at[1], x1: mark.at[0] + mark.width, y1: mark.at[1] + mark.height }
    case 'path': {
      const xs = mark.points.map(([x]) => x)
      const ys = mark.points.map(([, y]) => y)
      // A line has no thickness of its own, and is in the way all the same.
      return {
        x0: Math.min(...xs) - 0.1,
        x1: Math.max(...xs) + 0.1,
        y0: Math.min(...ys) - 0.1,
        y1: Math.max(...ys) + 0.1,
      }
    }
  }
}
