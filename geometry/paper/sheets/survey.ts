/** The survey sheet: a form to fill in by hand on the shore, before there is any dock. */
import { type Catalog, formatLength } from '../../../rules/index.ts'
import { type SurveyField, survey } from '../../../rules/papers/survey.ts'
import { paperWords } from '../../../rules/words/papers.ts'
import { sheetWords } from '../../../rules/words/sheets.ts'
import { heading, label, line, lineHeight, list, paragraph, subheading, tick } from '../blocks.ts'
import { documentOf, head, inColumns, widthOf } from '../document.ts'
import { type Block, block, type Flow, together } from '../flow.ts'
import type { Paper } from '../marks.ts'
import type { PaperOptions } from '../options.ts'
import { GRAY, INK, SIZE } from '../style.ts'
import { table } from '../table.ts'
import { fitText, textWidth } from '../text.ts'

/** Written by a cold hand. */
const LINE = 8.5
const ROW = 7.6

export function surveyPaper(catalog: Catalog, options: PaperOptions): Paper {
  const { units, lang } = options
  const t = sheetWords(lang, units)
  const say = paperWords(lang, units)
  const width = widthOf(options)
  const form = survey(units)
  const cell = (width - 6) / 2
  const field = ({ label: key, hint, unit, choices, lines }: SurveyField): Block => {
    const name = say(key)
    const height = Math.max(1, lines) * LINE + (hint ? lineHeight(SIZE.tiny) : 0.6)
    return block(height + 1, (x, y) => {
      const from = x + textWidth(name, SIZE.small, 'bold') + 2
      const ends = Array.from({ length: Math.max(1, lines) }, (_, i) => y + (i + 1) * LINE - 1.6)
      const boxes = choices.reduce<{ at: number; marks: ReturnType<typeof tick>[] }>(
        ({ at, marks }, choice) => {
          const word = say(choice)
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
              label([x + cell, ends[0]!], unit === 'deg' ? '°' : unit, {
                size: SIZE.small,
                ink: GRAY,
                anchor: 'end',
              }),
            ]
          : []),
        ...(hint
          ? [
              label([x, ends.at(-1)! + 3.8], fitText(say(hint), cell, SIZE.tiny), {
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
        : `${formatLength(Math.abs(distance), units)}${place === 'bank' ? ` (${t('bank')})` : ''}`,
      ...form.columns.map(() => ''),
    ]),
    ...Array.from({ length: form.spareRows }, () => ['', ...form.columns.map(() => '')]),
  ]
  const flow: Flow = [
    ...head(say(form.title), null, options),
    ...list(
      form.how.map((key) => say(key)),
      width,
      'number',
      { size: SIZE.small },
    ),
    ...form.parts.flatMap(({ title, fields }): Block[] => {
      const [first, ...more] = inColumns(fields.map(field), 2, width)
      return first ? [together([subheading(say(title), width), first], { before: 3 }), ...more] : []
    }),
    heading(t('distance'), width),
    ...table(
      [{ title: t('distance') }, ...form.columns.map((key) => ({ title: say(key), least: 26 }))].map(
        (column, c, all) => ({
          ...column,
          ...(c === all.length - 1 && { flex: true }),
        }),
      ),
      rows,
      width,
      { row: ROW },
    ),
    ...form.cautions.flatMap((key) => paragraph(say(key), width, { size: SIZE.small, before: 1.4 })),
  ]
  return documentOf(say(form.title), flow, catalog, options, null)
}
