/** The set-up and autumn sheets: one leaf that most set-ups need, every leg once in its table, the manual a row a section. */
import { describe, expect, it } from 'vitest'
import type { Paper, Sheet, TextMark } from '../../../geometry/paper/marks.ts'
import { type PaperOf, paperFrom } from '../../../geometry/paper/paper-of.ts'
import { packetOf, paperOf } from '../../../geometry/sheets/packet.ts'
import {
  type Design,
  demoCatalog,
  demoDesign,
  english,
  formatLength,
  projectOf,
  wordsOf,
} from '../../../rules/index.ts'
import { extrasPlaced } from '../../../rules/papers/extras-placed.ts'
import { setLegs } from '../../../rules/papers/set-legs.ts'
import { straightOf } from '../../../rules/papers/straight.ts'
import { PAPERS, steps } from '../../../rules/papers.ts'
import { parsedDesign } from '../../support/arbitraries.ts'
import { deriveAtOnce } from '../../support/at-once.ts'

const SHALLOW = [
  [-3, -0.9],
  [0, 0],
  [4, 0.4],
  [60, 1.1],
].map(([distance, depth]) => ({ distance, offset: 0, depth }))
const design = (change: Partial<Design['dock']>, site: object = {}): Design =>
  parsedDesign({
    ...demoDesign,
    site: { ...demoDesign.site, ...site },
    dock: { ...demoDesign.dock, ...change },
  })
const DOCKS: Readonly<Record<string, Design>> = {
  'five sections': demoDesign,
  'twenty sections': design({ sections: 20 }, { soundings: SHALLOW }),
  'a tee': design({ sections: 4, head: { shape: 'tee', sections: 4 } }),
  'an ell': design({ sections: 4, head: { shape: 'left', sections: 2 } }),
  'one section': design({ sections: 1, ramp: false }),
}
const paperFor = (
  of: Design,
  size: 'letter' | 'a4' = 'letter',
  units: 'imperial' | 'metric' = 'imperial',
): PaperOf =>
  paperFrom(projectOf(of, demoCatalog, deriveAtOnce(of, demoCatalog)), {
    ...english(units),
    ...{ size, date: '2026-05-01', by: '' },
  })
const texts = ({ marks }: Sheet): TextMark[] => marks.filter((mark) => mark.kind === 'text')
const words = (sheet: Sheet): string =>
  texts(sheet)
    .map(({ text }) => text)
    .join(' ')
const all = ({ sheets }: Paper): string => sheets.map(words).join(' ')

/** Texts of a sheet by the line they stand on, from the left. */
function rowsOf(sheet: Sheet): string[][] {
  const rows = new Map<number, TextMark[]>()
  for (const text of texts(sheet)) {
    const y = Math.round(text.at[1] * 10)
    rows.set(y, [...(rows.get(y) ?? []), text])
  }
  return [...rows.values()].map((row) => row.sort((a, b) => a.at[0] - b.at[0]).map(({ text }) => text))
}

describe.each(Object.keys(DOCKS))('the set-up sheet of %s', (name) => {
  for (const [size, units] of [
    ['letter', 'imperial'],
    ['a4', 'imperial'],
    ['a4', 'metric'],
  ] as const) {
    const of = paperFor(DOCKS[name]!, size, units)
    const paper = paperOf('set-up', of)
    const length = (value: number): string => formatLength(value, english(units))

    it(`has each leg on a row with its figures (${size}, ${units})`, () => {
      const rows = paper.sheets.flatMap(rowsOf)
      for (const leg of setLegs(of)) {
        const row = rows.filter(
          (cells) => cells[0] === String(leg.number) && cells.includes(length(leg.setHeightFrame)),
        )
        expect(row, `leg ${leg.number}`).toHaveLength(1)
        for (const value of [
          leg.out,
          leg.depth,
          leg.setHeight,
          leg.setHeightFrame,
          leg.stock!,
          leg.aboveDeck!,
        ])
          expect(row[0]).toContain(length(value))
        expect(row[0]).toContain(leg.place.side)
      }
    })

    it(`works the sum once: found and deck make what it is set to (${size}, ${units})`, () => {
      const last = setLegs(of).at(-1)!
      const more = units === 'imperial' ? 0.0508 : 0.05
      const sum = `${length(last.depth + more)} + ${length(of.design.dock.deckHeight)} = ${length(last.setHeight + more)}`
      expect(all(paper)).toContain(sum)
      // The figures of the sum add, as far as they are rounded.
      expect(last.depth + of.design.dock.deckHeight).toBeCloseTo(last.setHeight, 5)
    })
  }
})

it('the first leaf of an ordinary dock has the table on its front and all of the order of work on its back', () => {
  for (const size of ['letter', 'a4'] as const) {
    const [front, back] = paperOf('set-up', paperFor(demoDesign, size)).sheets
    expect(words(front!)).toContain('Height to deck = depth found + 1 ft 5 3/4 in')
    expect(words(front!)).toContain('Call the shop before you go on')
    for (const told of [
      'Order of work',
      'How to hang a section',
      'Who stands where',
      'How tight',
      'Stop and go ashore',
    ])
      expect(words(back!)).toContain(told)
    expect(words(back!)).toContain('No diving')
  }
})

