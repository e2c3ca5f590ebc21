/** A sheet of a drawing: its frame and title block, views at their scales, labels where there is room. */

import {
  type Catalog,
  type Design,
  type Dock,
  EXACT,
  feetInches,
  formatLength,
  type Reader,
  say,
  type Units,
} from '../../rules/index.ts'
import { dayIn } from '../../rules/words/days.ts'
import { DRAWING, type DrawingWords } from '../../rules/words/drawing.ts'
import { label, line, rect } from '../paper/blocks.ts'
import { codeOf } from '../paper/document.ts'
import { forbiddenMarks } from '../paper/forbidden.ts'
import { type Mark, PAPER_SIZES, type Point, type Sheet } from '../paper/marks.ts'
import type { PaperOptions } from '../paper/options.ts'
import { GRAY, INK } from '../paper/style.ts'
import { fitText, textWidth } from '../paper/text.ts'
import type { Box } from './cells.ts'
import { boxOf, type Label, placeLabels, type Segment } from './labels.ts'
import { paintView, roomOf } from './paint.ts'
import { SMALLEST, type View } from './view.ts'

/** Frame from the sheet's edge; title block; white between views. mm. */
const EDGE = 8
const BLOCK = 21
/** Cell of the title block that says where north is. */
const NORTH = 20
const INSET = 4
const TITLE = 6
/** Titles and captions longer than this are cut before they take room from the picture. */
const WORDS = 120
const CAPTION = 3.7
/** Room for a scale behind a title, mm. */
const TOLD = 20

/** How many m are one m of paper, finest first: inches to the foot; ISO 5455, and 1:25, 1:30, 1:40, 1:75 between (common practice). */
export const SCALES: Readonly<Record<Units, readonly number[]>> = {
  imperial: [2, 4, 8, 12, 16, 24, 32, 48, 64, 96, 128, 192, 384, 768],
  metric: [2, 5, 10, 20, 25, 30, 40, 50, 75, 100, 200, 500, 1000],
}

/** Of site plans, coarser steps between: 1 in to 10 ft and its multiples besides (common practice of surveyors). */
export const SITE_SCALES: Readonly<Record<Units, readonly number[]>> = {
  imperial: [24, 32, 48, 64, 96, 120, 128, 192, 240, 360, 480, 600, 768, 1200, 2400, 6000, 12_000],
  metric: [20, 25, 30, 40, 50, 75, 100, 125, 150, 200, 250, 300, 400, 500, 750, 1000, 2000, 5000, 10_000],
}

/** `1/4 in = 1 ft`, `1 in = 10 ft`, `1:50`. */
export function scaleText(scale: number, reader: Reader): string {
  if (reader.units === 'metric') return `1:${scale}`
  if (scale % 120 === 0)
    return say(DRAWING, reader, 'scale-is', {
      paper: feetInches(EXACT.inch, reader),
      true: feetInches(EXACT.inch * scale, reader),
    })
  const paper = feetInches(EXACT.foot / scale, reader, 64)
  return say(DRAWING, reader, 'scale-is', { paper, true: feetInches(EXACT.foot, reader) })
}

export interface DrawingOf {
  readonly dock: Dock
  readonly design: Design
  readonly catalog: Catalog
  readonly options: PaperOptions
  /** What kind of drawing it is. */
  readonly name: string
  readonly t: DrawingWords
}

/** What can be drawn on, mm. */
export function roomOn({ size }: PaperOptions): Box {
  const { width, height } = PAPER_SIZES[size]
  return { x0: EDGE + INSET, y0: EDGE + INSET, x1: height - EDGE - INSET, y1: width - EDGE - BLOCK - INSET }
}

