/** What of a dock is there already, for whoever packs the rest: what is used of it and where, what is left over. */
import { EXISTING, leftLines, usedLines } from '../../rules/words/existing-text.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import { list, subheading } from '../paper/blocks.ts'
import type { Block } from '../paper/flow.ts'
import type { PaperOf } from '../paper/paper-of.ts'

/** Nothing where the Design tells of nothing. `width` in mm. */
export function existingBlocks({ dock, options }: PaperOf, width: number): Block[] {
  const { existing } = dock
  if (!existing) return []
  const t = wordsOf(EXISTING, options)
  const under = (title: string, lines: readonly string[]): Block[] =>
    lines.length === 0 ? [] : [{ ...subheading(title, width), name: title }, ...list(lines, width)]
  return [
    ...under(t('used'), usedLines(existing, options, dock)),
    ...under(t('left'), leftLines(existing, options)),
  ]
}
