/** What the dock in hand is compared with; loaded when there is something. */
import {
  assessKit,
  type Catalog,
  type Design,
  type Dock,
  deriveKit,
  type Parsed,
  parseDesignText,
  type Reader,
} from '../../../rules/index.ts'
import { estimate, type QuoteAsked, quote } from '../../../rules/papers/quote.ts'
import { parseAsked, parseQuoteText, type QuoteFile, quoteFile } from '../../../rules/papers/quote-file.ts'
import { ownTerms, type Since, sinceSaid } from '../../../rules/papers/quote-since.ts'
import { headlineOf } from './headline.ts'

/** A quote of before, or another dock, which is priced as the one in hand is. */
export type ComparedWith = { readonly quoted: QuoteFile } | { readonly design: Design }

/** A file of either kind, told by the format that it says it has. */
export function parseCompared(json: string): Parsed<ComparedWith> {
  if (/"format"\s*:\s*"leadline\/design"/.test(json) && !/"format"\s*:\s*"leadline\/quote"/.test(json)) {
    const parsed = parseDesignText(json)
    return parsed.ok ? { ...parsed, value: { design: parsed.value } } : parsed
  }
  const parsed = parseQuoteText(json)
  return parsed.ok ? { ...parsed, value: { quoted: parsed.value } } : parsed
}

export interface Told extends Since {
  /** What is other, in a line. */
  readonly headline: string
  /** The earlier quote has terms that only the shop can give and that an estimate therefore lacks. */
  readonly shops: boolean
}

/** @throws `RangeError` that says where, what and what was expected. */
export function checkAsked({ since: _since, ...asked }: QuoteAsked & { readonly since?: unknown }): void {
  const parsed = parseAsked(asked)
  if (!parsed.ok)
    throw new RangeError(parsed.issues.map(({ path, message }) => `${path}: ${message}`).join('; '))
}

/** What is other, if this dock is quoted with these choices (or, if not `quoted`, estimated). */
export function changesSince(
  before: ComparedWith,
  { dock, design, catalog }: { readonly dock: Dock; readonly design: Design; readonly catalog: Catalog },
  { date, ...asked }: QuoteAsked,
  quoted: boolean,
  reader: Reader,
): Told {
  const priced = (of: Dock, made: Design) =>
    quoted ? quote(of, made, catalog, { ...asked, date }) : estimate(of, made, catalog, { date })
  const now = { dock, quote: priced(dock, design) }
  const since =
    'quoted' in before
      ? before.quoted
      : (quoteFile(
          priced(assessKit(deriveKit(before.design, catalog)), before.design),
          before.design,
        ) as QuoteFile)
  const comparable = since.currency === now.quote.currency
  return {
    ...sinceSaid(since, now, catalog, reader),
    headline: headlineOf(
      { design: since.design, total: comparable ? since.total : null },
      { design, total: comparable ? now.quote.total : null },
      catalog,
      reader,
    ),
    shops: !quoted && 'quoted' in before && ownTerms(before.quoted, catalog),
  }
}
