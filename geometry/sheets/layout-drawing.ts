/**
 * The layout drawing: the dock from above over its own side view, each different pair of legs, hinge and hook joint, and the table of
 * legs. As many sheets as it takes to be read.
 */
import { DRAWING } from '../../rules/words/drawing.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import { jointView } from '../drawing/details.ts'
import { elevationView } from '../drawing/elevation.ts'
import { legTable } from '../drawing/leg-table.ts'
import { roomOf } from '../drawing/paint.ts'
import { alikePairs, pairView } from '../drawing/pairs.ts'
import { putPhoneCode } from '../drawing/phone-code.ts'
import { planView } from '../drawing/plan.ts'
import {
  cellOf,
  type Draft,
  type DrawingOf,
  draft,
  finish,
  putView,
  roomOn,
  SCALES,
} from '../drawing/sheet.ts'
import { SMALLEST, type View, type ViewNote, type ViewPath, windowOf } from '../drawing/view.ts'
import type { Drawn } from '../drawn.ts'
import { codeOf } from '../paper/document.ts'
import type { Paper } from '../paper/marks.ts'
import type { PaperOf } from '../paper/paper-of.ts'

/** Coarser than this, and figures stand closer than can be read: the dock is shown in parts. */
const COARSEST = { imperial: 96, metric: 100 } as const
/** Pairs of legs are drawn no coarser than this where one fits on a sheet, and no finer. */
const PAIRS_COARSEST = { imperial: 48, metric: 50 } as const
const PAIRS_FINEST = 12
const BETWEEN = 5

export function layoutDrawing(drawn: PaperOf): Paper {
  const { dock, design, catalog, options } = drawn
  const t = wordsOf(DRAWING, drawn)
  const about: DrawingOf = { dock, design, catalog, options, t }
  const drafts =
    dock.sections.length === 0
      ? [draft(t('drawing'))]
      : [...whole(drawn, about), ...pairs(drawn, about), ...legTable(drawn, about, details(drawn))]
  if (options.link !== undefined && dock.sections.length > 0)
    putPhoneCode(drafts, options.link, roomOn(options), t)
  return {
    title: t('drawing'),
    author: catalog.name,
    subject: `${dock.name} · ${codeOf(dock)}`,
    lang: options.language.tag,
    sheets: drafts.map((sheet, i) => finish(sheet, i + 1, drafts.length, about).sheet),
  }
}

/** Plan and side view: on one sheet, else on two, else in parts. */
function whole(drawn: Drawn, about: DrawingOf): Draft[] {
  const { options, t } = about
  const room = roomOn(options)
  const [width, height] = [room.x1 - room.x0, room.y1 - room.y0]
  const [plan, side] = [planView(drawn), elevationView(drawn)]
  const scales = SCALES[options.units]
  const readable = scales.filter((scale) => scale <= COARSEST[options.units] && scale >= 12)
  const both = readable.find((scale) => {
    const [a, b] = [cellOf(plan, scale), cellOf(side, scale)]
    return Math.max(a.width, b.width) <= width && a.height + b.height + BETWEEN <= height
  })
  if (both !== undefined) {
    const sheet = draft(t('plan-side'), true)
    const [a, b] = [cellOf(plan, both), cellOf(side, both)]
    // One over the other: the same place of the lake at the same place across the paper.
    const left = Math.max(a.left, b.left)
    const x = room.x0 + Math.max(0, (width - Math.max(a.width, b.width)) / 2)
    const gap = (height - a.height - b.height) / 3
    putView(sheet, plan, [x + left - a.left, room.y0 + gap * 0.6], both, room.x0)
    putView(sheet, side, [x + left - b.left, room.y0 + gap * 1.6 + a.height], both, room.x0)
    return [sheet]
  }
  // Both in parts, one part over the other; where the dock is too wide for that, one after the other.
  const tall = (scale: number): number => cellOf(plan, scale).height + cellOf(side, scale).height + BETWEEN
  const groups =
    tall(readable.at(-1)!) <= height && cellOf(plan, readable.at(-1)!).width > width
      ? [[plan, side]]
      : [[plan], [side]]
  const list: Draft[] = []
  for (const views of groups) list.push(...inParts(views, about, list.length))
  return list
}

