/** The survey sheet: a form to fill in by hand on the shore, before there is any dock. */
import { type Catalog, formatLength, unitWord } from '../../../rules/index.ts'
import { type SurveyField, survey } from '../../../rules/papers/survey.ts'
import { PAPERS, type PaperWords } from '../../../rules/words/papers.ts'
import { wordsOf } from '../../../rules/words/say.ts'
import { heading, label, line, lineHeight, list, paragraph, subheading, tick } from '../blocks.ts'
import { documentOf, head, inColumns, widthOf } from '../document.ts'
import { type Block, block, type Flow, together } from '../flow.ts'
import type { Ink, Mark, Paper, Point, Stroke } from '../marks.ts'
import type { PaperOptions } from '../options.ts'
import { GRAY, INK, SIZE, WATER } from '../style.ts'
import { table } from '../table.ts'
import { fitText, textWidth } from '../text.ts'

/** Written by a cold hand. */
const LINE = 7.3
const ROW = 6.4

export function surveyPaper(catalog: Catalog, options: PaperOptions): Paper {
  const { units } = options
  const t = wordsOf(PAPERS, options)
  const width = widthOf(options)
  const form = survey(units)
  const cell = (width - 6) / 2
  const field = ({ label: key, hint, unit, choices, lines }: SurveyField): Block => {
    const name = t(key)
    const height = Math.max(1, lines) * LINE + (hint ? lineHeight(SIZE.tiny) : 0.6)
    return block(height + 1, (x, y) => {
      const from = x + textWidth(name, SIZE.small, 'bold') + 2
      const ends = Array.from({ length: Math.max(1, lines) }, (_, i) => y + (i + 1) * LINE - 1.6)
      const boxes = choices.reduce<{ at: number; marks: ReturnType<typeof tick>[] }>(
        ({ at, marks }, choice) => {
          const word = t(choice)
          return {
            at: at + 5 + textWidth(word, SIZE.small) + 3,
            marks: [
              ...marks,
              tick([at, ends[0]! - 3]),
              label([at + 4.6, ends[0]!], word, { size: SIZE.small }),
            ],
          }
        },
        { at: from, marks: [] },
      )
      return [
        label([x, ends[0]!], name, { size: SIZE.small, weight: 'bold' }),
        ...boxes.marks,
        ...(choices.length > 0
          ? []
          : ends.map((at, i) =>
              line([i === 0 ? from : x, at + 0.8], [x + cell - (unit && i === 0 ? 8 : 0), at + 0.8], {
                width: 0.18,
                ink: INK,
              }),
            )),
        ...(unit && choices.length === 0
          ? [
              label([x + cell, ends[0]!], unitWord(unit, options), {
                size: SIZE.small,
                ink: GRAY,
                anchor: 'end',
              }),
            ]
          : []),
        ...(hint
          ? [
              label([x, ends.at(-1)! + 3.8], fitText(t(hint), cell, SIZE.tiny), {
                size: SIZE.tiny,
                ink: GRAY,
              }),
            ]
          : []),
      ]
    })
  }
  const rows = [
    ...form.rows.map(({ distance, place }) => [
      place === 'edge'
        ? `0 (${t('water-edge')})`
        : `${formatLength(Math.abs(distance), options)}${place === 'bank' ? ` (${t('bank')})` : ''}`,
      ...form.columns.map(() => ''),
    ]),
    ...Array.from({ length: form.spareRows }, () => ['', ...form.columns.map(() => '')]),
  ]
  const flow: Flow = [
    ...head(t(form.title), null, options, catalog),
    ...list(
      form.how.map((key) => t(key)),
      width,
      'number',
      { size: SIZE.small },
    ),
    sketch(width, t),
    ...form.parts.flatMap(({ title, fields }): Block[] => {
      const [first, ...more] = inColumns(fields.map(field), 2, width)
      return first ? [together([subheading(t(title), width), first], { before: 3 }), ...more] : []
    }),
    { ...heading(t('soundings'), width), name: t('soundings') },
    ...table(
      [
        { title: t('distance') },
        ...form.columns.map((key) => ({ title: t(key), least: 26, write: true })),
      ].map((column, c, all) => ({
        ...column,
        ...(c === all.length - 1 && { flex: true }),
      })),
      rows,
      width,
      { row: ROW },
    ),
    ...form.cautions.flatMap((key) => paragraph(t(key), width, { size: SIZE.small, before: 1.4 })),
  ]
  return documentOf(t(form.title), flow, catalog, options, null)
}

const GROUND: Ink = '#f3ede0'
const EARTH: Ink = '#7a6340'

