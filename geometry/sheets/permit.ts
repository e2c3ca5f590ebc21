/**
 * The permit drawing: site plan, section through the lake, and the facts that authorities ask for. What the design does not know is a line
 * to write on, never made up.
 */
import { lowLevel } from '../../rules/clearance/keel.ts'
import { formatFigure, formatLength } from '../../rules/index.ts'
import { footprintOfAll } from '../../rules/layout/footprint.ts'
import { areaOver, deepest, limitsOf } from '../../rules/limits/limits.ts'
import { factsOf as partFacts } from '../../rules/part-kinds.ts'
import { DRAWING } from '../../rules/words/drawing.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import { freePlace } from '../drawing/free-place.ts'
import { measuredOn } from '../drawing/limits.ts'
import { lakeSection, levelSections, lotClearances, sitePlan } from '../drawing/permit-views.ts'
import {
  cellOf,
  type Draft,
  type DrawingOf,
  draft,
  finish,
  putView,
  roomOn,
  SITE_SCALES,
} from '../drawing/sheet.ts'
import { type Fact, keyValues, paragraph, subheading, writeOn } from '../paper/blocks.ts'
import { codeOf } from '../paper/document.ts'
import { type Block, heightOf, together } from '../paper/flow.ts'
import type { Paper } from '../paper/marks.ts'
import type { PaperOf } from '../paper/paper-of.ts'
import { GRAY, SIZE } from '../paper/style.ts'

const BETWEEN = 6
/** The facts stand beside the pictures, unless these would be smaller by more than this factor for it. */
const MOST = 1.7
/** Of the facts, mm: beside a picture, else under it. */
const WIDTHS = [84, 96, 110]

export function permitPaper(of: PaperOf): Paper {
  const { dock, design, catalog, options } = of
  const t = wordsOf(DRAWING, of)
  const about: DrawingOf = { dock, design, catalog, options, t, name: t('permit') }
  const drafts = dock.sections.length === 0 ? [draft(t('permit'))] : views(of, about)
  if (dock.sections.length > 0) putFacts(drafts, of, about)
  return {
    title: t('permit'),
    author: catalog.name,
    subject: `${dock.name} · ${codeOf(dock)}`,
    lang: options.language.tag,
    sheets: drafts.map((sheet, i) => finish(sheet, i + 1, drafts.length, about).sheet),
  }
}

/** Site plan over section at one scale, with room for the facts beside them where there is any; else each on a sheet. */
function views(of: PaperOf, { options, t }: DrawingOf): Draft[] {
  const room = roomOn(options)
  const [width, height] = [room.x1 - room.x0, room.y1 - room.y0]
  const plan = sitePlan(of)
  // As much of the lake as the plan shows: the same place stands under the same place.
  const side = lakeSection(of, plan.bounds)
  const scales = SITE_SCALES[options.units]
  const fits = (room: number) =>
    scales.find((scale) => {
      const [a, b] = [cellOf(plan, scale), cellOf(side, scale)]
      return Math.max(a.width, b.width) <= room && a.height + b.height + BETWEEN <= height
    })
  const [beside, over] = [fits(width - WIDTHS[0]! - BETWEEN), fits(width)]
  const both = beside !== undefined && over !== undefined && beside > MOST * over ? over : (beside ?? over)
  if (both !== undefined) {
    const sheet = draft(t('permit-sheet'), 'ask')
    const [a, b] = [cellOf(plan, both), cellOf(side, both)]
    const left = Math.max(a.left, b.left)
    putView(sheet, plan, [room.x0 + left - a.left, room.y0], both, room.x0)
    putView(sheet, side, [room.x0 + left - b.left, room.y0 + a.height + BETWEEN], both, room.x0)
    return [sheet]
  }
  const alone = [plan, side].map(
    (view) =>
      scales.find((scale) => {
        const cell = cellOf(view, scale)
        return cell.width <= width && cell.height <= height
      }) ?? scales.at(-1)!,
  )
  return [plan, side].map((view, i) => {
    const sheet = draft(view.title, i === 0 ? 'ask' : false)
    putView(sheet, view, [room.x0, room.y0], alone[i]!)
    return sheet
  })
}