/** A sheet that is being filled. */
export interface Draft {
  /** What is on it. */
  title: string
  /** Shows the dock from above: says where north is; `ask` leaves room to draw it where nobody has said. */
  readonly north: boolean | 'ask'
  readonly marks: Mark[]
  readonly labels: Label[]
  readonly segments: Segment[]
  readonly scales: Set<number>
  /** Behind each view's title, where its scale is told if the sheet has several; as much room, mm. */
  readonly told: { readonly at: Point; readonly scale: number; readonly room: number }[]
  /** Where no label may stand, besides on other texts. */
  readonly taken: Box[]
  /** Where a view has its room: nothing else is put there. */
  readonly kept: Box[]
}

export const draft = (title: string, north: Draft['north'] = false): Draft => ({
  title,
  north,
  marks: [],
  labels: [],
  segments: [],
  scales: new Set(),
  told: [],
  taken: [],
  kept: [],
})

/** To try something on: the sheet itself stays as it is. */
export const copyOf = (sheet: Draft): Draft => ({
  ...sheet,
  marks: [...sheet.marks],
  labels: [...sheet.labels],
  segments: [...sheet.segments],
  scales: new Set(sheet.scales),
  told: [...sheet.told],
  taken: [...sheet.taken],
  kept: [...sheet.kept],
})

/** Puts a view on a sheet; `at` is the upper left corner of its room (`cellOf`), mm. */
export function putView(sheet: Draft, view: View, at: Point, scale: number, titleAt = at[0]): void {
  const { width, height, left, above } = cellOf(view, scale)
  sheet.kept.push({ x0: at[0], y0: at[1], x1: at[0] + width, y1: at[1] + height })
  const name = fitText(view.title, width, 3.4, 'bold')
  const behind = textWidth(name, 3.4, 'bold') + 3
  sheet.told.push({ at: [titleAt + behind, at[1] + 3.4], scale, room: Math.max(width - behind, TOLD) })
  const drawn = {
    width: ((view.bounds.x1 - view.bounds.x0) * 1000) / scale,
    height: ((view.bounds.y1 - view.bounds.y0) * 1000) / scale,
  }
  sheet.marks.push(label([titleAt, at[1] + 3.4], name, { size: 3.4, weight: 'bold' }))
  view.captions?.forEach((text, i) => {
    sheet.marks.push(
      label([titleAt, at[1] + TITLE + 2.2 + i * CAPTION], fitText(text, Math.max(width, WORDS), SMALLEST), {
        size: SMALLEST,
        ink: GRAY,
      }),
    )
  })
  const corner: Point = [at[0] + left, at[1] + above + drawn.height]
  const painted = paintView(view, corner, scale)
  sheet.marks.push(...painted.marks)
  sheet.labels.push(...painted.labels)
  sheet.segments.push(...painted.segments)
  sheet.scales.add(scale)
}

/** Room that a view takes with its title, captions and dimensions, mm; where in it the picture begins. */
export function cellOf(
  view: View,
  scale: number,
): { width: number; height: number; left: number; above: number } {
  const k = 1000 / scale
  const { left, right, above, below } = roomOf(view, scale)
  const { x0, x1, y0, y1 } = view.bounds
  const head = TITLE + (view.captions?.length ?? 0) * CAPTION + above
  const words = Math.max(
    textWidth(view.title, 3.4, 'bold') + 3 + TOLD,
    ...(view.captions ?? []).map((text) => textWidth(text, SMALLEST)),
  )
  return {
    width: Math.max((x1 - x0) * k + left + right, Math.min(words, WORDS)),
    height: (y1 - y0) * k + head + below,
    left,
    above: head,
  }
}