/** Lake that two parts both show at a match line, on either side of it, m. */
const SHARED = 0.45

/** Where a range is broken so that each part is at most `most` long, the last one at most `last`, shared lake included: at section joints where it can be. */
export function breaks(
  from: number,
  to: number,
  most: number,
  last: number,
  joints: readonly number[],
): readonly number[] {
  const places = [from]
  for (;;) {
    const start = places.at(-1)!
    const first = places.length === 1
    // The first part shares lake at one end only.
    if (to - start + (first ? 0 : SHARED) <= last) return [...places, to]
    // What is left for the last part is at least what two parts share.
    const far = Math.min(start + most - SHARED - (first ? 0 : SHARED), to - SHARED)
    const joint = Math.max(...joints.filter((x) => x <= far && x > start + most * 0.4))
    places.push(Number.isFinite(joint) ? joint : far)
  }
}

/** The same number of parts, as long as each other as joints allow. */
function even(...[from, to, most, last, joints]: Parameters<typeof breaks>): readonly number[] {
  let found = breaks(from, to, most, last, joints)
  for (let part = 0.95; part > 0.5; part -= 0.05) {
    const shorter = breaks(from, to, most * part, Math.min(last, most * part), joints)
    if (shorter.length > found.length) break
    found = shorter
  }
  return found
}

/** Views of one range, one over the other, on as few sheets as hold them readably; broken at joints, with match lines. */
function inParts(views: readonly View[], { dock, options, t }: DrawingOf, before: number): Draft[] {
  const room = roomOn(options)
  const [width, height] = [room.x1 - room.x0, room.y1 - room.y0]
  const scales = SCALES[options.units]
  const readable = scales.filter((scale) => scale <= COARSEST[options.units] && scale >= 12)
  const heightAt = (scale: number): number =>
    views.reduce((sum, view) => sum + cellOf(view, scale).height, (views.length - 1) * BETWEEN)
  const widthAt = (scale: number): number => Math.max(...views.map((view) => cellOf(view, scale).width))
  const { x0, x1 } = views[0]!.bounds
  const joints = dock.sections.filter(({ heading }) => heading === 0).map(({ x }) => x - 0.01)
  const at = (scale: number) => {
    const rooms = views.map((view) => roomOf(view, scale))
    const left = Math.max(...rooms.map((room) => room.left))
    const around = left + Math.max(...rooms.map((room) => room.right))
    const meters = (mm: number): number => (mm / 1000) * scale
    const places =
      widthAt(scale) <= width
        ? [x0, x1]
        : even(x0, x1, meters(width - left - 4), meters(width - around), joints)
    return { left, around, places }
  }
  // In as few parts as the coarsest readable scale takes, as large as they then go.
  const tall = readable.filter((s) => heightAt(s) <= height)
  const fewest = tall.length === 0 ? 0 : at(tall.at(-1)!).places.length
  const scale =
    tall.find((s) => at(s).places.length === fewest) ??
    scales.find((s) => heightAt(s) <= height) ??
    scales.at(-1)!
  const { left, around, places } = at(scale)
  const count = places.length - 1
  return Array.from({ length: count }, (_, i) => {
    const named = (title: string): string =>
      count > 1 ? t('continued', { title, n: i + 1, of: count }) : title
    const title = views.length > 1 ? t('plan-side') : views[0]!.title
    const sheet = draft(named(title), views[0]!.title === t('plan'))
    const [from, to] = [places[i]!, places[i + 1]!]
    const part = { x0: i > 0 ? from - SHARED : from, x1: i < count - 1 ? to + SHARED : to }
    const parts = views.map((view) => {
      const { y0, y1 } = view.bounds
      if (count === 1) return view
      const shown = windowOf(view, { ...part, y0, y1 })
      return {
        ...shown,
        title: named(view.title),
        paths: [
          ...shown.paths,
          ...(i > 0 ? [matchLine(from, y0, y1)] : []),
          ...(i < count - 1 ? [matchLine(to, y0, y1)] : []),
        ],
        notes: [
          ...(i > 0 ? [matchNote(from, y1, t('match', { n: before + i }))] : []),
          ...(i < count - 1 ? [matchNote(to, y1, t('match', { n: before + i + 2 }))] : []),
          ...shown.notes,
        ],
      }
    })
    const gap = Math.max(0, height - heightAt(scale)) / (views.length + 1)
    const own = count > 1 && i < count - 1 ? left + 4 : around
    const drawnWidth = ((part.x1 - part.x0) * 1000) / scale + own
    const x = room.x0 + Math.max(0, (width - drawnWidth) / 2)
    let y = room.y0 + gap * 0.6
    for (const view of parts) {
      putView(sheet, view, [x + left - cellOf(view, scale).left, y], scale, room.x0)
      y += cellOf(view, scale).height + BETWEEN + gap
    }
    return sheet
  })
}

