/** Line, square and level, as steps to tick with this dock's own figures. */
import { formatLength } from '../../rules/index.ts'
import { straightOf } from '../../rules/papers/straight.ts'
import { wordsOf } from '../../rules/words/messages.ts'
import { PAPERS } from '../../rules/words/papers.ts'
import { list, subheading } from '../paper/blocks.ts'
import type { Block } from '../paper/flow.ts'
import type { PaperOf } from '../paper/paper-of.ts'
import { SIZE } from '../paper/style.ts'

export function straightBlocks(of: PaperOf, width: number): Block[] {
  const checks = straightOf(of)
  if (!checks) return []
  const { options, design } = of
  const t = wordsOf(PAPERS, options)
  const length = (value: number): string => formatLength(Math.abs(value), options)
  const { stake, benchmark } = design.site
  const { line, first, run, turns, overMark } = checks
  const lines = [
    t(line.aside < 0 ? 'straight-line-right' : 'straight-line', {
      from: stake?.name ?? t('straight-zero'),
      aside: length(line.aside),
      to: length(line.to),
    }),
    run
      ? t('straight-run', {
          first: first.section,
          one: length(first.diagonal),
          last: run.section,
          all: length(run.diagonal),
        })
      : t('straight-first', { first: first.section, one: length(first.diagonal) }),
    ...turns.map(({ sections, on, square, from, to, across }) =>
      t(square ? 'straight-turn' : 'straight-askew', {
        sections: { value: sections, unit: 'list' },
        on,
        from: t(`side-${from}`),
        to: t(`side-${to}`),
        across: length(across),
      }),
    ),
    overMark === null
      ? t('straight-level')
      : t(overMark < 0 ? 'straight-level-under' : 'straight-level-over', {
          mark: benchmark!.name,
          height: length(overMark),
        }),
  ]
  return [
    { ...subheading(t('straight-title'), width), before: 3.5 },
    ...list(lines, width, 'tick', { size: SIZE.small }).map((one) => ({ ...one, before: 0.5 })),
  ]
}
