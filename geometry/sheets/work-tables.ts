/** The manual's tables: what is made ready on shore, and what is done in the water, a row for each section instead of a page. */

import { formatLength, formatMass, type Reader } from '../../rules/index.ts'
import { braceHoles, legNumber } from '../../rules/leg-places.ts'
import { peopleOf } from '../../rules/papers/steps/hands.ts'
import type { Step, StepLine, Steps, Work } from '../../rules/papers/steps/step.ts'
import type { Project } from '../../rules/project.ts'
import { listOf } from '../../rules/words/language.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import { PAPERS, type PaperWord, type PaperWords } from '../../rules/words/papers.ts'
import { heading, paragraph } from '../paper/blocks.ts'
import type { Block } from '../paper/flow.ts'
import type { PaperOf } from '../paper/paper-of.ts'
import { GRAY, SIZE } from '../paper/style.ts'
import { type Column, largestFor, table } from '../paper/table.ts'

const LETTERS = [2.75, 2.6] as const
const ROW = 5.2

interface Told {
  readonly dock: Project['dock']
  readonly reader: Reader
  readonly t: PaperWords
}
interface WorkColumn {
  readonly title: PaperWord
  readonly cell: (step: Step, told: Told) => string
  /** Only where some row has something in it. */
  readonly always?: true
  readonly bold?: true
}

const linesOf = ({ lines }: Step, ...works: readonly Work[]): readonly StepLine[] =>
  lines.filter(({ work }) => works.includes(work))
const counted = (step: Step, kind: string, ...works: readonly Work[]): number =>
  linesOf(step, ...works)
    .flatMap(({ parts }) => parts)
    .reduce((sum, part) => sum + (part.kind === kind ? part.count : 0), 0)
const number = (count: number): string => (count > 0 ? String(count) : '')

/** Legs of a step, those alike together: `4 ft: 3, 4`. */
function legsIn(step: Step, { dock, reader }: Told): string {
  const ids = linesOf(step, 'legs').flatMap(({ about }) => about)
  const lengths = new Map<string, number[]>()
  for (const leg of dock.legs)
    if (ids.includes(leg.id) && leg.stock !== null) {
      const length = formatLength(leg.stock, reader)
      lengths.set(length, [...(lengths.get(length) ?? []), legNumber(dock, leg.id)])
    }
  return [...lengths].map(([length, numbers]) => `${length}: ${numbers.join(', ')}`).join('; ')
}

/** How far up each leg of a section a clamp's hole comes. */
const clampsIn = (step: Step, { dock, reader }: Told): string =>
  linesOf(step, 'clamps').length === 0
    ? ''
    : dock.legs
        .filter(({ section }) => section === step.section)
        .flatMap((leg) =>
          braceHoles(dock, leg).map(({ up }) => `${legNumber(dock, leg.id)}: ${formatLength(up, reader)}`),
        )
        .join('; ')

/** Braces of a step's lines of that work, each with the leg that its end is fixed to. */
const bracesIn = (step: Step, work: 'brace-low' | 'brace-high', { dock, t }: Told): string =>
  linesOf(step, work)
    .flatMap(({ about }) => dock.pairs.filter(({ id }) => about.includes(id)))
    .flatMap(({ brace, legs }) => {
      if (!brace) return []
      const leg = work === 'brace-low' ? brace.low : legs.find((one) => one !== brace.low)!
      return [t('work-brace-on', { code: brace.code, leg: legNumber(dock, leg) })]
    })
    .join('; ')

/** Sections that joints lead to, from the step's own. */
const others = (step: Step, work: Work, { dock }: Told): string =>
  linesOf(step, work)
    .flatMap(({ about }) => dock.joints.filter(({ id }) => about.includes(id)))
    .flatMap(({ between }) => between.filter((id) => id !== step.section))
    .join(', ')

const whoAndLift = ({ crew, lift }: Step, { reader, t }: Told): string => {
  const who = crew
    .filter(({ people }) => people > 0)
    .map(({ people, place }) => t('who-at', { people, place: t(place) }))
  return listOf([...who, ...(lift ? [formatMass(lift.mass, reader)] : [])], reader.language)
}

const SECTION: WorkColumn = {
  title: 'work-section',
  always: true,
  bold: true,
  cell: ({ section, id }, { t }) =>
    id === 'level' ? t('work-level', { section: section ?? '' }) : (section ?? ''),
}

const DRY: readonly WorkColumn[] = [
  SECTION,
  { title: 'work-set-bolts', cell: (step) => number(counted(step, 'set-bolt', 'set-bolts')) },
  { title: 'work-legs', cell: legsIn },
  { title: 'work-clamps', cell: clampsIn },
  { title: 'work-pads', cell: (step) => number(counted(step, 'foot-pad', 'pads')) },
  { title: 'work-brace-low', cell: (step, told) => bracesIn(step, 'brace-low', told) },
  {
    title: 'work-brackets',
    cell: (step, told) => {
      const count = counted(step, 'hook-bracket', 'hooks')
      return count === 0 ? '' : told.t('work-for', { count, section: others(step, 'hooks', told) })
    },
  },
  {
    title: 'work-hinge',
    cell: (step, { t }) => {
      const [bars, pins] = [counted(step, 'hinge-bar', 'hinge-bar'), counted(step, 'hinge-pin', 'first-pin')]
      return bars > 0 ? t('work-bar') : pins > 0 ? t('work-pin', { count: pins }) : ''
    },
  },
  { title: 'work-lift', always: true, cell: whoAndLift },
]

