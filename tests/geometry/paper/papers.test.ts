/**
 * The papers, read back from their PDFs by another program (pdfjs-dist): figures as the Dock has them, nothing on anything else, nothing
 * off its sheet, fonts embedded, bookmarks right, the same bytes each time.
 */
import fc from 'fast-check'
import jsQrModule from 'jsqr'
import { describe, expect, it } from 'vitest'
import { pdfOf } from '../../../geometry/export/pdf.ts'
import { svgOfSheets } from '../../../geometry/export/svg.ts'
import { type Audience, PAPERS, packetFor } from '../../../geometry/paper/audience.ts'
import { PAPER_SIZES, type Paper } from '../../../geometry/paper/marks.ts'
import { type PaperOf, paperFrom } from '../../../geometry/paper/paper-of.ts'
import { qrMarks } from '../../../geometry/paper/qr.ts'
import { packetOf, paperOf } from '../../../geometry/sheets/packet.ts'
import {
  assessKit,
  type Catalog,
  type Design,
  demoCatalog,
  demoDesign,
  deriveKit,
  ENGLISH,
  english,
  formatLength,
  formatMass,
  moneyIn,
  projectOf,
} from '../../../rules/index.ts'
import { cartons } from '../../../rules/papers/cartons.ts'
import { estimate, quote } from '../../../rules/papers/quote.ts'
import { paperFonts } from '../../../src/cli/fonts.ts'
import { anyCase, parsedDesign } from '../../support/arbitraries.ts'
import { getDocument } from '../../support/pdfjs.ts'
import { runs } from '../../support/runs.ts'
import { sheetFaults } from '../../support/sheet-faults.ts'

const usd = moneyIn('USD', ENGLISH)
const jsQr = ((jsQrModule as unknown as { default?: unknown }).default ??
  jsQrModule) as typeof import('jsqr').default
const FONTS = paperFonts()
const DATE = '2026-05-01'

const paperFor = (
  design: Design,
  catalog: Catalog = demoCatalog,
  change: Partial<PaperOf['options']> = {},
): PaperOf =>
  paperFrom(projectOf(design, catalog, assessKit(deriveKit(design, catalog))), {
    ...{ units: 'imperial', language: ENGLISH, size: 'letter', date: DATE, by: 'A. Person' },
    ...change,
  })

async function readBack(bytes: Uint8Array) {
  // What is given is taken over and emptied.
  const file = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise
  const pages = []
  for (let n = 1; n <= file.numPages; n++) {
    const page = await file.getPage(n)
    const { items } = await page.getTextContent()
    pages.push({
      view: page.view,
      texts: items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? [item.str] : [])),
    })
  }
  return { file, pages, texts: pages.flatMap(({ texts }) => texts) }
}

const RUNS = runs(24)
/** So that a long dock may be built in it. */
const SHALLOW = {
  soundings: [
    [-3, -0.9],
    [0, 0],
    [4, 0.4],
    [30, 1.1],
  ].map(([distance, depth]) => ({ distance, offset: 0, depth })),
}
const DOCKS = [
  ['three sections', { sections: 3 }, {}],
  ['twelve sections', { sections: 12 }, SHALLOW],
  ['a tee', { sections: 4, head: { shape: 'tee', sections: 4 } }, {}],
] as const

