/** Labels: a phone reads off the printed page which leg or package it is; nothing stands on another label or off its own. */
import jsQrModule from 'jsqr'
import { describe, expect, it } from 'vitest'
import { overlap } from '../../../geometry/drawing/cells.ts'
import { boxOf } from '../../../geometry/drawing/labels.ts'
import { pdfOf } from '../../../geometry/export/pdf.ts'
import { LABEL_GRIDS, type LabelGrid, labelSheet } from '../../../geometry/paper/label-grid.ts'
import { PAPER_SIZES, type Paper, type Sheet, type TextMark } from '../../../geometry/paper/marks.ts'
import { type PaperOf, paperFrom } from '../../../geometry/paper/paper-of.ts'
import { paperOf } from '../../../geometry/sheets/packet.ts'
import {
  type Catalog,
  type Design,
  demoCatalog,
  demoDesign,
  derive,
  english,
  type Project,
  projectOf,
} from '../../../rules/index.ts'
import { cartons } from '../../../rules/papers/cartons.ts'
import { labels, packageLabels } from '../../../rules/papers/labels.ts'
import { linkOf, readLink } from '../../../src/autosave/link.ts'
import { paperFonts } from '../../../src/cli/fonts.ts'
import { parsedDesign } from '../../support/arbitraries.ts'
import { metricCatalog } from '../../support/catalogs.ts'
import { getDocument } from '../../support/pdfjs.ts'

const jsQr = ((jsQrModule as unknown as { default?: unknown }).default ??
  jsQrModule) as typeof import('jsqr').default
const FONTS = paperFonts()
const DATE = '2026-05-01'
const DPI = 200
const PAGE = 'https://docks.example/plan?shop=quillet'

/** Each dock is derived once, and its labels are laid out once: what these tests cost is in that. */
const projects = new Map<Design, Project>()
const made = new Map<string, Labels>()

interface Labels {
  readonly of: PaperOf
  readonly paper: Paper
}

function labelsFor(
  grid: LabelGrid | undefined,
  link: string | undefined,
  design: Design = demoDesign,
  catalog: Catalog = demoCatalog,
): Labels {
  const project = projects.get(design) ?? projectOf(design, catalog, derive(design, catalog))
  projects.set(design, project)
  const key = JSON.stringify([[...projects.keys()].indexOf(design), catalog.id, grid, link])
  const known = made.get(key)
  if (known) return known
  const of = paperFrom(project, {
    ...english('imperial'),
    ...{ size: 'letter', date: DATE, by: '' },
    ...(grid && { labels: grid }),
    ...(link !== undefined && { link }),
  })
  const both = { of, paper: paperOf('labels', of) }
  made.set(key, both)
  return both
}

interface Pixels {
  readonly data: Uint8ClampedArray
  readonly width: number
  readonly height: number
}

/** Another program's picture of each page of the file. */
async function render(bytes: Uint8Array): Promise<{ pages: Pixels[] }> {
  const file = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise
  // Not among the library's types: what it draws on where there is no browser.
  const { canvasFactory } = file as unknown as {
    canvasFactory: {
      create(
        width: number,
        height: number,
      ): {
        canvas: HTMLCanvasElement
        context: CanvasRenderingContext2D
      }
    }
  }
  const pages: Pixels[] = []
  for (let n = 1; n <= file.numPages; n++) {
    const page = await file.getPage(n)
    const viewport = page.getViewport({ scale: DPI / 72 })
    const { canvas, context } = canvasFactory.create(Math.round(viewport.width), Math.round(viewport.height))
    await page.render({ canvas, canvasContext: context, viewport }).promise
    pages.push(context.getImageData(0, 0, canvas.width, canvas.height))
  }
  return { pages }
}

/** What is read in a box of a page, mm. */
function scan({ data, width }: Pixels, x: number, y: number, w: number, h: number): string | null {
  const dots = (mm: number): number => Math.round((mm * DPI) / 25.4)
  const [left, top, wide, high] = [dots(x), dots(y), dots(w), dots(h)]
  const cut = new Uint8ClampedArray(wide * high * 4)
  for (let row = 0; row < high; row++) {
    const from = ((top + row) * width + left) * 4
    cut.set(data.subarray(from, from + wide * 4), row * wide * 4)
  }
  return jsQr(cut, wide, high)?.data ?? null
}

const wantedOf = (of: PaperOf): string[] => [
  ...labels(of).map(({ id }) => id),
  ...packageLabels(of).map(({ id }) => id),
]