/** Frame, title block, scale bar and north, then the labels where there is room. */
export function finish(
  sheet: Draft,
  n: number,
  of: number,
  about: DrawingOf,
): { readonly sheet: Sheet; readonly left: readonly Label[] } {
  const { size } = about.options
  const [width, height] = [PAPER_SIZES[size].height, PAPER_SIZES[size].width]
  const block = titleBlock(sheet, n, of, about, width, height)
  const mark = forbiddenMarks(about.dock, width, height, about.options)
  const bar = sheet.scales.size === 1 ? scaleBar([...sheet.scales][0]!, about, roomOn(about.options)) : []
  const scales =
    sheet.scales.size > 1
      ? sheet.told.map(({ at, scale, room }) =>
          label(at, fitText(scaleText(scale, about.options), room, SMALLEST), { size: SMALLEST, ink: GRAY }),
        )
      : []
  const all = [...sheet.marks, ...block, ...bar, ...scales]
  const placed = placeLabels(sheet.labels, {
    bounds: { x0: EDGE + 1, y0: EDGE + 1, x1: width - EDGE - 1, y1: height - EDGE - BLOCK - 1 },
    taken: [...sheet.taken, ...all.flatMap((mark) => (mark.kind === 'text' ? [boxOf(mark)] : []))],
    segments: sheet.segments,
  })
  return {
    sheet: {
      width,
      height,
      bookmark: sheet.title,
      marks: [...mark.under, ...all, ...placed.marks, ...mark.over],
    },
    left: placed.left,
  }
}

type BlockCell = readonly [label: string, value: string, share: number]

/** What is told in the title block, row by row. */
function blockRows(
  sheet: Draft,
  n: number,
  of: number,
  { dock, design, catalog, options, t, name: kind }: DrawingOf,
): readonly (readonly BlockCell[])[] {
  const [scale] = [...sheet.scales]
  const job = design.job ?? {}
  return [
    [
      [t('dock'), dock.name, 3],
      [t('customer'), job.customer ?? '', 2.2],
      [t('order'), job.order ?? '', 1.4],
      [t('shop'), `${catalog.name}, ${catalog.edition}`, 3],
      [t('units'), t(options.units === 'imperial' ? 'units-imperial' : 'units-metric'), 2],
      [
        t('scale'),
        scale === undefined
          ? t('scale-none')
          : sheet.scales.size === 1
            ? scaleText(scale, options)
            : t('scale-not'),
        1.6,
      ],
    ],
    [
      [kind, sheet.title, 3],
      [t('made-by'), job.by ?? '', 1.7],
      [t('surveyed'), dayIn(job.surveyed ?? '', options.language), 1.7],
      [t('by'), options.by, 1.6],
      [t('date'), dayIn(options.date, options.language), 1.3],
      [t('revision'), codeOf(dock), 2],
      ['', t('sheet', { n, of }), 1.2],
    ],
  ]
}

