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

export const FORMATS = ['pdf', 'svg', 'dxf', 'glb', 'usdz'] as const
export type Format = (typeof FORMATS)[number]

/** Media types: IANA's registry; DXF is not in it. */
export const MEDIA: Readonly<Record<Format, string>> = {
  pdf: 'application/pdf',
  svg: 'image/svg+xml',
  dxf: 'image/vnd.dxf',
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

export interface Asked {
  /** Which paper, of those formats that are paper; the others know but one. */
  readonly what: What
  readonly quote?: QuoteWanted
  readonly dock: Dock
  readonly design: Design
  readonly catalog: Catalog
  readonly options: PaperOptions
}

/** @param fonts asked for only where the format embeds them */
export async function writeFile(
  format: Format,
  asked: Asked,
  fonts: () => PaperFonts | Promise<PaperFonts>,
): Promise<Uint8Array> {
  const { dock, design, catalog, options } = asked
  switch (format) {
    case 'pdf': {
      const [papers, { pdfOf }, both] = await Promise.all([
        papersOf(asked),
        import('../../geometry/export/pdf.ts'),
        fonts(),
      ])
      return pdfOf(papers, both, { date: options.date })
    }
    case 'svg': {
      const [papers, { svgOfSheets }] = await Promise.all([
        papersOf(asked),
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

async function papersOf({ what, quote, ...of }: Asked): Promise<readonly Paper[]> {
  const { packetOf, paperOf } = await import('../../geometry/paper/packet.ts')
  return what === 'packet' ? packetOf(of, quote) : [paperOf(what, of, quote)]
}

/** A dock's name as the name of a file: letters and digits of any language, the rest as hyphens. */
export const fileName = (dock: Dock, format: Format, what: What = 'drawing'): string => {
  const name = dock.name.replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-|-$/g, '') || 'dock'
  return what === 'drawing' ? `${name}.${format}` : `${name}-${what}.${format}`
}