const matchLine = (x: number, y0: number, y1: number): ViewPath => ({
  layer: 'MATCH',
  points: [
    [x, y0],
    [x, y1],
  ],
  closed: false,
})
const matchNote = (x: number, y: number, text: string): ViewNote => ({
  at: [x, y],
  text,
  size: SMALLEST,
  prefer: 'above',
})

interface Shelf {
  readonly view: View
  readonly x: number
  readonly y: number
  readonly sheet: number
}

/** Views in rows, as they come; each row as high as its highest. */
function onShelves(views: readonly View[], scale: number, width: number, height: number): readonly Shelf[] {
  const list: Shelf[] = []
  let [x, y, high, sheet] = [0, 0, 0, 0]
  for (const view of views) {
    const cell = cellOf(view, scale)
    if (x > 0 && x + cell.width > width) {
      x = 0
      y += high + BETWEEN
      high = 0
    }
    if (y > 0 && y + cell.height > height) {
      x = 0
      y = 0
      high = 0
      sheet++
    }
    list.push({ view, x, y, sheet })
    x += cell.width + BETWEEN
    high = Math.max(high, cell.height)
  }
  return list
}

/** Different pairs of legs, all at one scale: the finest that brings them on one sheet, but none coarser than can be read. */
function pairs(drawn: Drawn, { options, t }: DrawingOf): Draft[] {
  const views = alikePairs(drawn.dock).map((alike) => pairView(drawn, alike))
  if (views.length === 0) return []
  const room = roomOn(options)
  // The scale bar's row is left free.
  const [width, height] = [room.x1 - room.x0, room.y1 - room.y0 - 6]
  const scales = SCALES[options.units].filter((scale) => scale >= PAIRS_FINEST)
  const holds = (scale: number): boolean =>
    views.every((view) => {
      const cell = cellOf(view, scale)
      return cell.width <= width && cell.height <= height
    })
  const coarsest = PAIRS_COARSEST[options.units]
  const scale =
    scales.find((s) => s <= coarsest && holds(s) && onShelves(views, s, width, height).at(-1)!.sheet === 0) ??
    scales.find((s) => s >= coarsest && holds(s)) ??
    scales.at(-1)!
  const placed = onShelves(views, scale, width, height)
  const sheets = placed.at(-1)!.sheet + 1
  const along = drawn.dock.sections.some(({ heading }) => heading % 180 !== 0)
  const name = t(along ? 'pairs-along' : 'pairs')
  return Array.from({ length: sheets }, (_, n) => {
    const sheet = draft(sheets > 1 ? t('continued', { title: name, n: n + 1, of: sheets }) : name)
    const mine = placed.filter((one) => one.sheet === n)
    const rows = [...new Set(mine.map(({ y }) => y))]
    const used = Math.max(...mine.map(({ view, y }) => y + cellOf(view, scale).height))
    const down = Math.max(0, height - used) / (rows.length + 1)
    for (const { view, x, y } of mine) {
      const row = mine.filter((one) => one.y === y)
      const last = row.at(-1)!
      const spare = Math.max(0, width - last.x - cellOf(last.view, scale).width)
      const spread = Math.min(14, spare / row.length)
      const c = row.findIndex((one) => one.view === view)
      putView(
        sheet,
        view,
        [room.x0 + x + c * spread, room.y0 + y + rows.indexOf(y) * Math.min(down, 12)],
        scale,
      )
    }
    return sheet
  })
}

const details = (drawn: Drawn): readonly View[] =>
  (['hinge', 'hook'] as const).flatMap((kind) => jointView(drawn, kind) ?? [])
