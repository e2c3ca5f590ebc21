/** Words of the papers: packing, set-up, survey and quote. Loaded with them, not before. */
import en from './en/papers.json' with { type: 'json' }
import { type Say, subject } from './messages.ts'

export type PaperWord = keyof typeof en
export type PaperWords = Say<PaperWord>
export const PAPERS = subject('papers', en)
