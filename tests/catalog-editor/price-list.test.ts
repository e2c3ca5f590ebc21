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

/** As a shop keeps it: headings, panels by material, zones under their heading, tax and deposit in words. */
const WHOLE_LIST = [
  'Item #\tDescription\tSize\tRetail',
  'F-410\tFrame 4 x 10 ft\t4 x 10 ft\t$600.00',
  'F-48\tFrame 4 x 8 ft\t4 x 8 ft\t$500.00',
  'F-610\tFrame 6 x 10 ft\t6 x 10 ft\t$900.00',
  'L-6\tLeg 2 in x 6 ft\t2 in x 6 ft\t$60.00',
  'L-8\tLeg 8 ft\t8 ft\t$80.00',
  'B-54\tBrace 54 in\t54 in\t$44.00',
  'B-66\tBrace 66 in\t66 in\t$49.00',
  'P-12\tFoot pad 12" round\t12"\t$24.00',
  'P-18\tMud pad 18 x 18 in\t18 x 18 in\t$41.00',
  'D-C4\tDeck panel Cedar 4\' x 30"\t4\' x 30"\t$120.00',
  'D-C6\tDeck panel Cedar 6\' x 30"\t6\' x 30"\t$180.00',
  'D-V4\tDeck panel Blue vinyl 4\' x 30"\t4\' x 30"\t$160.00',
  'D-V9\tDeck panel Blue vinyl 9\' x 30"\t9\' x 30"\t$360.00',
  '\tFREIGHT\t\t',
  '\tZone A (to 30 miles)\t\t$95.00',
  '\tZone B (31-75 miles)\t\t$175.00',
  '\tSales tax 6.25 % on goods\t\t',
  '\tDeposit 40 % with order\t\t',
  '\tSERVICES\t\t',
  'SV\tSite measuring\t\t$125.00',
].join('\n')

function takenWhole() {
  const table = readPriceTable(WHOLE_LIST)!
  const rows = readRows(table.rows, firstReading(guessRoles(table), 'imperial', 'USD', table.head))
  return takePriceList(demoCatalog, rows, {
    replace: ['frames', 'legs', 'braces', 'deckings', 'services'],
    panelName: (_, length, decking) => `${decking} ${Math.round(length / INCH)}`,
  })
}

describe('a whole price list', () => {
  const { catalog, left, guessed } = takenWhole()

  it('makes a catalog that is right, and leaves what lies on no frame', () => {
    expect(parseCatalog(JSON.parse(JSON.stringify(catalog)))).toMatchObject({ ok: true })
    expect(left.map(({ row, why }) => [row.code, why])).toEqual([['D-V9', 'no-frame']])
  })

  it('lays the panels of each material on the frames that they are for', () => {
    const on = (code: string) => catalog.frames.find((frame) => frame.code === code)!
    // 120 in / 30 in = 4 panels; 96 / 30 = 3.2: three, of 32 in, which no row has.
    expect(on('F-410')).toMatchObject({ panel: 'D-C4', panels: 4 })
    expect(on('F-610')).toMatchObject({ panel: 'D-C6', panels: 4 })
    expect(on('F-48').panels).toBe(3)
    const cut = catalog.decking.panels.findIndex(({ code }) => code === on('F-48').panel)
    // $120.00 x 32 / 30.
    expect(catalog.decking.panels[cut]).toMatchObject({ price: 12800, name: 'Cedar 32' })
    expect(guessed).toContainEqual(['decking', 'panels', cut, 'price'])
    expect(catalog.deckings!.map(({ code, name }) => [code, name])).toEqual([
      ['cedar', 'Cedar'],
      ['blue-vinyl', 'Blue vinyl'],
    ])
    // Nothing of the demo's is sold any more; there is no vinyl of 6 ft.
    expect(Object.keys(catalog.deckings![1]!.panels).sort()).toEqual(['D-C4', on('F-48').panel].sort())
    expect(
      catalog.decking.panels.map(({ code }) => code).filter((code) => code.startsWith('panel-')),
    ).toEqual([])
  })

  it('says which frames a brace is for, by its length', () => {
    const spacing = (code: string) => catalog.braces.find((one) => one.code === code)!.spacing
    // Legs of a frame of 4 ft stand 48 − 2 × 3.4375 = 41.125 in apart, the clamps' holes 37.125: 54 in rises 39.2, 66 in 54.6.
    // Of 6 ft 65.125 and 61.125: 54 in does not span it; 66 rises 24.9, steeper than 0.3 × 61.1 = 18.3.
    const [narrow, wide] = [41.125 * INCH, 65.125 * INCH]
    for (const [code, from, to] of [
      ['B-54', narrow, narrow],
      ['B-66', narrow, wide],
    ] as const) {
      expect(spacing(code).from).toBeCloseTo(from - 0.05, 3)
      expect(spacing(code).to).toBeCloseTo(to + 0.05, 3)
    }
  })

  it('knows a pad for muck from the standard one', () => {
    expect(catalog.pads.map(({ code, mud }) => [code, mud])).toEqual([
      ['P-12', false],
      ['P-18', true],
    ])
    expect(catalog.pads[1]!.plate.width).toBeCloseTo(18 * INCH, 9)
  })

  it('reads freight by zone, tax, deposit and services by their headings', () => {
    expect(catalog.quote!.zones).toEqual([
      { code: 'zone-a-to-30-miles', name: 'Zone A (to 30 miles)', price: 9500 },
      { code: 'zone-b-31-75-miles', name: 'Zone B (31-75 miles)', price: 17500 },
    ])
    // The demo's bands would be charged besides.
    expect(catalog.quote).not.toHaveProperty('freight')
    expect(catalog.quote!.tax).toEqual({ name: 'Sales tax', share: 0.0625, goods: true, freight: false })
    expect(catalog.shop!.deposit).toBe(0.4)
    expect(catalog.services!.map(({ code, price }) => [code, price])).toEqual([['SV', 12500]])
    expect(catalog.legs.map(({ code, length }) => [code, length])).toEqual([
      ['L-6', 1.8288],
      ['L-8', 2.4384],
    ])
  })

  it.each([
    ['4" dia x 5"', [4, 4, 5]],
    ['30" round', [30, 30]],
    ['20" W x 48" H', [20, 48]],
    ['2" x 8"', [2, 8]],
  ])('reads %s', (text, inches) => {
    const read = sizesIn(text, 'ft')
    expect(read.map((one) => Math.round((one / INCH) * 100) / 100)).toEqual(inches)
  })
})
