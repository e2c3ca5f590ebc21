/** One rule for what parts the columns of a pasted text, whoever reads it. */
import { describe, expect, it } from 'vitest'
import { readGauge } from '../../rules/gauge/read.ts'
import { cellsOf, partedBy } from '../../rules/pasted-table.ts'
import { readPaste } from '../../src/section-strip/paste.ts'
import { readTable } from '../../src/soundings-file/table.ts'

const parted = (text: string): (string | string[][])[] => {
  const lines = text.split('\n')
  const by = partedBy(lines)
  return [by, lines.map((line) => cellsOf(line, by))]
}

describe('a pasted text is parted', () => {
  it.each([
    [
      '0,0,1\n3,0,2',
      'comma',
      [
        ['0', '0', '1'],
        ['3', '0', '2'],
      ],
    ],
    [
      '4, 0.5\n8, 0.9',
      'comma',
      [
        ['4', '0.5'],
        ['8', '0.9'],
      ],
    ],
    [
      '4 0,5\n8 0,9',
      'blank',
      [
        ['4', '0,5'],
        ['8', '0,9'],
      ],
    ],
    [
      '7 ft 2 in   3 ft\n8 ft   4 ft',
      'blank',
      [
        ['7 ft 2 in', '3 ft'],
        ['8 ft', '4 ft'],
      ],
    ],
    [
      '1 May 2024,2\n2 May 2024,3',
      'comma',
      [
        ['1 May 2024', '2'],
        ['2 May 2024', '3'],
      ],
    ],
    [
      '2024-05-01 2,5\n2024-05-02 3,0',
      'blank',
      [
        ['2024-05-01', '2,5'],
        ['2024-05-02', '3,0'],
      ],
    ],
    [
      '2024-05-01 06:00,2.5\n2024-05-01 18:00,3',
      'comma',
      [
        ['2024-05-01 06:00', '2.5'],
        ['2024-05-01 18:00', '3'],
      ],
    ],
    ['A heading\n1;"2;5";3\n1;2;3', 'semicolon', [['A heading'], ['1', '2;5', '3'], ['1', '2', '3']]],
    [
      '13\' 1"\t"1\' 7 3/4"""\n3\'\t4"',
      'tab',
      [
        ['13\' 1"', '1\' 7 3/4"'],
        ["3'", '4"'],
      ],
    ],
    [
      '1|2\n3|',
      'bar',
      [
        ['1', '2'],
        ['3', ''],
      ],
    ],
    [
      '"a", "b ""c"" d" ,"e\n1,2,3',
      'comma',
      [
        ['a', 'b "c" d', '"e'],
        ['1', '2', '3'],
      ],
    ],
  ])('%j', (text, by, cells) => {
    expect(parted(text)).toEqual([by, cells])
  })

  it('in one way by depths typed in a table, a survey and a record', async () => {
    const bars = '4|0.5\n8|0.9'
    expect(readPaste(bars, 'm').map((row) => row.depth.meters)).toEqual([0.5, 0.9])
    const table = await readTable(bars)
    expect(table.ok && table.table.rows.map(({ cells }) => cells[1])).toEqual(['0.5', '0.9'])
    expect(readGauge('2024-05-01|0.5\n2024-05-02|0.9', 'm')?.readings.map(({ level }) => level)).toEqual([
      0.5, 0.9,
    ])
    // A heading without the mark, and a remark, change nothing.
    const remarked = 'My lake\n4;0,5\n8;0,9\n12;1,2'
    expect(readPaste(remarked, 'm').map((row) => row.depth.meters)).toEqual([0.5, 0.9, 1.2])
  })
})