it.each(['five sections', 'a tee', 'one section', 'an ell'])(
  'the leaf of %s is whole: on its two sides all that is done, and every leg has its number on the plan',
  (name) => {
    for (const [size, units] of [
      ['letter', 'imperial'],
      ['a4', 'metric'],
    ] as const) {
      const of = paperFor(DOCKS[name]!, size, units)
      const { sheets } = paperOf('set-up', of)
      const leaf = sheets.slice(0, 2)
      const told = leaf.map(words).join(' ')
      for (const title of [
        'Order of work',
        'Line, square, level',
        'Who stands where',
        'How tight',
        'Stop and go',
      ])
        expect(told, title).toContain(title)
      expect(sheets.slice(2).map(words).join(' ')).toContain('On shore: make every section ready')
      expect(told).not.toContain('On shore: make every section ready')
      // Once in the table; once more on the plan.
      const numbers = texts(leaf[0]!).map(({ text }) => text)
      for (const { number } of setLegs(of))
        expect(
          numbers.filter((text) => text === String(number)).length,
          `leg ${number}`,
        ).toBeGreaterThanOrEqual(2)
    }
  },
)

it('line, square, level and where each extra goes stand there with this dock’s own figures', () => {
  const of = paperFor(design({ sections: 4, head: { shape: 'tee', sections: 4 } }))
  const leaf = paperOf('set-up', of).sheets.slice(0, 2).map(words).join(' ')
  const checks = straightOf(of)!
  const length = (value: number): string => formatLength(value, english('imperial'))
  for (const { diagonal } of [checks.first, checks.run!]) expect(leaf).toContain(length(diagonal))
  for (const { across } of checks.turns) expect(leaf).toContain(length(across))
  for (const { name, along, section } of extrasPlaced(of)) {
    expect(leaf).toContain(name)
    expect(leaf).toMatch(new RegExp(`${section} [^;]*${length(along)}`))
  }
})

it('the order of work begins at the mark that the survey names, and every caution of every step stands on the first leaf', () => {
  const mark = { name: 'bolt in the wall', above: 1.2 }
  const of = paperFor(design({ extras: { 'anchor-post': 2 } }, { benchmark: mark }))
  const { sheets } = paperOf('set-up', of)
  const leaf = sheets.slice(0, 2).map(words).join(' ')
  expect(leaf).toContain(
    `Read the water against bolt in the wall, ${formatLength(1.2, english('imperial'))} over it`,
  )
  expect(leaf).toContain('Turn in the anchor posts')
  const t = wordsOf(PAPERS, english('imperial'))
  const cautions = steps(of).steps.flatMap((step) => step.cautions)
  expect(cautions).toContain('caution-services')
  for (const key of cautions) expect(leaf).toContain(t(key))
})

it('nothing is hung in a dock of one section, and nobody is shown how', () => {
  expect(all(paperOf('set-up', paperFor(DOCKS['one section']!)))).not.toContain('How to hang')
})

it('the autumn sheet goes from the lake inward, counts into bags, and has the steps of lifting out in their order', () => {
  const of = paperFor(demoDesign)
  const told = all(paperOf('autumn', of))
  const at = (text: string): number => {
    expect(told, text).toContain(text)
    return told.indexOf(text)
  }
  expect(at('Panels off. Unlock it.')).toBeLessThan(
    at('loosen the set bolts and draw its legs up before it lies on the deck'),
  )
  expect(at('loosen the set bolts and draw its legs up before it lies on the deck')).toBeLessThan(
    at('Carry it ashore along the deck'),
  )
  const order = paperOf('autumn', of)
    .sheets.flatMap(rowsOf)
    .map(([first]) => first)
  const outward = order.filter((cell) => /^s[3-5]$/.test(cell ?? ''))
  expect(outward.slice(0, 3)).toEqual(['s5', 's4', 's3'])
  for (const bag of ['Count back into the bags', 'Look over before it is stored', 'Storing it']) at(bag)
})

it('the packet of five sections is 12 sheets at most, of twenty 20; the papers of work 3 and 2, and 4 and 3', () => {
  const count = (of: PaperOf): number => packetOf(of).reduce((sum, { sheets }) => sum + sheets.length, 0)
  expect(count(paperFor(demoDesign))).toBeLessThanOrEqual(12)
  expect(count(paperFor(DOCKS['twenty sections']!))).toBeLessThanOrEqual(20)
  const [five, twenty] = [paperFor(demoDesign), paperFor(DOCKS['twenty sections']!)]
  for (const [of, name, most] of [
    [five, 'set-up', 3],
    [five, 'autumn', 2],
    [twenty, 'set-up', 4],
    [twenty, 'autumn', 3],
  ] as const)
    expect(paperOf(name, of).sheets.length, name).toBeLessThanOrEqual(most)
})
