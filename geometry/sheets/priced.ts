/** What every part of a paper with prices is written with. */
import type { Reader } from '../../rules/index.ts'
import type { Estimate, Quote } from '../../rules/papers/quote.ts'
import type { PaperWords } from '../../rules/words/papers.ts'

export interface Priced {
  readonly made: Quote | Estimate
  readonly reader: Reader
  /** Between the margins, mm. */
  readonly width: number
  readonly t: PaperWords
  readonly money: (minor: number) => string
  /** What each line costs is told, not totals alone. */
  readonly lines: boolean
}

/** A quote; an estimate binds nobody. */
export const isBinding = ({ made }: Pick<Priced, 'made'>): boolean => made.format === 'leadline/quote'
