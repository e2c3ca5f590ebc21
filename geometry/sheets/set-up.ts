/** The set-up sheet, and that of autumn: page one the stations, then the steps with a picture of what stands after each. */

import { formatLength } from '../../rules/index.ts'
import { sentence } from '../../rules/papers/saying.ts'
import { type StationLeg, stations } from '../../rules/papers/stations.ts'
import { autumn, steps } from '../../rules/papers/steps/set-up.ts'
import type { Step } from '../../rules/papers/steps/step.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import { PAPERS, type PaperWords } from '../../rules/words/papers.ts'
import { stationPicture, wholePicture } from '../drawing/picture.ts'
import type { Drawn } from '../drawn.ts'
import {
  baselineOf,
  figure,
  heading,
  label,
  lineHeight,
  list,
  note,
  noteWidth,
  paragraph,
  subheading,
} from '../paper/blocks.ts'
import { documentOf, head, widthOf } from '../paper/document.ts'
import { type Block, BREAK, block, type Flow, heightOf, together } from '../paper/flow.ts'
import type { Paper } from '../paper/marks.ts'
import type { PaperOf } from '../paper/paper-of.ts'
import { ALERT, GRAY, INK, SIZE } from '../paper/style.ts'
import { type Column, table } from '../paper/table.ts'
import { textWidth } from '../paper/text.ts'

/** Height of a step's picture, mm. */
const PICTURE = 42

export function setUpPaper(of: PaperOf, season: 'set-up' | 'autumn'): Paper {
  const { dock, catalog, options } = of
  const t = wordsOf(PAPERS, options)
  const width = widthOf(options)
  const sheet = (season === 'set-up' ? steps : autumn)(of)
  const whole = wholePicture(of, width)
  const atFirst = season === 'set-up' ? [] : dock.sections.map(({ id }) => id)
  const flow: Flow = [
    ...head(t(season), of, options, catalog),
    ...stationTable(of),
    note(
      [
        ...paragraph(t('cautions'), noteWidth(width), { weight: 'bold', before: 0 }),
        ...sheet.cautions.flatMap((key) =>
          paragraph(t(key), noteWidth(width), { size: SIZE.small, before: 0.5 }),
        ),
      ],
      ALERT,
    ),
    {
      ...named(
        [
          { name: t('people'), text: String(sheet.people) },
          { name: t('tools'), text: toolsText(sheet.tools, t) },
        ],
        width,
      ),
      before: 4,
    },
    ...(whole ? [figure(whole, width)] : []),
    BREAK,
    ...sheet.steps.flatMap((step, i) => {
      const before = sheet.steps[i - 1]?.standing ?? atFirst
      const moved = season === 'set-up' ? lastNew(step.standing, before) : lastNew(before, step.standing)
      return stepBlocks(step, stepPicture(step, moved, of, width), { t, width })
    }),
  ]
  return documentOf(t(season), flow, catalog, options, of)
}

const toolsText = (tools: Step['tools'], t: PaperWords): string =>
  tools.map((tool) => sentence(tool.say, t)).join(', ')

/** The last section of `more` that is not in `less`: what comes to stand in a step, or ceases to. */
const lastNew = (more: readonly string[], less: readonly string[]): string | undefined =>
  more.filter((id) => !less.includes(id)).at(-1)

/** The dock as it is with that section the last; none where nothing moves. */
function stepPicture({ crew }: Step, moved: string | undefined, drawn: Drawn, width: number): Block[] {
  if (moved === undefined) return []
  const marks = stationPicture(drawn, moved, { x0: 0, y0: 0, x1: width, y1: PICTURE }, crew)
  return marks.length > 0 ? [{ ...figure({ marks, width, height: PICTURE }, width), keep: true }] : []
}

interface Written {
  readonly t: PaperWords
  /** Between the margins, mm. */
  readonly width: number
}

/** Title, who and with what, picture, what is done, and the notes to it. */
function stepBlocks(step: Step, picture: readonly Block[], { t, width }: Written): Block[] {
  const title = `${step.number}. ${sentence(step.title, t)}`
  const lines = list(
    step.lines.map((line) => sentence(line.say, t)),
    width,
    'tick',
  )
  const notes = stepNotes(step, { t, width })
  return [
    { ...subheading(title, width), name: title, before: 6 },
    // With the step's own title and its first line.
    { ...whoAndTools(step, { t, width }), keep: true },
    ...picture,
    ...lines.map((block, i) => ({
      ...block,
      // No first line without the next one, and no note without the last.
      keep: (i === 0 && lines.length > 1) || (i === lines.length - 1 && notes.length > 0),
    })),
    ...notes.map((block, i) => (i < notes.length - 1 ? { ...block, keep: true } : block)),
  ]
}

