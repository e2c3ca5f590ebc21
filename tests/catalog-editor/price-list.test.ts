/** A price list taken into a catalog: six frames, forty extras and what goes with them, by hand and by the engine. */
import { describe, expect, it } from 'vitest'
import { demoCatalog, demoDesign, parseCatalog } from '../../rules/index.ts'
import { firstReading, readRows, sizesIn } from '../../src/catalog-editor/price-list/read-row.ts'
import { guessRoles, readPriceTable } from '../../src/catalog-editor/price-list/table.ts'
import { takePriceList } from '../../src/catalog-editor/price-list/take.ts'
import { deriveAtOnce } from '../support/at-once.ts'
import { EXTRA_CODES, PRICE_LIST, PRICE_ROWS } from './sample-price-list.ts'

const FOOT = 0.3048
const INCH = 0.0254
const POUND = 0.45359237

function taken(text = PRICE_LIST) {
  const table = readPriceTable(text)!
  const reading = firstReading(guessRoles(table), 'imperial', 'USD', table.head)
  const rows = readRows(table.rows, reading)
  return {
    rows,
    reading,
    ...takePriceList(demoCatalog, rows, {
      replace: ['frames', 'legs', 'extras', 'services'],
      panelName: (width, length, decking) =>
        `Panel ${Math.round(width / FOOT)} x ${Math.round(length / FOOT)} ${decking ?? ''}`.trim(),
    }),
  }
}