/** What is told, and what is left to be written. */
function factBlocks(of: PaperOf, { t }: DrawingOf, width: number): Block[] {
  const small = { size: SIZE.small }
  const ask = ['permit-applicant', 'permit-address', 'permit-water', 'permit-authority'] as const
  const known = of.design.job?.customer
  return [
    subheading(t('permit-facts'), width),
    ...keyValues(factsOf(of, t), width, small),
    ...paragraph(t('permit-ask'), width, { ...small, ink: GRAY, before: 2 }),
    ...ask.filter((key) => key !== 'permit-applicant' || !known).map((key) => writeOn([t(key)], width, 7.5)),
    writeOn([t('permit-signature'), t('permit-date')], width, 7.5),
  ]
}

function factsOf(of: PaperOf, t: DrawingOf['t']): Fact[] {
  const { dock, design, catalog, bed } = of
  const { low, high } = design.site.levels
  const length = (value: number): string => formatLength(value, of)
  const area = (value: number): string => formatFigure({ value, unit: 'm2' }, of)
  const measured = measuredOn(dock)
  const all = footprintOfAll(levelSections(of))!
  const deck = design.dock.deckHeight
  const limits = limitsOf(design, catalog)
  const posts = dock.placements.filter(({ kind }) => partFacts(kind).list === 'posts').length
  const fact = (key: Parameters<typeof t>[0], value: string): Fact => ({ label: t(key), value })
  const given = (value: number, most: number | undefined, told: (value: number) => string): string =>
    most === undefined ? told(value) : t('permit-given', { value: told(value), most: told(most) })
  return [
    ...(design.job?.customer ? [fact('permit-applicant', design.job.customer)] : []),
    fact('permit-long', t('permit-by', { long: length(all.x1 - all.x0), wide: length(all.y1 - all.y0) })),
    fact('permit-reach', given(Math.max(0, all.x1), limits.reach, length)),
    fact('permit-area', given(areaOver(measured), limits.area, area)),
    fact(
      'permit-depth',
      given(Math.max(0, deepest(measured, bed, lowLevel(design.site.levels))), limits.depth, length),
    ),
    fact('permit-low', t('permit-under', { level: length(-low) })),
    fact('permit-high', t('permit-over', { level: length(high) })),
    fact('permit-deck', length(deck)),
    fact('permit-deck-high', length(deck - high)),
    fact('permit-legs', String(dock.legs.length)),
    ...(posts === 0 ? [] : [fact('permit-posts', String(posts))]),
    ...(design.site.waterWidth === undefined ? [] : [fact('permit-width', length(design.site.waterWidth))]),
    ...lotClearances(of).map(({ line, long }) => ({
      label: t('permit-lot', { line }),
      value: length(long),
    })),
    ...(design.job?.surveyed ? [fact('surveyed', design.job.surveyed)] : []),
  ]
}

function putFacts(drafts: Draft[], of: PaperOf, about: DrawingOf): void {
  const room = roomOn(about.options)
  for (const sheet of drafts)
    for (const width of WIDTHS) {
      const blocks = factBlocks(of, about, width)
      const height = heightOf(blocks)
      const at = freePlace(sheet, width, height, room)
      if (!at) continue
      sheet.marks.push(...together(blocks).marks(at[0], at[1]))
      sheet.taken.push({ x0: at[0], y0: at[1], x1: at[0] + width, y1: at[1] + height })
      return
    }
  const sheet = draft(about.t('permit-facts'))
  sheet.marks.push(...together(factBlocks(of, about, 120)).marks(room.x0, room.y0))
  drafts.push(sheet)
}
