/**
 * The set-up sheet. Its first leaf is all that most set-ups need, on both sides: the legs with room to write, and the order of work. Behind
 * it the manual of this dock: what is made ready and done, a row a section.
 */

import { steps } from '../../rules/papers/steps/set-up.ts'
import { isForbidden } from '../../rules/stops.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import { PAPERS } from '../../rules/words/papers.ts'
import { paragraph } from '../paper/blocks.ts'
import { documentOf, head, widthOf } from '../paper/document.ts'
import { BREAK, type Flow } from '../paper/flow.ts'
import type { Paper } from '../paper/marks.ts'
import type { PaperOf } from '../paper/paper-of.ts'
import { foundBlocks, notesFound } from './found.ts'
import { leafOf } from './leaf.ts'
import { dryTable, wetTable } from './work-tables.ts'

export function setUpPaper(of: PaperOf): Paper {
  const { catalog, options } = of
  const t = wordsOf(PAPERS, options)
  const width = widthOf(options)
  const title = head(t('set-up'), of, options, catalog)
  if (isForbidden(of.dock))
    return documentOf(
      t('set-up'),
      [...title, ...paragraph(t('forbidden-steps'), width, { before: 3 }), ...foundBlocks(of, width)],
      catalog,
      options,
      of,
    )
  const sheet = steps(of)
  const { front, over, rear, whole } = leafOf(of, sheet, title, width)
  // One leaf, both sides, where it is one; else no white is left between its parts.
  const turn: Flow = whole ? [BREAK] : []
  const flow: Flow = [
    ...front,
    ...turn,
    ...rear,
    ...turn,
    ...over,
    ...dryTable(of, sheet, width),
    ...wetTable(of, sheet, width),
    ...foundBlocks(of, width),
    ...notesFound(of, width),
  ]
  return documentOf(t('set-up'), flow, catalog, options, of)
}