describe('papers as PDF', () => {
  for (const [name, change, site] of DOCKS)
    for (const [size, units] of [
      ['letter', 'imperial'],
      ['a4', 'metric'],
    ] as const)
      it(`of ${name} on ${size} say what the Dock says`, { timeout: 120_000 }, async () => {
        const design = parsedDesign({
          ...demoDesign,
          job: { customer: 'B. Sample', order: 'Q-7' },
          site: { ...demoDesign.site, ...site },
          dock: { ...demoDesign.dock, ...change },
        })
        const of = paperFor(design, demoCatalog, { size, units })
        const { dock } = of
        const told = async (paper: Paper) => {
          const read = await readBack(pdfOf([paper], FONTS, { date: DATE }))
          expect(read.pages).toHaveLength(paper.sheets.length)
          read.pages.forEach(({ view }, i) => {
            expect((view[2]! * 25.4) / 72).toBeCloseTo(paper.sheets[i]!.width, 1)
            expect((view[3]! * 25.4) / 72).toBeCloseTo(paper.sheets[i]!.height, 1)
          })
          // Every text mark is there as text, and nothing else.
          const marks = paper.sheets.flatMap(({ marks }) => marks)
          const said = marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])).join('')
          expect(read.texts.join('').replace(/\s/g, '')).toBe(said.replace(/\s/g, ''))
          return read.texts
        }
        const length = (value: number): string => formatLength(value, english(units))
        const papers = new Map(packetFor('shop').map((name) => [name, paperOf(name, of)]))
        const setUp = await told(papers.get('set-up')!)
        for (const leg of dock.legs) {
          for (const value of [leg.setHeight, leg.setHeightFrame, -leg.bed])
            expect(setUp).toContain(length(value))
          if (leg.aboveDeck !== null) expect(setUp).toContain(length(leg.aboveDeck))
        }
        const packing = await told(papers.get('packing')!)
        const packed = cartons(dock, demoCatalog)
        for (const { mass, items, bags } of packed.packages) {
          expect(packing.join(' ')).toContain(formatMass(mass, english(units)))
          for (const item of [...items, ...bags.flatMap((bag) => bag.items)]) {
            expect(packing).toContain(String(item.quantity))
            expect(packing).toContain(item.code)
            expect(packing).toContain(formatMass(item.mass, english(units)))
          }
        }
        const priced = await told(paperOf('quote', of, { services: [{ code: 'delivery' }], each: true }))
        const short = await told(paperOf('quote', of, { services: [{ code: 'delivery' }] }))
        const made = quote(dock, design, demoCatalog, { date: DATE, services: [{ code: 'delivery' }] })
        for (const amount of [
          made.total,
          made.net,
          made.goods,
          made.tax!.amount,
          ...made.lines.flatMap((line) => [line.unitPrice, line.amount]),
        ])
          expect(priced).toContain(usd(amount))
        // Without the annex: what each group comes to, and no single bolt's price.
        for (const amount of [
          made.total,
          made.net,
          made.tax!.amount,
          ...made.groups.map((one) => one.amount),
        ])
          expect(short).toContain(usd(amount))
        const bolt = made.lines.find(({ kind }) => kind === 'set-bolt')!
        expect(priced.join(' ')).toContain(bolt.name)
        expect(short.join(' ')).not.toContain(bolt.name)
        expect(short).toContain('B. Sample')
        const code = dock.fingerprint.all.slice(0, 12).replace(/(.{4})(?=.)/g, '$1 ')
        for (const paper of papers.values())
          for (const sheet of paper.sheets) {
            const own = sheet.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])).join('\n')
            expect(own).toContain(code)
            expect(own).toContain('May 1, 2026')
          }
      })

  it('with prices are a quote of the shop’s or an estimate, each with a code of its own on every sheet', async () => {
    const of = paperFor(demoDesign)
    const asked = { services: [{ code: 'delivery' }], discount: { share: 0.05 } }
    const read = async (paper: Paper) => readBack(pdfOf([paper], FONTS, { date: DATE }))
    const inFours = (code: string): string => code.slice(0, 12).replace(/(.{4})(?=.)/g, '$1 ')
    for (const [paper, made, title, name] of [
      [
        paperOf('quote', of, asked),
        quote(of.dock, demoDesign, demoCatalog, { date: DATE, ...asked }),
        'Quote',
        'Check code of this quote',
      ],
      [
        paperOf('estimate', of, asked),
        estimate(of.dock, demoDesign, demoCatalog, { date: DATE }),
        'Estimate',
        'Check code of this estimate',
      ],
    ] as const) {
      const { file, pages, texts } = await read(paper)
      expect(((await file.getMetadata()).info as Record<string, string>).Title).toContain(title)
      const both = await readBack(pdfOf([paperOf('labels', of), paper], FONTS, { date: DATE }))
      expect((await both.file.getOutline())[1]!.title).toBe(title)
      expect(texts.slice(0, 4)).toContain(title)
      for (const page of pages) {
        const told = page.texts.join(' ')
        expect(told).toMatch(new RegExp(`${name} ${inFours(made.check)}`))
        expect(told).toContain(`Check code of the dock ${inFours(of.dock.fingerprint.all)}`)
      }
      expect(texts).toContain(usd(made.total))
    }
    const [binding, estimated] = await Promise.all(
      (['quote', 'estimate'] as const).map(async (what) =>
        (await read(paperOf(what, of, asked))).texts.join(' '),
      ),
    )
    const binds = [
      /Holds until/,
      /For the shop/,
      /Agreed/,
      /Terms/,
      /Discount/,
      /Delivery to the shore/,
      /Total$|Total \$/,
    ]
    for (const one of binds) {
      expect(binding).toMatch(one)
      expect(estimated).not.toMatch(one)
    }
    expect(estimated).not.toMatch(/^(?!.*own quote).*Quote/)
    expect(estimated).toContain('own quote is what counts')
    expect(estimated).toContain('Estimated total')
  })

  it('are for whom they are for: a customer’s has no quote in it, a crew’s no money', async () => {
    const of = paperFor(demoDesign)
    const [shop, customer, crew] = (['shop', 'customer', 'crew'] as const).map((audience: Audience) =>
      packetOf(of, {}, audience),
    )
    const titles = (papers: readonly Paper[] | undefined) => papers!.map(({ title }) => title)
    expect(titles(shop)).toContain('Quote')
    expect(titles(customer)).toContain('Estimate')
    expect(titles(shop).filter((one) => one !== 'Quote')).toEqual(titles(crew))
    expect(titles(customer).filter((one) => one !== 'Estimate')).toEqual(titles(crew))
    const { texts } = await readBack(pdfOf(crew!, FONTS, { date: DATE }))
    expect(texts.filter((one) => one.includes('$'))).toEqual([])
  })

  it('embed their fonts as subsets, with bookmarks for each paper and sheet, and say what they are', async () => {
    const of = paperFor(demoDesign)
    const papers = packetOf(of)
    const bytes = pdfOf(papers, FONTS, { date: DATE })
    const { file } = await readBack(bytes)
    const text = Buffer.from(bytes).toString('latin1')
    const fonts = [...text.matchAll(/\/BaseFont \/(\S+)/g)].map(([, font]) => font!)
    expect(fonts.length).toBeGreaterThan(1)
    for (const font of fonts) expect(font).toMatch(/^[A-Z]{6}\+Roboto-(Regular|Bold)$/)
    expect(bytes.length).toBeLessThan(400_000)
    const outline = await file.getOutline()
    expect(outline.map(({ title }) => title)).toEqual(papers.map(({ title }) => title))
    expect(outline[0]!.items.map(({ title }) => title)).toEqual(
      papers[0]!.sheets.flatMap(({ bookmark }) => (bookmark === null ? [] : [bookmark])),
    )
    const info = (await file.getMetadata()).info as Record<string, string>
    expect(info.Author).toBe(demoCatalog.name)
    expect(info.CreationDate).toMatch(/^D:20260501/)
  })

  it('are the same bytes each time', () => {
    const make = () => pdfOf(packetOf(paperFor(demoDesign)), FONTS, { date: DATE })
    expect(Buffer.compare(make(), make())).toBe(0)
  })

  it('of 20 sections come within 2 s; told, and gated with room for a busy machine', () => {
    const design = parsedDesign({ ...demoDesign, dock: { ...demoDesign.dock, sections: 20 } })
    const of = paperFor(design)
    pdfOf(packetOf(of), FONTS, { date: DATE })
    const begun = process.cpuUsage()
    const bytes = pdfOf(packetOf(of), FONTS, { date: DATE })
    const { user, system } = process.cpuUsage(begun)
    const took = (user + system) / 1000
    process.stdout.write(
      `The packet of 20 sections: ${took.toFixed(0)} ms of a processor, ${bytes.length} bytes\n`,
    )
    expect(took).toBeLessThan(2000)
  })
})

