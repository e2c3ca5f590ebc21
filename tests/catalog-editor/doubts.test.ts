/** What speaks against the columns of a price list as they are taken is told; of a list that is taken as it is meant nothing is. */
import { describe, expect, it } from 'vitest'
import { demoCatalog } from '../../rules/index.ts'
import { doubtsOf } from '../../src/catalog-editor/price-list/doubts.ts'
import { firstReading, type Reading, readRows } from '../../src/catalog-editor/price-list/read-row.ts'
import { guessRoles, type Role, readPriceTable } from '../../src/catalog-editor/price-list/table.ts'
import { takePriceList } from '../../src/catalog-editor/price-list/take.ts'
import { metricCatalog } from '../support/catalogs.ts'
import { PRICE_LIST } from './sample-price-list.ts'

const FOOT = 0.3048
const INCH = 0.0254

/** @param said otherwise than it is guessed */
function doubts(text: string, said: Partial<Reading> = {}, units: 'imperial' | 'metric' = 'imperial') {
  const table = readPriceTable(text)!
  const reading = { ...firstReading(guessRoles(table), units, 'USD', table.head), ...said }
  const rows = readRows(table.rows, reading)
  const taken = takePriceList(demoCatalog, rows, {
    replace: ['frames', 'legs', 'extras', 'services'],
    panelName: () => 'Panel',
  })
  return doubtsOf(table, reading, rows, taken)
}
const roles = (...list: Role[]): Partial<Reading> => ({ roles: list })

/** Part number, name, price, size, weight. */
const RIGHT = roles('code', 'name', 'price', 'size', 'mass')

