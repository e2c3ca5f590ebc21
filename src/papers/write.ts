/**
 * Files of a dock, for page and terminal alike: the same bytes from both for the same dock, date and options.
 * Each format's writer is loaded when it is asked for.
 */
import type { PaperFonts } from '../../geometry/export/pdf.ts'
import type { Paper } from '../../geometry/paper/marks.ts'
import type { PaperOptions } from '../../geometry/paper/options.ts'
import type { PaperName } from '../../geometry/paper/packet.ts'
import type { QuoteWanted } from '../../geometry/paper/sheets/quote.ts'
import type { Catalog, Design, Dock } from '../../rules/index.ts'
import { plainName } from '../state/file-name.ts'

export const FORMATS = ['pdf', 'svg', 'dxf', 'csv', 'json', 'glb', 'usdz'] as const
export type Format = (typeof FORMATS)[number]

/** Media types: IANA's registry; DXF is not in it. */
export const MEDIA: Readonly<Record<Format, string>> = {
  pdf: 'application/pdf',
  svg: 'image/svg+xml',
  dxf: 'image/vnd.dxf',
  csv: 'text/csv',
  json: 'application/json',
  glb: 'model/gltf-binary',
  usdz: 'model/vnd.usdz+zip',
}

/** Papers by name, and all that a dock needs in one file. */
export const WHAT = [
  'packet',
  'drawing',
  'packing',
  'cards',
  'labels',
  'set-up',
  'autumn',
  'survey',
  'quote',
] as const satisfies readonly (PaperName | 'packet')[]
export type What = (typeof WHAT)[number]

/** What there are figures of to go on with, as rows for a spreadsheet or as data: packages, the parts list, the quote. */
const TABLES = { packing: 'cartons', list: 'list', quote: 'quote' } as const
export type Figures = keyof typeof TABLES
export const FIGURES = Object.keys(TABLES) as readonly Figures[]

/** What a format can be asked for of; none where it knows but one thing, the dock itself. */
export const whatOf = (format: Format): readonly (What | Figures)[] =>
  format === 'pdf' || format === 'svg' ? WHAT : format === 'csv' || format === 'json' ? FIGURES : []

export interface Asked {
  /** One of `whatOf` the format; of no account where there is but one thing. */
  readonly what: What | Figures
  readonly quote?: QuoteWanted
  readonly dock: Dock
  readonly design: Design
  readonly catalog: Catalog
  readonly options: PaperOptions
}

/** What is being made now: the paper, and how many of how many are made. */
export type Progress = (paper: PaperName, made: number, of: number) => void

/**
 * @param fonts asked for only where the format embeds them
 * @param progress told before each paper
 * Throws (rejects with) a `RangeError` for what the format cannot say.
 */
export async function writeFile(
  format: Format,
  asked: Asked,
  fonts: () => PaperFonts | Promise<PaperFonts>,
  progress: Progress = () => {},
): Promise<Uint8Array> {
  const { what, quote, dock, design, catalog, options } = asked
  switch (format) {
    case 'pdf': {
      const [papers, { pdfOf }, both] = await Promise.all([
        papersOf(asked, progress),
        import('../../geometry/export/pdf.ts'),
        fonts(),
      ])
      return pdfOf(papers, both, { date: options.date })
    }
    case 'svg': {
      const [papers, { svgOfSheets }] = await Promise.all([
        papersOf(asked, progress),
        import('../../geometry/export/svg.ts'),
      ])
      return new TextEncoder().encode(
        svgOfSheets(
          papers.flatMap(({ sheets }) => sheets),
          { title: [dock.name, ...papers.map(({ title }) => title)].join(', '), lang: options.lang },
        ),
      )
    }
    case 'dxf': {
      const { dxfOf } = await import('../../geometry/export/dxf.ts')
      return new TextEncoder().encode(dxfOf(dock, design, catalog, options))
    }
    case 'csv':
    case 'json': {
      const table = TABLES[what as Figures]
      if (!table) throw new RangeError(`no figures of ${what}`)
      const { tableCsv, tableJson } = await import('./tables.ts')
      const made = (format === 'csv' ? tableCsv : tableJson)(table, {
        ...{ dock, design, catalog },
        asked: { ...quote, date: options.date },
      })
      return new TextEncoder().encode(made)
    }
    case 'glb': {
      const { glbOf } = await import('../../geometry/export/glb.ts')
      return glbOf(dock, catalog)
    }
    case 'usdz': {
      const { usdzOf } = await import('../../geometry/export/usdz.ts')
      return usdzOf(dock, catalog)
    }
  }
}

async function papersOf({ what, quote, ...of }: Asked, progress: Progress): Promise<readonly Paper[]> {
  const { PACKET, paperOf } = await import('../../geometry/paper/packet.ts')
  if (what === 'list') throw new RangeError('no paper of list')
  const names = what === 'packet' ? PACKET : [what]
  return names.map((name, i) => {
    progress(name, i, names.length)
    return paperOf(name, of, quote)
  })
}

/** What a file of a dock is called. */
export const fileName = (dock: Dock, format: Format, what: What | Figures = 'drawing'): string => {
  const name = plainName(dock.name)
  return what === 'drawing' || !whatOf(format).includes(what)
    ? `${name}.${format}`
    : `${name}-${what}.${format}`
}
