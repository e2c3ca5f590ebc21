/** Lists, cartons and quotes as CSV: read back by a CSV library, and by a spreadsheet where there is one. */
import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import fc from 'fast-check'
import Papa from 'papaparse'
import { describe, expect, it } from 'vitest'
import { demoCatalog, demoDesign, english, packingList } from '../../../rules/index.ts'
import { cartonRows, cartons, parseQuoteText, quote, quoteRows } from '../../../rules/papers.ts'
import { listCsv } from '../../../src/cli/list.ts'
import { csvOf } from '../../../src/documents/files/csv.ts'
import { TABLES, tableCsv, tableJson } from '../../../src/documents/files/tables.ts'
import { writeFile } from '../../../src/documents/files/write-file.ts'
import { deriveAtOnce } from '../../support/at-once.ts'

const SEED = Number(process.env.LEADLINE_SEED ?? 51_004)
const dock = deriveAtOnce(demoDesign, demoCatalog)
const packed = cartons(dock, demoCatalog)
const made = quote(dock, demoDesign, demoCatalog, { date: '2026-03-01', discount: { share: 0.05 } })

const read = (csv: string): Record<string, string>[] => {
  const { data, errors } = Papa.parse<Record<string, string>>(csv, { header: true, skipEmptyLines: true })
  expect(errors).toEqual([])
  return data
}

/** Cells that a spreadsheet would work out. */
const ALIVE = [
  '=1+1',
  '+1+1',
  '-1+1',
  '@SUM(1)',
  '\t=1+1',
  '\r=1+1',
  '\n=1+1',
  ' =1+1',
  '＝1+1',
  '\u0000=1+1',
  '\u200b=1+1',
  '\u202e@SUM(1)',
  '=HYPERLINK("http://a.example";"x")',
  '=1+1";=2+2',
]
const PLAIN = ['plain', 'a "quoted", b', 'two\nlines', "O'Brien", 'a=b', '3-4', 'bolt-1/2-set', '', 'é ü 木']

describe('CSV', () => {
  it('comes back as it went in: text with quotes, commas and lines in it, numbers below nothing too', () => {
    const rows = PLAIN.map((text, i) => ({ text, number: 1 - i / 4 }))
    expect(read(csvOf(rows)).map(({ text, number }) => [text, Number(number)])).toEqual(
      rows.map(({ text, number }) => [text, number]),
    )
    expect(csvOf([{ amount: -28_430 }])).toBe('amount\n-28430\n')
  })

  it.each(ALIVE)('makes %j inert', (text) => {
    expect(read(csvOf([{ text, after: 'x' }]))).toEqual([{ text: `'${text}`, after: 'x' }])
  })

  it(`has no cell of text that begins as a formula, whatever it is made of (seed ${SEED})`, () => {
    const cell = fc.oneof(
      fc.string(),
      fc.constantFrom(...ALIVE),
      fc.integer(),
      fc.string({ unit: fc.constantFrom('=', '+', '-', '@', '"', ',', '\t', '\n', 'a', ' ') }),
    )
    fc.assert(
      fc.property(fc.array(fc.record({ a: cell, b: cell }), { minLength: 1, maxLength: 5 }), (rows) => {
        const back = Papa.parse<string[]>(csvOf(rows).slice(0, -1)).data.slice(1)
        expect(back).toHaveLength(rows.length)
        rows.forEach((row, i) => {
          for (const [k, value] of [row.a, row.b].entries()) {
            const said = back[i]![k]!
            if (typeof value === 'number') expect(Number(said)).toBe(value)
            else {
              expect(said).not.toMatch(/^\s*[=+\-@]/)
              expect(said === value || said === `'${value}`).toBe(true)
            }
          }
        })
      }),
      { seed: SEED, numRuns: 1000 },
    )
  })

  it('of cartons and list is the parts list, spares apart', () => {
    const count = (rows: Record<string, string>[], of: string): Record<string, number> => {
      const sums: Record<string, number> = {}
      for (const row of rows)
        sums[`${row.kind} ${row.code}`] = (sums[`${row.kind} ${row.code}`] ?? 0) + Number(row[of])
      return sums
    }
    for (const what of ['quantity', 'spares'] as const) {
      const expected = Object.fromEntries(dock.parts.map((row) => [`${row.kind} ${row.code}`, row[what]]))
      expect(count(read(csvOf(cartonRows(packed))), what)).toEqual(expected)
      expect(count(read(listCsv(packingList(dock, demoCatalog), dock)), what)).toEqual(expected)
    }
  })

  it('of a quote adds up to its total', () => {
    const rows = read(csvOf(quoteRows(made)))
    const total = rows.pop()!
    expect(rows.reduce((sum, { amount }) => sum + Number(amount), 0)).toBe(Number(total.amount))
    expect(Number(total.amount)).toBe(made.total)
  })
})

