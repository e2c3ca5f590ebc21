/** Where details stand: beside or under a table that leaves room, else on a sheet of their own. */
import type { Point } from '../paper/marks.ts'
import type { Box } from './cells.ts'
import { cellOf, type Draft, type DrawingOf, draft, putView, roomOn, SCALES } from './sheet.ts'
import type { View } from './view.ts'

/** Between details, mm. */
const GAP = 8
/** What the scale bar takes at the foot, mm. */
const SCALE_BAR = 6
/** Details no coarser than this, or on a sheet of their own. */
const COARSEST = 8

interface Place {
  /** Side by side, or one under the other. */
  readonly way: 'row' | 'column'
  /** Upper left corner, mm. */
  readonly x: number
  readonly y: number
  readonly scale: number
}

/**
 * The sheets of a table with its details: under the table side by side, or beside it one under the other, whichever shows them larger.
 * `aside` and `under` are where the table ends, mm.
 */
export function withDetails(
  sheets: readonly Draft[],
  details: readonly View[],
  { options, t }: DrawingOf,
  aside: number,
  under: number,
): Draft[] {
  if (details.length === 0) return [...sheets]
  const whole = roomOn(options)
  const room: Box = { ...whole, y1: whole.y1 - SCALE_BAR }
  const scales = SCALES[options.units]
  const shared = sheets.length === 1 ? sheets[0] : undefined
  const place = shared && largest(details, room, scales, aside, under)
  if (shared && place && place.scale <= COARSEST) {
    putDetails(shared, details, place, room)
    return [shared]
  }
  const own = draft(t('details'))
  const scale = scales.find((one) => fits(details, 'row', one, [room.x0, room.y0], room)) ?? scales.at(-1)!
  const spare = room.y1 - room.y0 - sizeOf(details, 'row', scale).height
  putDetails(own, details, { way: 'row', x: room.x0, y: room.y0 + Math.max(0, spare / 3), scale }, room)
  return [...sheets, own]
}

/** In a row under the table or in a column beside it; in the row where both are as large. */
function largest(
  details: readonly View[],
  room: Box,
  scales: readonly number[],
  aside: number,
  under: number,
): Place | undefined {
  const places = [
    { way: 'row', x: room.x0, y: under },
    { way: 'column', x: aside, y: room.y0 },
  ] as const
  const found = places.flatMap((place): Place[] => {
    const scale = scales.find((one) => fits(details, place.way, one, [place.x, place.y], room))
    return scale === undefined ? [] : [{ ...place, scale }]
  })
  return found.sort((a, b) => a.scale - b.scale)[0]
}

function fits(details: readonly View[], way: Place['way'], scale: number, [x, y]: Point, room: Box): boolean {
  const { width, height } = sizeOf(details, way, scale)
  return width <= room.x1 - x && height <= room.y1 - y
}

function sizeOf(
  details: readonly View[],
  way: Place['way'],
  scale: number,
): { readonly width: number; readonly height: number } {
  const cells = details.map((view) => cellOf(view, scale))
  const widths = cells.map(({ width }) => width)
  const heights = cells.map(({ height }) => height)
  const along = (sizes: readonly number[]): number => sizes.reduce((sum, size) => sum + size + GAP, -GAP)
  return way === 'row'
    ? { width: along(widths), height: Math.max(...heights) }
    : { width: Math.max(...widths), height: along(heights) }
}

/** A row is spread over what the room is wide. */
function putDetails(sheet: Draft, details: readonly View[], { way, x, y, scale }: Place, room: Box): void {
  const cells = details.map((view) => cellOf(view, scale))
  const wide = cells.reduce((sum, { width }) => sum + width, 0)
  const spread = Math.max(GAP, (room.x1 - x - wide) / cells.length)
  let along = 0
  details.forEach((view, i) => {
    putView(sheet, view, way === 'row' ? [x + along, y] : [x, y + along], scale)
    along += way === 'row' ? cells[i]!.width + spread : cells[i]!.height + GAP
  })
}
