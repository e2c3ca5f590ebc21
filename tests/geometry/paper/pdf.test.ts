/** The PDF writer by itself: marks where they are said to be, in another program's reading; the same bytes from another process. */
import { execFileSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { join } from 'node:path'
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { PNG } from 'pngjs'
import { describe, expect, it } from 'vitest'
import { pdfOf } from '../../../geometry/export/pdf.ts'
import { label, line, rect } from '../../../geometry/paper/blocks.ts'
import type { Mark, Paper, Sheet } from '../../../geometry/paper/marks.ts'
import { textWidth } from '../../../geometry/paper/text.ts'
import { paperFonts } from '../../../src/cli/fonts.ts'

const FONTS = paperFonts()
const DATE = '2026-05-01'
const K = 72 / 25.4
const sheet = (marks: readonly Mark[], bookmark: string | null = null, width = 200): Sheet => ({
  width,
  height: 100,
  marks,
  bookmark,
})
const paper = (title: string, ...sheets: Sheet[]): Paper => ({
  title,
  author: 'Škoda & Sons (shop)',
  subject: 'Cove – 0123',
  lang: 'en-US',
  sheets,
})
const open = (papers: readonly Paper[]) =>
  getDocument({ data: pdfOf(papers, FONTS, { date: DATE }), verbosity: 0 }).promise
const itemsOf = async (marks: readonly Mark[]) => {
  const page = await (await open([paper('One', sheet(marks))])).getPage(1)
  return (await page.getTextContent()).items.flatMap((item) => ('str' in item && item.str ? [item] : []))
}

describe('text in a PDF', () => {
  it.each([
    ['start', 0],
    ['middle', 0],
    ['end', 0],
    ['start', 90],
    ['middle', 90],
    ['end', -90],
    ['middle', 30],
  ] as const)('anchored at its %s and turned by %i° is where the mark says', async (anchor, angle) => {
    const text = 'Set height 4 ft 2 1/4 in'
    const [item] = await itemsOf([label([80, 60], text, { size: 4, anchor }, angle)])
    expect(item!.str).toBe(text)
    const [a, b, , , x, y] = item!.transform as number[]
    const turn = (angle * Math.PI) / 180
    const back = textWidth(text, 4) * { start: 0, middle: 0.5, end: 1 }[anchor]
    expect(x! / K).toBeCloseTo(80 - back * Math.cos(turn), 2)
    expect(100 - y! / K).toBeCloseTo(60 + back * Math.sin(turn), 2)
    expect(Math.atan2(b!, a!)).toBeCloseTo(turn, 2)
    expect(Math.hypot(a!, b!) / K).toBeCloseTo(4, 2)
    // As wide as it was measured: the layout and the file go by the same font.
    expect(item!.width / K / textWidth(text, 4)).toBeCloseTo(1, 2)
  })

  it('says letters beyond ASCII as they are, and a question mark for those that the font lacks', async () => {
    const texts = ['½ × 5° — “Café” čß', 'Ω ≤ 3 €', '船']
    const items = await itemsOf(texts.map((text, i) => label([10, 20 + i * 10], text)))
    expect(items.map(({ str }) => str)).toEqual([...texts.slice(0, 2), '?'])
  })
})

describe('a PDF', () => {
  it('draws lines, fills and pictures as such', async () => {
    const png = new Uint8Array(
      PNG.sync.write(new PNG({ width: 4, height: 3, filterType: 0 }), { colorType: 2 }),
    )
    const file = await open([
      paper(
        'One',
        sheet([
          line([10, 10], [50, 10], { width: 0.5, ink: '#ff0000', dash: [2, 1] }),
          rect([10, 20], 30, 10, null, '#00ff00'),
          { kind: 'circle', at: [100, 50], radius: 5, stroke: { width: 0.2, ink: '#0000ff' }, fill: null },
          { kind: 'image', at: [10, 40], width: 20, height: 15, png },
        ]),
      ),
    ])
    const { fnArray, argsArray } = await (await file.getPage(1)).getOperatorList()
    const argsOf = (op: number): unknown[] => argsArray.filter((_, i) => fnArray[i] === op)
    const dash = (argsOf(OPS.setDash)[0] as [number[], number])[0]
    expect(dash[0]).toBeCloseTo(2 * K, 2)
    expect(dash[1]).toBeCloseTo(K, 2)
    expect((argsOf(OPS.setLineWidth) as [number][]).some(([width]) => Math.abs(width - 0.5 * K) < 0.01)).toBe(
      true,
    )
    expect(argsOf(OPS.paintImageXObject)).toHaveLength(1)
    expect(argsOf(OPS.setStrokeRGBColor).flat()).toContain('#ff0000')
    expect(argsOf(OPS.setFillRGBColor).flat()).toContain('#00ff00')
  })

  it('has each sheet at its size, the papers as bookmarks with their sheets in them, and says what it is', async () => {
    const papers = [
      paper(
        'Packing (list) č',
        sheet([label([9, 9], 'a')], 'Package 1'),
        sheet([label([9, 9], 'b')], 'Package 7'),
      ),
      paper('Drawing', sheet([label([9, 9], 'c')], null, 80)),
    ]
    const file = await open(papers)
    const sizes = []
    for (let n = 1; n <= 3; n++)
      sizes.push((await file.getPage(n)).view.map((v) => Math.round((v / K) * 100) / 100))
    expect(sizes).toEqual([
      [0, 0, 200, 100],
      [0, 0, 200, 100],
      [0, 0, 80, 100],
    ])
    const outline = await file.getOutline()
    expect(
      outline.map(({ title, items }) => [title.normalize('NFC'), items.map((one) => one.title)]),
    ).toEqual([
      ['Packing (list) č', ['Package 1', 'Package 7']],
      ['Drawing', []],
    ])
    const page = async (dest: unknown): Promise<number> =>
      file.getPageIndex((dest as [{ num: number; gen: number }])[0])
    expect(await page(outline[0]!.items[1]!.dest)).toBe(1)
    expect(await page(outline[1]!.dest)).toBe(2)
    const info = (await file.getMetadata()).info as Record<string, string>
    expect(info.Author).toBe('Škoda & Sons (shop)')
    expect(info.Subject).toBe('Cove – 0123')
    expect(info.Language).toBe('en-US')
    expect(info.CreationDate).toMatch(/^D:20260501/)
  })

  it('of one paper has its sheets as bookmarks', async () => {
    const outline = await (await open([paper('One', sheet([], 'Stations'), sheet([], null))])).getOutline()
    expect(outline.map(({ title }) => title)).toEqual(['Stations'])
  })

  it('without a sheet is refused', () => {
    expect(() => pdfOf([], FONTS, { date: DATE })).toThrow(RangeError)
  })
})

describe('the same dock', () => {
  const script = `
    import { createHash } from 'node:crypto'
    import { pdfOf } from './geometry/export/pdf.ts'
    import { paperFrom } from './geometry/paper/paper-of.ts'
    import { packetOf } from './geometry/sheets/packet.ts'
    import { demoCatalog, demoDesign, derive, ENGLISH, projectOf } from './rules/index.ts'
    import { paperFonts } from './src/cli/fonts.ts'
    const options = { units: 'imperial', language: ENGLISH, size: 'letter', date: process.argv[1], by: 'A. Person' }
    const project = projectOf(demoDesign, demoCatalog, derive(demoDesign, demoCatalog))
    const papers = packetOf(paperFrom(project, options))
    const bytes = pdfOf(papers, paperFonts(), { date: process.argv[1] })
    process.stdout.write(createHash('sha256').update(bytes).digest('hex'))`
  const hashFrom = (date: string, zone: string): string =>
    execFileSync(process.execPath, ['--import', 'tsx', '--input-type=module', '--eval', script, '--', date], {
      cwd: join(import.meta.dirname, '../../..'),
      env: { ...process.env, TZ: zone },
      encoding: 'utf8',
    })

  it('gives the same bytes from two processes, in any time zone; on another day others', {
    timeout: 120_000,
  }, () => {
    const one = hashFrom(DATE, 'UTC')
    expect(one).toMatch(/^[0-9a-f]{64}$/)
    expect(one).not.toBe(createHash('sha256').digest('hex'))
    expect(hashFrom(DATE, 'Pacific/Auckland')).toBe(one)
    expect(hashFrom('2026-05-02', 'UTC')).not.toBe(one)
  })
})