describe('the papers', () => {
  it(`have no text on another or off its sheet, on ${RUNS} random docks of both shops`, {
    timeout: 600_000,
  }, () => {
    let sheets = 0
    fc.assert(
      fc.property(
        anyCase,
        fc.constantFrom('letter' as const, 'a4' as const),
        fc.constantFrom('imperial' as const, 'metric' as const),
        ({ design, catalog }, size, units) => {
          const of = paperFor(design, catalog, { size, units })
          for (const name of PAPERS)
            for (const sheet of paperOf(name, of).sheets) {
              sheets++
              expect(`${name}: ${sheetFaults(sheet).join('; ')}`).toBe(`${name}: `)
            }
        },
      ),
      { numRuns: RUNS, seed: 20261126 },
    )
    expect(sheets).toBeGreaterThan(RUNS * 12.5)
  })

  it('stay on the paper that is asked for', () => {
    for (const size of ['letter', 'a4', 'tabloid', 'a3'] as const) {
      const { width, height } = PAPER_SIZES[size]
      for (const paper of packetOf(paperFor(demoDesign, demoCatalog, { size })))
        for (const sheet of paper.sheets)
          expect([sheet.width, sheet.height].sort((a, b) => a - b)).toEqual([width, height])
    }
  })

  it('as SVG say the same', () => {
    const { sheets } = paperOf('packing', paperFor(demoDesign))
    const svg = svgOfSheets(sheets)
    for (const sheet of sheets)
      for (const mark of sheet.marks)
        if (mark.kind === 'text')
          expect(svg).toContain(
            `>${mark.text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/'/g, '&#39;').replace(/"/g, '&quot;').replace(/>/g, '&gt;')}</text>`,
          )
  })
})

describe('a square code', () => {
  it('is read back by another program from what is drawn', () => {
    const text = 's3.end.left f69ccb2c568a'
    const [size, k] = [40, 10]
    const pixels = new Uint8ClampedArray((size * k) ** 2 * 4).fill(255)
    for (const mark of qrMarks(text, [0, 0], size)) {
      if (mark.kind !== 'path') continue
      const [[x0, y0], , [x1, y1]] = mark.points as [[number, number], unknown, [number, number]]
      for (let y = Math.round(y0 * k); y < Math.round(y1 * k); y++)
        for (let x = Math.round(x0 * k); x < Math.round(x1 * k); x++)
          pixels.fill(0, (y * size * k + x) * 4, (y * size * k + x) * 4 + 3)
    }
    expect(jsQr(pixels, size * k, size * k)!.data).toBe(text)
  })
})
