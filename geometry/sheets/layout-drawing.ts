/**
 * The layout drawing: the dock from above over its own side view, each different pair of legs, the table of legs, hinge and hook joint.
 * As many sheets as it takes to be read, each filled before the next one begins.
 */
import { DRAWING } from '../../rules/words/drawing.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import { jointView } from '../drawing/details.ts'
import { elevationView } from '../drawing/elevation.ts'
import { legScales, legsOf, putLegs } from '../drawing/legs-on-sheets.ts'
import { roomOf } from '../drawing/paint.ts'
import { putPhoneCode } from '../drawing/phone-code.ts'
import { putDetails } from '../drawing/place-details.ts'
import { overall, planView } from '../drawing/plan.ts'
import {
  cellOf,
  copyOf,
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
import { putFound, putNotes } from './found-on-drawing.ts'

/** Coarser than this, and figures stand closer than can be read: the dock is shown in parts. */
const COARSEST = { imperial: 128, metric: 100 } as const
const BETWEEN = 5
/** White over a view that stands alone on its sheet or over others, no more than this, mm. */
const AIR = 8

export function layoutDrawing(drawn: PaperOf): Paper {
  const { dock, design, catalog, options } = drawn
  const t = wordsOf(DRAWING, drawn)
  const about: DrawingOf = { dock, design, catalog, options, t, name: t('drawing') }
  const drafts = dock.sections.length === 0 ? [draft(t('drawing'))] : drawingOf(drawn, about)
  putFound(drafts, drawn, roomOn(options), t('found'))
  putNotes(drafts, drawn, roomOn(options), t('notes'))
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

function drawingOf(drawn: Drawn, about: DrawingOf): Draft[] {
  const { drafts, end } = whole(drawn, about)
  const joints = details(drawn)
  const legs = legsOf(drawn, about.t)
  const all = legScales(legs, about).map((scale) => {
    const own = drafts.map(copyOf)
    putLegs(own, end, legs, drawn.dock, about, scale)
    putDetails(own, joints, about)
    return own
  })
  // As few sheets as any of those scales takes, at the finest of them.
  return all.reduce((best, one) => (one.length < best.length ? one : best))
}

interface Begun {
  readonly drafts: Draft[]
  /** What of the last one is used, from above, mm. */
  readonly end: number
}

/** Plan and side view on one sheet, one over the other or side by side; else in parts; else on two. */
function whole(drawn: Drawn, about: DrawingOf): Begun {
  const { options, t } = about
  const room = roomOn(options)
  const [width, height] = [room.x1 - room.x0, room.y1 - room.y0]
  const [plan, side] = [planView(drawn), elevationView(drawn)]
  const scales = SCALES[options.units]
  const readable = scales.filter((scale) => scale <= COARSEST[options.units] && scale >= 12)
  for (const scale of readable) {
    const [a, b] = [cellOf(plan, scale), cellOf(side, scale)]
    const over = Math.max(a.width, b.width) <= width && a.height + b.height + BETWEEN <= height
    const beside = a.width + b.width + BETWEEN <= width && Math.max(a.height, b.height) <= height
    if (!over && !beside) continue
    const sheet = draft(t('plan-side'), true)
    if (over) {
      // The same place of the lake at the same place across the paper.
      const left = Math.max(a.left, b.left)
      const x = room.x0 + Math.max(0, (width - Math.max(a.width, b.width)) / 2)
      const gap = Math.min(AIR, (height - a.height - b.height - BETWEEN) / 2)
      const y = room.y0 + gap + a.height + BETWEEN
      putView(sheet, plan, [x + left - a.left, room.y0 + gap / 2], scale, room.x0)
      putView(sheet, side, [x + left - b.left, y], scale, room.x0)
      return { drafts: [sheet], end: y + b.height }
    }
    const gap = Math.min(4 * AIR, (width - a.width - b.width) / 2)
    putView(sheet, plan, [room.x0, room.y0], scale)
    putView(sheet, side, [room.x0 + a.width + gap, room.y0], scale)
    return { drafts: [sheet], end: room.y0 + Math.max(a.height, b.height) }
  }
  // Both in parts, one part over the other; where the dock is too wide for that, one after the other.
  const tall = (scale: number): number => cellOf(plan, scale).height + cellOf(side, scale).height + BETWEEN
  const broad = (scale: number): number => Math.max(cellOf(plan, scale).width, cellOf(side, scale).width)
  const groups =
    tall(readable.at(-1)!) <= height && broad(readable.at(-1)!) > width ? [[plan, side]] : [[plan], [side]]
  const drafts: Draft[] = []
  let end = room.y0
  for (const views of groups) {
    const plain = inParts(views, about, drafts.length)
    const told = views.map((view) =>
      view === plan ? { ...view, captions: [...overall(drawn), ...(view.captions ?? [])] } : view,
    )
    const part = plain.drafts.length > 1 ? inParts(told, about, drafts.length) : plain
    drafts.push(...part.drafts)
    end = part.end
  }
  return { drafts, end }
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
function inParts(views: readonly View[], { dock, options, t }: DrawingOf, before: number): Begun {
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
  let end = room.y0
  const drafts = Array.from({ length: count }, (_, i) => {
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
    const gap = Math.min(AIR, Math.max(0, height - heightAt(scale)) / (views.length + 1))
    const own = count > 1 && i < count - 1 ? left + 4 : around
    const drawnWidth = ((part.x1 - part.x0) * 1000) / scale + own
    const x = room.x0 + (count > 1 ? Math.max(0, (width - drawnWidth) / 2) : 0)
    let y = room.y0 + gap * 0.6
    for (const view of parts) {
      putView(sheet, view, [x + left - cellOf(view, scale).left, y], scale, room.x0)
      y += cellOf(view, scale).height + BETWEEN + gap
    }
    end = y - BETWEEN - gap
    return sheet
  })
  return { drafts, end }
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

const details = (drawn: Drawn): readonly View[] =>
  (['hinge', 'hook'] as const).flatMap((kind) => jointView(drawn, kind) ?? [])
