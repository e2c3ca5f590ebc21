/** The earlier quote that the next one is compared with; loaded when there is one. */
import type { Catalog, Design, Dock } from '../../rules/index.ts'
import { type QuoteAsked, quote } from '../../rules/papers/quote.ts'
import type { QuoteFile } from '../../rules/papers/quote-file.ts'
import { type Since, sinceSaid } from '../../rules/papers/quote-since.ts'

export { parseQuoteText } from '../../rules/papers/quote-file.ts'

/** What is another than in the earlier quote, where this dock is quoted with these choices. */
export const changesSince = (
  since: QuoteFile,
  { dock, design, catalog }: { readonly dock: Dock; readonly design: Design; readonly catalog: Catalog },
  asked: QuoteAsked,
  view: Parameters<typeof sinceSaid>[3],
): Since => sinceSaid(since, { dock, quote: quote(dock, design, catalog, asked) }, catalog, view)
