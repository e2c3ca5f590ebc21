/** The back of the one sheet: the order of work in a few lines, who stands where, how tight, when to stop, how a section is hung. */

import { formatLength } from '../../rules/index.ts'
import { countCards, fraction } from '../../rules/papers/count-cards.ts'
import { sentence } from '../../rules/papers/saying.ts'
import type { Phase, Step, Steps } from '../../rules/papers/steps/step.ts'
import { listOf } from '../../rules/words/language.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import { PAPERS, type PaperWord, type PaperWords } from '../../rules/words/papers.ts'
import { HANGING, hangingPicture } from '../drawing/hanging.ts'
import { heading, label, line, list, moved, note, noteWidth, paragraph, subheading } from '../paper/blocks.ts'
import { type Block, block, heightOf, together } from '../paper/flow.ts'
import type { PaperOf } from '../paper/paper-of.ts'
import { ALERT, GRAY, INK, SIZE } from '../paper/style.ts'
import { textWidth } from '../paper/text.ts'

/** Between two pictures of how a section is hung, mm. */
const GAP = 4

/** @param size of its letters, mm */
export function orderBlocks(
  of: PaperOf,
  { steps, season }: Steps,
  width: number,
  size: number = SIZE.body,
): Block[] {
  const { dock, design, options } = of
  const t = wordsOf(PAPERS, options)
  const has = (phase: Phase): boolean => steps.some((step) => step.phase === phase)
  const ramp = dock.sections.find(({ role }) => role === 'ramp')
  const first = dock.sections.find(({ role }) => role === 'standing')
  const extras = steps.some(({ id }) => id === 'extras')
  const { stake, benchmark: mark } = design.site
  const posts = dock.placements.some(({ kind }) => kind === 'anchor-post')
  const up = season === 'set-up'
  const key = (name: string): PaperWord => `${up ? 'order' : 'order-back'}-${name}` as PaperWord
  const out = first ? first.x - (stake?.x ?? 0) : 0
  const start = first && {
    section: first.id,
    at: formatLength(Math.abs(out), options),
    from: stake ? stake.name : t(out < 0 ? 'order-ashore' : 'order-edge'),
  }
  const level = steps.find(({ id }) => id === 'level')
  const braced = (phase: Phase): boolean =>
    steps.some((step) => step.phase === phase && step.lines.some(({ work }) => work === 'brace-high'))
  const leveled = (level?.lines ?? []).filter(({ work }) => work === 'panels').flatMap(({ about }) => about)
  const withBrace = (name: string, is: boolean): PaperWord => key(is ? `${name}-brace` : name)
  const lines = [
    mark
      ? t(key('water-mark'), { mark: mark.name, above: formatLength(mark.above, options) })
      : t(key('water')),
    ...(has('dry') ? [t(key('dry'), { section: first?.id ?? '' })] : []),
    ...(start ? [t(key('first'), start)] : []),
    ...(ramp ? [t(key('ramp'), { section: ramp.id })] : []),
    ...(first
      ? [
          t(withBrace('level', braced('first')), {
            section: first.id,
            sections: { value: leveled, unit: 'list' },
          }),
        ]
      : []),
    ...(has('outward') ? [t(withBrace('next', braced('outward')))] : []),
    ...(extras ? [t(key(posts ? 'posts' : 'extras'))] : []),
    t(key('last')),
  ]
  return [
    { ...heading(t('order-title'), width), before: 5, name: t('order-title') },
    ...list(up ? lines : [lines[0]!, ...lines.slice(1).reverse()], width, 'number', { size }).map((one) => ({
      ...one,
      before: 0.55,
    })),
  ]
}

/** People by place at the busiest step of a phase, the heaviest that they lift there, and what they need. */
export function whoBlocks(of: PaperOf, { steps, people, tools }: Steps, width: number): Block[] {
  const t = wordsOf(PAPERS, of.options)
  const busiest = (phase: Phase): Step | undefined =>
    steps.filter((step) => step.phase === phase).sort((a, b) => (b.lift?.mass ?? 0) - (a.lift?.mass ?? 0))[0]
  const line = (phase: Phase, key: PaperWord): string[] => {
    const step = busiest(phase)
    if (!step) return []
    const who = listOf(
      step.crew
        .filter((crew) => crew.people > 0)
        .map((crew) => t('who-at', { people: crew.people, place: t(crew.place) })),
      of.options.language,
    )
    return [`${t(key)} ${who}. ${step.lift ? sentence(step.lift.say, t) : ''}`.trim()]
  }
  return [
    { ...subheading(t('who-title', { people }), width), before: 3.5 },
    ...list(
      [
        ...line('dry', 'who-dry'),
        ...line('first', 'who-first'),
        ...line('outward', 'who-outward'),
        t('who-never'),
        t('named-so', {
          what: t('tools'),
          said: listOf(
            tools.map(({ say }) => sentence(say, t)),
            of.options.language,
          ),
        }),
      ],
      width,
      'dot',
      { size: SIZE.small },
    ).map((one) => ({ ...one, before: 0.5 })),
  ]
}

