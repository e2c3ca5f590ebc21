/** The table of legs, and hinge and hook beside it. */
import { formatLength, wordsIn } from '../../rules/index.ts'
import { label, line } from '../paper/blocks.ts'
import { GRAY, HAIR, INK, TINT } from '../paper/style.ts'
import { fitText, textWidth } from '../paper/text.ts'
import type { Drawn } from './plan.ts'
import { cellOf, type Draft, type DrawingOf, draft, putView, roomOn, SCALES } from './sheet.ts'
import type { View } from './view.ts'

const ROW = 5
const HEAD = 9
const SIZE = 2.6
const PAD = 2.4
/** Details stand beside the table where this much is left for them, mm. */
const BESIDE = 60

export function legTable(drawn: Drawn, { options, t }: DrawingOf, details: readonly View[]): Draft[] {
  const { dock, lang, units } = drawn
  const room = roomOn(options)
  const corners = wordsIn(lang).corners
  const length = (value: number | null): string => (value === null ? '' : formatLength(value, units))
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
      `${leg.section} ${corners[leg.corner]}`,
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
  placeDetails(list, details, { t, options } as DrawingOf, room.x0 + wide + 8)
  void GRAY
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

/** One under the other beside the table, else on a sheet of their own. */
function placeDetails(
  list: Draft[],
  details: readonly View[],
  { t, options }: DrawingOf,
  from: number,
): void {
  if (details.length === 0) return
  const room = roomOn(options)
  const beside = room.x1 - from >= BESIDE
  const sheet = beside ? list[0]! : draft(details.map(({ title }) => title).join(', '))
  const x = beside ? from : room.x0
  const [width, height] = [room.x1 - x, room.y1 - room.y0]
  const scale =
    SCALES[options.units].find((s) => {
      const cells = details.map((view) => cellOf(view, s))
      return (
        Math.max(...cells.map((c) => c.width)) <= width &&
        cells.reduce((sum, c) => sum + c.height + 4, 0) <= height
      )
    }) ?? SCALES[options.units][3]!
  let y = room.y0
  for (const view of details) {
    putView(sheet, view, [x, y], scale)
    y += cellOf(view, scale).height + 4
  }
  if (!beside) list.push(sheet)
  void t
}
