/** Papers of a record as PDF: how each leg stands, and how it all comes out again. */
import { pdfOf } from '../../../geometry/export/pdf.ts'
import { recordPaper } from '../../../geometry/sheets/record.ts'
import type { Catalog, Project, Reader } from '../../../rules/index.ts'
import { type SeasonRecord, takeOut } from '../../../rules/record/index.ts'
import { takeOutTold } from '../../../rules/words/record-shop-text.ts'
import { asBuiltTold } from '../../../rules/words/record-text.ts'
import { FONT_URLS } from '../../documents/files/font-urls.ts'
import { paperFonts } from '../../documents/files/fonts.ts'
import { plainName } from '../../platform/file-name.ts'

export type PaperOfRecord = 'as-built' | 'take-out'

export interface PaperAsked {
  readonly what: PaperOfRecord
  readonly record: SeasonRecord
  readonly season: string
  readonly project: Project | null
  readonly catalog: Catalog
  readonly reader: Reader
}

/** Rejects where the papers' fonts cannot be had. */
export async function recordPdf({
  what,
  record,
  season,
  project,
  catalog,
  reader,
}: PaperAsked): Promise<File> {
  const told =
    what === 'as-built'
      ? asBuiltTold(record, reader, season)
      : takeOutTold(record, takeOut(record, project ?? undefined, season), reader)
  const date = new Date().toISOString().slice(0, 10)
  const size = reader.units === 'imperial' ? 'letter' : 'a4'
  // A shop that has nothing to do with it does not stand on it.
  const maker = record.catalog?.id === catalog.id ? catalog : { name: record.name, edition: '' }
  const paper = recordPaper(told, { ...reader, size, date, by: '' }, maker)
  const bytes = pdfOf([paper], await paperFonts(FONT_URLS), { date, name: paper.title })
  return new File([bytes], `${plainName(`${record.name} ${paper.title}`)}.pdf`, { type: 'application/pdf' })
}
