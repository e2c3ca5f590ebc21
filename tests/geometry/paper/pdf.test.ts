/** The PDF writer by itself: marks where they are said to be, in another program's reading; the same bytes from another process. */
import { execFileSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { join } from 'node:path'
import { PNG } from 'pngjs'
import { describe, expect, it } from 'vitest'
import { pdfOf } from '../../../geometry/export/pdf.ts'
import {
  figure,
  heading,
  label,
  line,
  list,
  paragraph,
  rect,
  subheading,
  textLine,
} from '../../../geometry/paper/blocks.ts'
import { BREAK, type Flow, paginate } from '../../../geometry/paper/flow.ts'
import type { Mark, Paper, Sheet } from '../../../geometry/paper/marks.ts'
import { table } from '../../../geometry/paper/table.ts'
import { textWidth } from '../../../geometry/paper/text.ts'
import { paperFonts } from '../../../src/cli/fonts.ts'
import { getDocument, OPS } from '../../support/pdfjs.ts'

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
  const hashes = `
    import { createHash } from 'node:crypto'
    import { pdfOf } from './geometry/export/pdf.ts'
    import { paperFrom } from './geometry/paper/paper-of.ts'
    import { packetOf } from './geometry/sheets/packet.ts'
    import { demoCatalog, demoDesign, derive, ENGLISH, projectOf } from './rules/index.ts'
    import { paperFonts } from './src/cli/fonts.ts'
    const project = projectOf(demoDesign, demoCatalog, derive(demoDesign, demoCatalog))
    for (const date of process.argv.slice(1)) {
      const options = { units: 'imperial', language: ENGLISH, size: 'letter', date, by: 'A. Person' }
      const bytes = pdfOf(packetOf(paperFrom(project, options)), paperFonts(), { date })
      process.stdout.write(createHash('sha256').update(bytes).digest('hex') + ' ')
    }`
  const hashesIn = (zone: string, ...dates: string[]): string[] =>
    execFileSync(
      process.execPath,
      ['--import', 'tsx', '--input-type=module', '--eval', hashes, '--', ...dates],
      {
        cwd: join(import.meta.dirname, '../../..'),
        env: { ...process.env, TZ: zone },
        encoding: 'utf8',
      },
    )
      .trim()
      .split(' ')

  it('gives the same bytes from two processes, in any time zone; on another day others', {
    timeout: 120_000,
  }, () => {
    const [one, later] = hashesIn('UTC', DATE, '2026-05-02')
    expect(one).toMatch(/^[0-9a-f]{64}$/)
    expect(one).not.toBe(createHash('sha256').digest('hex'))
    expect(hashesIn('Pacific/Auckland', DATE)).toEqual([one])
    expect(later).toMatch(/^[0-9a-f]{64}$/)
    expect(later).not.toBe(one)
  })
})

/** Of an element: its role, its texts (by the ids of marked content), its kids. */
interface Node {
  readonly role?: string
  readonly alt?: string
  readonly id?: string
  readonly children?: readonly Node[]
}

