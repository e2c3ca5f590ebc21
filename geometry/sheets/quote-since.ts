/** What changed since the last quote, on the quote: the sums, the lines, and why legs are others now. */
import type { Since } from '../../rules/papers/quote-since.ts'
import { list, paragraph, subheading } from '../paper/blocks.ts'
import type { Block } from '../paper/flow.ts'
import { GRAY, SIZE } from '../paper/style.ts'
import { table } from '../paper/table.ts'

export function sinceBlocks({ title, columns, rows, total, legs, note }: Since, width: number): Block[] {
  const [line, ...figures] = columns
  return [
    subheading(title, width),
    ...(total
      ? table(
          [{ title: line, flex: true }, ...figures.map((title) => ({ title, align: 'end' as const }))],
          [...rows, total].map((row) => [...row]),
          width,
        )
      : []),
    ...(note === null ? [] : paragraph(note, width, { ink: GRAY })),
    ...(legs.length > 0 ? list(legs, width, 'dot', { size: SIZE.small }) : []),
  ]
}
