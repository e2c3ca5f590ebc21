/** Each extra with its place, alike ones in one line. */

import { formatLength } from '../../rules/index.ts'
import { type ExtraPlaced, extrasPlaced } from '../../rules/papers/extras-placed.ts'
import { groupBy } from '../../rules/papers/order.ts'
import { seenSide } from '../../rules/papers/straight.ts'
import { listOf } from '../../rules/words/language.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import { PAPERS } from '../../rules/words/papers.ts'
import { list, subheading } from '../paper/blocks.ts'
import type { Block } from '../paper/flow.ts'
import type { PaperOf } from '../paper/paper-of.ts'
import { SIZE } from '../paper/style.ts'

export function extrasBlocks(of: PaperOf, width: number): Block[] {
  const all = extrasPlaced(of)
  if (all.length === 0) return []
  const { options } = of
  const t = wordsOf(PAPERS, options)
  const sections = new Map(of.dock.sections.map((section) => [section.id, section]))
  const place = ({ section, edge, along }: ExtraPlaced): string => {
    // Left and right as one looks at the lake, of what turns away too.
    const on = sections.get(section)!
    const where = edge === 'left' || edge === 'right' ? seenSide(on, edge) : edge
    return t(`extra-edge-${where}`, {
      along: formatLength(along, options),
      from: t(`side-${seenSide(on, 'left')}`),
    })
  }
  const turned = all.some(({ section }) => sections.get(section)!.heading !== 0)
  const lines = [...groupBy(all, ({ name }) => name)].map(([name, alike]) => {
    const places = [...groupBy(alike, ({ section }) => section)].map(
      ([section, there]) => `${section} ${listOf(there.map(place), options.language)}`,
    )
    return t('extra-line', { count: alike.length, name, places: places.join('; ') })
  })
  return [
    { ...subheading(t(turned ? 'extras-title-turned' : 'extras-title'), width), before: 3.5 },
    ...list(lines, width, 'tick', { size: SIZE.small }).map((one) => ({ ...one, before: 0.5 })),
  ]
}
