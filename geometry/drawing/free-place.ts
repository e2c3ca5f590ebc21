/** Where a sheet of a drawing still has room. */
import type { Mark, Point } from '../paper/marks.ts'
import { type Box, overlap } from './cells.ts'
import { boxOf } from './labels.ts'
import type { Draft } from './sheet.ts'

const STEP = 4
const AIR = 2

/** Its upper left corner, from the lower right of `room`, above the scale bar; null where the sheet is full. mm. */
export function freePlace(sheet: Draft, width: number, height: number, room: Box): Point | null {
  const boxes = [...sheet.marks.map(extentOf), ...sheet.taken, ...sheet.kept]
  // Labels stand near what they are about.
  for (const { at } of sheet.labels)
    boxes.push({ x0: at[0] - 8, x1: at[0] + 8, y0: at[1] - 6, y1: at[1] + 6 })
  for (let y = room.y1 - height - 10; y >= room.y0; y -= STEP)
    for (let x = room.x1 - width; x >= room.x0; x -= STEP) {
      const box = { x0: x - AIR, x1: x + width + AIR, y0: y - AIR, y1: y + height + AIR }
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
