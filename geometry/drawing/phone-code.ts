/** The square code that opens the dock on a phone, on the last sheet of the drawing that has room for it. */
import type { DrawingWords } from '../../rules/words/drawing.ts'
import { label } from '../paper/blocks.ts'
import type { Point } from '../paper/marks.ts'
import { MOST_BYTES, qrMarks } from '../paper/qr.ts'
import { GRAY } from '../paper/style.ts'
import type { Box } from './cells.ts'
import { freePlace } from './free-place.ts'
import { type Draft, draft } from './sheet.ts'

/** Small squares of a long address still are a third of a mm. */
const SIZE = 46
const WORDS = 5

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
    at = freePlace(one, SIZE, SIZE + WORDS, room)
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
