/** Words of packing, set-up, survey and quote. Loaded with the papers, not before. */
import en from './papers.en.json' with { type: 'json' }
import { type Say, wordsFrom } from './said.ts'

export type PaperWord = keyof typeof en
export type PaperWords = Say<PaperWord>
export const paperWords = wordsFrom<PaperWord>({ en })
