/** Papers of a record as PDF: how each leg stands, how it all comes out again, and how far each leg goes in another spring. */
import { pdfOf } from '../../../geometry/export/pdf.ts'
import { recordPaper } from '../../../geometry/sheets/record.ts'
import type { Catalog, Project, Reader } from '../../../rules/index.ts'
import { type NextYear, type SeasonRecord, seasonState, takeOut } from '../../../rules/record/index.ts'
import { nextYearTold } from '../../../rules/words/record-next-text.ts'
import { takeOutTold } from '../../../rules/words/record-shop-text.ts'
import { asBuiltTold, type ShopNamed } from '../../../rules/words/record-text.ts'
import { FONT_URLS } from '../../documents/files/font-urls.ts'
import { paperFonts } from '../../documents/files/fonts.ts'
import { plainName } from '../../platform/file-name.ts'

/** `next`: heights of another spring, as they were worked out. */
export type PaperOfRecord = 'as-built' | 'take-out' | { readonly next: NextYear }

export interface PaperAsked {
  readonly what: PaperOfRecord
  readonly record: SeasonRecord
  readonly season: string
  readonly project: Project | null
  readonly catalog: Catalog
  readonly reader: Reader
}

/** A season in which nothing is set yet has no paper: then how it stood last. */
const shownSeason = (record: SeasonRecord, season: string): string | undefined =>
  seasonState(record, season).legs.some(({ set }) => set) ? season : undefined

/** A shop that has nothing to do with it does not stand on it. */
const shopOfRecord = (record: SeasonRecord, { id, name, shop }: Catalog): ShopNamed | undefined =>
  record.catalog?.id === id ? { name: shop?.name ?? name, phone: shop?.phone, mail: shop?.mail } : undefined

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
    typeof what === 'object'
      ? nextYearTold(record, what.next, reader)
      : what === 'as-built'
        ? asBuiltTold(record, reader, shownSeason(record, season), shopOfRecord(record, catalog))
        : takeOutTold(record, takeOut(record, project ?? undefined, season), reader)
  const date = new Date().toISOString().slice(0, 10)
  const size = reader.units === 'imperial' ? 'letter' : 'a4'
  // A shop that has nothing to do with it does not stand on it.
  const maker = record.catalog?.id === catalog.id ? catalog : { name: record.name, edition: '' }
  const paper = recordPaper(told, { ...reader, size, date, by: '' }, maker)
  const bytes = pdfOf([paper], await paperFonts(FONT_URLS), { date, name: paper.title })
  return new File([bytes], `${plainName(`${record.name} ${paper.title}`)}.pdf`, { type: 'application/pdf' })
}