describe('a label scanned from the rendered page at 200 dpi', () => {
  it.each(LABEL_GRIDS)(
    'of %s says which leg or package it is, on each of them',
    { timeout: 120_000 },
    async (grid) => {
      const { of, paper } = labelsFor(grid, undefined)
      const { pages } = await render(pdfOf([paper], FONTS, { date: DATE }))
      const { places, width, height } = labelSheet(grid)
      const code = of.dock.fingerprint.all.slice(0, 12)
      const wanted = wantedOf(of)
      expect(pages).toHaveLength(Math.ceil(wanted.length / places.length))
      wanted.forEach((id, i) => {
        const [x, y] = places[i % places.length]!
        const said = scan(pages[Math.floor(i / places.length)]!, x, y, width, height)
        expect(said?.split('\n')[0]).toBe(`${id} ${code}`)
      })
      // Readable for who has no page to open: number, place and length of a leg.
      const leg = wanted.indexOf('s2.end.left')
      const [x, y] = places[leg % places.length]!
      expect(scan(pages[0]!, x, y, width, height)).toMatch(/\nLeg 3\n11 ft 2 in out, left\.\n/)
    },
  )

  it.each(['letter-2x5', 'a4-2x4'] as const)(
    'of %s opens the dock at that leg or package',
    { timeout: 120_000 },
    async (grid) => {
      const { of, paper } = labelsFor(grid, `${PAGE}${linkOf(demoDesign)}`)
      const { pages } = await render(pdfOf([paper], FONTS, { date: DATE }))
      const { places, width, height } = labelSheet(grid)
      wantedOf(of).forEach((id, i) => {
        const [x, y] = places[i % places.length]!
        const url = new URL(scan(pages[Math.floor(i / places.length)]!, x, y, width, height)!)
        expect(url.origin + url.pathname).toBe('https://docks.example/plan')
        expect(url.searchParams.get('shop')).toBe('quillet')
        expect(url.searchParams.get('leadline-at')).toBe(id)
        const opened = readLink(url.hash)
        expect(opened.ok && opened.value).toEqual(demoDesign)
      })
    },
  )

  it('is no link where its squares would be too small to read', () => {
    const address = `${PAGE}${linkOf(demoDesign)}`
    for (const grid of ['letter-2x7', 'letter-3x10', 'a4-3x8', undefined] as const) {
      const codes = (link?: string) => labelsFor(grid, link).paper.sheets.flatMap(({ marks }) => marks).length
      expect(codes(address)).toBe(codes())
      // A short one fits even those.
      expect(codes('https://d.example/7')).not.toBe(codes())
    }
  })
})

const textsOf = ({ marks }: Sheet): TextMark[] =>
  marks.filter((mark): mark is TextMark => mark.kind === 'text' && mark.text.trim() !== '')

const LONG = parsedDesign({
  ...demoDesign,
  job: { customer: 'Bartholomew Featherstonehaugh-Cholmondeley and family', order: '2026-000123/7' },
  dock: { ...demoDesign.dock, name: 'The long dock at the old boathouse, north cove', sections: 12 },
})

const ELSEWHERE = parsedDesign({
  ...LONG,
  dock: { ...LONG.dock, frame: metricCatalog.frames[0]!.code, extras: {}, sections: 4 },
})

describe('sheets of labels', () => {
  for (const grid of LABEL_GRIDS)
    it.each([
      ['the demo', demoDesign, demoCatalog],
      ['one that must not be built', LONG, demoCatalog],
      ['another shop’s', ELSEWHERE, metricCatalog],
    ] as const)(
      `${grid}: no text of %s is on another, off its label or off the printable sheet`,
      (_, design, catalog) => {
        const { sheet, places, width, height } = labelSheet(grid)
        expect(sheet).toEqual(PAPER_SIZES[grid.startsWith('a4') ? 'a4' : 'letter'])
        for (const [x, y] of places) {
          expect(x).toBeGreaterThanOrEqual(-1e-9)
          expect(y).toBeGreaterThanOrEqual(-1e-9)
          expect(x + width).toBeLessThanOrEqual(sheet.width + 1e-9)
          expect(y + height).toBeLessThanOrEqual(sheet.height + 1e-9)
        }
        for (const one of labelsFor(grid, undefined, design, catalog).paper.sheets) {
          const boxes = textsOf(one).map((mark) => ({ text: mark.text, box: boxOf(mark) }))
          expect(boxes.length).toBeGreaterThan(3)
          for (const { text, box } of boxes) {
            const inside = places.some(
              ([x, y]) => box.x0 >= x && box.x1 <= x + width && box.y0 >= y && box.y1 <= y + height,
            )
            const printable =
              box.x0 > 5 && box.y0 > 5 && box.x1 < sheet.width - 5 && box.y1 < sheet.height - 5
            expect(`${text} ${inside} ${printable}`).toBe(`${text} true true`)
          }
          const crowded = boxes.flatMap(({ text, box }, i) =>
            boxes
              .slice(0, i)
              .flatMap((other) => (overlap(box, other.box) ? [`${text} on ${other.text}`] : [])),
          )
          expect(crowded).toEqual([])
        }
      },
    )

  it('say of every package which of how many it is, how heavy, and that it takes two where the mass asks for it', () => {
    for (const grid of [...LABEL_GRIDS, undefined]) {
      const { of, paper } = labelsFor(grid, undefined)
      const texts = paper.sheets.flatMap((one) => textsOf(one).map(({ text }) => text))
      const { packages } = cartons(of.dock, of.catalog)
      for (const { number } of packages) expect(texts).toContain(`${number} of ${packages.length}`)
      const heavy = packages.filter(({ mass }) => mass > of.catalog.packing!.person!)
      expect(heavy.length).toBeGreaterThan(3)
      expect(heavy.length).toBeLessThan(packages.length)
      expect(texts.filter((text) => text.endsWith('2 people'))).toHaveLength(heavy.length)
    }
  })

  it('of a dock that must not be built each say so', () => {
    for (const grid of LABEL_GRIDS) {
      const { of, paper } = labelsFor(grid, undefined, LONG)
      const texts = paper.sheets.flatMap((one) => textsOf(one).map(({ text }) => text))
      expect(texts.filter((text) => text === 'DO NOT BUILD')).toHaveLength(wantedOf(of).length)
    }
  })
})
