/** What of a sheet's texts cannot be read. */
import { overlap } from '../../geometry/drawing/cells.ts'
import { boxOf } from '../../geometry/drawing/labels.ts'
import type { Sheet, TextMark } from '../../geometry/paper/marks.ts'

/** Texts that stand on each other, or off the sheet. */
export function sheetFaults({ width, height, marks }: Sheet): string[] {
  // What lies behind is made to be read through.
  const texts = marks.filter(
    (mark): mark is TextMark => mark.kind === 'text' && mark.text.trim() !== '' && !mark.behind,
  )
  const boxes = texts.map(boxOf)
  return boxes.flatMap((box, i) => [
    ...(box.x0 < 5 || box.y0 < 5 || box.x1 > width - 5 || box.y1 > height - 5
      ? [`off: ${texts[i]!.text}`]
      : []),
    ...boxes
      .slice(0, i)
      .flatMap((other, j) => (overlap(box, other) ? [`${texts[i]!.text} on ${texts[j]!.text}`] : [])),
  ])
}