/** The bolts of each wrench, and how tight each of them is. */
export function tightBlocks({ dock, catalog, options }: PaperOf, width: number): Block[] {
  const t = wordsOf(PAPERS, options)
  const bolts = new Map<string, Set<string>>()
  for (const { rows } of countCards(dock, catalog))
    for (const { name, wrench, turns } of rows) {
      if (wrench === null) continue
      const tight = turns.map(({ at, from, to }) => {
        const values = { at, from: fraction(from), to: fraction(to) }
        return t(from === to ? 'tight-at' : 'tight-between', values)
      })
      const told = t('tight-bolt', { name, turns: listOf(tight, options.language) || t('tight-snug') })
      bolts.set(wrench, (bolts.get(wrench) ?? new Set()).add(told))
    }
  if (bolts.size === 0) return []
  const lines = [...bolts].map(([wrench, told]) => t('tight-line', { wrench, bolts: [...told].join('; ') }))
  return [
    { ...subheading(t('tight-title'), width), before: 3.5 },
    ...list(lines, width, 'dot', { size: SIZE.small }).map((one) => ({ ...one, before: 0.5 })),
  ]
}

/** Those of the whole work, then those of single steps, each once; one stands at the foot of every sheet. */
const cautionsOf = ({ cautions, steps }: Steps): PaperWord[] =>
  [...new Set([...cautions, ...steps.flatMap((step) => step.cautions)])].filter(
    (key) => key !== 'caution-screening',
  )

/** Side by side, each as wide as what it says is long. @param own cautions of the shop, after ours */
export function stopBlocks(t: PaperWords, sheet: Steps, width: number, own: readonly string[] = []): Block[] {
  const inner = noteWidth(width)
  const widths = [inner * 0.42, inner * 0.58 - GAP] as const
  const column = (title: PaperWord, lines: readonly string[], aside: number): Block =>
    together([
      ...paragraph(t(title), aside, { weight: 'bold', before: 0 }),
      ...lines.flatMap((line) => paragraph(line, aside, { size: SIZE.small, before: 0.3 })),
    ])
  const halts = ['halt-lightning', 'halt-wind', 'halt-cold', 'halt-shop'] as const
  const left = column(
    'halt-title',
    halts.map((key) => t(key)),
    widths[0],
  )
  const right = column('cautions', [...cautionsOf(sheet).map((key) => t(key)), ...own], widths[1])
  const both = block(Math.max(left.height, right.height), (x, y) => [
    ...left.marks(x, y),
    ...right.marks(x + widths[0] + GAP, y),
  ])
  return [note([both], ALERT)]
}

/** The hardest move, in pictures side by side, their words under them; nothing where no section is hung. */
export function hangingBlocks(of: PaperOf, season: Steps['season'], width: number): Block[] {
  const t = wordsOf(PAPERS, of.options)
  const steps = season === 'set-up' ? HANGING : [...HANGING].reverse()
  const cell = (width - GAP * (steps.length - 1)) / steps.length
  const words = { rope: t('hang-rope'), nobody: t('hang-nobody') }
  const cells = steps.map((step, i) => {
    const drawn = hangingPicture(of, step, cell, words)
    const said = paragraph(`${i + 1}. ${t(`${season === 'set-up' ? 'hang' : 'lift'}-${step}`)}`, cell, {
      size: SIZE.small,
      before: 0,
    })
    return drawn && { ...drawn, said }
  })
  const whole = cells.filter((one) => one !== null)
  if (whole.length < steps.length) return []
  const picture = Math.max(...whole.map((one) => one.height))
  const height = picture + 1 + Math.max(...whole.map(({ said }) => heightOf(said)))
  return [
    { ...subheading(t(season === 'set-up' ? 'hang-title' : 'lift-title'), width), before: 3.5 },
    block(
      height,
      (x, y) =>
        whole.flatMap(({ marks, said }, i) => {
          const left = x + i * (cell + GAP)
          return [...moved(marks, left, y), ...together(said).marks(left, y + picture + 1)]
        }),
      { before: 1.5 },
    ),
  ]
}

/** Lines to write on at the top of the sheet: the day, the lake, who. */
export function dayLine({ options }: PaperOf, season: Steps['season'], width: number): Block {
  const t = wordsOf(PAPERS, options)
  const all =
    season === 'set-up'
      ? [t('day-date'), t('day-lake'), t('day-who')]
      : [t('day-back'), t('day-lake'), t('day-who-back')]
  const words = all.map((text) => textWidth(text, SIZE.small))
  const gap = 5
  const room = (width - words.reduce((sum, w) => sum + w + 1.5, 0) - gap * (all.length - 1)) / all.length
  return block(
    7,
    (x, y) => {
      let left = x
      return all.flatMap((text, i) => {
        const at = left
        const from = at + words[i]! + 1.5
        left = from + room + gap
        return [
          label([at, y + 5], text, { size: SIZE.small, ink: GRAY }),
          line([from, y + 5.4], [from + room, y + 5.4], { width: 0.2, ink: INK }),
        ]
      })
    },
    { before: 2 },
  )
}
