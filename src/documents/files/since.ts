/** The earlier quote that the next one is compared with; loaded when there is one. */
import type { Catalog, Design, Dock } from '../../../rules/index.ts'
import { estimate, type QuoteAsked, quote } from '../../../rules/papers/quote.ts'
import type { QuoteFile } from '../../../rules/papers/quote-file.ts'
import { parseAsked } from '../../../rules/papers/quote-file.ts'
import { ownTerms, type Since, sinceSaid } from '../../../rules/papers/quote-since.ts'

export { parseQuoteText } from '../../../rules/papers/quote-file.ts'

/** @throws `RangeError` that says where, what and what was expected. */
export function checkAsked({ since: _since, ...asked }: QuoteAsked & { readonly since?: unknown }): void {
  const parsed = parseAsked(asked)
  if (!parsed.ok)
    throw new RangeError(parsed.issues.map(({ path, message }) => `${path}: ${message}`).join('; '))
}

/**
 * What changed since the earlier quote, if this dock is quoted with these choices (or, if not `quoted`, estimated). `shops`: the earlier quote
 * has terms that only the shop can give and that an estimate therefore lacks.
 */
export const changesSince = (
  since: QuoteFile,
  { dock, design, catalog }: { readonly dock: Dock; readonly design: Design; readonly catalog: Catalog },
  { date, ...asked }: QuoteAsked,
  quoted: boolean,
  view: Parameters<typeof sinceSaid>[3],
): Since & { readonly shops: boolean } => ({
  ...sinceSaid(
    since,
    {
      dock,
      quote: quoted
        ? quote(dock, design, catalog, { ...asked, date })
        : estimate(dock, design, catalog, { date }),
    },
    catalog,
    view,
  ),
  shops: !quoted && ownTerms(since, catalog),
})
