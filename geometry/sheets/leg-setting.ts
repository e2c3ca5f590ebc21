/** The leg table of the one sheet: what to expect at each leg, how high to set it, room to write what was found, and the sum to do. */
import { formatLength } from '../../rules/index.ts'
import { type SetLeg, setLegs } from '../../rules/papers/set-legs.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import { PAPERS } from '../../rules/words/papers.ts'
import { lineHeight, note, noteWidth, paragraph } from '../paper/blocks.ts'
import type { Block } from '../paper/flow.ts'
import type { PaperOf } from '../paper/paper-of.ts'
import { GRAY, INK, SIZE } from '../paper/style.ts'
import { type Column, largestFor, table } from '../paper/table.ts'

/** Of its letters, mm: as large as fits, to be read at arm's length. */
const LETTERS = [3.4, 3.2, 2.95, 2.75, 2.6] as const
/** Heights of rows, mm: to write in with cold hands, and lower ones for a dock of more legs. */
export const ROWS = [7.4, 6.4, 5.6, 5.15] as const
/** Between its columns, of each side, mm: its letters are the larger for it. */
const PAD = 1.1
/** More than this off the depth that was expected, and the shop is asked first (ours: a foot; what a worked sum adds: two inches), m. */
const CALL = { imperial: 0.3048, metric: 0.3 } as const
const STEP = { imperial: 0.0508, metric: 0.05 } as const

/** `season` decides what is written in: what is found and set, or what is drawn out. */
export function legTableBlocks(
  of: PaperOf,
  width: number,
  season: 'set-up' | 'autumn',
  row: number,
): Block[] {
  const { options } = of
  const t = wordsOf(PAPERS, options)
  const legs = setLegs(of)
  if (legs.length === 0) return []
  const length = (value: number | null): string => (value === null ? '—' : formatLength(value, options))
  const up = season === 'set-up'
  const heads = legs.some(({ place }) => place.aside !== null)
  const columns: readonly (Column & { readonly cell: (leg: SetLeg) => string })[] = [
    { title: t('leg-number'), align: 'end', bold: true, cell: ({ number }) => String(number) },
    { title: t('leg-out'), align: 'end', cell: ({ out }) => length(out) },
    ...(heads
      ? [
          {
            title: t('leg-aside'),
            align: 'end' as const,
            cell: ({ place }: SetLeg) => (place.aside === null ? '' : length(place.aside)),
          },
        ]
      : []),
    { title: t('leg-side'), cell: ({ place }) => t(place.side) },
    { title: t('station-depth'), align: 'end', cell: ({ depth }) => length(depth) },
    { title: t('station-found'), least: 13, write: true, cell: () => '' },
    { title: t('leg-to-deck'), align: 'end', bold: true, cell: ({ setHeight }) => length(setHeight) },
    { title: t('leg-to-frame'), align: 'end', cell: ({ setHeightFrame }) => length(setHeightFrame) },
    { title: t(up ? 'leg-set' : 'leg-stood'), least: 13, write: true, cell: () => '' },
    { title: t('station-length'), align: 'end', cell: ({ stock }) => length(stock) },
    { title: t('station-above'), align: 'end', cell: ({ aboveDeck }) => length(aboveDeck) },
    ...(up
      ? [{ title: t('leg-deeper'), align: 'end' as const, cell: ({ deeper }: SetLeg) => length(deeper) }]
      : []),
  ]
  const rows = legs.map((leg) => columns.map(({ cell }) => cell(leg)))
  // No letters that would make its rows higher.
  const sizes = LETTERS.filter((size) => lineHeight(size) + 1.4 <= row)
  return table(columns, rows, width, {
    size: largestFor(columns, rows, width, sizes, PAD),
    row,
    pad: PAD,
  }) as Block[]
}

/** What stands over the table: from where, on which water, with which deck. */
export function legTableLead(
  { dock, design, options }: PaperOf,
  width: number,
  season: 'set-up' | 'autumn',
): Block[] {
  const t = wordsOf(PAPERS, options)
  const { stake, levels } = design.site
  return [
    ...paragraph(
      [
        stake
          ? t('from-stake', {
              stake: stake.name,
              at: formatLength(Math.abs(stake.x), options),
              side: t(stake.x <= 0 ? 'stake-behind' : 'stake-beyond'),
            })
          : t('from-edge'),
        t('left-right'),
        ...(season === 'set-up' && dock.pairs.some(({ brace }) => brace) ? [t('arrows')] : []),
      ].join(' '),
      width,
      { size: SIZE.small, before: 0.8 },
    ),
    ...paragraph(
      t('station-lead', {
        deck: formatLength(design.dock.deckHeight, options),
        low: formatLength(-levels.low, options),
        high: formatLength(levels.high, options),
      }),
      width,
      { size: SIZE.small, ink: GRAY, before: 0.4 },
    ),
  ]
}

/** The sum, worked once, and what to do where the bed is not as it was sounded. @param size of its letters, mm */
export function settingRule(of: PaperOf, width: number, size: number = SIZE.small): Block[] {
  const { design, options } = of
  const t = wordsOf(PAPERS, options)
  const last = setLegs(of).at(-1)
  if (!last) return []
  const aside = noteWidth(width)
  const length = (value: number): string => formatLength(value, options)
  const deck = design.dock.deckHeight
  const step = STEP[options.units]
  return [
    note(
      [
        ...paragraph(t('sum', { deck: length(deck) }), aside, {
          size: size + 0.65,
          weight: 'bold',
          before: 0,
        }),
        ...paragraph(
          t('sum-example', {
            leg: String(last.number),
            found: length(last.depth + step),
            deck: length(deck),
            set: length(last.setHeight + step),
            rise: length(last.setHeight - last.setHeightFrame),
          }),
          aside,
          { size, before: 0.6 },
        ),
        ...paragraph(t('sum-level'), aside, { size, before: 0.6 }),
      ],
      INK,
    ),
    note(
      [
        ...paragraph(t('rule-fine'), aside, { size, before: 0 }),
        ...paragraph(t('rule-next'), aside, { size, before: 0.5 }),
        ...paragraph(t('rule-call', { much: length(CALL[options.units]) }), aside, {
          size,
          weight: 'bold',
          before: 0.5,
        }),
      ],
      INK,
    ),
  ]
}