describe('a price list', () => {
  it('says what its columns are', () => {
    const table = readPriceTable(PRICE_LIST)!
    expect(table.head).toEqual([...PRICE_ROWS[0]!])
    expect(guessRoles(table)).toEqual(['code', 'name', 'price', 'size', 'mass'])
  })

  it('of six frames and forty extras makes a catalog that is right, with nothing left out', () => {
    const { catalog, left, rows } = taken()
    expect(left).toEqual([])
    expect(parseCatalog(JSON.parse(JSON.stringify(catalog)))).toMatchObject({ ok: true })
    expect(catalog.frames.map(({ code }) => code)).toEqual([
      'F-48',
      'F-410',
      'F-58',
      'F-510',
      'F-68',
      'F-610',
    ])
    expect(catalog.legs.map(({ code }) => code)).toEqual(['L-4', 'L-5', 'L-6', 'L-8'])
    expect(catalog.extras.filter(({ place }) => place === 'edge').map(({ code }) => code)).toEqual(
      EXTRA_CODES,
    )
    expect(EXTRA_CODES).toHaveLength(40)
    // Group headings alone are left.
    expect(rows.filter(({ kind }) => kind === 'leave').map(({ name }) => name)).toEqual([
      'Frames',
      'Legs and bracing',
      'Options',
      'Services',
    ])
  })

  it('takes sizes, weights and prices as they stand', () => {
    const { catalog } = taken()
    // 6 ft wide, 10 ft long, $629.00; no weight: computed from the shapes.
    expect(catalog.frames.at(-1)).toMatchObject({ width: 1.8288, length: 3.048, price: 62900, panels: 2 })
    expect(catalog.frames.at(-1)).not.toHaveProperty('mass')
    expect(catalog.frames[1]!.mass).toBeCloseTo(112 * POUND, 3)
    expect(catalog.legs.at(-1)).toMatchObject({ length: 2.4384, price: 13300, stock: 'pipe-2' })
    const slide = catalog.extras.find(({ code }) => code === 'SLD')!
    expect(slide.parts[0]).toMatchObject({ price: 148000, name: 'Water slide' })
    // 30 x 96 x 60 in: the longer of the first two along the edge.
    for (const [k, inches] of [30, 96, 60].entries())
      expect(slide.parts[0]!.size[k]).toBeCloseTo(inches * INCH, 6)
    expect(slide.parts[0]!.mass).toBeCloseTo(118 * POUND, 3)
    expect(catalog.hooks.bracket).toMatchObject({ code: 'HB-2', price: 1940, name: 'Hook bracket' })
    expect(catalog.hardware.find(({ kind }) => kind === 'set-bolt')).toMatchObject({
      code: 'B-12',
      price: 210,
    })
    expect(catalog.services).toEqual([
      { code: 'DLV', name: 'Delivery', price: 17500, per: 'job' },
      { code: 'INST', name: 'Install, per section', price: 9800, per: 'section' },
    ])
  })

  it('makes deck panels for frames of new sizes, in every decking, and says that their prices are guessed', () => {
    const { catalog, guessed } = taken()
    const panel = (code: string) => catalog.decking.panels.find((one) => one.code === code)!
    // 4 x 8 lies on the panels that are there; 6 x 8 on new ones: two of 4 ft less 1/4 in (2.4384 / 2 − 1.21285 = 0.00635).
    expect(catalog.frames[0]!.panel).toBe('panel-4x4')
    expect(catalog.frames[4]!.panel).toBe('panel-F-68')
    expect(panel('panel-F-68')).toMatchObject({ width: 1.8288, length: 1.21285, plank: { count: 8 } })
    // By area, from 5 x 4: $179 x 6/5.
    expect(panel('panel-F-68').price).toBe(21480)
    const gray = catalog.deckings!.find(({ code }) => code === 'composite-gray')!
    expect(Object.keys(gray.panels)).toContain('panel-F-68')
    expect(panel(gray.panels['panel-F-68']!)).toMatchObject({
      width: 1.8288,
      plank: { stock: 'composite-plank' },
    })
    const at = catalog.decking.panels.findIndex(({ code }) => code === 'panel-F-68')
    expect(guessed).toContainEqual(['decking', 'panels', at, 'price'])
    // The corner's panels went with the corner piece.
    expect(catalog.decking.panels.some(({ turn }) => turn !== undefined)).toBe(false)
  })

  it('says what it took for granted of extras: sizes and weights that the list lacks', () => {
    const { catalog, guessed } = taken()
    const of = (code: string) => {
      const i = catalog.extras.findIndex((one) => one.code === code)
      return guessed
        .filter((path) => path[0] === 'extras' && path[1] === i)
        .map((path) => path.slice(2).join('.'))
    }
    expect(of('BENCH-4')).toEqual([])
    expect(of('LAD-3')).toEqual(['parts.0.size.0', 'parts.0.size.1', 'parts.0.size.2'])
    expect(of('LAD-5')).toEqual(['parts.0.mass', 'parts.0.size.0', 'parts.0.size.1', 'parts.0.size.2'])
    // Like the ladder of before.
    expect(catalog.extras.find(({ code }) => code === 'LAD-5')!.parts[0]!.mass).toBe(8.6)
  })

  it('gives a dock of its own parts at its own prices', () => {
    const { catalog } = taken()
    const design = {
      ...demoDesign,
      dock: { ...demoDesign.dock, frame: 'F-48', sections: 3, extras: { 'CLT-8': 2 } },
    }
    const dock = deriveAtOnce(design, catalog)
    const row = (code: string) => dock.parts.find((one) => one.code === code)
    expect(row('F-48')).toMatchObject({ quantity: 3, unitPrice: 41200, price: 123600 })
    expect(row('CLT-8')).toMatchObject({ quantity: 2, unitPrice: 1900 })
    expect(row('HB-2')).toMatchObject({ unitPrice: 1940 })
  })

  it('taken once more changes prices alone', () => {
    const { catalog, rows } = taken()
    const dearer = rows.map((row) => ({ ...row, price: row.price === null ? null : row.price + 100 }))
    const again = takePriceList(catalog, dearer, { replace: [], panelName: () => 'x' })
    expect(again.left).toEqual([])
    expect(again.guessed).toEqual([])
    expect(again.catalog.frames.map(({ code, price }) => [code, price])).toEqual(
      catalog.frames.map(({ code, price }) => [code, price + 100]),
    )
    expect(again.catalog.extras).toHaveLength(catalog.extras.length)
    expect(new Set(Object.values(again.did))).toEqual(new Set(['changed']))
  })

  it('leaves what it cannot take, and says why', () => {
    const text = [
      'Code\tName\tPrice',
      'X-1\tDock section, large\t$400',
      'X-2\tLeg 5 ft\t$90',
      'X-3\tLeg 60 in\t$91',
      'X-4\tCleat\tcall us',
      'X-5\tBench\t',
      'X-6\tBoat hook rack\t$30',
      'X-6\tBoat hook rack, long\t$40',
    ].join('\n')
    const { left } = taken(text)
    expect(left.map(({ row, why }) => [row.code, why])).toEqual([
      ['X-1', 'no-size'],
      ['X-3', 'length-taken'],
      ['X-4', 'price'],
      ['X-5', 'no-price'],
      ['X-6', 'code-twice'],
    ])
  })

  it.each([
    ['Frame 4 x 8 ft', [4 * FOOT, 8 * FOOT]],
    ["4' x 8'", [4 * FOOT, 8 * FOOT]],
    ['48 x 96 in', [48 * INCH, 96 * INCH]],
    ['2,5 x 1,0 m', [2.5, 1]],
    ['Leg 5 ft', [5 * FOOT]],
    ['7\' 6" leg', [7.5 * FOOT]],
    ['2 x 8 x 2 1/2 in', [2 * INCH, 8 * INCH, 2.5 * INCH]],
    ['Ladder, 4 step', []],
    ['60 x 60 x 3 mm', [0.06, 0.06, 0.003]],
  ])('reads the measures of %s', (text, measures) => {
    const read = sizesIn(text, 'ft')
    expect(read).toHaveLength(measures.length)
    for (const [k, one] of measures.entries()) expect(read[k]).toBeCloseTo(one, 9)
  })
})
