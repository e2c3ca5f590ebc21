/** `leadline sheet` as a person or a back end uses it. */
import { writeFileSync } from 'node:fs'
import Papa from 'papaparse'
import { beforeAll, describe, expect, it } from 'vitest'
import { demoCatalog, demoDesign, derive, ENGLISH, moneyIn } from '../../rules/index.ts'
import type { Quote } from '../../rules/papers/quote.ts'
import { Unusable } from '../../src/cli/files.ts'
import { sheet } from '../../src/cli/sheet.ts'
import { ownFolder } from './support/folder.ts'

const { at, file: written } = ownFolder()
let demo: string
beforeAll(() => {
  demo = written('demo.json', demoDesign)
})

const TODAY = '2026-05-01'
const starts = (bytes: Uint8Array, count: number): string =>
  Buffer.from(bytes.subarray(0, count)).toString('latin1')

describe('leadline sheet', () => {
  it.each([
    ['pdf', '%PDF-'],
    ['svg', '<svg '],
    ['dxf', '0\nSECTION'],
    ['glb', 'glTF'],
    ['usdz', 'PK'],
  ])('writes %s by the ending of the file, the same bytes for the same day', async (format, start) => {
    const args = [demo, '--out', `dock.${format}`, '--by', 'A. Person']
    const [one, two] = [await sheet(args, TODAY), await sheet([...args, '--date', TODAY], '2030-01-01')]
    expect(starts(one.bytes, start.length)).toBe(start)
    expect(one.bytes.length).toBeGreaterThan(2000)
    expect(Buffer.compare(one.bytes, two.bytes)).toBe(0)
    expect(one.code).toBe(0)
  })

  it.each(['packet', 'packing', 'cards', 'labels', 'set-up', 'autumn', 'survey', 'quote'])(
    'writes the paper that is asked for: %s',
    async (what) => {
      const { bytes } = await sheet([demo, '--out', 'x.pdf', '--what', what], TODAY)
      const again = await sheet([demo, '--out', 'x.pdf', '--what', what], TODAY)
      expect(starts(bytes, 5)).toBe('%PDF-')
      expect(Buffer.compare(bytes, again.bytes)).toBe(0)
    },
  )

  const words = async (args: string[]): Promise<string> =>
    Buffer.from((await sheet([demo, ...args], TODAY)).bytes).toString()

  it('writes figures for a spreadsheet: the pieces of all packages are those of the parts list', async () => {
    const rows = async (what: string) =>
      Papa.parse<Record<string, string>>(await words(['--out', 'x.csv', '--what', what]), {
        header: true,
        skipEmptyLines: true,
      }).data
    const counted = (list: Record<string, string>[]): Record<string, number> => {
      const counts: Record<string, number> = {}
      for (const { kind, code, quantity, spares } of list)
        counts[`${kind} ${code}`] = (counts[`${kind} ${code}`] ?? 0) + Number(quantity) + Number(spares)
      return counts
    }
    const dock = derive(demoDesign, demoCatalog)
    const own = Object.fromEntries(
      dock.parts.map(({ kind, code, quantity, spares }) => [`${kind} ${code}`, quantity + spares]),
    )
    expect(counted(await rows('packing'))).toEqual(own)
    expect(counted(await rows('list'))).toEqual(own)
  })

  it('writes a quote as it is asked for, in figures and on paper', async () => {
    const asked = ['--services', 'delivery,hours=6', '--discount', '5%', '--fetched', '--untaxed']
    const made = JSON.parse(await words(['--out', 'x.json', '--what', 'quote', ...asked])) as Quote
    const goods = derive(demoDesign, demoCatalog).totals.price
    // The demo shop: delivery 185.00, an hour 78.00.
    const off = Math.round(goods * 0.05)
    expect(made.total).toBe(goods - off + 18500 + 6 * 7800)
    expect(made.tax).toBeNull()
    expect(made.freight.by).toBe('fetched')
    const svg = await words(['--out', 'x.svg', '--what', 'quote', ...asked])
    expect(svg).toContain('Delivery to the shore')
    expect(svg).toContain(moneyIn(made.currency, ENGLISH)(made.total))
    const plain = JSON.parse(await words(['--out', 'x.json', '--what', 'quote'])) as Quote
    expect(plain.lines.some(({ group }) => group === 'services')).toBe(false)
    const amount = JSON.parse(
      await words(['--out', 'x.json', '--what', 'quote', '--discount', '120']),
    ) as Quote
    expect(amount.discount.amount).toBe(-12000)
  })

  it.each([
    [
      ['--out', 'dock.doc'],
      '--out: "dock.doc"; expected a name that ends in .pdf, .svg, .dxf, .csv, .json, .glb, .usdz, or --format',
    ],
    [[], '--out: missing; expected the file to write'],
    [['--out', 'd.pdf', '--size', 'b5'], '--size: "b5"; expected letter, a4, tabloid, a3'],
    [['--out', 'd.pdf', '--units', 'cubits'], '--units: "cubits"; expected imperial or metric'],
    [
      ['--out', 'd.pdf', '--what', 'poem'],
      '--what: "poem"; expected packet, drawing, permit, packing, cards, labels, delivery, set-up, autumn, survey, quote of a .pdf file',
    ],
    [
      ['--out', 'd.csv', '--what', 'drawing'],
      '--what: "drawing"; expected packing, list, quote of a .csv file',
    ],
    [['--out', 'd.glb', '--what', 'packet'], '--what: "packet"; expected none of a .glb file'],
    [
      ['--out', 'd.pdf', '--services', 'delivery,music'],
      '--services: "music"; expected CODE or CODE=QUANTITY, of delivery, set-up, take-out, storage, hours',
    ],
    [
      ['--out', 'd.pdf', '--discount', '101%'],
      '--discount: "101%"; expected a share as 5%, or an amount as 120.00',
    ],
    [['--out', 'd.pdf', '--date', 'May'], '--date: "May"; expected a day as 2026-05-01'],
    [['--out', 'd.pdf', '--date', '2026-13-01'], '--date: "2026-13-01"; expected a day as 2026-05-01'],
  ])('says what is wrong with %j', async (args, line) => {
    await expect(sheet([demo, ...args], TODAY)).rejects.toThrow(new Unusable([line]))
  })

  it('a quote tells what changed since the last one, and why a leg is another', async () => {
    const old = at('quote.json')
    const longer = at('longer.json')
    const last = await sheet([demo, '--out', old, '--what', 'quote'], '2026-04-01')
    writeFileSync(old, last.bytes)
    writeFileSync(
      longer,
      JSON.stringify({ ...demoDesign, dock: { ...demoDesign.dock, sections: 6, deckHeight: 0.8 } }),
    )
    const args = [longer, '--out', 'q.svg', '--what', 'quote', '--since', old]
    const text = Buffer.from((await sheet(args, TODAY)).bytes).toString()
    expect(text).toContain('What changed since the quote of Apr 1, 2026')
    // One more frame at $389.00.
    expect(text).toMatch(
      />Frame 4 x 8 ft<\/text>(?:(?!<\/text>).)*?>5<\/text>(?:(?!<\/text>).)*?>6<\/text>.*?>\+\$389\.00</s,
    )
    expect(text).toMatch(/Leg 3 \(s2\): Leg 4 ft, now Leg 5 ft; Deck height 2 ft 7 1\/2 in/)
    expect(text).not.toContain('{')
    await expect(sheet([...args.slice(0, -1), demo], TODAY)).rejects.toThrow(/format/)
  })

  it('ends with 1 where the dock must not be built, and writes it all the same, with that on it', async () => {
    const deep = at('deep.json')
    const soundings = [0, 5, 12, 20].map((distance) => ({ distance, depth: distance * 0.4 }))
    writeFileSync(deep, JSON.stringify({ ...demoDesign, site: { ...demoDesign.site, soundings } }))
    const { code, bytes } = await sheet([deep, '--out', 'x.svg'], TODAY)
    expect(code).toBe(1)
    expect(Buffer.from(bytes).toString()).toContain('Do not build it like this. Findings that forbid it: ')
  })
})
