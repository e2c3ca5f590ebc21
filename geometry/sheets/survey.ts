/** The survey sheet: a form to fill in by hand on the shore, before there is any dock. */

import { type Catalog, type Design, formatLength, unitWord } from '../../rules/index.ts'
import { type Survey, type SurveyField, type SurveyRow, survey } from '../../rules/papers/survey.ts'
import { NOTHING_KNOWN, type SurveyKnown, surveyKnown } from '../../rules/papers/survey-known.ts'
import { inDigits } from '../../rules/words/language.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import { PAPERS } from '../../rules/words/papers.ts'
import { heading, label, line, lineHeight, list, paragraph, subheading, tick } from '../paper/blocks.ts'
import { documentOf, head, inColumns, widthOf } from '../paper/document.ts'
import { type Block, block, type Flow, together } from '../paper/flow.ts'
import type { Ink, Mark, Paper, Point, Stroke } from '../paper/marks.ts'
import type { PaperOptions } from '../paper/options.ts'
import { GRAY, INK, SIZE } from '../paper/style.ts'
import { table } from '../paper/table.ts'
import { fitText, textWidth } from '../paper/text.ts'
import { surveySketch } from './survey-sketch.ts'

/** Written by a cold hand. */
const LINE = 7.3
const ROW = 6.4
/** Printed, not written: told apart on a copy too. */
const KNOWN: Ink = '#3c4a55'
const CROSS: Stroke = { width: 0.3, ink: INK }

/** @param design what is known of the place already; null for an empty form */
export function surveyPaper(catalog: Catalog, options: PaperOptions, design: Design | null = null): Paper {
  const { units } = options
  const t = wordsOf(PAPERS, options)
  const width = widthOf(options)
  const form = survey(units)
  const known = design ? surveyKnown(design, units) : NOTHING_KNOWN
  const columns = [
    { title: t('distance') },
    ...form.columns.map((key) => ({
      title: t(key),
      least: key === 'survey-col-notes' ? 26 : 17,
      write: true,
    })),
  ]
  const flow: Flow = [
    ...head(t(form.title), null, options, catalog),
    ...list(
      form.how.map((key) => t(key)),
      width,
      'number',
      { size: SIZE.small },
    ),
    ...(known.written.size > 0
      ? paragraph(t('survey-known'), width, { size: SIZE.small, weight: 'bold', before: 2 })
      : []),
    surveySketch(width, t),
    ...form.parts.flatMap(({ title, fields }): Block[] => {
      const [first, ...more] = inColumns(
        fields.map((one) => fieldBlock(one, (width - 6) / 2, options, known)),
        2,
        width,
      )
      return first ? [together([subheading(t(title), width), first], { before: 3 }), ...more] : []
    }),
    { ...heading(t('soundings'), width), name: t('soundings') },
    ...inColumns(
      form.lines.map((one) => fieldBlock(one, (width - 12) / 3, options, known)),
      3,
      width,
    ).map((one) => ({ ...one, keep: true })),
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
  { written, ticked }: SurveyKnown,
): Block {
  const t = wordsOf(PAPERS, options)
  const name = t(key)
  const already = inDigits(written.get(key) ?? '', options.language)
  const height = Math.max(1, lines) * LINE + (hint ? lineHeight(SIZE.tiny) : 0.6)
  return block(height + 1, (x, y) => {
    const from = x + textWidth(name, SIZE.small, 'bold') + 2
    const baselines = Array.from({ length: Math.max(1, lines) }, (_, i) => y + (i + 1) * LINE - 1.6)
    const [first, last] = [baselines[0]!, baselines.at(-1)!]
    const answer =
      choices.length > 0
        ? tickBoxes(
            choices.map((choice) => ({ text: t(choice), crossed: ticked.has(choice) })),
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
            ...(already === ''
              ? []
              : [
                  label(
                    [from + 1.4, first],
                    fitText(already, x + width - from - (unit ? 10 : 2), SIZE.body),
                    {
                      ink: KNOWN,
                    },
                  ),
                ]),
          ]
    const under = { size: SIZE.tiny, ink: GRAY }
    return [
      label([x, first], name, { size: SIZE.small, weight: 'bold' }),
      ...answer,
      ...(hint ? [label([x, last + 3.8], fitText(t(hint), width, SIZE.tiny), under)] : []),
    ]
  })
}

interface Choice {
  readonly text: string
  readonly crossed: boolean
}

function tickBoxes(choices: readonly Choice[], [left, baseline]: Point): Mark[] {
  let x = left
  return choices.flatMap(({ text, crossed }) => {
    const at = x
    x += 5 + textWidth(text, SIZE.small) + 3
    const [low, high] = [baseline + 0.4, baseline - 3]
    return [
      tick([at, high]),
      ...(crossed
        ? [line([at, low], [at + 3.4, high], CROSS), line([at, high], [at + 3.4, low], CROSS)]
        : []),
      label([at + 4.6, baseline], text, { size: SIZE.small }),
    ]
  })
}

const unitMark = (unit: string, at: Point): Mark =>
  label(at, unit, { size: SIZE.small, ink: GRAY, anchor: 'end' })