describe('doubts of a price list', () => {
  it('are none of one that is taken as it is meant', () => {
    expect(doubts(PRICE_LIST)).toEqual([])
    expect(doubts(PRICE_LIST, RIGHT)).toEqual([])
    // Without its heading too.
    expect(doubts(PRICE_LIST.split('\n').slice(1).join('\n'), RIGHT)).toEqual([])
  })

  it.each([
    ['imperial', demoCatalog],
    ['metric', metricCatalog],
  ] as const)('are none of what the %s shop sells', (units, { frames, legs, braces, pads, extras }) => {
    const list = [
      ...frames.map((one) => ['Dock section', one, `${one.width} x ${one.length} m`] as const),
      ...legs.map((one) => ['Leg', one, `${one.length} m`] as const),
      ...braces.map((one) => ['Brace', one, `${one.holes} m`] as const),
      ...pads.map((one) => ['Foot pad', one, `${one.plate.width} m`] as const),
      ...extras.flatMap((extra) =>
        extra.parts.map((one) => ['Accessory', one, `${one.size.join(' x ')} m`] as const),
      ),
    ].map(([what, { code, price }, size]) => `${code}\t${what}\t${(price / 100).toFixed(2)}\t${size}`)
    expect(list.length).toBeGreaterThan(20)
    const of = doubts(['Code\tName\tPrice\tSize', ...list].join('\n'), {}, units)
    // Rows that the catalog has twice are another matter.
    expect(of.filter(({ why }) => why !== 'rows')).toEqual([])
  })

  it('tell of prices taken as weight, length or size: by the heading, by the sign, by the cents', () => {
    for (const role of ['mass', 'length', 'size'] as const) {
      const taken = roles('code', 'name', role, 'none', 'price')
      // Lines: 1 the heading, 2 the group, 3 the first frame.
      expect(doubts(PRICE_LIST, taken)).toContainEqual({
        ...{ why: 'head', role, column: 2, at: 3, cell: '$412.00' },
      })
      const bare = PRICE_LIST.split('\n').slice(1).join('\n')
      expect(doubts(bare, taken)).toContainEqual({
        ...{ why: 'money', role, column: 2, at: 2, cell: '$412.00' },
      })
      const plain = ['L-1\tCleat\t14.00', 'L-2\tRing\t11.50', 'L-3\tWheel\t96.00'].join('\n')
      expect(doubts(plain, roles('code', 'name', role))).toContainEqual({
        ...{ why: 'money', role, column: 2, at: 1, cell: '14.00' },
      })
      // Beside a price a weight may have two decimals.
      const weighed = ['L-1\tCleat\t1.10\t14', 'L-2\tRing\t0.85\t11', 'L-3\tWheel\t9.25\t96'].join('\n')
      expect(doubts(weighed, roles('code', 'name', 'mass', 'price'))).toEqual([])
    }
    expect(doubts(PRICE_LIST, roles('code', 'name', 'mass', 'size', 'price'))).toContainEqual({
      ...{ why: 'head', role: 'price', column: 4, at: 4, cell: '112' },
    })
  })

  it('tell of two columns that are the same, and go by the first', () => {
    const list = 'Code\tName\tRetail price\tDealer price\nC-1\tCleat\t14.00\t11.00\nC-2\tRing\t12.00\t9.00'
    const twice = roles('code', 'name', 'price', 'price')
    expect(doubts(list, twice)).toEqual([{ why: 'twice', role: 'price', columns: [2, 3] }])
    expect(doubts(list)).toEqual([])
  })

  it('tell of a column half of which cannot be read, and of rows that would be left out, with the commonest reason', () => {
    const list = ['C-1\tCleat\t14.00', 'C-2\tRing\tcall', 'C-3\tWheel\tcall', 'C-4\tStep\t9.00'].join('\n')
    const asMeant = roles('code', 'name', 'price')
    const of = doubts(list, asMeant)
    expect(of[0]).toEqual({ why: 'cells', role: 'price', column: 2, at: 2, cell: 'call' })
    expect(of[1]).toMatchObject({ why: 'rows', bad: 2, of: 4, first: { why: 'price', row: { at: 2 } } })
    expect(of).toHaveLength(2)
    // One of three is the shop's own business.
    expect(
      doubts(list.split('\n').slice(0, 1).concat(list.split('\n').slice(2)).join('\n'), asMeant),
    ).toEqual([])
    expect(doubts(list, roles('code', 'name', 'none'))).toMatchObject([
      { why: 'rows', bad: 4, of: 4, first: { why: 'no-price', row: { at: 1, name: 'Cleat' } } },
    ])
    expect(doubts(list, roles('name', 'code', 'price'))).toEqual(
      of.map((one) => expect.objectContaining({ why: one.why })),
    )
    expect(doubts('a\t4.00\t5\nb\t6.00\t7', roles('none', 'price', 'name'))).toContainEqual({
      ...{ why: 'cells', role: 'name', column: 2, at: 1, cell: '5' },
    })
  })

  it('tell of lengths in a unit that cannot be meant, and of which could: feet that are inches, inches that are feet', () => {
    const list = (...sizes: string[]) =>
      ['Code\tName\tPrice\tLength', ...sizes.map((one, i) => `L-${i}\tLeg\t90.00\t${one}`)].join('\n')
    // 96 ft is longer than any leg; 96 in is 8 ft.
    const [inches, ...more] = doubts(list('60', '72', '96'))
    // Nor may a catalog have legs of more than 20 m: 72 and 96 ft.
    expect(more).toMatchObject([{ why: 'rows', bad: 2, first: { why: 'refused' } }])
    expect(inches).toMatchObject({ why: 'size', count: 3, row: { at: 2 }, instead: { unit: 'in' } })
    expect(inches).toHaveProperty('is', expect.closeTo(60 * FOOT, 9))
    expect(inches).toHaveProperty('instead.is', expect.closeTo(60 * INCH, 9))
    const [feet] = doubts(list('5', '6', '8'), { length: 'in' })
    expect(feet).toMatchObject({ why: 'size', count: 3, instead: { unit: 'ft' } })
    expect(feet).toHaveProperty('is', expect.closeTo(5 * INCH, 9))
    // Eight inches as they are written: no other unit of plain numbers mends that.
    expect(doubts(list('8 in', '5 ft'))).toMatchObject([
      { why: 'size', count: 1, row: { at: 2 }, instead: null },
    ])
    expect(doubts(list('5', '6', '8'))).toEqual([])
    // Six hundred feet of dock in one piece.
    const section = 'F-1\tDock section\t400.00\t48 x 600'
    expect(doubts(section, roles('code', 'name', 'price', 'size'))).toMatchObject([
      { why: 'size', row: { kind: 'frame' }, count: 1, instead: { unit: 'cm' } },
    ])
    // Ordinary to the inch: 1 ft 6 in to 30 ft.
    expect(doubts(list('18 in', '30 ft'))).toEqual([])
    expect(doubts(list('17 in', '31 ft'))[0]).toMatchObject({ why: 'size', count: 2 })
  })

  it('tell of a price whose mark of thousands is read as one of decimals', () => {
    const list = 'C-1\tBench\t312\nC-2\tSlide\t1.480'
    expect(doubts(list, roles('code', 'name', 'price'))).toEqual([
      { why: 'coins', column: 2, at: 2, cell: '1.480', price: expect.closeTo(148, 9) },
    ])
    for (const right of ['1,480', '1.480,00', '1,480.00', '148.5', '0.50'])
      expect(doubts(list.replace('1.480', right), roles('code', 'name', 'price')), right).toEqual([])
  })
})
