/** The set-up sheet, and that of autumn: page one the stations, then the steps with a picture of what stands after each. */
import { formatLength } from '../../../rules/index.ts'
import { sentence } from '../../../rules/papers/saying.ts'
import { type StationLeg, stations } from '../../../rules/papers/stations.ts'
import { autumn, steps } from '../../../rules/papers/steps/set-up.ts'
import type { Step } from '../../../rules/papers/steps/step.ts'
import { paperWords } from '../../../rules/words/papers.ts'
import { sheetWords } from '../../../rules/words/sheets.ts'
import { stationPicture, wholePicture } from '../../drawing/picture.ts'
import {
  figure,
  heading,
  label,
  lineHeight,
  list,
  note,
  noteWidth,
  paragraph,
  subheading,
} from '../blocks.ts'
import { documentOf, head, widthOf } from '../document.ts'
import { type Block, BREAK, block, type Flow, heightOf, together } from '../flow.ts'
import type { Mark, Paper } from '../marks.ts'
import type { PaperOf } from '../paper-of.ts'
import { ALERT, GRAY, INK, SIZE } from '../style.ts'
import { type Column, table } from '../table.ts'
import { textWidth } from '../text.ts'

/** Height of a step's picture, mm. */
const PICTURE = 42

export function setUpPaper(of: PaperOf, season: 'set-up' | 'autumn'): Paper {
  const { dock, catalog, options } = of
  const { units, lang } = options
  const t = sheetWords(lang, units)
  const say = paperWords(lang, units)
  const width = widthOf(options)
  const sheet = (season === 'set-up' ? steps : autumn)(of)
  const places = { shore: say('shore'), water: say('water'), deck: say('deck') }
  const step = (one: Step, before: readonly string[]): Block[] => {
    const who = one.crew
      .filter(({ people }) => people > 0)
      .map(({ place, people }) => t('who-at', { people: String(people), place: places[place] }))
    const told = [
      { name: t('who'), text: who.join(', ') },
      { name: t('step-tools'), text: one.tools.map((tool) => sentence(tool.say, say)).join(', ') },
      { name: t('lift'), text: one.lift ? sentence(one.lift.say, say) : '' },
    ].filter(({ text }) => text !== '')
    const loose = one.loose.map((line) => sentence(line, say))
    const care = one.cautions.map((key) => say(key))
    const aside = noteWidth(width)
    const small = { size: SIZE.small, before: 0.5 }
    // What comes to stand in this step, or ceases to: the dock as it is with that section the last.
    const [more, less] = season === 'set-up' ? [one.standing, before] : [before, one.standing]
    const moved = more.filter((id) => !less.includes(id)).at(-1)
    const marks =
      moved === undefined ? [] : stationPicture(of, moved, { x0: 0, y0: 0, x1: width, y1: PICTURE }, one.crew)
    const lines = list(
      one.lines.map((line) => sentence(line.say, say)),
      width,
      'tick',
    )
    return [
      {
        ...subheading(`${one.number}. ${sentence(one.title, say)}`, width),
        name: `${one.number}. ${sentence(one.title, say)}`,
        before: 6,
      },
      // With the step's own title and its first line.
      { ...named(told, width), keep: true },
      ...(marks.length > 0 ? [{ ...figure({ marks, width, height: PICTURE }, width), keep: true }] : []),
      ...lines.map((block, i) => ({
        ...block,
        // No first line without the next one, and no note without the last.
        keep: (i === 0 && lines.length > 1) || (i === lines.length - 1 && loose.length + care.length > 0),
      })),
      ...(loose.length > 0
        ? [
            {
              ...note(
                [
                  ...paragraph(t('loose'), aside, { ...small, weight: 'bold' }),
                  ...loose.flatMap((text) => paragraph(text, aside, small)),
                ],
                INK,
              ),
              keep: care.length > 0,
            },
          ]
        : []),
      ...(care.length > 0
        ? [
            note(
              care.flatMap((text) => paragraph(text, aside, { ...small, ink: ALERT })),
              ALERT,
            ),
          ]
        : []),
    ]
  }
  const whole = wholePicture(of, width)
  let before: readonly string[] = season === 'set-up' ? [] : dock.sections.map(({ id }) => id)
  const flow: Flow = [
    ...head(t(season), of, options, catalog),
    ...stationTable(of),
    note(
      [
        ...paragraph(t('cautions'), noteWidth(width), { weight: 'bold', before: 0 }),
        ...sheet.cautions.flatMap((key) =>
          paragraph(say(key), noteWidth(width), { size: SIZE.small, before: 0.5 }),
        ),
      ],
      ALERT,
    ),
    {
      ...named(
        [
          { name: t('people'), text: String(sheet.people) },
          { name: t('tools'), text: sheet.tools.map((tool) => sentence(tool.say, say)).join(', ') },
        ],
        width,
      ),
      before: 4,
    },
    ...(whole ? [figure(whole, width)] : []),
    BREAK,
    ...sheet.steps.flatMap((one) => {
      const blocks = step(one, before)
      before = one.standing
      return blocks
    }),
  ]
  return documentOf(t(season), flow, catalog, options, of)
}

/** Short names at the left, what they say beside them; small. */
function named(all: readonly { readonly name: string; readonly text: string }[], width: number): Block {
  const size = SIZE.small
  const inset = Math.max(14, ...all.map(({ name }) => textWidth(name, size) + 3))
  return together(
    all.map(({ name, text }) => {
      const lines = paragraph(text, width - inset, { size })
      return block(Math.max(heightOf(lines), lineHeight(size)), (x, y) => [
        label([x, lines[0]!.marks(0, y).map(baseOf)[0]!], name, { size, ink: GRAY }),
        ...together(lines).marks(x + inset, y),
      ])
    }),
    { before: 0.8 },
  )
}
const baseOf = (mark: Mark): number => (mark.kind === 'text' ? mark.at[1] : 0)

/** One row a leg, its station's distance in the first; an empty column for what is found on the day. */
function stationTable(of: PaperOf): Block[] {
  const { options, units, lang } = of
  const t = sheetWords(lang, units)
  const width = widthOf(options)
  const all = stations(of)
  const length = (value: number | null): string => (value === null ? '—' : formatLength(value, units))
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
        deck: formatLength(all.deckHeight, units),
        low: formatLength(-all.levels.low, units),
        high: formatLength(all.levels.high, units),
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
            at: formatLength(Math.abs(ramp.shoreX), units),
            height: formatLength(ramp.shoreZ, units),
            step: formatLength(ramp.step, units),
          }),
          width,
          { size: SIZE.small, before: 2 },
        )
      : []),
  ]
}