const WET: readonly WorkColumn[] = [
  SECTION,
  {
    title: 'work-on',
    cell: ({ id, section }, { dock }) =>
      id === 'level' ? '' : (dock.sections.find((one) => one.id === section)?.on ?? ''),
  },
  {
    title: 'work-set-legs',
    cell: (step, { dock }) =>
      linesOf(step, 'set-leg')
        .flatMap(({ about }) => about.map((id) => legNumber(dock, id)))
        .join(', '),
  },
  { title: 'work-brace-high', cell: (step, told) => bracesIn(step, 'brace-high', told) },
  {
    title: 'work-lock',
    cell: (step, { t }) => {
      const [bolts, pins] = [counted(step, 'hook-bolt', 'lock'), counted(step, 'hinge-pin', 'pins')]
      return bolts > 0 ? t('work-bolts', { count: bolts }) : pins > 0 ? t('work-pin', { count: pins }) : ''
    },
  },
  { title: 'work-tie', cell: (step, told) => others(step, 'tie', told) },
  { title: 'work-panels', cell: (step) => number(counted(step, 'deck-panel', 'panels')) },
  { title: 'work-lift', always: true, cell: whoAndLift },
]

/** Autumn: what comes off a section in the water and on shore, in one row. */
const BACK: readonly WorkColumn[] = [
  SECTION,
  {
    title: 'work-on',
    cell: ({ section }, { dock }) => dock.sections.find((one) => one.id === section)?.on ?? '',
  },
  { title: 'work-panels', cell: (step) => number(counted(step, 'deck-panel', 'panels')) },
  { title: 'work-hook-bolts', cell: (step) => number(counted(step, 'hook-bolt', 'lock', 'hooks')) },
  { title: 'work-tie', cell: (step, told) => others(step, 'tie', told) },
  { title: 'work-legs', cell: legsIn },
  { title: 'work-set-bolts', cell: (step) => number(counted(step, 'set-bolt', 'set-bolts')) },
  { title: 'work-brace', cell: (step, told) => bracesIn(step, 'brace-low', told) },
  { title: 'work-pieces', cell: (step) => number(counted(step, 'brace-clamp', 'clamps')) },
  { title: 'work-pads', cell: (step) => number(counted(step, 'foot-pad', 'pads')) },
  { title: 'work-brackets', cell: (step) => number(counted(step, 'hook-bracket', 'hooks')) },
  {
    title: 'work-hinge',
    cell: (step, { t }) => {
      const pins = counted(step, 'hinge-pin', 'first-pin', 'pins')
      return pins > 0
        ? t('work-pin', { count: pins })
        : counted(step, 'hinge-bar', 'hinge-bar') > 0
          ? t('work-bar')
          : ''
    },
  },
  {
    title: 'work-lift',
    always: true,
    cell: ({ crew, lift }, { reader, t }) =>
      lift
        ? t('work-carried', { people: peopleOf(crew), mass: formatMass(lift.mass, reader) })
        : String(peopleOf(crew)),
  },
]

/** Each section's own lines of all its steps, in the order in which the sections come out. */
function sectionsBack({ steps }: Steps): Step[] {
  const level = steps.find(({ id }) => id === 'level')
  return steps
    .filter(({ id, phase }) => (phase === 'first' || phase === 'outward') && id !== 'level')
    .map((step) => {
      const dry = steps.filter(({ phase, section }) => phase === 'dry' && section === step.section)
      const deck = (level?.lines ?? []).filter(
        ({ work, about }) => work === 'panels' && about.includes(step.section ?? ''),
      )
      return { ...step, lines: [...step.lines, ...deck, ...dry.flatMap(({ lines }) => lines)] }
    })
}

function workTable(
  of: PaperOf,
  steps: readonly Step[],
  columns: readonly WorkColumn[],
  say: { readonly title: PaperWord; readonly lead: PaperWord; readonly ticks: readonly PaperWord[] },
  width: number,
): Block[] {
  if (steps.length === 0) return []
  const t = wordsOf(PAPERS, of.options)
  const told: Told = { dock: of.dock, reader: of.options, t }
  const shown = columns.filter(({ always, cell }) => always || steps.some((step) => cell(step, told) !== ''))
  const ticks = say.ticks.length > 0 ? say.ticks.map((key) => t(key)) : ['']
  const heads: Column[] = [
    ...ticks.map((title) => ({ title, tick: true })),
    ...shown.map(({ title, bold }): Column => ({ title: t(title), ...(bold && { bold }) })),
  ]
  const rows = steps.map((step) => [...ticks.map(() => ''), ...shown.map(({ cell }) => cell(step, told))])
  return [
    { ...heading(t(say.title), width), before: 5, name: t(say.title) },
    ...paragraph(t(say.lead), width, { size: SIZE.small, ink: GRAY, before: 0.6 }),
    ...table(heads, rows, width, { size: largestFor(heads, rows, width, LETTERS), row: ROW }),
  ]
}

/** What is done on dry ground, a row a section. */
export const dryTable = (of: PaperOf, { steps }: Steps, width: number): Block[] =>
  workTable(
    of,
    steps.filter(({ phase }) => phase === 'dry'),
    DRY,
    { title: 'dry-title', lead: 'dry-lead', ticks: [] },
    width,
  )

/** What is done in the water and from the deck. */
export const wetTable = (of: PaperOf, { steps }: Steps, width: number): Block[] =>
  workTable(
    of,
    steps.filter(({ phase }) => phase === 'first' || phase === 'outward'),
    WET,
    { title: 'wet-title', lead: 'wet-lead', ticks: [] },
    width,
  )

/** The way back of each section, with a box for out of the water and one for taken apart. */
export const backTable = (of: PaperOf, sheet: Steps, width: number): Block[] =>
  workTable(
    of,
    sectionsBack(sheet),
    BACK,
    { title: 'wet-back-title', lead: 'wet-back-lead', ticks: ['work-out', 'work-apart'] },
    width,
  )
