/** Blocks down a sheet: none cut, none off it, heads that come again, what belongs together stays together. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { label, paragraph } from '../../../geometry/paper/blocks.ts'
import { type Block, BREAK, block, paginate } from '../../../geometry/paper/flow.ts'
import type { Mark } from '../../../geometry/paper/marks.ts'
import { table, tableHead } from '../../../geometry/paper/table.ts'
import { textWidth } from '../../../geometry/paper/text.ts'

const ROOM = { at: [10, 20] as const, height: 100 }
const named = (text: string, height: number, more: Parameters<typeof block>[2] = {}): Block =>
  block(height, (x, y) => [label([x, y], text)], more)
const textsOf = (marks: readonly Mark[]): string[] =>
  marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))
const sheetsOf = (flow: Parameters<typeof paginate>[0]): string[][] =>
  paginate(flow, () => ROOM).map(({ marks }) => textsOf(marks))

describe('a flow', () => {
  it('keeps every block, in order, on a sheet and whole, whatever their heights', () => {
    const some = fc.array(
      fc.record({
        height: fc.double({ min: 1, max: 90, noNaN: true }),
        before: fc.double({ min: 0, max: 9, noNaN: true }),
        keep: fc.boolean(),
      }),
      { minLength: 1, maxLength: 40 },
    )
    fc.assert(
      fc.property(some, (all) => {
        const seen: { i: number; sheet: number; top: number }[] = []
        let sheet = -1
        const flow = all.map(({ height, before, keep }, i) =>
          block(
            height,
            (_, y) => {
              seen.push({ i, sheet, top: y })
              return []
            },
            { before, keep },
          ),
        )
        paginate(flow, (n) => {
          sheet = n
          return ROOM
        })
        expect(seen.map(({ i }) => i)).toEqual(all.map((_, i) => i))
        seen.forEach(({ i, sheet: on, top }, k) => {
          expect(top).toBeGreaterThanOrEqual(20 - 1e-6)
          expect(top + all[i]!.height).toBeLessThanOrEqual(120 + 1e-6)
          const next = seen[k + 1]
          if (next?.sheet === on) expect(next.top).toBeGreaterThanOrEqual(top + all[i]!.height - 1e-6)
        })
      }),
      { numRuns: 300, seed: 5 },
    )
  })

  it('takes what belongs to the next block along to the next sheet', () => {
    expect(
      sheetsOf([named('a', 80), named('title', 10, { keep: true }), named('first', 15), named('b', 5)]),
    ).toEqual([['a'], ['title', 'first', 'b']])
  })

  it('begins a new sheet where it is told to, but no empty one', () => {
    expect(sheetsOf([BREAK, named('a', 10), BREAK, BREAK, named('b', 10)])).toEqual([['a'], ['b']])
  })

  it('calls a sheet by the first block with a name on it', () => {
    const pages = paginate(
      [named('a', 60), named('b', 30, { name: 'B' }), named('c', 5, { name: 'C' }), named('d', 60)],
      () => ROOM,
    )
    expect(pages.map(({ name }) => name)).toEqual(['B', ''])
  })

  it('leaves no line of a paragraph alone', () => {
    const lines = paragraph(Array.from({ length: 60 }, (_, i) => `word${i}`).join(' '), 40)
    for (let before = 60; before < 100; before += 1.5) {
      const counts = sheetsOf([named('x', before), ...lines]).map((texts) => texts.length)
      counts[0]! -= 1
      for (const count of counts) expect(count).not.toBe(1)
    }
  })
})

describe('a table', () => {
  const columns = [
    { title: 'Part', flex: true },
    { title: 'Count', align: 'end' as const },
  ]
  const rows = Array.from({ length: 60 }, (_, i) => [`Part ${i}`, String(i)])

  it('has its head on every sheet that it is on, and each row once', () => {
    const sheets = sheetsOf(table(columns, rows, 120))
    expect(sheets.length).toBeGreaterThan(2)
    for (const texts of sheets) expect(texts.slice(0, 2)).toEqual(['Part', 'Count'])
    expect(sheets.flatMap((texts) => texts.slice(2))).toEqual(rows.flat())
  })

  it('shares one head with the tables under it', () => {
    const head = tableHead(columns, rows, 120)
    const texts = sheetsOf([
      ...table(columns, rows.slice(0, 3), 120, { head, like: rows }),
      ...table(columns, rows.slice(3, 6), 120, { head, like: rows }),
    ])[0]!
    expect(texts.filter((text) => text === 'Part')).toHaveLength(1)
  })

  it('sets figures flush right, their digits under each other', () => {
    const [page] = paginate(
      table(
        columns,
        [
          ['a', '7'],
          ['b', '1,234'],
        ],
        120,
      ),
      () => ROOM,
    )
    const figures = page!.marks.filter((mark) => mark.kind === 'text' && /\d/.test(mark.text))
    expect(new Set(figures.map((mark) => mark.kind === 'text' && `${mark.anchor} ${mark.at[0]}`)).size).toBe(
      1,
    )
  })

  it('breaks what is too wide, and nothing reaches into the next column', () => {
    const long = 'A very long name of a part that goes over several lines in a narrow column'
    const [page] = paginate(table(columns, [[long, '123456']], 60), () => ROOM)
    const texts = page!.marks.flatMap((mark) => (mark.kind === 'text' ? [mark] : []))
    const figure = texts.find(({ text }) => text === '123456')!
    const left = figure.at[0] - textWidth(figure.text, figure.size)
    const broken = texts.filter(({ text }) => long.includes(text))
    expect(broken.length).toBeGreaterThan(1)
    expect(broken.map(({ text }) => text).join(' ')).toBe(long)
    for (const one of broken) expect(one.at[0] + textWidth(one.text, one.size)).toBeLessThan(left)
  })

  it('keeps rows that are one on one sheet', () => {
    const pairs = rows.map(([name], i) => [i % 2 === 0 ? name! : '', String(i)])
    const joins = (r: number): boolean => r < pairs.length && pairs[r]![0] === ''
    for (const texts of sheetsOf(table(columns, pairs, 120, { joins }))) {
      const figures = texts.filter((text) => /^\d+$/.test(text)).map(Number)
      expect(figures[0]! % 2).toBe(0)
      expect(figures.at(-1)! % 2).toBe(1)
    }
  })
})
