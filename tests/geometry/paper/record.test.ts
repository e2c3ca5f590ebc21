/** Papers of a season record: of a record alone, in any language, whatever it holds; nothing on anything else, nothing off its sheet. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { type Box, overlap } from '../../../geometry/drawing/cells.ts'
import { boxOf } from '../../../geometry/drawing/labels.ts'
import type { Paper, TextMark } from '../../../geometry/paper/marks.ts'
import { recordPaper } from '../../../geometry/sheets/record.ts'
import { demoCatalog, english, formatLength, type Reader } from '../../../rules/index.ts'
import {
  beginOldDock,
  nextYear,
  parseRecord,
  reorder,
  type SeasonRecord,
  seasonState,
  takeOut,
} from '../../../rules/record/index.ts'
import { nextYearTold } from '../../../rules/words/record-next-text.ts'
import { reorderTold, takeOutTold } from '../../../rules/words/record-shop-text.ts'
import { asBuiltTold } from '../../../rules/words/record-text.ts'
import { ownTexts, PSEUDO, untold } from '../../support/pseudo-language.ts'
import { merged, phone, projectFor, taken, write } from '../../support/records.ts'

const EXAMPLE = taken(
  parseRecord(
    JSON.parse(readFileSync(join(import.meta.dirname, '../../rules/golden/record-v1.json'), 'utf8')),
  ),
)
const OLD = beginOldDock(
  { pairs: 30, deckHeight: 0.5 },
  { id: 'old', device: 'p', at: '2026-06-01T10:00:00Z' },
)

const told = (record: SeasonRecord, reader: Reader) => [
  asBuiltTold(record, reader),
  nextYearTold(
    record,
    nextYear(record, { level: -0.2, ...(record.design && { project: projectFor() }) }),
    reader,
  ),
  takeOutTold(record, takeOut(record), reader),
  reorderTold(record, reorder(record, demoCatalog), reader),
]
const papers = (record: SeasonRecord, reader: Reader): Paper[] =>
  told(record, reader).map((one) =>
    recordPaper(one, { ...reader, size: 'letter', date: '2026-11-01', by: 'A. Person' }, demoCatalog),
  )
const texts = ({ sheets }: Paper): string[] =>
  sheets.flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])))

const sheetHolds = ({ x0, y0, x1, y1 }: Box, width: number, height: number): boolean =>
  x0 >= 5 && y0 >= 5 && x1 <= width - 5 && y1 <= height - 5

describe('papers of a record', () => {
  it.each([
    ['the example', EXAMPLE],
    ['an old dock of sixty legs, none set', OLD],
  ])('of %s: no text stands on another or off the sheet', (_, record) => {
    for (const reader of [english('imperial'), english('metric')])
      for (const { sheets, title } of papers(record, reader))
        for (const { marks, width, height } of sheets) {
          const texts = marks.filter((mark): mark is TextMark => mark.kind === 'text')
          const boxes = texts.map(boxOf)
          boxes.forEach((box, i) => {
            const on = sheetHolds(box, width, height)
            expect(on, `${title}: ${texts[i]!.text}`).toBe(true)
            for (let k = 0; k < i; k++)
              if (overlap(box, boxes[k]!)) expect.fail(`${title}: "${texts[i]!.text}" on "${texts[k]!.text}"`)
          })
        }
  })

  it('as-built has each leg’s height as the record has it', () => {
    const said = texts(papers(EXAMPLE, english('imperial'))[0]!)
    for (const { set } of seasonState(EXAMPLE, '2026').legs)
      expect(said).toContain(formatLength(set!.height, english('imperial')))
  })

  it('as-built has the legs’ places, clamps, where it lies, the mark that was measured from, and whom to call', () => {
    const a = phone(EXAMPLE, 'a')
    const leg = EXAMPLE.legs[4]!
    write(
      a,
      {
        ...{ kind: 'set', leg: leg.id, stock: null, height: 1.2, level: 0, how: 'measured' },
        braces: [{ code: 'BR-4', end: 'low', up: 0.25 }],
      },
      '2026',
    )
    write(
      a,
      { kind: 'level', level: 0.1, from: 'mark', mark: 'Iron pin', down: 1.15, keep: 'planned' },
      '2026',
    )
    write(a, { kind: 'out', stored: 'boathouse, left wall' }, '2026')
    const told = asBuiltTold(a.record, english('metric'), '2026', { name: 'A shop', phone: '555-0142' })
    expect(told.lead).toContain('Measured then: from Iron pin 1.15 m down to the water.')
    expect(told.lists.flatMap(({ items }) => items)).toEqual(
      expect.arrayContaining([
        'Leg 5: bolt 0.25 m up from the bottom of the pad (low end of BR-4)',
        'boathouse, left wall',
        'A shop, 555-0142',
      ]),
    )
    // Lakeward is to the right, the left side above.
    const paper = recordPaper(
      told,
      { ...english('metric'), size: 'a4', date: '2026-11-01', by: '' },
      demoCatalog,
    )
    const spot = (number: number): readonly [number, number] =>
      paper.sheets[0]!.marks.flatMap((mark) =>
        mark.kind === 'text' && mark.anchor === 'middle' && mark.text === String(number) ? [mark.at] : [],
      )[0]!
    for (const [i, one] of EXAMPLE.legs.entries())
      for (const other of EXAMPLE.legs.slice(0, i)) {
        const [from, to] = [spot(other.number), spot(one.number)]
        if (one.x! - other.x! > 0.5) expect(to[0]).toBeGreaterThan(from[0])
        if (one.side !== other.side && Math.abs(one.x! - other.x!) < 0.1)
          expect(to[1] < from[1]).toBe(one.side === 'left')
      }
  })

  it('two phones that say otherwise are told on it', () => {
    const [a, b] = [phone(EXAMPLE, 'a'), phone(EXAMPLE, 'b')]
    const leg = EXAMPLE.legs[2]!.id
    write(a, { kind: 'set', leg, stock: null, height: 1.2, level: 0, how: 'measured', by: 'Ann' }, '2026')
    write(b, { kind: 'set', leg, stock: null, height: 1.4, level: 0, how: 'measured' }, '2026')
    const said = asBuiltTold(merged(a.record, b.record), english('metric')).lists[0]!
    expect(said.items).toHaveLength(1)
    expect(said.items[0]).toMatch(
      /^Leg 3, pad to deck: 1\.20 m \(Ann, [\d-]+\), 1\.40 m \(no name, [\d-]+\)$/,
    )
  })

  it('say nothing that is not in a language file', () => {
    const reader = { language: PSEUDO, units: 'imperial' } as const
    const own = ownTexts(EXAMPLE, demoCatalog, 'A. Person')
    const lines = told(EXAMPLE, reader).flatMap(({ title, lead, cautions, tables, lists }) => [
      ...[title, ...lead, ...cautions],
      ...tables.flatMap(({ columns, rows }) => [...columns.map((column) => column.title), ...rows.flat()]),
      ...lists.flatMap(({ title, items }) => [title, ...items]),
    ])
    expect(untold(lines, own)).toEqual([])
    expect(lines.length).toBeGreaterThan(200)
  })

  it('next year’s of a dock that nobody planned: against its own first day, how high its deck is over that is not told', () => {
    const on = phone(beginOldDock({ pairs: 1 }, { id: 'old', device: 'p', at: '2026-06-01T10:00:00Z' }), 'p')
    write(on, { kind: 'level', level: 0, from: 'survey', keep: 'planned' }, '2026')
    for (const { id } of on.record.legs)
      write(on, { kind: 'set', leg: id, stock: null, height: 0.9, level: 0, how: 'measured' }, '2026')
    // The lake 0.1 higher, and the deck with it: each leg 0.1 longer.
    const next = nextYear(on.record, { level: 0.1, deck: 0.1, keep: 'over-water' })
    const { lead, tables } = nextYearTold(on.record, next, english('metric'))
    expect(lead).toEqual([
      'Water 0.10 m against the day on which the dock was first written down.',
      'Against season 2026: water 0.10 m higher, deck 0.10 m higher.',
    ])
    expect(tables[0]!.rows.map((row) => row.find((cell) => cell.includes('longer')))).toEqual([
      '0.10 m longer',
      '0.10 m longer',
    ])
  })
})
