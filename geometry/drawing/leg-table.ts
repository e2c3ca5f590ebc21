/** The table of legs, and hinge and hook beside it. */

import { cornerWord, formatLength } from '../../rules/index.ts'
import type { Drawn } from '../drawn.ts'
import { label, line } from '../paper/blocks.ts'
import { HAIR, INK, TINT } from '../paper/style.ts'
import { fitText, textWidth } from '../paper/text.ts'
import { cellOf, type Draft, type DrawingOf, draft, putView, roomOn, SCALES } from './sheet.ts'
import type { View } from './view.ts'

const ROW = 5
const HEAD = 9
const SIZE = 2.6
const PAD = 2.4
/** Between details, mm. */
const GAP = 8

export function legTable(drawn: Drawn, about: DrawingOf, details: readonly View[]): Draft[] {
  const { dock } = drawn
  const { options, t } = about
  const room = roomOn(options)
  const length = (value: number | null): string => (value === null ? '' : formatLength(value, drawn))
  const head = [
    t('number'),
    t('leg'),
    t('station'),
    t('bed'),
    t('set-height'),
    t('set-height-frame'),
    t('length'),
    t('above-deck'),
    t('brace'),
  ]
  const rows = dock.legs.map((leg, i) => {
    const pair = dock.pairs.find(({ legs }) => legs.includes(leg.id))
    const brace = pair?.brace
    return [
      String(i + 1),
      `${leg.section} ${cornerWord(leg.corner, drawn)}`,
      length(leg.x),
      length(-leg.bed),
      length(leg.setHeight),
      length(leg.setHeightFrame),
      leg.stock === null ? t('none-found') : length(leg.stock),
      length(leg.aboveDeck),
      brace ? t(brace.low === leg.id ? 'low-here' : 'high-here', { code: brace.code }) : '',
    ]
  })
  const wordsOf = (text: string): string[] => text.split(' ')
  const widths = head.map((title, c) => {
    const cells = rows.map((row) => textWidth(row[c]!, SIZE))
    const longest = Math.max(...wordsOf(title).map((word) => textWidth(word, SIZE, 'bold')))
    return Math.max(longest, ...cells) + 2 * PAD
  })
  const wide = widths.reduce((a, b) => a + b, 0)
  const fits = Math.max(1, Math.floor((room.y1 - room.y0 - 8 - HEAD) / ROW))
  const sheets = Math.max(1, Math.ceil(rows.length / fits))
  const list: Draft[] = []
  for (let n = 0; n < sheets; n++) {
    const title = sheets > 1 ? t('continued', { title: t('legs'), n: n + 1, of: sheets }) : t('legs')
    const sheet = draft(title)
    let y = room.y0
    sheet.marks.push(label([room.x0, y + 3.4], title, { size: 3.4, weight: 'bold' }))
    y += 8
    const right = (c: number): boolean => c >= 2 && c <= 7
    const put = (cells: readonly string[], top: number, bold: boolean): void => {
      let x = room.x0
      cells.forEach((text, c) => {
        const width = widths[c]!
        sheet.marks.push(
          label(
            [right(c) ? x + width - PAD : x + PAD, top],
            fitText(text, width - PAD, SIZE, bold ? 'bold' : 'regular'),
            { size: SIZE, weight: bold ? 'bold' : 'regular', anchor: right(c) ? 'end' : 'start', ink: INK },
          ),
        )
        x += width
      })
    }
    // Heads in two lines, broken where they are most even.
    const split = head.map((text, c) => halves(text, widths[c]! - 2 * PAD))
    put(
      split.map(([a]) => a),
      y + 3,
      true,
    )
    put(
      split.map(([, b]) => b),
      y + 6.6,
      true,
    )
    sheet.marks.push(
      line([room.x0, y + HEAD - 0.8], [room.x0 + wide, y + HEAD - 0.8], { width: 0.35, ink: INK }),
    )
    y += HEAD
    rows.slice(n * fits, (n + 1) * fits).forEach((row, r) => {
      if (r % 2 === 1)
        sheet.marks.push({
          kind: 'path',
          closed: true,
          stroke: null,
          fill: TINT,
          points: [
            [room.x0, y],
            [room.x0 + wide, y],
            [room.x0 + wide, y + ROW],
            [room.x0, y + ROW],
          ],
        })
      put(row, y + 3.5, false)
      sheet.marks.push(line([room.x0, y + ROW], [room.x0 + wide, y + ROW], HAIR))
      y += ROW
    })
    list.push(sheet)
  }
  placeDetails(
    list,
    details,
    about,
    room.x0 + wide + 8,
    room.y0 + 8 + HEAD + Math.min(rows.length, fits) * ROW + 6,
  )
  return list
}