function titleBlock(
  sheet: Draft,
  n: number,
  of: number,
  about: DrawingOf,
  width: number,
  height: number,
): Mark[] {
  const top = height - EDGE - BLOCK
  const { design, t } = about
  const rows = blockRows(sheet, n, of, about)
  const bearing = sheet.north ? design.site.bearing : undefined
  const asked = bearing === undefined && sheet.north === 'ask'
  const inner = width - 2 * EDGE - (bearing === undefined && !asked ? 0 : NORTH)
  const row = 8.2
  const marks: Mark[] = [
    rect([EDGE, EDGE], width - 2 * EDGE, height - 2 * EDGE, { width: 0.5, ink: INK }),
    line([EDGE, top], [width - EDGE, top], { width: 0.35, ink: INK }),
  ]
  rows.forEach((all, r) => {
    // What is not told of has no cell.
    const cells = all.filter(([, value]) => value !== '')
    const y = top + r * row
    if (r > 0) marks.push(line([EDGE, y], [EDGE + inner, y], { width: 0.18, ink: INK }))
    const sum = cells.reduce((so, [, , share]) => so + share, 0)
    let x = EDGE
    cells.forEach(([name, value, share], c) => {
      const room = (inner * share) / sum
      if (c > 0) marks.push(line([x, y], [x, y + row], { width: 0.18, ink: INK }))
      marks.push(label([x + 1.6, y + 3.1], fitText(name, room - 3, SMALLEST), { size: SMALLEST, ink: GRAY }))
      const size = r === 0 && c === 0 ? 3.6 : 3
      marks.push(
        label([x + 1.6, y + 7.1], fitText(value, room - 3, size, c === 0 ? 'bold' : 'regular'), {
          size,
          weight: c === 0 ? 'bold' : 'regular',
        }),
      )
      x += room
    })
  })
  const foot = top + rows.length * row
  marks.push(line([EDGE, foot], [width - EDGE, foot], { width: 0.18, ink: INK }))
  marks.push(
    label([EDGE + 1.6, foot + 3.1], fitText(t('screening'), inner - 3, SMALLEST), {
      size: SMALLEST,
      ink: GRAY,
    }),
  )
  if (bearing !== undefined)
    marks.push(
      line([EDGE + inner, top], [EDGE + inner, foot], { width: 0.18, ink: INK }),
      ...north(bearing, [width - EDGE - NORTH / 2, top + (foot - top) / 2], t('north')),
    )
  if (asked) {
    const middle: Point = [width - EDGE - NORTH / 2, top + (foot - top) / 2 - 1.8]
    marks.push(
      line([EDGE + inner, top], [EDGE + inner, foot], { width: 0.18, ink: INK }),
      { kind: 'circle', at: middle, radius: 5, stroke: { width: 0.18, ink: INK }, fill: null },
      label([middle[0], foot - 1.1], fitText(t('north-ask'), NORTH - 1, SMALLEST), {
        size: SMALLEST,
        ink: GRAY,
        anchor: 'middle',
      }),
    )
  }
  return marks
}

/** x points along the bearing, so north is that far back. */
function north(bearing: number, [x, y]: Point, name: string): Mark[] {
  const turn = (bearing * Math.PI) / 180
  // On paper x is right: north lies `bearing` counter-clockwise from there.
  const [dx, dy] = [Math.cos(turn), -Math.sin(turn)]
  const r = 4.6
  const tip: Point = [x + dx * r, y + dy * r]
  const tail: Point = [x - dx * r, y - dy * r]
  return [
    line(tail, tip, { width: 0.25, ink: INK }),
    {
      kind: 'path',
      points: [
        tip,
        [x + dx * 2 - dy * 1.6, y + dy * 2 + dx * 1.6],
        [x + dx * 2 + dy * 1.6, y + dy * 2 - dx * 1.6],
      ],
      closed: true,
      stroke: null,
      fill: INK,
    },
    label([x + dx * (r + 2.4), y + dy * (r + 2.4) + 1.1], name, {
      size: 3,
      weight: 'bold',
      anchor: 'middle',
    }),
  ]
}

/** Lengths of scale bars. */
const FEET = [1 / 12, 0.25, 0.5, 1, 2, 4, 5, 10, 20, 40, 50, 100, 200, 500, 1000]
const METERS = [0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 4, 5, 10, 20, 40, 50, 100, 200, 500]

/** A bar of a round length in alternate halves, in the lower right corner. */
function scaleBar(scale: number, { options }: DrawingOf, room: Box): Mark[] {
  const { units } = options
  const unit = units === 'imperial' ? 0.3048 : 1
  const k = 1000 / scale
  const lengths = units === 'imperial' ? FEET : METERS
  const long = lengths.filter((count) => count * unit * k <= 46).at(-1) ?? lengths[0]!
  const width = long * unit * k
  const [x, y] = [room.x1 - width - 2, room.y1 - 1.6]
  const text = formatLength(long * unit, options)
  return [
    rect([x, y], width / 2, 1.2, { width: 0.18, ink: INK }, INK),
    rect([x + width / 2, y], width / 2, 1.2, { width: 0.18, ink: INK }),
    label([x, y - 1], '0', { size: SMALLEST, anchor: 'middle' }),
    label([x + width - textWidth(text, SMALLEST) / 2 + 2, y - 1], text, { size: SMALLEST, anchor: 'middle' }),
  ]
}
