/**
 * Files of a dock, for page and terminal alike: the same bytes from both for the same dock, date and options.
 * Each format's writer is loaded when it is asked for.
 */
import type { ModelOptions } from '../../../geometry/export/model.ts'
import type { PaperFonts } from '../../../geometry/export/pdf.ts'
import {
  AUDIENCES,
  type Audience,
  type PaperName,
  packetFor,
  papersFor,
} from '../../../geometry/paper/audience.ts'
import type { Paper } from '../../../geometry/paper/marks.ts'
import type { PaperOptions } from '../../../geometry/paper/options.ts'
import { paperFrom } from '../../../geometry/paper/paper-of.ts'
import type { QuoteWanted } from '../../../geometry/sheets/quote.ts'
import { type Catalog, type Design, type Dock, projectOf } from '../../../rules/index.ts'
import { audienceShown, pricesFor } from '../../../rules/papers/prices-shown.ts'
import type { QuoteFile } from '../../../rules/papers/quote-file.ts'
import { plainName } from '../../platform/file-name.ts'

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

export { AUDIENCES, type Audience }

/** A paper by name, or all that a dock needs in one file. */
export type What = PaperName | 'packet'

/** Figures that can be exported as CSV or JSON: packages, the parts list, the costs. */
const TABLES = { packing: 'cartons', list: 'list', quote: 'quote', estimate: 'estimate' } as const
export type Figures = keyof typeof TABLES

/** A crew is handed no prices. */
const FIGURES_FOR: Readonly<Record<Audience, readonly Figures[]>> = {
  customer: ['packing', 'list', 'estimate'],
  shop: ['packing', 'list', 'quote'],
  crew: ['packing'],
}

export const whatFor = (audience: Audience): readonly What[] => ['packet', ...papersFor(audience)]
export const figuresFor = (audience: Audience): readonly Figures[] => FIGURES_FOR[audience]

/** What each came for. */
export const FIRST = {
  shop: 'quote',
  crew: 'set-up',
  customer: 'packet',
} as const satisfies Record<Audience, What>

/** What a format can be written of; empty if the format has just one content, the dock itself. */
export const whatOf = (format: Format, audience: Audience): readonly (What | Figures)[] =>
  format === 'pdf' || format === 'svg'
    ? whatFor(audience)
    : format === 'csv' || format === 'json'
      ? figuresFor(audience)
      : []

export interface ModelChoice {
  readonly base: NonNullable<ModelOptions['base']>
  readonly lake: NonNullable<ModelOptions['lake']>['parts']
}

export interface Asked {
  /** One of `whatOf` the format; ignored if that is empty. */
  readonly what: What | Figures
  readonly audience: Audience
  /** For the shop's quote alone. */
  readonly quote?: QuoteWanted
  /** Begin CSV with a byte order mark: spreadsheets take it for UTF-8 then. */
  readonly bom?: boolean
  /** Of models: what is at height 0, and what of the lake is in them. */
  readonly model?: ModelChoice
  readonly dock: Dock
  readonly design: Design
  readonly catalog: Catalog
  readonly options: PaperOptions
}

/** Progress: the paper that is being made now, and how many of how many are done. */
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
): Promise<Uint8Array<ArrayBuffer>> {
  const { what, audience, quote, dock, design, catalog, options } = asked
  const prices = pricesFor(catalog, audience)
  const known = whatOf(format, audienceShown(audience, prices))
  if (known.length > 0 && !known.includes(what))
    throw new RangeError(
      `${what}: not for a ${audience}${prices === 'none' && audience === 'customer' ? ' of a shop that shows no prices' : ''}; expected ${known.join(', ')}`,
    )
  switch (format) {
    case 'pdf': {
      const [papers, { pdfOf }, both] = await Promise.all([
        papersOf(asked, progress),
        import('../../../geometry/export/pdf.ts'),
        fonts(),
      ])
      return pdfOf(papers, both, { date: options.date, name: dock.name })
    }
    case 'svg': {
      const [papers, { svgOfSheets }] = await Promise.all([
        papersOf(asked, progress),
        import('../../../geometry/export/svg.ts'),
      ])
      return new TextEncoder().encode(
        svgOfSheets(
          papers.flatMap(({ sheets }) => sheets),
          { title: [dock.name, ...papers.map(({ title }) => title)].join(', '), lang: options.language.tag },
        ),
      )
    }
    case 'dxf': {
      const { dxfOf } = await import('../../../geometry/export/dxf.ts')
      return new TextEncoder().encode(dxfOf(paperFrom(projectOf(design, catalog, dock), options)))
    }
    case 'csv':
    case 'json': {
      const table = TABLES[what as Figures]
      const { tableCsv, tableJson } = await import('./tables.ts')
      const made = (format === 'csv' ? tableCsv : tableJson)(table, {
        ...{ dock, design, catalog, prices },
        asked: { ...quote, date: options.date },
      })
      return new TextEncoder().encode(format === 'csv' && asked.bom ? `\uFEFF${made}` : made)
    }
    case 'glb': {
      const { glbOf } = await import('../../../geometry/export/glb.ts')
      return glbOf(dock, catalog, modelOptions(asked))
    }
    case 'usdz': {
      const { usdzOf } = await import('../../../geometry/export/usdz.ts')
      return usdzOf(dock, catalog, modelOptions(asked))
    }
  }
}

function modelOptions({ model, dock, design, catalog }: Asked): ModelOptions {
  if (!model) return {}
  const { bed } = projectOf(design, catalog, dock)
  return { base: model.base, lake: { parts: model.lake, bed, design } }
}

async function papersOf(
  { what, audience, quote, dock, design, catalog, options }: Asked,
  progress: Progress,
): Promise<readonly Paper[]> {
  const { paperOf } = await import('../../../geometry/sheets/packet.ts')
  const wanted = quote?.since
    ? { ...quote, headline: await changedIn(quote.since, quote, { dock, design, catalog, options }) }
    : quote
  const of = paperFrom(projectOf(design, catalog, dock), options)
  const names =
    what === 'packet' ? packetFor(audienceShown(audience, pricesFor(catalog, audience))) : [what as PaperName]
  return names.map((name, i) => {
    progress(name, i, names.length)
    return paperOf(name, of, wanted)
  })
}

/** What is another since the last quote, in a few words. */
async function changedIn(
  since: QuoteFile,
  { since: _, ...asked }: QuoteWanted,
  { dock, design, catalog, options }: Pick<Asked, 'dock' | 'design' | 'catalog' | 'options'>,
): Promise<string> {
  const [{ headlineOf }, priced] = await Promise.all([
    import('./headline.ts'),
    import('../../../rules/papers/quote.ts'),
  ])
  const { total } = priced.quote(dock, design, catalog, { ...asked, date: options.date })
  const same = since.currency === catalog.currency
  return headlineOf(
    { design: since.design, total: same ? since.total : null },
    { design, total: same ? total : null },
    catalog,
    options,
  )
}

/** What a file of a dock is called. */
export const fileName = (dock: Dock, format: Format, what: What | Figures = 'drawing'): string => {
  const name = plainName(dock.name)
  return what === 'drawing' || !AUDIENCES.some((one) => whatOf(format, one).includes(what))
    ? `${name}.${format}`
    : `${name}-${what}.${format}`
}