/** How to measure, drawn: the line from the bank outward, rods on it, the fixed mark. Of no lake, and to no scale. */
function sketch(width: number, t: PaperWords): Block {
  const height = 37
  const surface = 15
  const inset = 8
  const edge = width * 0.27
  const small = { size: SIZE.tiny, ink: GRAY }
  const bed: readonly Point[] = [
    [inset, 6.5],
    [width * 0.12, 7.5],
    [edge, surface],
    [width * 0.45, 20.5],
    [width * 0.63, 25],
    [width * 0.82, 31],
    [width - inset, 33],
  ]
  const depthAt = (x: number): number => {
    const after = bed.findIndex(([bx]) => bx >= x)
    const [[x0, y0], [x1, y1]] = [bed[after - 1]!, bed[after]!]
    return y0 + ((x - x0) / (x1 - x0)) * (y1 - y0)
  }
  const at = (left: number, top: number, points: readonly Point[]): Point[] =>
    points.map(([x, y]) => [left + x, top + y])
  return block(
    height,
    (left, top) => {
      const p = (x: number, y: number): Point => [left + x, top + y]
      const path = (points: readonly Point[], stroke: Stroke | null, fill: Ink | null = null): Mark => ({
        kind: 'path',
        points: at(left, top, points),
        closed: fill !== null,
        stroke,
        fill,
      })
      const thin: Stroke = { width: 0.18, ink: GRAY }
      const tip = (x: number, y: number, dx: number, dy: number): Mark =>
        path(
          [
            [x, y],
            [x - dx * 1.8 - dy * 0.55, y - dy * 1.8 - dx * 0.55],
            [x - dx * 1.8 + dy * 0.55, y - dy * 1.8 + dx * 0.55],
          ],
          null,
          INK,
        )
      const rods = [0.45, 0.63, 0.82].map((share) => width * share)
      const [first = 0, second = 0, third = 0] = rods
      const firm = depthAt(third) + 3.6
      const mark = width * 0.085
      return [
        path([...bed, [width - inset, height], [inset, height]], null, GROUND),
        path(bed, { width: 0.35, ink: EARTH }),
        // Firm ground under soft, where the water is deep.
        path(
          [
            [width * 0.7, 31.5],
            [third, firm],
            [width - inset, 36.4],
          ],
          { width: 0.25, ink: EARTH, dash: [1.6, 1.2] },
        ),
        path(
          [
            [edge, surface],
            [width - inset, surface],
          ],
          { width: 0.3, ink: WATER },
        ),
        // The stretched line, with its distances.
        path(
          [
            [inset + 3, 4],
            [width - inset - 3, 4],
          ],
          { width: 0.22, ink: INK },
        ),
        ...[inset + 3, edge, ...rods].map((x) =>
          path(
            [
              [x, 2.8],
              [x, 5.2],
            ],
            { width: 0.22, ink: INK },
          ),
        ),
        label(p(edge, 1.9), '0', { size: SIZE.tiny, weight: 'bold', anchor: 'middle' }),
        label(p(edge + 1.6, 8.4), t('water-edge'), small),
        path(
          [
            [edge, 5.2],
            [edge, surface],
          ],
          { ...thin, dash: [0.8, 0.8] },
        ),
        label(p((edge + first) / 2, 3.2), t('distance'), { ...small, anchor: 'middle' }),
        tip(first, 4, 1, 0),
        // Rods: depth from the water down, firm depth where the rod stops.
        ...[first, second].map((x) =>
          path(
            [
              [x, 9.5],
              [x, depthAt(x)],
            ],
            { width: 0.5, ink: INK },
          ),
        ),
        path(
          [
            [third, 9.5],
            [third, firm],
          ],
          { width: 0.5, ink: INK },
        ),
        path(
          [
            [second + 2.5, surface],
            [second + 2.5, depthAt(second + 2.5)],
          ],
          thin,
        ),
        tip(second + 2.5, surface, 0, -1),
        tip(second + 2.5, depthAt(second + 2.5), 0, 1),
        label(p(second + 4, (surface + depthAt(second)) / 2 + 1.4), t('survey-col-depth'), small),
        path(
          [
            [third + 2.5, surface],
            [third + 2.5, firm],
          ],
          thin,
        ),
        tip(third + 2.5, surface, 0, -1),
        tip(third + 2.5, firm, 0, 1),
        label(p(third + 4, (surface + depthAt(third)) / 2 + 1.4), t('survey-col-firm'), small),
        // The fixed mark, and its height over the water.
        { kind: 'circle', at: p(mark, 5.7), radius: 1, stroke: null, fill: INK },
        path(
          [
            [mark, surface],
            [edge, surface],
          ],
          { ...thin, dash: [0.8, 0.8] },
        ),
        path(
          [
            [mark, 6.9],
            [mark, surface],
          ],
          thin,
        ),
        tip(mark, surface, 0, 1),
        label(p(mark + 2, surface + 3.4), t('survey-mark-over'), small),
      ]
    },
    { before: 3.5 },
  )
}
