/** Where details stand: wherever the sheets leave room, else on a sheet of their own. */
import { freePlace } from './free-place.ts'
import { cellOf, type Draft, type DrawingOf, draft, putView, roomOn, SCALES } from './sheet.ts'
import type { View } from './view.ts'

/** Between details, mm. */
const GAP = 8
/** Details no coarser than this, or on a sheet of their own. */
const COARSEST = 10

/** All at one scale, the finest that has room for them. */
export function putDetails(drafts: Draft[], details: readonly View[], { options, t }: DrawingOf): void {
  if (details.length === 0) return
  const room = roomOn(options)
  const scales = SCALES[options.units]
  for (const scale of scales.filter((one) => one <= COARSEST)) {
    const before = drafts.map(({ kept }) => kept.length)
    const places = details.flatMap((view) => {
      const { width, height } = cellOf(view, scale)
      for (const sheet of [...drafts].reverse()) {
        const at = freePlace(sheet, width, height, room)
        if (!at) continue
        sheet.kept.push({ x0: at[0], y0: at[1], x1: at[0] + width, y1: at[1] + height })
        return [{ sheet, view, at }]
      }
      return []
    })
    drafts.forEach(({ kept }, i) => {
      kept.length = before[i]!
    })
    if (places.length < details.length) continue
    for (const { sheet, view, at } of places) putView(sheet, view, at, scale)
    return
  }
  const own = draft(t('details'))
  const across = (scale: number): number =>
    details.reduce((sum, view) => sum + cellOf(view, scale).width + GAP, -GAP)
  const scale =
    scales.find(
      (one) =>
        across(one) <= room.x1 - room.x0 &&
        details.every((view) => cellOf(view, one).height <= room.y1 - room.y0 - GAP),
    ) ?? scales.at(-1)!
  const spare = Math.max(0, room.x1 - room.x0 - across(scale)) / details.length
  let x = room.x0
  for (const view of details) {
    putView(own, view, [x, room.y0 + GAP], scale)
    x += cellOf(view, scale).width + GAP + spare
  }
  drafts.push(own)
}
