import { describe, expect, it } from 'vitest'
import { demoDesign, parseDesign } from '../../rules/index.ts'
import { isGrid, readPaste } from '../../src/section-strip/paste.ts'
import { takePaste } from '../../src/section-strip/take-paste.ts'

const FT = 0.3048
const numbers = (text: string, bare: 'ft' | 'm') =>
  readPaste(text, bare).map((row) => [row.distance.meters, row.depth.meters])

describe('a paste from a spreadsheet', () => {
  it.each([
    ['tabs', '0\t0\n4\t0.5\n8\t0.9'],
    ['tabs and decimal commas', '0\t0\r\n4\t0,5\r\n8\t0,9\r\n'],
    ['semicolons and decimal commas', '0;0\n4;0,5\n8;0,9'],
    ['commas', '0,0\n4,0.5\n8,0.9'],
    ['commas and blanks', '0, 0\n4, 0.5\n8, 0.9'],
    ['blanks', '0 0\n4  0.5\n8 0.9'],
    ['blanks and decimal commas', '0 0\n4 0,5\n8 0,9'],
    ['a heading and units', 'Distance\tDepth\n0 m\t0\n4 m\t50 cm\n800 cm\t0.9 m'],
  ])('is read with %s', (_, text) => {
    const rows = numbers(text, 'm')
    expect(rows).toHaveLength(3)
    const flat = rows.flat()
    ;[0, 0, 4, 0.5, 8, 0.9].forEach((value, i) => {
      expect(flat[i]).toBeCloseTo(value, 12)
    })
  })

  it('is read in feet and inches', () => {
    const [row] = readPaste('13\' 1 1/2"\t"1\' 7 3/4"""\n', 'ft')
    expect(row!.distance.meters).toBeCloseTo(13.125 * FT, 12)
    expect(row!.depth.meters).toBeCloseTo((1 + 7.75 / 12) * FT, 12)
  })

  it('tells a single cell from a grid', () => {
    expect(isGrid('2.1 m')).toBe(false)
    expect(isGrid('1\t2')).toBe(true)
    expect(isGrid('1\n2')).toBe(true)
  })

  it('takes in what can be read and gives back the rest', () => {
    const { design, rows, drafts } = takePaste(
      demoDesign,
      readPaste('16\t1.6\n20\tdeep\n24\t2', 'm'),
      5,
      'distance',
    )
    expect(rows).toBe(2)
    expect(drafts).toEqual([{ distance: '20', depth: 'deep', taken: false }])
    expect(design.site.soundings).toHaveLength(7)
    expect(parseDesign(design).ok).toBe(true)
  })

  it('writes over the rows from the cursor on', () => {
    const { design } = takePaste(demoDesign, readPaste('-2\t-0.5\n0\t0', 'm'), 0, 'distance')
    expect(design.site.soundings).toHaveLength(5)
    expect(design.site.soundings[0]).toMatchObject({ distance: -2, depth: -0.5 })
  })

  it('of one column fills the depths and leaves the distances', () => {
    const { design, drafts } = takePaste(demoDesign, readPaste('0.6\n1\n1.5', 'm'), 2, 'depth')
    expect(drafts).toEqual([])
    expect(design.site.soundings.map((s) => s.distance)).toEqual([-3, 0, 4, 8, 12])
    expect(design.site.soundings.map((s) => s.depth)).toEqual([-0.9, 0, 0.6, 1, 1.5])
  })

  it('gives back a depth for a place that has another already', () => {
    const { rows, drafts, design } = takePaste(demoDesign, readPaste('12\t3\n14\t1.5', 'm'), 5, 'distance')
    expect(rows).toBe(1)
    expect(drafts).toEqual([{ distance: '12', depth: '3', taken: true }])
    expect(parseDesign(design).ok).toBe(true)
  })
})
