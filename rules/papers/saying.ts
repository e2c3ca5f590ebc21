/** A sentence as data: a key of the papers' words, and the figures that fill it. Views say it in the reader's language and units. */
import type { Figure } from '../dock.ts'
import { round6 } from '../numbers.ts'
import type { PaperWord, PaperWords } from '../words/papers.ts'

export interface Saying {
  readonly key: PaperWord
  readonly values: Readonly<Record<string, Figure>>
}

export const saying = (key: PaperWord, values: Readonly<Record<string, Figure>> = {}): Saying => ({
  key,
  values,
})

export const text = (value: string): Figure => ({ value, unit: 'text' })
export const count = (value: number): Figure => ({ value, unit: 'count' })
/** Rounded as everything that goes out; a depth of nothing is no -0. */
export const meters = (value: number): Figure => ({ value: round6(value), unit: 'm' })
export const kilograms = (value: number): Figure => ({ value, unit: 'kg' })

/** Ids one after the other, all of them. */
export const list = (ids: readonly string[]): Figure => ({ value: ids, unit: 'list' })

/** The sentence, in words of `PAPERS`. */
export const sentence = ({ key, values }: Saying, words: PaperWords): string => words(key, values)
