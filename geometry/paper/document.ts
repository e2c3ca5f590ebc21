/** Papers that flow: a head on the first sheet, a line on the others, the foot on all. */

import type { Catalog, Dock } from '../../rules/index.ts'
import { inFours } from '../../rules/words/check-code-text.ts'
import { dayIn } from '../../rules/words/days.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import { PAPERS, type PaperWords } from '../../rules/words/papers.ts'
import { baselineOf, facts, label, line, lineHeight, rect, textLine } from './blocks.ts'
import { type Block, block, type Flow, paginate, space, together, withTag } from './flow.ts'
import { forbiddenMarks } from './forbidden.ts'
import { type Mark, PAPER_SIZES, type Paper, type Tag } from './marks.ts'
import type { PaperOptions } from './options.ts'
import type { PaperOf } from './paper-of.ts'
import { CUT, FOOT, GRAY, HEAD_AGAIN, INK, MARGIN, RULE, SIZE } from './style.ts'
import { fitText, textWidth } from './text.ts'

/** Whose paper it is: a shop's, or of a record whose shop is not known. */
export type Maker = Pick<Catalog, 'name' | 'edition'>

/** Check code as people read it: in fours. */
export const codeOf = (dock: Dock): string => inFours(dock.fingerprint.all)
const codeOn = ({ dock, check }: PaperOf): string => check?.code ?? codeOf(dock)

/** Between the margins, mm. */
export const widthOf = ({ size }: PaperOptions): number => PAPER_SIZES[size].width - 2 * MARGIN.side

/** From the top of a first sheet to its foot, mm. */
export const roomIn = ({ size }: PaperOptions): number =>
  PAPER_SIZES[size].height - MARGIN.bottom - FOOT - MARGIN.top

/** Who made it, title and check code, whose dock it is. Without a dock: the title alone. */
export function head(title: string, of: PaperOf | null, options: PaperOptions, catalog: Maker): Block[] {
  const t = wordsOf(PAPERS, options)
  const width = widthOf(options)
  const shop = textLine(catalog.name, width, { size: SIZE.small, ink: GRAY })
  const rule = block(3.2, (x, y) => [line([x, y + 1.6], [x + width, y + 1.6], RULE)])
  if (!of)
    return [shop, textLine(title, width, { size: SIZE.title, weight: 'bold', tag: { role: 'H1' } }), rule]
  const { dock, design, check } = of
  const job = design.job ?? {}
  const all = [
    { label: t('dock'), value: dock.name },
    { label: t('customer'), value: job.customer ?? '' },
    { label: t('order'), value: job.order ?? '' },
    { label: t('date'), value: dayIn(options.date, options.language) },
    { label: t('by'), value: options.by },
    { label: check?.dockName ?? '', value: check ? codeOf(dock) : '' },
  ].filter(({ value }) => value !== '')
  return [
    shop,
    titleLine(title, check?.name ?? t('check-code'), codeOn(of), width),
    rule,
    { ...facts(all, width, all.length, { size: SIZE.body }), before: 0.4 },
    space(1),
  ]
}

/** The title at the left, on one line with the check code at the right. */
function titleLine(title: string, name: string, code: string, width: number): Block {
  const size = SIZE.heading
  const codeWidth = textWidth(code, size, 'bold')
  const room = width - codeWidth - textWidth(name, SIZE.small) - 8
  const own = textLine(title, room, { size: SIZE.title, weight: 'bold', tag: { role: 'H1' } })
  const base = baselineOf(SIZE.title)
  return block(lineHeight(SIZE.title), (x, y) => [
    ...own.marks(x, y),
    label([x + width - codeWidth - 2.4, y + base], name, { size: SIZE.small, ink: GRAY, anchor: 'end' }),
    label([x + width, y + base], code, { size, weight: 'bold', anchor: 'end' }),
  ])
}