describe('list, cartons and quote', () => {
  const of = { dock, design: demoDesign, catalog: demoCatalog, asked: { date: '2026-03-01' } }

  it.each(TABLES)('%s: CSV and JSON of the same, the same each time', (table) => {
    expect(tableCsv(table, of)).toBe(tableCsv(table, of))
    const file = JSON.parse(tableJson(table, of))
    expect(file.format).toBe(`leadline/${table}`)
    expect(file.fingerprint.all).toBe(dock.fingerprint.all)
    const rows = read(tableCsv(table, of))
    const parts = rows.filter(({ kind }) => kind !== '')
    expect(new Set(parts.map(({ kind, code }) => `${kind} ${code}`)).size).toBe(dock.parts.length)
  })

  it('has money in whole units of its currency, with its decimals, and order and check code in each row', () => {
    const job = { ...of, design: { ...demoDesign, job: { order: 'Q-7' } } }
    const rows = read(tableCsv('list', job))
    for (const part of dock.parts) {
      const row = rows.find(({ kind, code }) => kind === part.kind && code === part.code)!
      expect([row.unit_price, row.price, row.currency]).toEqual([
        String(part.unitPrice / 100),
        String(part.price / 100),
        'USD',
      ])
    }
    expect(dock.parts.some(({ price }) => price % 100 !== 0)).toBe(true)
    for (const table of TABLES)
      for (const row of read(tableCsv(table, job)))
        expect([row.order, row.check_code]).toEqual(['Q-7', dock.fingerprint.all.slice(0, 12)])
    // A currency without a smaller coin.
    const yen = { ...demoCatalog, currency: 'JPY' }
    const first = dock.parts[0]!
    const inYen = { ...of, catalog: yen, dock: { ...dock, totals: { ...dock.totals, currency: 'JPY' } } }
    expect(read(tableCsv('list', inYen)).find(({ code }) => code === first.code)!.unit_price).toBe(
      String(first.unitPrice),
    )
  })

  it('begins with a byte order mark where that is asked for', async () => {
    const asked = {
      ...({ what: 'list', audience: 'shop' } as const),
      ...{ dock, design: demoDesign, catalog: demoCatalog },
      options: { ...english('metric'), size: 'a4', date: '2026-03-01', by: '' },
    } as const
    const fonts = () => {
      throw new Error('no fonts in CSV')
    }
    const [plain, marked] = await Promise.all([
      writeFile('csv', asked, fonts),
      writeFile('csv', { ...asked, bom: true }, fonts),
    ])
    expect([...marked.subarray(0, 3)]).toEqual([0xef, 0xbb, 0xbf])
    expect(Buffer.compare(marked.subarray(3), plain)).toBe(0)
  })

  it('of a quote has the design with it, to compare the next one with', () => {
    const parsed = parseQuoteText(tableJson('quote', of))
    expect(parsed.ok && parsed.value.design).toEqual(demoDesign)
  })

  it('is plain data that comes back the same', () => {
    for (const file of [packed, made]) expect(JSON.parse(JSON.stringify(file))).toEqual(file)
    expect([packed.format, made.format]).toEqual(['leadline/cartons', 'leadline/quote'])
  })
})

const office = spawnSync('soffice', ['--version'], { timeout: 60_000 }).status === 0

/** Where there is no LibreOffice nothing is shown here; the same cells are read back by a CSV library above. */
describe.runIf(office)('LibreOffice', () => {
  it('opens the cells as text and the numbers as numbers', () => {
    const folder = mkdtempSync(join(tmpdir(), 'leadline-csv-'))
    try {
      const profile = `-env:UserInstallation=file://${join(folder, 'profile')}`
      // With formulas worked out, as a careless person's settings have it: cells that are alive show.
      const filter = '--infilter=CSV:44,34,76,1,,0,false,true,false,false,false,-1,true'
      const opened = (name: string, csv: string): string => {
        const file = join(folder, `${name}.csv`)
        writeFileSync(file, csv)
        const how = [profile, '--headless', filter, '--convert-to', 'fods', '--outdir', folder, file]
        execFileSync('soffice', how, { timeout: 110_000, stdio: 'pipe' })
        return readFileSync(join(folder, `${name}.fods`), 'utf8')
      }
      expect(opened('alive', 'text\n=1+1\n')).toContain('table:formula')
      const sheet = opened('inert', csvOf(ALIVE.map((text) => ({ text, number: -1.5, plain: 'x' }))))
      expect(sheet).not.toContain('table:formula')
      expect(sheet.match(/office:value-type="float"[^>]*office:value="-1.5"/g)).toHaveLength(ALIVE.length)
    } finally {
      rmSync(folder, { recursive: true, force: true })
    }
  })
})
