/** The survey sheet: a form to fill in by hand on the shore, before there is any dock. */

import { type Catalog, formatLength, unitWord } from '../../rules/index.ts'
import { type Survey, type SurveyField, type SurveyRow, survey } from '../../rules/papers/survey.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import { PAPERS } from '../../rules/words/papers.ts'
import { heading, label, line, lineHeight, list, paragraph, subheading, tick } from '../paper/blocks.ts'
import { documentOf, head, inColumns, widthOf } from '../paper/document.ts'
import { type Block, block, type Flow, together } from '../paper/flow.ts'
import type { Mark, Paper, Point } from '../paper/marks.ts'
import type { PaperOptions } from '../paper/options.ts'
import { GRAY, INK, SIZE } from '../paper/style.ts'
import { table } from '../paper/table.ts'
import { fitText, textWidth } from '../paper/text.ts'
import { surveySketch } from './survey-sketch.ts'

/** Written by a cold hand. */
const LINE = 7.3
const ROW = 6.4

export function surveyPaper(catalog: Catalog, options: PaperOptions): Paper {
  const { units } = options
  const t = wordsOf(PAPERS, options)
  const width = widthOf(options)
  const form = survey(units)
  const columns = [
    { title: t('distance') },
    ...form.columns.map((key) => ({ title: t(key), least: 26, write: true })),
  ]
  const flow: Flow = [
    ...head(t(form.title), null, options, catalog),
    ...list(
      form.how.map((key) => t(key)),
      width,
      'number',
      { size: SIZE.small },
    ),
    surveySketch(width, t),
    ...form.parts.flatMap(({ title, fields }): Block[] => {
      const [first, ...more] = inColumns(
        fields.map((one) => fieldBlock(one, (width - 6) / 2, options)),
        2,
        width,
      )
      return first ? [together([subheading(t(title), width), first], { before: 3 }), ...more] : []
    }),
    { ...heading(t('soundings'), width), name: t('soundings') },
    ...table(
      columns.map((column, c) => ({ ...column, ...(c === columns.length - 1 && { flex: true }) })),
      soundingRows(form, options),
      width,
      { row: ROW },
    ),
    ...form.cautions.flatMap((key) => paragraph(t(key), width, { size: SIZE.small, before: 1.4 })),
  ]
  return documentOf(t(form.title), flow, catalog, options, null)
}

/** Distances are printed; what is measured is written in by hand. */
function soundingRows({ rows, columns, spareRows }: Survey, options: PaperOptions): string[][] {
  const t = wordsOf(PAPERS, options)
  const empty = columns.map(() => '')
  const distanceOf = ({ distance, place }: SurveyRow): string =>
    place === 'edge'
      ? `0 (${t('water-edge')})`
      : `${formatLength(Math.abs(distance), options)}${place === 'bank' ? ` (${t('bank')})` : ''}`
  return [
    ...rows.map((row) => [distanceOf(row), ...empty]),
    ...Array.from({ length: spareRows }, () => ['', ...empty]),
  ]
}

/** Its name, then boxes to tick or lines to write on with the unit at the end; the hint under it. */
function fieldBlock(
  { label: key, hint, unit, choices, lines }: SurveyField,
  width: number,
  options: PaperOptions,
): Block {
  const t = wordsOf(PAPERS, options)
  const name = t(key)
  const height = Math.max(1, lines) * LINE + (hint ? lineHeight(SIZE.tiny) : 0.6)
  return block(height + 1, (x, y) => {
    const from = x + textWidth(name, SIZE.small, 'bold') + 2
    const baselines = Array.from({ length: Math.max(1, lines) }, (_, i) => y + (i + 1) * LINE - 1.6)
    const [first, last] = [baselines[0]!, baselines.at(-1)!]
    const answer =
      choices.length > 0
        ? tickBoxes(
            choices.map((choice) => t(choice)),
            [from, first],
          )
        : [
            ...baselines.map((at, i) =>
              line([i === 0 ? from : x, at + 0.8], [x + width - (unit && i === 0 ? 8 : 0), at + 0.8], {
                width: 0.18,
                ink: INK,
              }),
            ),
            ...(unit ? [unitMark(unitWord(unit, options), [x + width, first])] : []),
          ]
    const under = { size: SIZE.tiny, ink: GRAY }
    return [
      label([x, first], name, { size: SIZE.small, weight: 'bold' }),
      ...answer,
      ...(hint ? [label([x, last + 3.8], fitText(t(hint), width, SIZE.tiny), under)] : []),
    ]
  })
}

function tickBoxes(choices: readonly string[], [left, baseline]: Point): Mark[] {
  let x = left
  return choices.flatMap((choice) => {
    const at = x
    x += 5 + textWidth(choice, SIZE.small) + 3
    return [tick([at, baseline - 3]), label([at + 4.6, baseline], choice, { size: SIZE.small })]
  })
}

const unitMark = (unit: string, at: Point): Mark =>
  label(at, unit, { size: SIZE.small, ink: GRAY, anchor: 'end' })