/** @param of null for a paper without a dock (the survey sheet) */
export function documentOf(
  title: string,
  flow: Flow,
  catalog: Maker,
  options: PaperOptions,
  of: PaperOf | null,
): Paper {
  const t = wordsOf(PAPERS, options)
  const { width, height } = PAPER_SIZES[options.size]
  const end = MARGIN.top + roomIn(options)
  const pages = paginate(flow, (n) => {
    const top = MARGIN.top + (n === 0 ? 0 : HEAD_AGAIN)
    return { at: [MARGIN.side, top], height: end - top }
  })
  // Two codes are never told without their names.
  const subject = !of
    ? title
    : of.check
      ? `${of.check.name} ${of.check.code} · ${of.dock.name}`
      : `${of.dock.name} · ${codeOf(of.dock)}`
  const mark = forbiddenMarks(of?.dock ?? null, width, height, options)
  const footCode = !of ? '' : `${of.check ? `${of.check.dockName} ` : ''}${codeOf(of.dock)}`
  return {
    title,
    author: catalog.name,
    subject,
    lang: options.language.tag,
    sheets: pages.map(({ marks, name }, i) => ({
      width,
      height,
      bookmark: name || (i === 0 ? title : null),
      marks: [
        ...mark.under,
        ...(i > 0 ? withTag(again(title, subject, width), REPEATED) : []),
        ...marks,
        ...withTag(foot(t, footCode, catalog, options, i + 1, pages.length, end), REPEATED),
        ...mark.over,
      ],
    })),
  }
}

const REPEATED: Tag = { role: 'Artifact' }

const again = (title: string, subject: string, width: number): Mark[] => [
  label([MARGIN.side, MARGIN.top + 3], title, { size: SIZE.small, weight: 'bold' }),
  label([width - MARGIN.side, MARGIN.top + 3], fitText(subject, width / 2, SIZE.small), {
    size: SIZE.small,
    ink: GRAY,
    anchor: 'end',
  }),
  line([MARGIN.side, MARGIN.top + 5], [width - MARGIN.side, MARGIN.top + 5], { width: 0.18, ink: INK }),
]

function foot(
  t: PaperWords,
  code: string,
  catalog: Maker,
  { size, date, by, language }: PaperOptions,
  n: number,
  of: number,
  top: number,
): Mark[] {
  const { width } = PAPER_SIZES[size]
  const [left, right] = [MARGIN.side, width - MARGIN.side]
  const made = [catalog.name, catalog.edition].filter(Boolean).join(', ')
  const told = [made, code, dayIn(date, language), by].filter(Boolean).join(' · ')
  return [
    line([left, top + 3], [right, top + 3], { width: 0.12, ink: GRAY }),
    label([left, top + 6.2], fitText(told, right - left - 20, SIZE.tiny), { size: SIZE.tiny, ink: GRAY }),
    label([right, top + 6.2], t('sheet', { n, of }), { size: SIZE.tiny, ink: GRAY, anchor: 'end' }),
    label([left, top + 9.6], fitText(t('screening'), right - left, SIZE.tiny), {
      size: SIZE.tiny,
      ink: GRAY,
    }),
  ]
}

/** Blocks in equal columns, as many rows as it takes; each row one block. */
export function inColumns(parts: readonly Block[], columns: number, width: number, gap = 6): Block[] {
  const cell = (width - gap * (columns - 1)) / columns
  return Array.from({ length: Math.ceil(parts.length / columns) }, (_, r) => {
    const row = parts.slice(r * columns, (r + 1) * columns)
    return {
      ...together([space(Math.max(...row.map(({ height }) => height)))]),
      marks: (x: number, y: number) => row.flatMap((part, c) => part.marks(x + c * (cell + gap), y)),
    }
  })
}

/** Cards to be cut out: in columns, those of a row alike in height, so that a row is cut in one. */
export function cutApart(cards: readonly Block[], columns: number, width: number): Block[] {
  const gap = 6
  const cell = (width - gap * (columns - 1)) / columns
  return inColumns(cards, columns, width, gap).map((row, r) => ({
    ...row,
    before: 4,
    marks: (x, y) => [
      ...cards
        .slice(r * columns, (r + 1) * columns)
        .map((_, c) => rect([x + c * (cell + gap), y], cell, row.height, CUT)),
      ...row.marks(x, y),
    ],
  }))
}