describe('a tagged PDF', () => {
  const WIDE = 170
  const COLUMNS = [
    { title: 'Leg', bold: true },
    { title: 'Place', flex: true },
    { title: 'Done', tick: true },
  ]
  const ROWS = [
    ['1', 'left, 3 m out', ''],
    ['2', '', ''],
  ]
  const flow: Flow = [
    textLine('Set-up sheet', WIDE, { tag: { role: 'H1' } }),
    heading('Order of work', WIDE),
    ...paragraph('Carry out. '.repeat(30), WIDE),
    ...list(['See the lake', 'Lay out'], WIDE, 'number'),
    ...table(COLUMNS, ROWS, WIDE),
    BREAK,
    subheading('Again', WIDE),
    ...table(
      COLUMNS,
      Array.from({ length: 40 }, (_, i) => [String(i), 'x', '']),
      WIDE,
    ),
    figure({ marks: [rect([0, 0], 9, 9)], width: 9, height: 9 }, WIDE, 'A square'),
  ]
  const papers = (): Paper[] => [
    paper(
      'Set-up',
      ...paginate(flow, () => ({ at: [15, 12], height: 80 })).map(({ marks }) => sheet(marks, null, 200)),
    ),
    paper('Drawing', sheet([line([10, 10], [50, 10]), label([10, 20], 'Leg 1')], 'Plan')),
  ]
  const treeOf = async (n: number): Promise<Node> =>
    (await (await (await open(papers())).getPage(n)).getStructTree()) as unknown as Node
  const shape = ({ role, children = [] }: Node): unknown =>
    children.some(({ role: inner }) => inner) ? { [role!]: children.filter((c) => c.role).map(shape) } : role

  it('has headings, paragraphs, lists and tables with their heads, empty cells too, in reading order', async () => {
    const root = (await treeOf(1)).children![0]!
    expect(shape(root)).toEqual({
      Document: [
        'H1',
        'H2',
        'P',
        { L: [{ LI: ['Lbl', 'LBody'] }, { LI: ['Lbl', 'LBody'] }] },
        { Table: [{ TR: ['TH', 'TH', 'TH'] }, { TR: ['TD', 'TD', 'TD'] }, { TR: ['TD', 'TD', 'TD'] }] },
      ],
    })
  })

  it('reads a head that comes again on the next sheet once, and says what a picture is of', async () => {
    const file = await open(papers())
    let [heads, rows] = [0, 0]
    const alts: string[] = []
    const walk = ({ role, alt, children = [] }: Node, page: number): void => {
      if (role === 'TH' && children.some(({ id }) => id)) heads++
      if (role === 'TR' && page > 1) rows++
      if (alt !== undefined) alts.push(alt)
      for (const child of children) walk(child, page)
    }
    for (let n = 1; n <= file.numPages; n++)
      walk((await (await file.getPage(n)).getStructTree()) as unknown as Node, n)
    // Two tables of two named columns and a box to tick, which has no name.
    expect(heads).toBe(6)
    expect(rows).toBeGreaterThanOrEqual(41)
    expect(alts).toEqual(expect.arrayContaining(['A square', 'Drawing, Plan']))
  })

  it('leaves no text out of the tree but what every sheet repeats', async () => {
    const file = await open(papers())
    for (let n = 1; n <= file.numPages; n++) {
      const { items } = await (await file.getPage(n)).getTextContent({ includeMarkedContent: true })
      let depth = 0
      for (const item of items) {
        if ('str' in item) expect(item.str === '' || depth > 0).toBe(true)
        else if (item.type === 'endMarkedContent') depth--
        else depth++
      }
    }
  })

  it('is called by what it is of, in its language, its pages by their papers', async () => {
    const file = await getDocument({
      data: pdfOf(papers(), FONTS, { date: DATE, name: 'Cove č' }),
      verbosity: 0,
    }).promise
    const { info, metadata } = await file.getMetadata()
    const told = info as Record<string, unknown>
    expect((told.Title as string).normalize('NFC')).toBe('Cove č')
    expect(told.Language).toBe('en-US')
    expect(metadata.get('dc:title')).toBe(told.Title)
    expect(metadata.get('dc:description')).toBe(told.Subject)
    expect(metadata.get('dc:creator')).toEqual([told.Author])
    expect(metadata.get('xmp:creatortool')).toBe(told.Creator)
    expect(metadata.get('pdf:producer')).toBe(told.Producer)
    expect(metadata.get('xmp:createdate')).toBe('2026-05-01T12:00:00+00:00')
    expect(told.CreationDate).toBe("D:20260501120000+00'00'")
    expect([metadata.get('pdfaid:part'), metadata.get('pdfaid:conformance')]).toEqual(['2', 'B'])
    const labels = (await file.getPageLabels())!
    expect(labels[0]).toBe('Set-up 1')
    expect(labels.at(-1)).toBe('Drawing 1')
    expect((await file.getMarkInfo())?.Marked).toBe(true)
    expect(await file.getViewerPreferences()).toMatchObject({ DisplayDocTitle: true })
  })

  it('has what PDF/A-2 asks for and nothing that it forbids', async () => {
    const text = Buffer.from(pdfOf(papers(), FONTS, { date: DATE })).toString('latin1')
    expect(text).toMatch(/^%PDF-1\.7\n%[\x80-\xff]{4}/)
    expect(text).toMatch(/\/ID \[ <([0-9A-F]{32})> <\1> \]/)
    for (const forbidden of [
      /\/Encrypt/,
      /\/JavaScript/,
      /\/SMask/,
      /\/ca 0?\.\d/i,
      /\/LZWDecode/,
      /\/Type ?\/Action/,
    ])
      expect(text).not.toMatch(forbidden)
    // Each font is embedded, and says what its letters are.
    const fonts = text.match(/\/BaseFont \/\S+/g)!
    expect(text.match(/\/FontFile2 /g)!.length * 2).toBe(fonts.length)
    expect(text.match(/\/ToUnicode /g)!.length * 2).toBe(fonts.length)
    const [, number, size] = /(\d+) 0 obj\n<<\/N 3\/Length (\d+)>>\nstream\n/.exec(text)!
    expect(text).toContain(
      `/S/GTS_PDFA1/OutputConditionIdentifier (sRGB)/Info (sRGB)/DestOutputProfile ${number} 0 R`,
    )
    const from = text.indexOf('stream\n', text.indexOf(`${number} 0 obj`)) + 7
    const profile = Buffer.from(text.slice(from, from + Number(size)), 'latin1')
    expect(profile.readUInt32BE(0)).toBe(profile.length)
    expect(profile.toString('latin1', 12, 24)).toBe('mntrRGB XYZ ')
    expect(profile.toString('latin1', 36, 40)).toBe('acsp')
    // The three primaries add up to the white of the profile.
    const tags = new Map<string, number>()
    for (let i = 0; i < profile.readUInt32BE(128); i++)
      tags.set(profile.toString('latin1', 132 + 12 * i, 136 + 12 * i), profile.readUInt32BE(136 + 12 * i))
    const xyz = (name: string) =>
      [0, 1, 2].map((k) => profile.readInt32BE(tags.get(name)! + 8 + 4 * k) / 65536)
    for (const k of [0, 1, 2])
      expect(xyz('rXYZ')[k]! + xyz('gXYZ')[k]! + xyz('bXYZ')[k]!).toBeCloseTo(xyz('wtpt')[k]!, 3)
  })
})
