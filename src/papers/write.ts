/**
 * Files of a dock, for page and terminal alike: the same bytes from both for the same dock, date and options.
 * Each format's writer is loaded when it is asked for.
 */
import type { PaperFonts } from '../../geometry/export/pdf.ts'
import type { PaperOptions } from '../../geometry/paper/options.ts'
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

export interface Asked {
  readonly dock: Dock
  readonly design: Design
  readonly catalog: Catalog
  readonly options: PaperOptions
}

/** @param fonts asked for only where the format embeds them */
export async function writeFile(
  format: Format,
  { dock, design, catalog, options }: Asked,
  fonts: () => PaperFonts | Promise<PaperFonts>,
): Promise<Uint8Array> {
  switch (format) {
    case 'pdf': {
      const [{ layoutDrawing }, { pdfOf }, both] = await Promise.all([
        import('../../geometry/drawing/layout-drawing.ts'),
        import('../../geometry/export/pdf.ts'),
        fonts(),
      ])
      return pdfOf([layoutDrawing(dock, design, catalog, options)], both, { date: options.date })
    }
    case 'svg': {
      const [{ layoutDrawing }, { svgOfSheets }] = await Promise.all([
        import('../../geometry/drawing/layout-drawing.ts'),
        import('../../geometry/export/svg.ts'),
      ])
      const { sheets, title, lang } = layoutDrawing(dock, design, catalog, options)
      return new TextEncoder().encode(svgOfSheets(sheets, { title: `${dock.name}: ${title}`, lang }))
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

/** A dock's name as the name of a file: letters and digits of any language, the rest as hyphens. */
export const fileName = (dock: Dock, format: Format): string =>
  `${dock.name.replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-|-$/g, '') || 'dock'}.${format}`
