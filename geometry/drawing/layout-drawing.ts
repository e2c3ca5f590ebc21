/**
 * The layout drawing: the dock from above over its own side view, each different pair of legs, hinge and hook joint, and the table of
 * legs. As many sheets as it takes to be read.
 */
import type { Catalog, Design, Dock } from '../../rules/index.ts'
import { drawingWords } from '../../rules/words/drawing.ts'
import { codeOf } from '../paper/document.ts'
import type { Paper } from '../paper/marks.ts'
import type { PaperOptions } from '../paper/options.ts'
import { jointView } from './details.ts'
import { elevationView } from './elevation.ts'
import { legTable } from './leg-table.ts'
import { roomOf } from './paint.ts'
import { alikePairs, pairView } from './pairs.ts'
import { type Drawn, planView } from './plan.ts'
import { cellOf, type Draft, type DrawingOf, draft, finish, putView, roomOn, SCALES } from './sheet.ts'
import { type View, windowOf } from './view.ts'

/** Coarser than this, and figures stand closer than can be read: the dock is shown in parts. */
const COARSEST = { imperial: 96, metric: 100 } as const
/** Pairs of legs, hinge and hook are drawn no coarser than this. */
const PAIRS_COARSEST = { imperial: 48, metric: 50 } as const
/** Most pairs to a sheet before they are drawn smaller for more. */
const TO_A_SHEET = 6
const BETWEEN = 5

export function layoutDrawing(dock: Dock, design: Design, catalog: Catalog, options: PaperOptions): Paper {
  const t = drawingWords(options.lang, options.units)
  const about: DrawingOf = { dock, design, catalog, options, t }
  const drawn: Drawn = { dock, design, catalog, units: options.units, lang: options.lang }
  const drafts =
    dock.sections.length === 0
      ? [draft(t('drawing'))]
      : [...whole(drawn, about), ...pairs(drawn, about), ...legTable(drawn, about, details(drawn))]
  return {
    title: t('drawing'),
    author: catalog.name,
    subject: `${dock.name} · ${codeOf(dock)}`,
    lang: options.lang,
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
  return groups.flatMap((views) => inParts(views, about))
}

/** Views of one range, one over the other, on as few sheets as hold them readably. */
function inParts(views: readonly View[], { options, t }: DrawingOf): Draft[] {
  const room = roomOn(options)
  const [width, height] = [room.x1 - room.x0, room.y1 - room.y0]
  const scales = SCALES[options.units]
  const readable = scales.filter((scale) => scale <= COARSEST[options.units] && scale >= 12)
  const heightAt = (scale: number): number =>
    views.reduce((sum, view) => sum + cellOf(view, scale).height, (views.length - 1) * BETWEEN)
  const widthAt = (scale: number): number => Math.max(...views.map((view) => cellOf(view, scale).width))
  const scale =
    readable.find((s) => widthAt(s) <= width && heightAt(s) <= height) ??
    readable.filter((s) => heightAt(s) <= height).at(-1) ??
    scales.find((s) => heightAt(s) <= height) ??
    scales.at(-1)!
  const { x0, x1 } = views[0]!.bounds
  const left = Math.max(...views.map((view) => cellOf(view, scale).left))
  const around = Math.max(...views.map((view) => roomOf(view).left + roomOf(view).right))
  const each = ((width - around) / 1000) * scale
  const count = Math.max(1, Math.ceil((x1 - x0) / each - 1e-9))
  return Array.from({ length: count }, (_, i) => {
    const named = (title: string): string =>
      count > 1 ? t('continued', { title, n: i + 1, of: count }) : title
    const title = views.length > 1 ? t('plan-side') : views[0]!.title
    const sheet = draft(named(title), views[0]!.title === t('plan'))
    const parts = views.map((view) => {
      const { y0, y1 } = view.bounds
      const part = { x0: x0 + i * each, x1: Math.min(x1, x0 + (i + 1) * each), y0, y1 }
      return count > 1 ? { ...windowOf(view, part), title: named(view.title) } : view
    })
    const gap = Math.max(0, height - heightAt(scale)) / (views.length + 1)
    const drawnWidth = (Math.min(each, x1 - x0) * 1000) / scale + around
    const x = room.x0 + (count > 1 ? 0 : Math.max(0, (width - drawnWidth) / 2))
    let y = room.y0 + gap * 0.6
    for (const view of parts) {
      putView(sheet, view, [x + left - cellOf(view, scale).left, y], scale, room.x0)
      y += cellOf(view, scale).height + BETWEEN + gap
    }
    return sheet
  })
}

/** Pairs of legs in a grid, all at one scale. */
function pairs(drawn: Drawn, { options, t }: DrawingOf): Draft[] {
  const views = alikePairs(drawn.dock).map((alike) => pairView(drawn, alike))
  if (views.length === 0) return []
  const room = roomOn(options)
  const [width, height] = [room.x1 - room.x0, room.y1 - room.y0]
  const scales = SCALES[options.units].filter((scale) => scale >= 12)
  const gridAt = (scale: number) => {
    const cells = views.map((view) => cellOf(view, scale))
    const [wide, tall] = [
      Math.max(...cells.map((c) => c.width)) + BETWEEN,
      Math.max(...cells.map((c) => c.height)) + BETWEEN,
    ]
    return {
      wide,
      tall,
      columns: Math.floor((width + BETWEEN) / wide),
      rows: Math.floor((height + BETWEEN) / tall),
    }
  }
  const wanted = Math.min(views.length, TO_A_SHEET)
  const scale =
    scales.find((s) => {
      const { columns, rows } = gridAt(s)
      return columns * rows >= wanted
    }) ??
    scales.find((s) => s >= PAIRS_COARSEST[options.units] && gridAt(s).columns * gridAt(s).rows > 0) ??
    scales.at(-1)!
  const { wide, tall, columns, rows } = gridAt(scale)
  const each = Math.max(1, columns) * Math.max(1, rows)
  const sheets = Math.ceil(views.length / each)
  return Array.from({ length: sheets }, (_, n) => {
    const title = sheets > 1 ? t('continued', { title: t('pairs'), n: n + 1, of: sheets }) : t('pairs')
    const sheet = draft(title)
    const mine = views.slice(n * each, (n + 1) * each)
    const across = Math.min(columns, mine.length)
    const spread = across > 0 ? (width - across * wide + BETWEEN) / (across + 1) : 0
    mine.forEach((view, i) => {
      const [c, r] = [i % Math.max(1, columns), Math.floor(i / Math.max(1, columns))]
      putView(sheet, view, [room.x0 + spread + c * (wide + spread), room.y0 + r * tall], scale)
    })
    return sheet
  })
}

const details = (drawn: Drawn): readonly View[] =>
  (['hinge', 'hook'] as const).flatMap((kind) => jointView(drawn, kind) ?? [])
