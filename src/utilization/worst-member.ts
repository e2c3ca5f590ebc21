/** The part of each kind that uses most of its strength: what a legend names, and where the picture says it. */
import type { Structure } from '../../rules/index.ts'

export interface Worst {
  readonly kind: 'leg' | 'brace' | 'frame'
  /** Id of the leg, pair or section. */
  readonly id: string
  readonly use: number
  readonly case: string
}

/** The most used first; a kind that is not there is left out. */
export function worstOf({ legs, braces, rails }: Structure): Worst[] {
  const most = <T extends { readonly use: number }>(list: readonly T[]): T[] =>
    list.length === 0 ? [] : [list.reduce((a, b) => (b.use > a.use ? b : a))]
  return [
    ...most(legs).map(({ leg, ...at }): Worst => ({ kind: 'leg', id: leg, use: at.use, case: at.case })),
    ...most(braces).map(
      ({ pair, ...at }): Worst => ({ kind: 'brace', id: pair, use: at.use, case: at.case }),
    ),
    ...most(rails).map(
      ({ section, ...at }): Worst => ({ kind: 'frame', id: section, use: at.use, case: at.case }),
    ),
  ].sort((a, b) => b.use - a.use)
}