/** Text in two lines no wider than `width`, the second one empty where one is enough. */
function halves(text: string, width: number): readonly [string, string] {
  if (textWidth(text, SIZE, 'bold') <= width + 0.01) return ['', text]
  const words = text.split(' ')
  for (let i = words.length - 1; i > 0; i--) {
    const first = words.slice(0, i).join(' ')
    if (textWidth(first, SIZE, 'bold') <= width + 0.01) return [first, words.slice(i).join(' ')]
  }
  return [words[0]!, words.slice(1).join(' ')]
}

/** Details no coarser than this, or on a sheet of their own. */
const DETAILS_COARSEST = 8

/** Under the table side by side, or beside it one under the other, whichever shows them larger; else on a sheet of their own. */
function placeDetails(
  list: Draft[],
  details: readonly View[],
  { options, t }: DrawingOf,
  aside: number,
  under: number,
): void {
  if (details.length === 0) return
  const room = roomOn(options)
  // What the scale bar takes at the foot.
  const foot = room.y1 - 6
  const at = (scale: number) => {
    const cells = details.map((view) => cellOf(view, scale))
    return {
      row: {
        width: cells.reduce((sum, { width }) => sum + width + GAP, -GAP),
        height: Math.max(...cells.map(({ height }) => height)),
      },
      column: {
        width: Math.max(...cells.map(({ width }) => width)),
        height: cells.reduce((sum, { height }) => sum + height + GAP, -GAP),
      },
    }
  }
  const scales = SCALES[options.units]
  const fits = (
    way: 'row' | 'column',
    scale: number,
    { x, y }: { readonly x: number; readonly y: number },
  ): boolean => {
    const { width, height } = at(scale)[way]
    return width <= room.x1 - x && height <= foot - y
  }
  const places = [
    { way: 'row', x: room.x0, y: under },
    { way: 'column', x: aside, y: room.y0 },
  ] as const
  const shared = list.length === 1
  const choices = places.flatMap((place) => {
    const scale = scales.find((s) => fits(place.way, s, place))
    return scale !== undefined && shared ? [{ ...place, scale }] : []
  })
  const best = choices.reduce<(typeof choices)[number] | null>(
    (found, one) => (!found || one.scale < found.scale ? one : found),
    null,
  )
  const own = best === null || best.scale > DETAILS_COARSEST
  const alone = scales.find((s) => fits('row', s, { x: room.x0, y: room.y0 })) ?? scales.at(-1)!
  const { way, x, y, scale } = own ? ({ way: 'row', x: room.x0, y: room.y0, scale: alone } as const) : best
  const sheet = own ? draft(t('details')) : list[0]!
  const cells = details.map((view) => cellOf(view, scale))
  const wide = way === 'row' ? cells.reduce((sum, { width }) => sum + width, 0) : 0
  const spread = way === 'row' ? Math.max(GAP, (room.x1 - x - wide) / cells.length) : 0
  const [left, top] = [x, own ? y + Math.max(0, (foot - y - at(scale).row.height) / 3) : y]
  let along = 0
  details.forEach((view, i) => {
    putView(sheet, view, way === 'row' ? [left + along, top] : [left, top + along], scale)
    along += way === 'row' ? cells[i]!.width + spread : cells[i]!.height + GAP
  })
  if (own) list.push(sheet)
}
