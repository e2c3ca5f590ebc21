/** A pair of legs of each kind and the table of all legs, on what the sheets before leave and on as many more as it takes. */
import type { Dock } from '../../rules/index.ts'
import { stanceOf } from '../../rules/layout/footprint.ts'
import type { DrawingWords } from '../../rules/words/drawing.ts'
import type { Drawn } from '../drawn.ts'
import { type LegTable, legTable } from './leg-table.ts'
import { alikePairs, pairsByBrace, pairView } from './pairs.ts'
import { cellOf, type Draft, type DrawingOf, draft, putView, roomOn, SCALES } from './sheet.ts'
import type { View } from './view.ts'

/** Pairs of legs are drawn no coarser than this where one fits on a sheet, and no finer. */
const COARSEST = { imperial: 64, metric: 75 } as const
const FINEST = 12
/** Between rows, and the most between the views of one, mm. */
const BETWEEN = 5
const SPREAD = 14
/** What the scale bar takes at the foot, mm. */
const SCALE_BAR = 6
/** A part of the table on what is left of a sheet has as many rows as this, or all. */
const FEWEST = 6

/** On the sheet of that number, from 0: the one that is begun. mm from the top of its room. */
interface Row {
  readonly sheet: number
  readonly y: number
  readonly views: readonly View[]
}

interface Part {
  readonly sheet: number
  readonly y: number
  readonly from: number
  readonly count: number
}

interface Filled {
  readonly rows: readonly Row[]
  readonly parts: readonly Part[]
  readonly sheets: number
  /** What of the last one is used, from above, mm. */
  readonly end: number
}

/** One of each kind of pair, and the table. */
export interface Legs {
  readonly views: readonly View[]
  readonly table: LegTable
}

export function legsOf(drawn: Drawn, t: DrawingWords): Legs {
  const { dock } = drawn
  const views = pairsByBrace(dock).map((group) => {
    const alike = alikePairs(dock).find((one) => one.includes(group[0]!))!
    return pairView(
      drawn,
      alike,
      group.filter((pair) => !alike.includes(pair)),
    )
  })
  return { views, table: legTable(drawn, t) }
}

const roomFor = (options: DrawingOf['options']): readonly [width: number, height: number] => {
  const room = roomOn(options)
  return [room.x1 - room.x0, room.y1 - room.y0 - SCALE_BAR]
}

/** Readable scales at which each pair fits on a sheet, the finest first; where there is none the one that comes nearest. */
export function legScales({ views }: Legs, { options }: DrawingOf): readonly number[] {
  const [width, height] = roomFor(options)
  const scales = SCALES[options.units].filter((scale) => scale >= FINEST)
  const holds = (scale: number): boolean =>
    views.every((view) => {
      const cell = cellOf(view, scale)
      return cell.width <= width && cell.height <= height
    })
  const readable = scales.filter((s) => s <= COARSEST[options.units] && holds(s))
  return readable.length > 0
    ? readable
    : [scales.find((s) => s >= COARSEST[options.units] && holds(s)) ?? scales.at(-1)!]
}

/** @param end what of the last sheet is used, from above, mm */
export function putLegs(
  drafts: Draft[],
  end: number,
  { views, table }: Legs,
  dock: Dock,
  { options, t }: DrawingOf,
  scale: number,
): void {
  if (views.length === 0) return
  const room = roomOn(options)
  const [width, height] = roomFor(options)
  const { rows, parts, sheets } = fill(views, table, scale, width, height, end - room.y0 + BETWEEN)
  const begun = drafts.length - 1
  const names = namesOn(sheets, rows, dock, t)
  for (let n = 1; n < sheets; n++) drafts.push(draft(names[n]!))
  for (const { sheet, y, views: row } of rows) {
    const cells = row.map((view) => cellOf(view, scale).width)
    const used = cells.reduce((sum, one) => sum + one, BETWEEN * (row.length - 1))
    const apart = BETWEEN + Math.min(SPREAD, Math.max(0, width - used) / row.length)
    let x = room.x0
    row.forEach((view, i) => {
      putView(drafts[begun + sheet]!, view, [x, room.y0 + y], scale)
      x += cells[i]! + apart
    })
  }
  parts.forEach(({ sheet, y, from, count }, i) => {
    const title =
      parts.length > 1 ? t('continued', { title: t('legs'), n: i + 1, of: parts.length }) : t('legs')
    drafts[begun + sheet]!.marks.push(...table.marks(title, from, count, [room.x0, room.y0 + y]))
  })
}

/** What each sheet is called by: pairs, or the table alone; numbered where several are called alike. The one that is begun has its name. */
function namesOn(sheets: number, rows: readonly Row[], { sections }: Dock, t: DrawingWords): string[] {
  // Square to the run, all are seen from the shore.
  const slanting = sections.some((section) => Math.abs(stanceOf(section).s) > 1e-6)
  const plain = Array.from({ length: sheets }, (_, n) =>
    rows.some(({ sheet }) => sheet === n) ? t(slanting ? 'pairs-along' : 'pairs') : t('legs'),
  )
  return plain.map((title, n) => {
    const alike = plain.flatMap((other, i) => (i > 0 && other === title ? [i] : []))
    return alike.length > 1 ? t('continued', { title, n: alike.indexOf(n) + 1, of: alike.length }) : title
  })
}

/** Rows of pairs as they come, each as high as its highest, then the table. */
function fill(
  views: readonly View[],
  table: LegTable,
  scale: number,
  width: number,
  height: number,
  begin: number,
): Filled {
  const rows: Row[] = []
  let [sheet, y] = [0, begin]
  const put = (row: readonly View[]): void => {
    const high = Math.max(...row.map((view) => cellOf(view, scale).height))
    if (y > 0 && y + high > height) [sheet, y] = [sheet + 1, 0]
    rows.push({ sheet, y, views: row })
    y += high + BETWEEN
  }
  let [row, used] = [[] as View[], 0]
  for (const view of views) {
    const wide = cellOf(view, scale).width
    if (row.length > 0 && used + wide > width) {
      put(row)
      ;[row, used] = [[], 0]
    }
    row.push(view)
    used += wide + BETWEEN
  }
  put(row)
  const parts: Part[] = []
  for (let from = 0; from < table.rows; ) {
    const left = table.rows - from
    const count = Math.min(left, table.rowsIn(height - y))
    if (y > 0 && count < Math.min(left, FEWEST)) {
      ;[sheet, y] = [sheet + 1, 0]
      continue
    }
    parts.push({ sheet, y, from, count: Math.max(1, count) })
    y += table.heightOf(count) + BETWEEN
    from += Math.max(1, count)
  }
  return { rows, parts, sheets: sheet + 1, end: y }
}
