/** What stays on the shore while the lake moves, with its height over the water that heights count from: the plan's fixed mark, and those of earlier days. */
import { liveEntries } from '../../rules/record/index.ts'
import type { Begun } from './lake.ts'

export interface ShoreMark {
  readonly name: string
  /** m */
  readonly above: number
  readonly by: 'mark' | 'stake'
}

export function marksOf({ record }: Pick<Begun, 'record'>): readonly ShoreMark[] {
  const own: ShoreMark[] = record.mark ? [{ ...record.mark, by: 'mark' }] : []
  const earlier = liveEntries(record.entries).flatMap((entry): ShoreMark[] =>
    entry.kind === 'level' && entry.mark !== undefined && entry.down !== undefined
      ? [{ name: entry.mark, above: entry.level + entry.down, by: entry.from === 'stake' ? 'stake' : 'mark' }]
      : [],
  )
  const all = [...own, ...earlier]
  return all.filter(({ name }, i) => all.findIndex((one) => one.name === name) === i)
}