function whoAndTools({ crew, tools, lift }: Step, { t, width }: Written): Block {
  const places = { shore: t('shore'), water: t('water'), deck: t('deck') }
  const who = crew
    .filter(({ people }) => people > 0)
    .map(({ place, people }) => t('who-at', { people: String(people), place: places[place] }))
  return named(
    [
      { name: t('who'), text: who.join(', ') },
      { name: t('step-tools'), text: toolsText(tools, t) },
      { name: t('step-lift'), text: lift ? sentence(lift.say, t) : '' },
    ].filter(({ text }) => text !== ''),
    width,
  )
}

/** What stays loose until later, and what to take care of. */
function stepNotes({ loose, cautions }: Step, { t, width }: Written): Block[] {
  const aside = noteWidth(width)
  const small = { size: SIZE.small, before: 0.5 }
  return [
    ...(loose.length > 0
      ? [
          note(
            [
              ...paragraph(t('loose'), aside, { ...small, weight: 'bold' }),
              ...loose.flatMap((line) => paragraph(sentence(line, t), aside, small)),
            ],
            INK,
          ),
        ]
      : []),
    ...(cautions.length > 0
      ? [
          note(
            cautions.flatMap((key) => paragraph(t(key), aside, { ...small, ink: ALERT })),
            ALERT,
          ),
        ]
      : []),
  ]
}

/** Short names at the left, what they say beside them; small. */
function named(all: readonly { readonly name: string; readonly text: string }[], width: number): Block {
  const size = SIZE.small
  const inset = Math.max(14, ...all.map(({ name }) => textWidth(name, size) + 3))
  return together(
    all.map(({ name, text }) => {
      const lines = paragraph(text, width - inset, { size })
      return block(Math.max(heightOf(lines), lineHeight(size)), (x, y) => [
        label([x, y + baselineOf(size)], name, { size, ink: GRAY }),
        ...together(lines).marks(x + inset, y),
      ])
    }),
    { before: 0.8 },
  )
}

/** One row a leg, its station's distance in the first; an empty column for what is found on the day. */
function stationTable(of: PaperOf): Block[] {
  const { options } = of
  const t = wordsOf(PAPERS, options)
  const width = widthOf(options)
  const all = stations(of)
  const length = (value: number | null): string => (value === null ? '—' : formatLength(value, options))
  const columns: Column[] = [
    { title: t('station'), align: 'end' },
    { title: t('station-section') },
    { title: t('station-out'), align: 'end' },
    { title: t('station-leg') },
    { title: t('station-depth'), align: 'end' },
    { title: t('station-found'), least: 13, write: true },
    { title: t('station-deck'), align: 'end', bold: true },
    { title: t('station-frame'), align: 'end' },
    { title: t('station-length'), align: 'end' },
    { title: t('station-above'), align: 'end' },
    { title: t('station-brace') },
  ]
  const row = (leg: StationLeg, side: 'left' | 'right'): string[] => [
    t(side),
    length(leg.firmDepth),
    '',
    length(leg.setHeight),
    length(leg.setHeightFrame),
    length(leg.stock),
    length(leg.aboveDeck),
    leg.brace ? t(`brace-${leg.brace.end}`, { code: leg.brace.code }) : '',
  ]
  const rows = all.stations.flatMap(({ number, section, edge, fromWater, left, right }) => {
    const legs = [left && row(left, 'left'), right && row(right, 'right')].filter((one) => one !== null)
    return legs.map((cells, i) => [
      ...(i === 0 ? [String(number), t(`edge-${edge}`, { section }), length(fromWater)] : ['', '', '']),
      ...cells,
    ])
  })
  const { ramp } = all
  return [
    { ...heading(t('station-table'), width), name: t('station-table'), before: 5 },
    ...paragraph(
      t('station-lead', {
        deck: formatLength(all.deckHeight, options),
        low: formatLength(-all.levels.low, options),
        high: formatLength(all.levels.high, options),
      }),
      width,
      { size: SIZE.small, ink: GRAY, before: 0.6 },
    ),
    ...table(columns, rows, width, {
      size: 2.6,
      row: 5.6,
      joins: (r) => r < rows.length && rows[r]![0] === '',
    }),
    ...(ramp
      ? paragraph(
          t(ramp.shoreX <= 0 ? 'ramp-lands' : 'ramp-lands-out', {
            at: formatLength(Math.abs(ramp.shoreX), options),
            height: formatLength(ramp.shoreZ, options),
            step: formatLength(ramp.step, options),
          }),
          width,
          { size: SIZE.small, before: 2 },
        )
      : []),
  ]
}
